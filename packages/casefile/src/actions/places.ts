/**
 * Finding what an edit is about, and putting a changed copy in its place. Edits are pure: case file in, new case file
 * out, with everything that did not change shared between the two.
 */
import { InputFault } from '@standfast/engine';
import type { CaseFile, CaseFlare, CaseSection } from '../schema/schema.ts';

/** Where a drilling is: at a section or at a flare, by its id. */
export type DrillingPlace = { sectionId: string } | { flareId: string };

/** A drilling by its place and its own id. */
export type DrillingRef = DrillingPlace & { drillingId: string };

/** A copy of an object with some fields set; a field set to undefined is taken out. */
export function withFields<T extends object>(object: T, fields: NoInfer<Partial<T>>): T {
  const copy = { ...object } as Record<string, unknown>;
  for (const [name, value] of Object.entries(fields)) {
    if (value === undefined) delete copy[name];
    else copy[name] = value;
  }
  return copy as T;
}

/** A copy of a list with one item changed. */
export function withItem<T>(list: readonly T[], index: number, change: (item: T) => T, what: string): T[] {
  if (!(index >= 0 && index < list.length))
    throw new InputFault(`there is no ${what} number ${index + 1}`, '');
  return list.map((item, i) => (i === index ? change(item) : item));
}

/** A copy of a list without one item. */
export function withoutItem<T>(list: readonly T[], index: number, what: string): T[] {
  if (!(index >= 0 && index < list.length))
    throw new InputFault(`there is no ${what} number ${index + 1}`, '');
  return list.filter((_, i) => i !== index);
}

/** Where an id stands in a list. */
export function indexOfId(list: readonly { id: string }[], id: string, what: string): number {
  const index = list.findIndex((item) => item.id === id);
  if (index < 0) throw new InputFault(`there is no ${what} called ${JSON.stringify(id)}`, '');
  return index;
}

/** Refuses a name that is blank or already in the list. */
export function refuseTaken(list: readonly { id: string }[], id: string, what: string): void {
  if (id.trim() === '') throw new InputFault(`the ${what} needs a name`, '');
  if (list.some((item) => item.id === id)) {
    throw new InputFault(`there is a ${what} called ${JSON.stringify(id)} already: choose another name`, '');
  }
}

/** The case with one section changed. */
export function changeSection(
  caseFile: CaseFile,
  sectionId: string,
  change: (section: CaseSection) => CaseSection,
): CaseFile {
  const index = indexOfId(caseFile.sections, sectionId, 'section');
  return { ...caseFile, sections: withItem(caseFile.sections, index, change, 'section') };
}

/** The case with one flare changed. */
export function changeFlare(
  caseFile: CaseFile,
  flareId: string,
  change: (flare: CaseFlare) => CaseFlare,
): CaseFile {
  const index = indexOfId(caseFile.flares, flareId, 'flare');
  return { ...caseFile, flares: withItem(caseFile.flares, index, change, 'flare') };
}
