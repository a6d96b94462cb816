/** A return visit: a new case that holds the one before it and lists what is to be done again. */
import { CASE_JSON, type CaseBag, type ReadonlyCaseBag } from '../bag/bag.ts';
import { EARLIER_FOLDER, withBagBelow } from '../bag/earlierBag.ts';
import { caseText, saveCase } from '../saveCase.ts';
import type { CaseDrilling, CaseFile } from '../schema/schema.ts';

/** Drillings to repeat: where and how, without the trace, photo and note of the first time. */
function toRepeat(drillings: readonly CaseDrilling[]): CaseDrilling[] {
  return drillings.map(({ trace: _trace, photo: _photo, note: _note, ...pose }) => pose);
}

/**
 * The next visit's case and its bag. Kept: tree, site, sections and flares with their drillings to repeat, signs and
 * targets (to be looked at again), root cuts and room, letterhead. Not kept: what belongs to the day (weather, traces,
 * photos, notes, decision, advice chosen, load tests, what was struck from the report or added to it) and the felled section.
 *
 * @param visitedOn day of the new visit, `2026-05-14`
 */
export function nextVisit(
  caseFile: CaseFile,
  bag: ReadonlyCaseBag,
  visitedOn: string,
): { caseFile: CaseFile; bag: CaseBag } {
  const folder = `${EARLIER_FOLDER}${caseFile.visitedOn ?? 'first'}`;
  const {
    weather: _weather,
    staticTests: _tests,
    decision: _decision,
    advice: _advice,
    notes: _notes,
    report,
    earlier: _earlier,
    ...kept
  } = caseFile;
  const next: CaseFile = {
    ...kept,
    visitedOn,
    earlier: folder,
    sections: caseFile.sections.map(({ felled: _felled, ...section }) => ({
      ...section,
      drillings: toRepeat(section.drillings),
    })),
    flares: caseFile.flares.map((flare) => ({ ...flare, drillings: toRepeat(flare.drillings) })),
    signs: caseFile.signs.map(({ photo: _photo, ...sign }) => sign),
    ...(report ? { report: lasting(report) } : {}),
  };
  const inner = saveCase(caseFile, bag);
  const own: CaseBag = new Map([[CASE_JSON, new TextEncoder().encode(caseText(next))]]);
  const logo = report?.letterhead?.logo;
  const logoBytes = logo === undefined ? undefined : bag.get(logo);
  if (logo !== undefined && logoBytes) own.set(logo, logoBytes);
  return { caseFile: next, bag: withBagBelow(own, folder, inner) };
}

/** What of the report's manner holds for the next one too. */
function lasting({
  signature: _signature,
  struck: _struck,
  added: _added,
  reduced: _reduced,
  ...rest
}: NonNullable<CaseFile['report']>): NonNullable<CaseFile['report']> {
  return rest;
}
