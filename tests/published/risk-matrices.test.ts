/**
 * The two matrices of the trade in full: Smiley, Matheny and Lilly 2017, Tree Risk Assessment (ISA best management
 * practices, 2nd ed.). The first was read in a council's street-tree plan; the second is from memory, its set of words read.
 */
import { describe, expect, it } from 'vitest';
import {
  CONSEQUENCES,
  eventLikelihood,
  FAILURE_LIKELIHOODS,
  highestRisk,
  IMPACT_LIKELIHOODS,
  RISKS,
  riskOf,
} from '../../packages/engine/src/decision/index.ts';

describe('likelihood of failure by likelihood of impact (read)', () => {
  it.each([
    ['imminent', ['unlikely', 'somewhat likely', 'likely', 'very likely']],
    ['probable', ['unlikely', 'unlikely', 'somewhat likely', 'likely']],
    ['possible', ['unlikely', 'unlikely', 'unlikely', 'somewhat likely']],
    ['improbable', ['unlikely', 'unlikely', 'unlikely', 'unlikely']],
  ] as const)('%s', (failure, expected) => {
    expect(IMPACT_LIKELIHOODS.map((impact) => eventLikelihood(failure, impact))).toEqual(expected);
  });
});

describe('likelihood by consequences (from memory)', () => {
  it.each([
    ['very likely', ['low', 'moderate', 'high', 'extreme']],
    ['likely', ['low', 'moderate', 'high', 'high']],
    ['somewhat likely', ['low', 'low', 'moderate', 'moderate']],
    ['unlikely', ['low', 'low', 'low', 'low']],
  ] as const)('%s', (event, expected) => {
    expect(CONSEQUENCES.map((consequences) => riskOf(event, consequences))).toEqual(expected);
  });
});

describe('sense', () => {
  it('never falls as failure, impact or consequences grow worse', () => {
    for (const consequences of CONSEQUENCES) {
      for (const impact of IMPACT_LIKELIHOODS) {
        const risks = FAILURE_LIKELIHOODS.map((failure) =>
          RISKS.indexOf(riskOf(eventLikelihood(failure, impact), consequences)),
        );
        expect(risks).toEqual([...risks].sort((a, b) => a - b));
      }
    }
  });

  it('reports the highest and never an average', () => {
    expect(highestRisk(['low', 'high', 'moderate'])).toBe('high');
    expect(highestRisk([])).toBeNull();
  });
});
