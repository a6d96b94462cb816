export { type Decided, type DecideInput, decide, rerated } from './decide.ts';
export { fungusNotices } from './fungi.ts';
export { type SuggestedLikelihood, suggestLikelihood } from './likelihood.ts';
export { eventLikelihood, highestRisk, riskOf } from './risk.ts';
export { safety } from './safety.ts';
export type { SafetyInput, SafetyResult, SectionStrength } from './types.ts';
export {
  CONSEQUENCES,
  type Consequences,
  EVENT_LIKELIHOODS,
  type EventLikelihood,
  FAILURE_LIKELIHOODS,
  type FailureLikelihood,
  IMPACT_LIKELIHOODS,
  type ImpactLikelihood,
  OCCUPANCIES,
  type Occupancy,
  PROTECTIONS,
  type Protection,
  RISKS,
  type Risk,
} from './words.ts';
