/**
 * From safety, critical gust and chance of failure to a suggested likelihood of failure, in the trade's words.
 *
 * No published rule leads from a computed safety to these words. The bridge is a proposal of this project, always shown as
 * a suggestion for the assessor to confirm or override with a reason:
 * - imminent: failure has begun (open crack, heaving soil, fresh lean), or the tree is over its capacity in calm air;
 * - probable: the middle estimate of the critical gust lies below the gust that comes once a year, or failure within the
 *   time frame is as likely as not;
 * - improbable: the critical gust at its lower 5 % point lies above the 50-year gust, the governing safety reaches the
 *   usual mark at its lower 5 % point, the chance within the time frame is at most 1 %, the evidence on the anchorage is
 *   not too thin, and no sign speaks against it;
 * - possible: anything between.
 */
import type { SafetyAssessment, SignReading } from '../assessment.ts';
import type { SiteInput } from '../case.ts';
import { constant } from '../reference/index.ts';
import { gustOfReturnPeriod } from '../wind/returnPeriod.ts';
import { chanceInWords } from './chance.ts';
import type { FailureLikelihood } from './words.ts';
import { FAILURE_LIKELIHOODS, stepOf } from './words.ts';

export interface SuggestedLikelihood {
  rating: FailureLikelihood;
  /** Why, one sentence each, with the numbers. */
  reasons: string[];
  /** Said wherever the rating is shown. */
  standing: string;
  yearlyGustMs: number;
  fiftyYearGustMs: number;
}

const STANDING =
  'Suggested from the computed safety by a rule of this project that has no published authority; the assessor confirms it or overrides it with a reason.';

/** What the suggestion is drawn from. */
export interface LikelihoodEvidence {
  safety: Pick<SafetyAssessment, 'criticalGustMs' | 'anchorageTooThin'> & { governing: { p05: number } };
  site: SiteInput;
  /** The signs as read; those of limbs do not count for the whole tree. */
  signs: readonly SignReading[];
  /** Mean chance of failure within the time frame, gusts from the worst side. */
  chance: number;
  timeFrameYears: number;
}

/** The likelihood of failure that safety, site and signs suggest. */
export function suggestLikelihood({
  safety,
  site,
  signs,
  chance,
  timeFrameYears,
}: LikelihoodEvidence): SuggestedLikelihood {
  const yearlyGustMs = gustOfReturnPeriod(site, 1);
  const fiftyYearGustMs = gustOfReturnPeriod(site, 50);
  const { breakage, uprooting } = safety.criticalGustMs;
  const weaker = uprooting.p50 < breakage.p50 ? uprooting : breakage;
  const lower = Math.min(breakage.p05, uprooting.p05);
  const mark = constant('usual mark').value;
  const speed = (value: number) => `${value.toFixed(0)} m/s`;
  const suggest = (rating: FailureLikelihood, reasons: string[]): SuggestedLikelihood => ({
    rating,
    reasons,
    standing: STANDING,
    yearlyGustMs,
    fiftyYearGustMs,
  });
  const ofTree = signs.filter((reading) => reading.bearsOn !== 'limb');
  const floored = (word: FailureLikelihood) => [
    ...new Set(
      ofTree
        .filter(
          ({ floor }) =>
            floor !== null && stepOf(FAILURE_LIKELIHOODS, floor) >= stepOf(FAILURE_LIKELIHOODS, word),
        )
        .map(({ sign }) => sign),
    ),
  ];
  const frame = `${timeFrameYears} year${timeFrameYears === 1 ? '' : 's'}`;
  const begun = floored('imminent');
  if (begun.length > 0) return suggest('imminent', [`Recorded: ${begun.join('; ')}.`]);
  if (weaker.p50 <= 0)
    return suggest('imminent', ['The tree is over its capacity in calm air (middle estimate).']);
  if (weaker.p50 < yearlyGustMs) {
    return suggest('probable', [
      `The middle estimate of the critical gust, ${speed(weaker.p50)}, lies below the gust of every year, ${speed(yearlyGustMs)}.`,
    ]);
  }
  if (chance >= constant('chance probable').value) {
    return suggest('probable', [
      `The chance of failure within ${frame} is ${chanceInWords(chance)}: as likely as not.`,
    ]);
  }
  const seen = floored('probable');
  if (seen.length > 0) return suggest('probable', [`Recorded: ${seen.join('; ')}.`]);
  const against: string[] = [];
  if (lower <= fiftyYearGustMs) {
    against.push(
      `The critical gust at its lower 5 % point, ${speed(lower)}, does not lie above the 50-year gust, ${speed(fiftyYearGustMs)}.`,
    );
  }
  if (safety.governing.p05 < mark) {
    against.push(
      `The governing safety at its lower 5 % point is ${safety.governing.p05.toFixed(2)}, below the usual mark of ${mark}.`,
    );
  }
  if (chance > constant('chance improbable').value) {
    against.push(
      `The chance of failure within ${frame} is ${chanceInWords(chance)}, more than 1 in ${Math.round(1 / constant('chance improbable').value)}.`,
    );
  }
  if (safety.anchorageTooThin) against.push('The evidence on the anchorage is too thin to decide on.');
  const doubted = floored('possible');
  if (doubted.length > 0) against.push(`Recorded: ${doubted.join('; ')}.`);
  if (against.length > 0) return suggest('possible', against);
  return suggest('improbable', [
    `The critical gust at its lower 5 % point, ${speed(lower)}, lies above the 50-year gust, ${speed(fiftyYearGustMs)}, and the governing safety reaches ${mark} with confidence.`,
  ]);
}
