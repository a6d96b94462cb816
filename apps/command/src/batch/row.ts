/** The columns of a batch's table: one case a row. docs/guide/batch.md says what each holds. */
import type { CaseFile } from '@standfast/casefile';
import type { Assessment, Notice } from '@standfast/engine';
import { rounded } from '../json.ts';

export const COLUMNS = [
  'case',
  'status',
  'label',
  'species',
  'visitedOn',
  'stemDiameterMm',
  'heightM',
  'sections',
  'drillings',
  'governingMode',
  'governingSection',
  'governingDirectionDeg',
  'safetyP05',
  'safetyP50',
  'safetyP95',
  'chanceBelow1',
  'chanceBelow1_5',
  'breakageLeastP50',
  'uprootingLeastP50',
  'remainingLeastP05',
  'remainingLeastP50',
  'remainingLeastP95',
  'momentNm',
  'gustMs',
  'nextDrillingSection',
  'nextDrillingAzimuthDeg',
  'nextDrillingWorth',
  'seriousNotices',
  'cautions',
  'message',
  'contentSha256',
  'engineVersion',
  'seed',
  'draws',
] as const;

export type Column = (typeof COLUMNS)[number];
export type Row = Record<Column, string | number | null>;

const EMPTY = Object.fromEntries(COLUMNS.map((column) => [column, null])) as Row;

/** The row of a case that was assessed. */
export function assessedRow(
  name: string,
  contentSha256: string,
  caseFile: CaseFile,
  assessment: Assessment,
): Row {
  const { safety, sections, flares, wind, nextDrilling, notices } = assessment;
  const { governing } = safety;
  const remaining = sections.flatMap((section) => section.remaining);
  const weakest = remaining.length ? remaining.reduce((a, b) => (b.p50 < a.p50 ? b : a)) : null;
  const least = (rows: { p50: number }[]) =>
    rows.length ? number(Math.min(...rows.map(({ p50 }) => p50))) : null;
  const counted = (severity: Notice['severity']) =>
    notices.filter((notice) => notice.severity === severity).length;
  return {
    ...EMPTY,
    case: name,
    status: 'assessed',
    label: caseFile.tree.label ?? null,
    species: caseFile.tree.species ?? null,
    visitedOn: caseFile.visitedOn ?? null,
    stemDiameterMm: caseFile.tree.stemDiameterMm ?? null,
    heightM: caseFile.tree.heightM ?? null,
    sections: sections.length,
    drillings: [...sections, ...flares].reduce((sum, { drillings }) => sum + drillings.length, 0),
    governingMode: governing.mode,
    governingSection: governing.sectionId,
    governingDirectionDeg: governing.directionDeg,
    safetyP05: number(governing.p05),
    safetyP50: number(governing.p50),
    safetyP95: number(governing.p95),
    chanceBelow1: number(safety.chanceBelow1),
    chanceBelow1_5: number(safety.chanceBelow1_5),
    breakageLeastP50: least(safety.breakage),
    uprootingLeastP50: least(safety.uprooting),
    remainingLeastP05: weakest && number(weakest.p05),
    remainingLeastP50: weakest && number(weakest.p50),
    remainingLeastP95: weakest && number(weakest.p95),
    momentNm: number(wind.momentNm),
    gustMs: number(wind.gustMs),
    nextDrillingSection: nextDrilling.stop ? 'stop' : nextDrilling.sectionId,
    nextDrillingAzimuthDeg: nextDrilling.stop ? null : nextDrilling.azimuthDeg,
    nextDrillingWorth: nextDrilling.stop ? null : number(nextDrilling.worth),
    seriousNotices: counted('serious'),
    cautions: counted('caution'),
    contentSha256,
    engineVersion: assessment.engineVersion,
    seed: assessment.seed,
    draws: assessment.draws,
  };
}

/** The row of a case that could not be assessed, with the reason. */
export function failedRow(name: string, contentSha256: string | null, message: string): Row {
  return { ...EMPTY, case: name, status: 'failed', message, contentSha256 };
}

const number = (value: number) => (Number.isFinite(value) ? rounded(value) : null);
