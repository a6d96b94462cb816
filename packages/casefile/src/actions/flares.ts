/** Edits of the root flares. */
import type { CaseFile, CaseFlare } from '../schema/schema.ts';
import { changeFlare, indexOfId, refuseTaken, withFields, withoutItem } from './places.ts';

/** Adds a flare; flares stand in order of azimuth. */
export function addFlare(
  caseFile: CaseFile,
  flare: Pick<CaseFlare, 'id' | 'azimuthDeg'> & Partial<CaseFlare>,
): CaseFile {
  refuseTaken(caseFile.flares, flare.id, 'flare');
  const flares = [...caseFile.flares, { drillings: [], ...flare }];
  return { ...caseFile, flares: flares.sort((a, b) => a.azimuthDeg - b.azimuthDeg) };
}

export function setFlareFields(
  caseFile: CaseFile,
  flareId: string,
  fields: Partial<Pick<CaseFlare, 'azimuthDeg' | 'widthMm' | 'heightMm' | 'note'>>,
): CaseFile {
  return changeFlare(caseFile, flareId, (flare) => withFields(flare, fields));
}

export function renameFlare(caseFile: CaseFile, flareId: string, id: string): CaseFile {
  if (id === flareId) return caseFile;
  refuseTaken(caseFile.flares, id, 'flare');
  return changeFlare(caseFile, flareId, (flare) => ({ ...flare, id }));
}

export function removeFlare(caseFile: CaseFile, flareId: string): CaseFile {
  const index = indexOfId(caseFile.flares, flareId, 'flare');
  return { ...caseFile, flares: withoutItem(caseFile.flares, index, 'flare') };
}
