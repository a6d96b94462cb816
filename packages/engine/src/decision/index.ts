export { fungusNotices } from './fungi.ts';
export { type SuggestedLikelihood, suggestLikelihood } from './likelihood.ts';
export {
  CONSEQUENCES,
  type Consequences,
  EVENT_LIKELIHOODS,
  type EventLikelihood,
  eventLikelihood,
  FAILURE_LIKELIHOODS,
  type FailureLikelihood,
  highestRisk,
  IMPACT_LIKELIHOODS,
  type ImpactLikelihood,
  RISKS,
  type Risk,
  riskOf,
} from './risk.ts';
export { safety } from './safety.ts';
export type { SafetyInput, SafetyResult, SectionStrength } from './types.ts';
