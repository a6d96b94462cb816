/** Edits of what the tree could strike. Targets are known by their place in the list. */
import type { CaseFile, CaseTarget } from '../schema/schema.ts';
import { withFields, withItem, withoutItem } from './places.ts';

export function addTarget(caseFile: CaseFile, target: CaseTarget): CaseFile {
  return { ...caseFile, targets: [...caseFile.targets, target] };
}

export function setTargetFields(caseFile: CaseFile, index: number, fields: Partial<CaseTarget>): CaseFile {
  return {
    ...caseFile,
    targets: withItem(caseFile.targets, index, (target) => withFields(target, fields), 'target'),
  };
}

export function removeTarget(caseFile: CaseFile, index: number): CaseFile {
  return { ...caseFile, targets: withoutItem(caseFile.targets, index, 'target') };
}
