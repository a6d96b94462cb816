/**
 * The trade's two matrices (ISA best management practices, Smiley, Matheny and Lilly 2017; ANSI A300 part 9):
 * likelihood of failure by likelihood of impact, and that by the consequences. Each combination is rated on its own and
 * the highest is reported; ratings are never averaged.
 */
import { likelihoodMatrix, riskMatrix } from '../reference/tables.generated.ts';
import {
  type Consequences,
  EVENT_LIKELIHOODS,
  type EventLikelihood,
  type FailureLikelihood,
  type ImpactLikelihood,
  RISKS,
  type Risk,
} from './words.ts';

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
