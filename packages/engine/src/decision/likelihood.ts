/**
 * From safety and critical gust to a suggested likelihood of failure, in the trade's words.
 *
 * No published rule leads from a computed safety to these words. The bridge is a proposal of this project, always shown as
 * a suggestion for the assessor to confirm or override with a reason:
 * - imminent: failure has begun (open crack, heaving soil, fresh lean), or the tree is over its capacity in calm air;
 * - probable: the middle estimate of the critical gust lies below the gust that comes once a year;
 * - improbable: the critical gust at its lower 5 % point lies above the 50-year gust, the governing safety reaches the
 *   usual mark at its lower 5 % point, and the evidence on the anchorage is not too thin;
 * - possible: anything between.
 */
import type { SafetyAssessment } from '../assessment.ts';
import type { SignInput, SiteInput } from '../case.ts';
import { constant } from '../reference/index.ts';
import { failureSigns, rootSigns } from '../reference/tables.generated.ts';
import { gustOfReturnPeriod } from '../wind/returnPeriod.ts';
import type { FailureLikelihood } from './risk.ts';

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

/** Signs by which failure is taken to have begun. */
function signsOfFailure(signs: readonly SignInput[]): string[] {
  const rules = [...failureSigns, ...rootSigns.filter((rule) => rule.severity === 'serious')];
  return signs
    .filter((sign) =>
      rules.some((rule) =>
        new RegExp(rule.pattern, 'i').test(`${sign.kind.replaceAll('-', ' ')} ${sign.note ?? ''}`),
      ),
    )
    .map((sign) => (sign.where ? `${sign.kind} (${sign.where})` : sign.kind));
}

/** The likelihood of failure that safety, site and signs suggest. */
export function suggestLikelihood(
  safety: SafetyAssessment,
  site: SiteInput,
  signs: readonly SignInput[],
): SuggestedLikelihood {
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
  const begun = signsOfFailure(signs);
  if (begun.length > 0) return suggest('imminent', [`Recorded: ${begun.join('; ')}.`]);
  if (weaker.p50 <= 0)
    return suggest('imminent', ['The tree is over its capacity in calm air (middle estimate).']);
  if (weaker.p50 < yearlyGustMs) {
    return suggest('probable', [
      `The middle estimate of the critical gust, ${speed(weaker.p50)}, lies below the gust of every year, ${speed(yearlyGustMs)}.`,
    ]);
  }
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
  if (safety.anchorageTooThin) against.push('The evidence on the anchorage is too thin to decide on.');
  if (against.length > 0) return suggest('possible', against);
  return suggest('improbable', [
    `The critical gust at its lower 5 % point, ${speed(lower)}, lies above the 50-year gust, ${speed(fiftyYearGustMs)}, and the governing safety reaches ${mark} with confidence.`,
  ]);
}
