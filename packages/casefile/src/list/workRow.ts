/** One row of a work list: a case and what was concluded of it, in short. */
import type {
  AdviceOption,
  Assessment,
  FailureLikelihood,
  Judged,
  Notice,
  Risk,
  TargetRisk,
} from '@standfast/engine';
import type { CaseFile } from '../schema/schema.ts';
import { monthsAfter } from './dates.ts';

export type RiskStanding = 'suggested' | 'confirmed in part' | 'confirmed' | 'overridden';

/** Meanings and units are those of `LIST_COLUMNS`. Null where there is nothing. */
export interface WorkRow {
  case: string;
  status: 'assessed' | 'not assessed';
  label: string | null;
  species: string | null;
  client: string | null;
  place: string | null;
  latitude: number | null;
  longitude: number | null;
  invented: 'yes' | null;
  visitedOn: string | null;
  risk: Risk | null;
  riskSuggested: Risk | null;
  riskStanding: RiskStanding | null;
  riskTarget: string | null;
  likelihoodOfFailure: FailureLikelihood | null;
  likelihoodSuggested: FailureLikelihood | null;
  governingMode: 'breakage' | 'uprooting' | null;
  governingDirectionDeg: number | null;
  safetyP05: number | null;
  safetyP50: number | null;
  safetyP95: number | null;
  timeFrameYears: number | null;
  chanceOfFailure: number | null;
  chanceP05: number | null;
  chanceP95: number | null;
  advice: string | null;
  adviceStanding: 'chosen' | 'suggested' | null;
  advicePriority: AdviceOption['priority'] | null;
  adviceDueOn: string | null;
  reinspectionDueOn: string | null;
  dueOn: string | null;
  seriousNotices: number | null;
  cautions: number | null;
  faults: string | null;
  contentSha256: string | null;
  engineVersion: string | null;
  seed: number | null;
  draws: number | null;
}

/** Digits kept of an estimate, as in every table of Standfast. */
const SIGNIFICANT_DIGITS = 6;
/** Faults named in a row; a list is not the place for more. */
const FAULTS_SHOWN = 5;

/** The row of a case that cannot be assessed as it is. `caseFile` null where `case.json` itself cannot be read. */
export function unassessedRow(
  name: string,
  caseFile: CaseFile | null,
  faults: readonly string[],
  contentSha256: string | null = null,
): WorkRow {
  const more = faults.length - FAULTS_SHOWN;
  const told = [...faults.slice(0, FAULTS_SHOWN), ...(more > 0 ? [`and ${more} more`] : [])];
  return {
    case: name,
    status: 'not assessed',
    label: text(caseFile?.tree.label),
    species: text(caseFile?.tree.species),
    client: text(caseFile?.client?.name),
    place: text(caseFile?.place?.name),
    ...position(caseFile),
    invented: caseFile?.invented ? 'yes' : null,
    visitedOn: caseFile?.visitedOn ?? null,
    risk: null,
    riskSuggested: null,
    riskStanding: null,
    riskTarget: null,
    likelihoodOfFailure: null,
    likelihoodSuggested: null,
    governingMode: null,
    governingDirectionDeg: null,
    safetyP05: null,
    safetyP50: null,
    safetyP95: null,
    timeFrameYears: null,
    chanceOfFailure: null,
    chanceP05: null,
    chanceP95: null,
    advice: null,
    adviceStanding: null,
    advicePriority: null,
    adviceDueOn: null,
    reinspectionDueOn: null,
    dueOn: null,
    seriousNotices: null,
    cautions: null,
    faults: told.map((fault) => fault.replace(/\s+/g, ' ').trim()).join(' | ') || null,
    contentSha256,
    engineVersion: null,
    seed: null,
    draws: null,
  };
}

/** The row of an assessed case. */
export function assessedWorkRow(
  name: string,
  caseFile: CaseFile,
  assessment: Assessment,
  contentSha256: string | null = null,
): WorkRow {
  const { decision, safety } = assessment;
  const { governing } = safety;
  const { inTimeFrame } = decision.chance;
  const target = governingTarget(assessment);
  const advice = adviceOf(assessment.advice.options, caseFile.visitedOn);
  const reinspectionDueOn = dayAfter(caseFile.visitedOn, assessment.advice.reinspection.months);
  return {
    ...unassessedRow(name, caseFile, [], contentSha256),
    status: 'assessed',
    risk: decision.overall.risk,
    riskSuggested: decision.overall.suggestedRisk,
    riskStanding: target && standingOf(target),
    riskTarget: text(decision.overall.target ?? undefined),
    likelihoodOfFailure: decision.likelihoodOfFailure.taken,
    likelihoodSuggested: decision.likelihoodOfFailure.suggested,
    governingMode: governing.mode,
    governingDirectionDeg: governing.directionDeg,
    safetyP05: number(governing.p05),
    safetyP50: number(governing.p50),
    safetyP95: number(governing.p95),
    timeFrameYears: decision.timeFrameYears,
    chanceOfFailure: number(inTimeFrame.mean),
    chanceP05: number(inTimeFrame.p05),
    chanceP95: number(inTimeFrame.p95),
    ...advice,
    reinspectionDueOn,
    dueOn: earliest([advice.adviceDueOn, reinspectionDueOn]),
    seriousNotices: count(assessment.notices, 'serious'),
    cautions: count(assessment.notices, 'caution'),
    engineVersion: assessment.engineVersion,
    seed: assessment.seed,
    draws: assessment.draws,
  };
}

/** A position that is one, or none: half a position, or one off the globe, places a tree nowhere. */
function position(caseFile: CaseFile | null): Pick<WorkRow, 'latitude' | 'longitude'> {
  const { latitude, longitude } = caseFile?.place ?? {};
  const sound =
    latitude !== undefined &&
    longitude !== undefined &&
    Math.abs(latitude) <= 90 &&
    Math.abs(longitude) <= 180;
  return sound ? { latitude, longitude } : { latitude: null, longitude: null };
}

/** The target whose risk is the highest. */
function governingTarget({ decision }: Assessment): TargetRisk | null {
  const { risk, target, part } = decision.overall;
  return (
    decision.targets.find((each) => each.risk === risk && each.target === target && each.part === part) ??
    null
  );
}

function standingOf(target: TargetRisk): RiskStanding {
  const judged: Judged<string>[] = [
    target.likelihoodOfFailure,
    target.likelihoodOfImpact,
    target.consequences,
  ];
  if (judged.some(({ standing }) => standing === 'overridden')) return 'overridden';
  const confirmed = judged.filter(({ standing }) => standing === 'confirmed').length;
  if (confirmed === judged.length) return 'confirmed';
  return confirmed > 0 ? 'confirmed in part' : 'suggested';
}

/** What was chosen, else the best of what is advised. The engine gives options best first. */
function adviceOf(
  options: readonly AdviceOption[],
  visitedOn: string | undefined,
): Pick<WorkRow, 'advice' | 'adviceStanding' | 'advicePriority' | 'adviceDueOn'> {
  const chosen = options.filter((option) => option.chosen);
  const suggested = options.filter(
    ({ chosen, priority }) => chosen !== false && (priority === 'first' || priority === 'advised'),
  );
  const taken = chosen.length > 0 ? chosen : suggested.slice(0, 1);
  if (taken.length === 0)
    return { advice: null, adviceStanding: null, advicePriority: null, adviceDueOn: null };
  const due = (option: AdviceOption) =>
    option.dueOn ?? (option.byMonths === null ? null : dayAfter(visitedOn, option.byMonths));
  return {
    advice: taken.map(({ what }) => what).join('; '),
    adviceStanding: chosen.length > 0 ? 'chosen' : 'suggested',
    advicePriority: taken[0]!.priority,
    adviceDueOn: earliest(taken.map(due)),
  };
}

function dayAfter(visitedOn: string | undefined, months: number): string | null {
  return visitedOn === undefined || !Number.isFinite(months) ? null : monthsAfter(visitedOn, months);
}

/** Days as text sort as days. */
function earliest(days: readonly (string | null)[]): string | null {
  return days.filter((day) => day !== null).sort()[0] ?? null;
}

function count(notices: readonly Notice[], severity: Notice['severity']): number {
  return notices.filter((notice) => notice.severity === severity).length;
}

function text(value: string | undefined): string | null {
  return value?.trim() || null;
}

function number(value: number): number | null {
  if (!Number.isFinite(value)) return null;
  return Number.isInteger(value) ? value : Number(value.toPrecision(SIGNIFICANT_DIGITS));
}
