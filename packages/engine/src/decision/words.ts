/** The trade's words for likelihood, harm and risk, from the least to the greatest (Smiley, Matheny and Lilly 2017). */

/** Likelihood of failure within the stated time frame. */
export const FAILURE_LIKELIHOODS = ['improbable', 'possible', 'probable', 'imminent'] as const;
export type FailureLikelihood = (typeof FAILURE_LIKELIHOODS)[number];

/** Likelihood that a failure strikes the target. */
export const IMPACT_LIKELIHOODS = ['very low', 'low', 'medium', 'high'] as const;
export type ImpactLikelihood = (typeof IMPACT_LIKELIHOODS)[number];

/** Likelihood that the part fails and strikes the target. */
export const EVENT_LIKELIHOODS = ['unlikely', 'somewhat likely', 'likely', 'very likely'] as const;
export type EventLikelihood = (typeof EVENT_LIKELIHOODS)[number];

export const CONSEQUENCES = ['negligible', 'minor', 'significant', 'severe'] as const;
export type Consequences = (typeof CONSEQUENCES)[number];

export const RISKS = ['low', 'moderate', 'high', 'extreme'] as const;
export type Risk = (typeof RISKS)[number];

/** How often a target is there. */
export const OCCUPANCIES = ['rare', 'occasional', 'frequent', 'constant'] as const;
export type Occupancy = (typeof OCCUPANCIES)[number];

/** What shields a target from the tree: nothing, something, or enough that little can reach it. */
export const PROTECTIONS = ['none', 'partial', 'good'] as const;
export type Protection = (typeof PROTECTIONS)[number];

/** Where a word stands in its scale, 0 the least. */
export function stepOf<Word extends string>(scale: readonly Word[], word: Word): number {
  return scale.indexOf(word);
}

/** The word some steps up (or, negative, down) its scale, kept within it. */
export function stepped<Word extends string>(scale: readonly Word[], word: Word, steps: number): Word {
  const at = Math.min(scale.length - 1, Math.max(0, scale.indexOf(word) + steps));
  return scale[at]!;
}

/** The greater of two words of one scale. */
export function greater<Word extends string>(scale: readonly Word[], a: Word, b: Word): Word {
  return scale.indexOf(b) > scale.indexOf(a) ? b : a;
}
