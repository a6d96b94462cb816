/** Edits of the drillings, at sections and at flares. */
import { InputFault } from '@standfast/engine';
import type { CaseDrilling, CaseFile } from '../schema/schema.ts';
import {
  changeFlare,
  changeSection,
  type DrillingPlace,
  type DrillingRef,
  indexOfId,
  refuseTaken,
  withFields,
  withItem,
  withoutItem,
} from './places.ts';

function changeDrillings(
  caseFile: CaseFile,
  place: DrillingPlace,
  change: (drillings: CaseDrilling[]) => CaseDrilling[],
): CaseFile {
  return 'sectionId' in place
    ? changeSection(caseFile, place.sectionId, (section) => ({
        ...section,
        drillings: change(section.drillings),
      }))
    : changeFlare(caseFile, place.flareId, (flare) => ({ ...flare, drillings: change(flare.drillings) }));
}

export function addDrilling(caseFile: CaseFile, place: DrillingPlace, drilling: CaseDrilling): CaseFile {
  return changeDrillings(caseFile, place, (drillings) => {
    refuseTaken(drillings, drilling.id, 'drilling');
    return [...drillings, drilling];
  });
}

/** Sets where a drilling goes in and how it heads. */
export function moveDrilling(
  caseFile: CaseFile,
  ref: DrillingRef,
  pose: Partial<Pick<CaseDrilling, 'azimuthDeg' | 'offRadialDeg' | 'downDeg'>>,
): CaseFile {
  return setDrillingFields(caseFile, ref, pose);
}

/** Sets fields of a drilling but its name. */
export function setDrillingFields(
  caseFile: CaseFile,
  ref: DrillingRef,
  fields: Partial<Omit<CaseDrilling, 'id'>>,
): CaseFile {
  return changeDrillings(caseFile, ref, (drillings) =>
    withItem(
      drillings,
      indexOfId(drillings, ref.drillingId, 'drilling'),
      (drilling) => withFields(drilling, fields),
      'drilling',
    ),
  );
}

export function renameDrilling(caseFile: CaseFile, ref: DrillingRef, id: string): CaseFile {
  if (id === ref.drillingId) return caseFile;
  return changeDrillings(caseFile, ref, (drillings) => {
    refuseTaken(drillings, id, 'drilling');
    const index = indexOfId(drillings, ref.drillingId, 'drilling');
    return withItem(drillings, index, (drilling) => ({ ...drilling, id }), 'drilling');
  });
}

/** Takes a drilling out; its trace file stays in the bag. */
export function removeDrilling(caseFile: CaseFile, ref: DrillingRef): CaseFile {
  return changeDrillings(caseFile, ref, (drillings) =>
    withoutItem(drillings, indexOfId(drillings, ref.drillingId, 'drilling'), 'drilling'),
  );
}

/** A drilling by its place and name. */
export function drillingAt(caseFile: CaseFile, ref: DrillingRef): CaseDrilling {
  const holder =
    'sectionId' in ref
      ? caseFile.sections[indexOfId(caseFile.sections, ref.sectionId, 'section')]
      : caseFile.flares[indexOfId(caseFile.flares, ref.flareId, 'flare')];
  const drilling = holder?.drillings.find(({ id }) => id === ref.drillingId);
  if (!drilling) throw new InputFault(`there is no drilling called ${JSON.stringify(ref.drillingId)}`, '');
  return drilling;
}
