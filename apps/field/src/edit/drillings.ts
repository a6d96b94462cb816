/** Drillings of a case wherever they are: at a section or on a flare. */
import {
  type CaseDrilling,
  type CaseFile,
  type DrillingPlace,
  findFile,
  pathProblem,
} from '@standfast/casefile';

export interface PlacedDrilling {
  drilling: CaseDrilling;
  /** Path of the drilling in the case: `sections.0.drillings.2`. */
  path: string;
  /** Id of the section or flare. */
  placeId: string;
  place: DrillingPlace;
  /** Names it in figures and addresses: `s1/d3`. */
  ref: string;
}

/** Every drilling of the case, sections first, in the order they were recorded. */
export function placedDrillings(caseFile: CaseFile): PlacedDrilling[] {
  const at = (list: 'sections' | 'flares', placeOf: (id: string) => DrillingPlace) =>
    caseFile[list].flatMap((holder, i) =>
      holder.drillings.map((drilling, j) => ({
        drilling,
        path: `${list}.${i}.drillings.${j}`,
        placeId: holder.id,
        place: placeOf(holder.id),
        ref: `${holder.id}/${drilling.id}`,
      })),
    );
  return [...at('sections', (sectionId) => ({ sectionId })), ...at('flares', (flareId) => ({ flareId }))];
}

/** The case as it stood when only the first drillings of a section had been made, in the order they were recorded. */
export function withFirstDrillings(caseFile: CaseFile, sectionId: string, count: number): CaseFile {
  return {
    ...caseFile,
    sections: caseFile.sections.map((section) =>
      section.id === sectionId ? { ...section, drillings: section.drillings.slice(0, count) } : section,
    ),
  };
}

/** The address of a drilling's page in its case. */
export function drillingAddress(caseId: string, ref: string): string {
  return `/case/${caseId}/section/${encodeURIComponent(ref.replace('/', ':'))}`;
}

/** The reference of a drilling from its address. */
export function refOfAddress(part: string): string {
  return decodeURIComponent(part).replace(':', '/');
}

export interface NamedFile {
  /** The path as the case names it, and as the file is called (they may differ in upper and lower case). */
  named: string;
  path: string;
  sha256: string;
}

const NO_BYTES = new Uint8Array(0);

/** The names of the case's files as a bag, for what only looks at names. */
export function namesOf(files: Readonly<Record<string, string>>): Map<string, Uint8Array> {
  return new Map(Object.keys(files).map((path) => [path, NO_BYTES]));
}

/** A file that the case names and has, or null. */
export function fileNamed(
  files: Readonly<Record<string, string>>,
  named: string,
  at: string,
): NamedFile | null {
  if (pathProblem(named) !== null) return null;
  const path = findFile(namesOf(files), named, at)?.path;
  return path === undefined ? null : { named, path, sha256: files[path]! };
}

/** The trace files that the case names and has. */
export function traceFilesOf(caseFile: CaseFile, files: Readonly<Record<string, string>>): NamedFile[] {
  return placedDrillings(caseFile).flatMap(({ drilling, path: at }) => {
    const found = drilling.trace === undefined ? null : fileNamed(files, drilling.trace, at);
    return found ? [found] : [];
  });
}
