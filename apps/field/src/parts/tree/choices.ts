/** Choices of a field from a list of words, and the way back to nothing chosen. */
import type { Choice } from '../entries.tsx';

/** Each word as it is. */
export const same = (values: readonly string[]): Choice[] => values.map((value) => ({ value, label: value }));

/** The words, with a first choice that leaves the field out and says what is taken then. */
export function orLeftOut(choices: readonly Choice[], leftOut: string): Choice[] {
  return [{ value: '', label: leftOut }, ...choices];
}
