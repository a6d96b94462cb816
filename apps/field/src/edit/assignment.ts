/** Which needle pass a trace is of: a drilling that is there, or a new one with the side it went in at. */
import {
  addDrilling,
  addSection,
  type CaseDrilling,
  type CaseFile,
  type DrillingPlace,
  nextId,
  setDrillingFields,
} from '@standfast/casefile';
import { readNumber } from '../units/readNumber.ts';
import { placedDrillings } from './drillings.ts';

/** Where a trace goes: `new s1`, `old s1/d3`, or left out. */
export interface Assignment {
  to: string;
  /** As typed; only for a new drilling. */
  azimuth: string;
}

export const LEFT_OUT = 'out';
const FIRST_SECTION = 's1';

/** What is likeliest: the drilling on screen, one named like the trace that has none yet, or a new one. */
export function usualAssignment(caseFile: CaseFile, label: string, here: string | null): Assignment {
  const placed = placedDrillings(caseFile);
  const plain = label.trim().toLowerCase();
  const named = placed.find(({ drilling }) => drilling.id.toLowerCase() === plain && !drilling.trace);
  const target = placed.find(({ ref }) => ref === here) ?? named;
  const place = caseFile.sections[0]?.id ?? caseFile.flares[0]?.id ?? FIRST_SECTION;
  return { to: target ? `old ${target.ref}` : `new ${place}`, azimuth: '' };
}

export function isNew({ to }: Assignment): boolean {
  return to.startsWith('new ');
}

/** What keeps the trace from being taken, or null. */
export function assignmentFault(assignment: Assignment): string | null {
  if (!isNew(assignment)) return null;
  const read = readNumber(assignment.azimuth);
  if (!read.ok) {
    return assignment.azimuth.trim() === '' ? 'Say at which side the needle went in.' : read.message;
  }
  return Math.abs(read.value) <= 360 ? null : 'Must be between 0° and 360°.';
}

/** Everything a trace may be of. */
export function assignmentChoices(caseFile: CaseFile): { value: string; label: string }[] {
  const places = [
    ...caseFile.sections.map(({ id }) => ({ id, words: `section ${id}` })),
    ...caseFile.flares.map(({ id }) => ({ id, words: `flare ${id}` })),
  ];
  return [
    ...(places.length > 0 ? places : [{ id: FIRST_SECTION, words: 'a new section' }]).map(
      ({ id, words }) => ({ value: `new ${id}`, label: `a new drilling at ${words}` }),
    ),
    ...placedDrillings(caseFile).map(({ ref, drilling }) => ({
      value: `old ${ref}`,
      label: `${ref}${drilling.trace ? ' (replaces its trace)' : ''}`,
    })),
  ];
}

/** The drilling's name, its place, and the case with fields of it set (the drilling is made when it is new). */
export function drillingTaken(
  caseFile: CaseFile,
  assignment: Assignment,
): {
  drillingId: string;
  ref: string;
  withFields: (fields: Partial<Omit<CaseDrilling, 'id'>>) => CaseFile;
} {
  const old = placedDrillings(caseFile).find(({ ref }) => `old ${ref}` === assignment.to);
  if (old) {
    const drillingId = old.drilling.id;
    return {
      drillingId,
      ref: old.ref,
      withFields: (fields) => setDrillingFields(caseFile, { ...old.place, drillingId }, fields),
    };
  }
  const drillingId = nextId(caseFile, 'drilling');
  const placeId = assignment.to.slice('new '.length);
  const read = readNumber(assignment.azimuth);
  return {
    drillingId,
    ref: `${placeId}/${drillingId}`,
    withFields: (fields) => {
      const { caseFile: ready, place } = withPlace(caseFile, placeId);
      return addDrilling(ready, place, { id: drillingId, azimuthDeg: read.ok ? read.value : 0, ...fields });
    },
  };
}

/** The case with the place there: a first section is made, as round as the stem, when there is none. */
function withPlace(caseFile: CaseFile, id: string): { caseFile: CaseFile; place: DrillingPlace } {
  if (caseFile.flares.some((flare) => flare.id === id)) return { caseFile, place: { flareId: id } };
  if (caseFile.sections.some((section) => section.id === id)) return { caseFile, place: { sectionId: id } };
  const diameterMm = caseFile.tree.stemDiameterMm ?? 600;
  return {
    caseFile: addSection(caseFile, { id, heightM: 1.3, outline: { kind: 'circle', diameterMm } }),
    place: { sectionId: id },
  };
}
