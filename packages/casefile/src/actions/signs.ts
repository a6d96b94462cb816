/** Edits of what was seen on the tree. Signs have no names; they are known by their place in the list. */
import type { CaseFile, CaseSign } from '../schema/schema.ts';
import { withFields, withItem, withoutItem } from './places.ts';

export function addSign(caseFile: CaseFile, sign: CaseSign): CaseFile {
  return { ...caseFile, signs: [...caseFile.signs, sign] };
}

export function setSignFields(caseFile: CaseFile, index: number, fields: Partial<CaseSign>): CaseFile {
  return {
    ...caseFile,
    signs: withItem(caseFile.signs, index, (sign) => withFields(sign, fields), 'sign'),
  };
}

export function removeSign(caseFile: CaseFile, index: number): CaseFile {
  return { ...caseFile, signs: withoutItem(caseFile.signs, index, 'sign') };
}
