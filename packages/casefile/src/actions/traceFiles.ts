/** Putting a trace into a case: the file into the bag, its name into the drilling. */
import type { Trace } from '@standfast/engine';
import type { CaseBag, ReadonlyCaseBag } from '../bag/bag.ts';
import type { CaseFile } from '../schema/schema.ts';
import { writeTraceTable } from '../trace/writeTraceTable.ts';
import { setDrillingFields } from './drillings.ts';
import type { DrillingRef } from './places.ts';

/** A file name for a drilling's trace that is not taken in the bag yet. */
export function freeTracePath(bag: ReadonlyCaseBag, drillingId: string): string {
  const stem =
    drillingId
      .normalize('NFKD')
      .replace(/[^a-zA-Z0-9._-]+/g, '_')
      .replace(/^[._]+/, '') || 'trace';
  const taken = new Set([...bag.keys()].map((path) => path.toLowerCase()));
  for (let n = 1; ; n++) {
    const path = `traces/${stem}${n === 1 ? '' : `-${n}`}.csv`;
    if (!taken.has(path.toLowerCase())) return path;
  }
}

/**
 * The case and bag with a trace for a drilling, in a file of its own; a trace it had before stays in the bag, so that
 * no reading is ever lost by an edit.
 */
export function attachTrace(
  caseFile: CaseFile,
  bag: ReadonlyCaseBag,
  ref: DrillingRef,
  trace: Trace,
  comments: readonly string[] = [],
): { caseFile: CaseFile; bag: CaseBag; path: string } {
  const path = freeTracePath(bag, ref.drillingId);
  return {
    caseFile: setDrillingFields(caseFile, ref, { trace: path }),
    bag: new Map(bag).set(path, writeTraceTable(trace, comments)),
    path,
  };
}
