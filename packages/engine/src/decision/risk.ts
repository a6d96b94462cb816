/**
 * The trade's two matrices (ISA best management practices, Smiley, Matheny and Lilly 2017; ANSI A300 part 9):
 * likelihood of failure by likelihood of impact, and that by the consequences. Each combination is rated on its own and
 * the highest is reported; ratings are never averaged.
 */
import { likelihoodMatrix, riskMatrix } from '../reference/tables.generated.ts';

export const FAILURE_LIKELIHOODS = ['improbable', 'possible', 'probable', 'imminent'] as const;
export type FailureLikelihood = (typeof FAILURE_LIKELIHOODS)[number];

export const IMPACT_LIKELIHOODS = ['very low', 'low', 'medium', 'high'] as const;
export type ImpactLikelihood = (typeof IMPACT_LIKELIHOODS)[number];

export const EVENT_LIKELIHOODS = ['unlikely', 'somewhat likely', 'likely', 'very likely'] as const;
export type EventLikelihood = (typeof EVENT_LIKELIHOODS)[number];

export const CONSEQUENCES = ['negligible', 'minor', 'significant', 'severe'] as const;
export type Consequences = (typeof CONSEQUENCES)[number];

export const RISKS = ['low', 'moderate', 'high', 'extreme'] as const;
export type Risk = (typeof RISKS)[number];

function oneOf<T extends string>(words: readonly T[], word: string, table: string): T {
  const found = words.find((each) => each === word);
  if (!found) throw new Error(`${table}: "${word}" is none of ${words.join(', ')}`);
  return found;
}

/** Likelihood that the part fails and strikes the target. */
export function eventLikelihood(failure: FailureLikelihood, impact: ImpactLikelihood): EventLikelihood {
  const row = likelihoodMatrix.find((each) => each.failure === failure && each.impact === impact);
  return oneOf(EVENT_LIKELIHOODS, row?.result ?? '', 'likelihood-matrix.csv');
}

/** Risk of one combination of part and target. */
export function riskOf(event: EventLikelihood, consequences: Consequences): Risk {
  const row = riskMatrix.find((each) => each.likelihood === event && each.consequences === consequences);
  return oneOf(RISKS, row?.result ?? '', 'risk-matrix.csv');
}

/** The highest of several risks, which is the tree's; null for none. */
export function highestRisk(risks: readonly Risk[]): Risk | null {
  return risks.reduce<Risk | null>(
    (highest, risk) => (highest === null || RISKS.indexOf(risk) > RISKS.indexOf(highest) ? risk : highest),
    null,
  );
}
