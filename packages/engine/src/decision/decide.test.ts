import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessedTree, testedAllRound } from '../advice/testTree.ts';
import { InputFault } from '../faults.ts';
import { rerated } from './decide.ts';
import { eventLikelihood, riskOf } from './risk.ts';
import { CONSEQUENCES, FAILURE_LIKELIHOODS, IMPACT_LIKELIHOODS, RISKS, stepOf } from './words.ts';

const SOUND = { tree: { stemDiameterMm: 1200 }, staticTests: testedAllRound(1e6) };
const TARGETS = [
  { what: 'meadow', occupancy: 'rare', distanceM: 10 },
  { what: 'playground', occupancy: 'constant', distanceM: 4 },
];

describe('decide', () => {
  it('calls a sound, tested tree improbable and its risk low', () => {
    const { decision } = assessedTree(SOUND);
    expect(decision.likelihoodOfFailure).toMatchObject({ taken: 'improbable', standing: 'suggested' });
    expect(decision.overall.risk).toBe('low');
    expect(decision.chance.inTimeFrame.mean).toBeLessThan(0.01);
    expect(decision.reasons.join(' ')).toContain('has not confirmed it yet');
  });

  it('reports the highest risk of the targets, by the matrices', () => {
    const { decision } = assessedTree({ targets: TARGETS });
    const risks = decision.targets.map(({ risk }) => stepOf(RISKS, risk));
    expect(stepOf(RISKS, decision.overall.risk!)).toBe(Math.max(...risks));
    expect(decision.overall.target).toBe('playground');
    for (const row of decision.targets) {
      expect(row.event).toBe(eventLikelihood(row.likelihoodOfFailure.taken, row.likelihoodOfImpact.taken));
      expect(row.risk).toBe(riskOf(row.event, row.consequences.taken));
    }
  });

  it('rates no risk without a target, and says so', () => {
    const { decision, decided } = assessedTree({ targets: [] });
    expect(decision.overall).toEqual({ risk: null, suggestedRisk: null, target: null, part: null });
    expect(decided.notices.some(({ where }) => where === 'targets')).toBe(true);
  });

  it('states its time frame: 5 years unless another is given', () => {
    expect(assessedTree().decision.timeFrameYears).toBe(5);
    const year = assessedTree({ timeFrameYears: 1 }).decision;
    expect(year.timeFrameYears).toBe(1);
    expect(year.chance.inTimeFrame).toEqual(year.chance.perYear);
    expect(() => assessedTree({ timeFrameYears: 0 })).toThrow(InputFault);
  });

  it('keeps suggestion and override side by side, whatever the words', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FAILURE_LIKELIHOODS),
        fc.constantFrom(...IMPACT_LIKELIHOODS),
        fc.constantFrom(...CONSEQUENCES),
        fc.string({ minLength: 1 }).filter((text) => text.trim() !== ''),
        (failure, impact, harm, reason) => {
          const { decision } = assessedTree({
            draws: 200,
            targets: TARGETS,
            decision: {
              likelihoodOfFailure: { value: failure, reason },
              byTarget: [
                {
                  target: 'playground',
                  likelihoodOfImpact: { value: impact, reason },
                  consequences: { value: harm, reason },
                },
              ],
            },
          });
          const plain = assessedTree({ draws: 200, targets: TARGETS }).decision;
          const row = decision.targets.find(({ target }) => target === 'playground')!;
          const before = plain.targets.find(({ target }) => target === 'playground')!;
          expect(decision.likelihoodOfFailure).toMatchObject({
            suggested: plain.likelihoodOfFailure.suggested,
            assessor: failure,
            taken: failure,
            reason: reason.trim(),
          });
          expect(row.likelihoodOfImpact).toMatchObject({
            suggested: before.likelihoodOfImpact.suggested,
            taken: impact,
          });
          expect(row.consequences).toMatchObject({ suggested: before.consequences.suggested, taken: harm });
          expect(row.risk).toBe(riskOf(eventLikelihood(failure, impact), harm));
          expect(row.suggestedRisk).toBe(before.risk);
        },
      ),
      { numRuns: 20 },
    );
  });

  it('lets an override without a reason not count, and says so', () => {
    const { decision, decided } = assessedTree({
      decision: { likelihoodOfFailure: { value: 'improbable' } },
    });
    expect(decision.likelihoodOfFailure).toMatchObject({
      suggested: 'possible',
      assessor: 'improbable',
      taken: 'possible',
      standing: 'override refused',
    });
    expect(decided.notices).toContainEqual(
      expect.objectContaining({ severity: 'serious', where: 'decision.likelihoodOfFailure' }),
    );
    const confirmed = assessedTree({ decision: { likelihoodOfFailure: { value: 'possible' } } });
    expect(confirmed.decision.likelihoodOfFailure.standing).toBe('confirmed');
  });

  it('tells of a judgement on a target that is not there, and of occupancies not stated', () => {
    const { decided } = assessedTree({
      targets: [{ what: 'path', occupancy: 'busy' }],
      decision: { byTarget: [{ target: 'house' }] },
    });
    expect(decided.notices.map(({ where }) => where).sort()).toEqual([
      'decision.byTarget[0]',
      'targets[0].occupancy',
    ]);
    expect(() =>
      assessedTree({ decision: { likelihoodOfFailure: { value: 'certain' as 'probable', reason: 'x' } } }),
    ).toThrow(InputFault);
  });

  it('rates limbs on their own, only where a weak one was seen or the target asks for it', () => {
    const dead = assessedTree({ ...SOUND, signs: [{ kind: 'dead limb' }] }).decision;
    expect(dead.targets.map(({ part }) => part).sort()).toEqual(['limb', 'whole tree']);
    expect(dead.likelihoodOfFailure.taken).toBe('improbable');
    expect(dead.targets.find(({ part }) => part === 'limb')!.likelihoodOfFailure.taken).toBe('probable');
    const asked = assessedTree({ targets: [{ what: 'path', occupancy: 'rare', partOfTree: 'limb' }] });
    expect(asked.decision.targets.map(({ part }) => part)).toEqual(['limb']);
  });

  it('falls by the same steps from the assessor’s word when the advice is re-rated', () => {
    const { decision } = assessedTree({
      targets: [{ what: 'playground', occupancy: 'constant', distanceM: 4 }],
      decision: { likelihoodOfFailure: { value: 'probable', reason: 'seen to move' } },
    });
    expect(decision.overall.risk).toBe('high');
    expect(rerated(decision, {})).toBe('high');
    // The suggestion falls from possible to improbable: the assessor's probable falls to possible.
    expect(rerated(decision, { wholeTree: 'improbable' })).toBe('moderate');
    expect(rerated(decision, { treeGone: true })).toBe('low');
  });
});
