import { describe, expect, it } from 'vitest';
import { setAdviceChoice, setDecisionFields, setTargetJudgement } from './decision.ts';
import { newCase } from './newCase.ts';
import { addToRoots, removeFromRoots, setRootFields } from './roots.ts';

describe('edits of decision and advice', () => {
  it('sets a judgement, changes it, and leaves nothing behind when it is taken out', () => {
    const start = newCase();
    const judged = setTargetJudgement(start, 'path', undefined, {
      consequences: { value: 'minor', reason: 'fenced' },
    });
    expect(judged.decision?.byTarget).toEqual([
      { target: 'path', consequences: { value: 'minor', reason: 'fenced' } },
    ]);
    const limb = setTargetJudgement(judged, 'path', 'limb', { likelihoodOfImpact: { value: 'low' } });
    expect(limb.decision?.byTarget).toHaveLength(2);
    const less = setTargetJudgement(limb, 'path', 'limb', { likelihoodOfImpact: undefined });
    expect(less).toEqual(judged);
    expect(setTargetJudgement(less, 'path', undefined, { consequences: undefined })).toEqual(start);
  });

  it("sets and clears the whole tree's word and an option's cost", () => {
    const start = newCase();
    const set = setDecisionFields(start, { likelihoodOfFailure: { value: 'possible' }, by: 'A' });
    expect(set.decision).toEqual({ likelihoodOfFailure: { value: 'possible' }, by: 'A' });
    expect(setDecisionFields(set, { likelihoodOfFailure: undefined, by: undefined })).toEqual(start);
    const priced = setAdviceChoice(start, 'remove', { cost: '800', chosen: false });
    expect(priced.advice).toEqual([{ option: 'remove', cost: '800', chosen: false }]);
    expect(setAdviceChoice(priced, 'remove', { cost: undefined, chosen: undefined })).toEqual(start);
  });
});

describe('edits of roots', () => {
  it('adds, changes and removes, and takes an empty list out', () => {
    const start = newCase();
    const cut = addToRoots(start, 'rootCuts', { azimuthDeg: 90, distanceM: 1 });
    expect(setRootFields(cut, 'rootCuts', 0, { depthM: 0.4 }).rootCuts).toEqual([
      { azimuthDeg: 90, distanceM: 1, depthM: 0.4 },
    ]);
    expect(removeFromRoots(cut, 'rootCuts', 0)).toEqual(start);
    expect(() => removeFromRoots(start, 'staticTests', 0)).toThrow('static load test');
  });
});
