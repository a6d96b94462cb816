/**
 * Undo and redo as a history of values. The values share what did not change between them, so keeping them is cheap.
 */

/** Values before, now and after; each value before or after with the name of the step that led away from it. */
export interface History<T> {
  readonly past: readonly { readonly value: T; readonly step: string }[];
  readonly present: T;
  readonly future: readonly { readonly value: T; readonly step: string }[];
  /** The step that led to the present, so that keystrokes in one field join into one step. */
  readonly lastStep: string | null;
}

/** Steps kept; older ones are let go. */
const MAX_STEPS = 500;

/** A history with one value and nothing to undo. */
export function historyOf<T>(present: T): History<T> {
  return { past: [], present, future: [], lastStep: null };
}

/**
 * The history after a step. A step of the same name as the one just made joins it when `join` is set (typing in one
 * field is one step). A step that changes nothing leaves the history as it is. What was undone before is let go.
 */
export function doStep<T>(history: History<T>, value: T, step: string, join = false): History<T> {
  if (Object.is(value, history.present)) return history;
  if (join && history.lastStep === step && history.past.length > 0) {
    return { ...history, present: value, future: [] };
  }
  const past = [...history.past, { value: history.present, step }].slice(-MAX_STEPS);
  return { past, present: value, future: [], lastStep: step };
}

/** The history one step back; the same history when there is nothing to undo. */
export function undo<T>(history: History<T>): History<T> {
  const last = history.past.at(-1);
  if (!last) return history;
  return {
    past: history.past.slice(0, -1),
    present: last.value,
    future: [{ value: history.present, step: last.step }, ...history.future],
    lastStep: null,
  };
}

/** The history one undone step forward; the same history when there is nothing to redo. */
export function redo<T>(history: History<T>): History<T> {
  const [next, ...future] = history.future;
  if (!next) return history;
  return {
    past: [...history.past, { value: history.present, step: next.step }],
    present: next.value,
    future,
    lastStep: null,
  };
}

/** The names of the steps that undo and redo would take, null where there is none. */
export function stepNames<T>(history: History<T>): { undo: string | null; redo: string | null } {
  return { undo: history.past.at(-1)?.step ?? null, redo: history.future[0]?.step ?? null };
}
