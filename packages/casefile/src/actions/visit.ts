/** Edits of who, when and where. Setting a field to undefined takes it out. */
import type { CaseFile } from '../schema/schema.ts';
import { withFields } from './places.ts';

type PlainField =
  | 'title'
  | 'purpose'
  | 'visitedOn'
  | 'weather'
  | 'notes'
  | 'invented'
  | 'place'
  | 'instrument'
  | 'timeFrameYears';

export function setCaseField<F extends PlainField>(
  caseFile: CaseFile,
  field: F,
  value: CaseFile[F],
): CaseFile {
  return withFields(caseFile, { [field]: value } as Partial<CaseFile>);
}

export function setClient(caseFile: CaseFile, fields: NonNullable<CaseFile['client']>): CaseFile {
  return { ...caseFile, client: withFields(caseFile.client ?? {}, fields) };
}

export function setAssessor(caseFile: CaseFile, fields: NonNullable<CaseFile['assessor']>): CaseFile {
  return { ...caseFile, assessor: withFields(caseFile.assessor ?? {}, fields) };
}
