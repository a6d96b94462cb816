import { describe, expect, it } from 'vitest';
import type { NextDrilling } from '../assessment.ts';
import { RISKS, stepOf } from '../decision/words.ts';
import { randomFrom } from '../random.ts';
import { advise } from './advise.ts';
import { assessedTree, type TestTree, testedAllRound } from './testTree.ts';

const STOP: NextDrilling = { stop: true, why: 'No further hole is worth its wound.' };

function advised(given: TestTree = {}, nextDrilling: NextDrilling = STOP) {
  const { input, decided, result, demand, decision } = assessedTree(given);
  const { assessment, notices } = advise(
    { input, decided, safety: result, demand, sections: [], nextDrilling },
    randomFrom(3),
  );
  const option = (id: string) => assessment.options.find((each) => each.id === id)!;
  return { assessment, option, notices, decision };
}

describe('advise', () => {
  it('advises to keep a tree whose risk is low, and to leave its crown alone', () => {
    const { option, decision } = advised({
      tree: { stemDiameterMm: 1200 },
      staticTests: testedAllRound(1e6),
    });
    expect(decision.overall.risk).toBe('low');
    expect(option('retain').priority).toBe('advised');
    for (const id of ['reduce-10', 'thin-10', 'remove', 'static-test', 'deadwood', 'insects']) {
      expect(option(id).priority, id).toBe('not advised');
      expect(option(id).byMonths, id).toBeNull();
    }
  });

  it('asks for a static load test first where the anchorage is too thin to decide on', () => {
    const { assessment, option } = advised();
    expect(assessment.options[0]!.id).toBe('static-test');
    expect(option('static-test')).toMatchObject({ priority: 'first', effect: null, residualRisk: null });
  });

  it('keeps people away first, and nobody working below, where failure has begun', () => {
    const { assessment, option } = advised({ signs: [{ kind: 'soil heave' }, { kind: 'dead limb' }] });
    expect(assessment.options[0]).toMatchObject({ id: 'restrict', priority: 'first', byMonths: 0 });
    for (const id of ['static-test', 'aerial', 'deadwood', 'reduce-10']) {
      expect(option(id).priority, id).toBe('not advised');
      expect(option(id).why.join(' '), id).toContain('before it is secured');
    }
    expect(option('restrict').residualRisk).toBe('low');
  });

  it('sees that a road cannot be moved: nothing but removal lowers the risk then', () => {
    const { option } = advised({
      signs: [{ kind: 'soil heave' }],
      targets: [{ what: 'village road', occupancy: 'constant', distanceM: 5 }],
    });
    expect(option('restrict').residualRisk).toBe('extreme');
    expect(option('remove')).toMatchObject({ priority: 'advised', residualRisk: 'low' });
  });

  it('gives deadwooding no effect on the load, and rates the limb away', () => {
    const { option, decision } = advised({
      tree: { stemDiameterMm: 1200 },
      staticTests: testedAllRound(1e6),
      signs: [{ kind: 'dead limb', azimuthDeg: 90 }],
    });
    expect(decision.overall).toMatchObject({ risk: 'moderate', part: 'limb' });
    expect(option('deadwood')).toMatchObject({ effect: null, priority: 'first', residualRisk: 'low' });
  });

  it('advises the least pruning that does, where one does', () => {
    const { assessment, option } = advised({
      tree: { stemDiameterMm: 1200 },
      staticTests: testedAllRound(2.45e5),
      draws: 1000,
      targets: [{ what: 'playground', occupancy: 'constant', distanceM: 3 }],
    });
    expect(assessment.leastPruning.share).toBeGreaterThan(0);
    const prunings = assessment.options.filter(({ effect, priority }) => effect && priority === 'advised');
    expect(prunings).toHaveLength(1);
    expect(prunings[0]!.effect!.confidenceAfter).toBeGreaterThanOrEqual(0.9);
    expect(option('raise-2').priority).toBe('not advised');
  });

  it('never raises the risk by pruning, and marks what goes beyond a season', () => {
    const { assessment, decision, option } = advised();
    for (const { effect, residualRisk } of assessment.options) {
      if (!effect) continue;
      expect(stepOf(RISKS, residualRisk!)).toBeLessThanOrEqual(stepOf(RISKS, decision.overall.risk!));
      expect(effect.safetyAfter.p05).toBeGreaterThanOrEqual(effect.safetyBefore.p05);
      expect(effect.confidenceAfter).toBeGreaterThanOrEqual(effect.confidenceBefore);
      expect(effect.chanceInTimeFrameAfter).toBeLessThanOrEqual(effect.chanceInTimeFrameBefore);
    }
    expect(option('reduce-20').permissible).toBe(false);
    expect(option('reduce-10').permissible).toBe(true);
  });

  it('offers what insects, unions and cut roots call for', () => {
    const { option } = advised(
      {
        signs: [{ kind: 'carpenter ants' }, { kind: 'included bark' }],
        rootCuts: [{ azimuthDeg: 0, distanceM: 1 }],
      },
      {
        sectionId: 's1',
        azimuthDeg: 210,
        offRadialDeg: 0,
        worth: 0.3,
        doubtWorth: 0.3,
        why: 'least known there.',
        candidates: [],
      },
    );
    expect(option('insects').priority).toBe('possible');
    expect(option('insects').what).toContain('licensed applicator');
    expect(option('support').priority).toBe('advised');
    expect(option('soil').priority).toBe('advised');
    expect(option('drill')).toMatchObject({ priority: 'advised' });
    expect(option('drill').why[0]).toContain('210');
  });

  it('keeps what the user chose and what it costs, and tells of an option that is none', () => {
    const { option, notices } = advised({
      advice: [
        { option: 'reduce-10', chosen: true, cost: '900', dueOn: '2027-01-31', note: 'in winter' },
        { option: 'topping', chosen: true },
      ],
    });
    expect(option('reduce-10')).toMatchObject({
      chosen: true,
      cost: '900',
      dueOn: '2027-01-31',
      note: 'in winter',
    });
    expect(option('remove')).toMatchObject({ chosen: null, cost: null });
    expect(notices).toHaveLength(1);
    expect(notices[0]).toMatchObject({ where: 'advice[1].option', severity: 'caution' });
  });

  it('is the same for the same seed', () => {
    expect(advised().assessment).toEqual(advised().assessment);
  });
});
