/** Drillings of a case wherever they are: at a section or on a flare. */
import { type CaseDrilling, type CaseFile, findFile, pathProblem } from '@standfast/casefile';

export interface DrillingPlace {
  drilling: CaseDrilling;
  /** Path of the drilling in the case: `sections.0.drillings.2`. */
  path: string;
  /** Id of the section or flare. */
  placeId: string;
  kind: 'section' | 'flare';
}

/** Every drilling of the case, sections first, in the order they were recorded. */
export function drillingsOf(caseFile: CaseFile): DrillingPlace[] {
  const at = (list: 'sections' | 'flares', kind: DrillingPlace['kind']) =>
    caseFile[list].flatMap((place, i) =>
      place.drillings.map((drilling, j) => ({
        drilling,
        path: `${list}.${i}.drillings.${j}`,
        placeId: place.id,
        kind,
      })),
    );
  return [...at('sections', 'section'), ...at('flares', 'flare')];
}

export interface TraceFile {
  /** The path as the drilling names it, and as the file is called (they may differ in upper and lower case). */
  named: string;
  path: string;
  sha256: string;
}

/** The trace files that the case names and has. */
export function traceFilesOf(caseFile: CaseFile, files: Readonly<Record<string, string>>): TraceFile[] {
  const bag = new Map(Object.keys(files).map((path) => [path, NO_BYTES]));
  return drillingsOf(caseFile).flatMap(({ drilling, path: at }) => {
    const named = drilling.trace;
    if (named === undefined || pathProblem(named) !== null) return [];
    const path = findFile(bag, named, at)?.path;
    return path === undefined ? [] : [{ named, path, sha256: files[path]! }];
  });
}

const NO_BYTES = new Uint8Array(0);

/** The first free name of the form `d4`. */
export function freeId(taken: readonly string[], letter: string): string {
  const used = new Set(taken);
  for (let n = 1; ; n++) {
    const id = `${letter}${n}`;
    if (!used.has(id)) return id;
  }
}

/** A path for a new trace that no file of the case has yet, so that undo finds the old file where it was. */
export function freeTracePath(files: Readonly<Record<string, string>>, drillingId: string): string {
  const stem = drillingId.replace(/[^\p{L}\p{N}_-]+/gu, '-') || 'trace';
  for (let n = 1; ; n++) {
    const path = n === 1 ? `traces/${stem}.csv` : `traces/${stem}-${n}.csv`;
    if (!(path in files)) return path;
  }
}
