/** What changed, in plain words. */
import type { SafetyGoverning } from '../assessment.ts';
import type { Interval } from '../trace/types.ts';
import type { ChangeAssessment, Crossing, DrillingChange } from './types.ts';

const mm = ({ p05, p50, p95 }: Interval) => `${p50.toFixed(0)} mm (${p05.toFixed(0)} to ${p95.toFixed(0)})`;
const hundredths = ({ p05, p50, p95 }: Interval) =>
  `${p50.toFixed(2)} (${p05.toFixed(2)} to ${p95.toFixed(2)})`;
const list = (ids: readonly string[]) =>
  ids.length < 2 ? ids.join('') : `${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}`;

/** One sentence on a drilling and its repeat. */
export function sentenceOf(change: DrillingChange, years: number | null): string {
  const grown = `Growth at the cambium ${mm(change.growthMm)}.`;
  const rests =
    change.alignment.restsOn === 'ring pattern'
      ? ''
      : ' The rings of the two traces do not answer to each other, so depths are compared from the bark inward and the error is wide.';
  if (change.front === 'neither') return `Neither needle met decay. ${grown}${rests}`;
  if (change.front === 'only then') {
    return `The earlier needle met a decay front and this one did not: nothing can be told of its movement. ${grown}${rests}`;
  }
  if (change.front === 'only now') {
    return change.verdict === 'moved'
      ? `Decay was met where the earlier needle passed sound wood: the front has come at least ${Math.max(0, change.frontAtLeastMm ?? 0).toFixed(0)} mm nearer to the bark. ${grown}${rests}`
      : `Decay was met about where the earlier needle ended: whether the front moved cannot be told. ${grown}${rests}`;
  }
  const front = change.frontMm!;
  const speed =
    change.verdict === 'moved' && years !== null ? `, about ${(front.p50 / years).toFixed(1)} mm a year` : '';
  const said = {
    moved: `The decay front has moved ${mm(front)} towards the bark${speed}.`,
    'not moved': `The decay front has not moved within error: ${mm(front)} towards the bark.`,
    'cannot tell': `Whether the decay front moved cannot be told: ${mm(front)} towards the bark.`,
    'no front': '',
  }[change.verdict];
  return `${said} ${grown}${rests}`;
}

/** What the forecast takes for granted. */
export function forecastBasis(mode: SafetyGoverning['mode']): string[] {
  return [
    'Each drawn version of the section is aged: decay spreads from what is unsound at the measured speed near a drilling and as such fronts usually do elsewhere; new wood is laid on outside where the wood below the bark is sound.',
    'The speed rests on two visits and on what is known of such fronts; a front can stand for years and then break through a barrier.',
    'The crown and the site stay as they are now. A crown that grows, or a neighbour that is gone, brings the date nearer.',
    mode === 'uprooting'
      ? 'It is of the stem breaking. What governs this tree now is uprooting, which cannot be forecast from the section: look at the roots at each visit.'
      : 'It is of the stem breaking; the anchorage is not forecast.',
  ];
}

/** A crossing in words. */
export function crossingWords(crossing: Crossing, years: number): string {
  const { limit, earlyYears, middleYears, lateYears, chanceNow, chanceAtEnd } = crossing;
  const mark = limit.toFixed(1);
  if (chanceNow >= 0.95) return `The safety of the stem is below ${mark} already.`;
  if (earlyYears === null) {
    return `The safety of the stem is not expected to pass below ${mark} within ${years} years (chance ${percent(chanceAtEnd)}).`;
  }
  const year = (value: number | null) =>
    value === null
      ? `not within ${years} years`
      : value === 0
        ? 'now already'
        : `in ${value.toFixed(0)} years`;
  const between = `early estimate ${year(earlyYears)}, late estimate ${year(lateYears)}`;
  return middleYears === null
    ? `The safety of the stem more likely than not stays above ${mark} for ${years} years (${between}; chance of passing below it within ${years} years ${percent(chanceAtEnd)}).`
    : `The safety of the stem passes below ${mark} ${middleYears === 0 ? 'by its middle estimate already now' : `in about ${middleYears.toFixed(0)} years by its middle estimate`} (${between}).`;
}

const percent = (share: number) => (share < 0.01 ? 'below 1 %' : `${Math.round(100 * share)} %`);

/** What changed since the earlier visit, most important first. */
export function summaryOf(change: ChangeAssessment): string[] {
  const out: string[] = [];
  const of = (verdict: DrillingChange['verdict']) =>
    change.drillings.filter((drilling) => drilling.verdict === verdict).map(({ laterId }) => laterId);
  const moved = of('moved');
  const still = of('not moved');
  const unclear = of('cannot tell');
  const none = of('no front');
  if (moved.length > 0) out.push(`Decay has moved towards the bark at ${list(moved)}.`);
  if (still.length > 0)
    out.push(`Decay has not moved, within the error of a repeat drilling, at ${list(still)}.`);
  if (unclear.length > 0) out.push(`Whether decay has moved cannot be told at ${list(unclear)}.`);
  if (none.length > 0) out.push(`No decay was met on either visit at ${list(none)}.`);
  const { breakage, breakageWithLoadHeld } = change.safety;
  out.push(
    `Safety against breaking, in the direction that is now worst: ${hundredths(breakage.before)} then, ${hundredths(breakage.now)} now, a difference of ${hundredths(breakage.difference)}.`,
  );
  if (breakageWithLoadHeld) {
    out.push(
      `Part of that is of what was recorded otherwise (crown, site or measures of the tree): with those held as they were, the difference is ${hundredths(breakageWithLoadHeld.difference)}.`,
    );
  }
  if (change.forecast) {
    for (const crossing of change.forecast.crossings)
      out.push(crossingWords(crossing, change.forecast.years));
  }
  const signs = change.recorded.filter(({ kind }) => kind === 'sign');
  const come = signs.filter(({ before }) => before === null).map(({ what }) => what);
  const gone = signs.filter(({ now }) => now === null).map(({ what }) => what);
  if (come.length > 0) out.push(`Signs not recorded before: ${come.join('; ')}.`);
  if (gone.length > 0) out.push(`Signs no longer recorded: ${gone.join('; ')}.`);
  return out;
}
