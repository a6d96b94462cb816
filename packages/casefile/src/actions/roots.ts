/** Edits of cuts, barriers and static load tests: each a list known by its place, taken out when it is empty. */
import type { CaseFile, CaseRootBarrier, CaseRootCut, CaseStaticTest } from '../schema/schema.ts';
import { withFields, withItem, withoutItem } from './places.ts';

interface RootLists {
  rootCuts: CaseRootCut;
  rootSpace: CaseRootBarrier;
  staticTests: CaseStaticTest;
}

const NAMES: Record<keyof RootLists, string> = {
  rootCuts: 'root cut',
  rootSpace: 'barrier',
  staticTests: 'static load test',
};

function listOf<L extends keyof RootLists>(caseFile: CaseFile, list: L): readonly RootLists[L][] {
  const lists: { readonly [K in keyof RootLists]?: readonly RootLists[K][] } = caseFile;
  return lists[list] ?? [];
}

function withList<L extends keyof RootLists>(caseFile: CaseFile, list: L, items: RootLists[L][]): CaseFile {
  return withFields(caseFile, { [list]: items.length > 0 ? items : undefined } as Partial<CaseFile>);
}

export function addToRoots<L extends keyof RootLists>(
  caseFile: CaseFile,
  list: L,
  item: RootLists[L],
): CaseFile {
  return withList(caseFile, list, [...listOf(caseFile, list), item]);
}

export function setRootFields<L extends keyof RootLists>(
  caseFile: CaseFile,
  list: L,
  index: number,
  fields: Partial<RootLists[L]>,
): CaseFile {
  const change = (item: RootLists[L]) => withFields(item, fields as NoInfer<Partial<RootLists[L]>>);
  return withList(caseFile, list, withItem(listOf(caseFile, list), index, change, NAMES[list]));
}

export function removeFromRoots(caseFile: CaseFile, list: keyof RootLists, index: number): CaseFile {
  return withList(caseFile, list, withoutItem(listOf(caseFile, list), index, NAMES[list]));
}
