import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessedTree, SITE, TREE } from '../advice/testTree.ts';
import { chanceWithin, gustClimate } from '../wind/index.ts';
import { chanceHavingStood, chanceInWords, chanceOfFailure, chanceWithLoad, rateOf } from './chance.ts';

describe('chanceOfFailure', () => {
  const climate = gustClimate(SITE);
  const { result } = assessedTree({ tree: { leanDeg: 4, leanTowardDeg: 70 } });
  const chance = chanceOfFailure(result.drawn, climate, 5);

  it('is the mean over the draws of what each draw would do', () => {
    const rate = rateOf(result.drawn, climate);
    let sum = 0;
    for (let i = 0; i < 400; i++) {
      const { breakage, uprooting } = result.drawn;
      sum += chanceWithin(rate(Math.min(breakage.leastLoadRatio[i]!, uprooting.leastLoadRatio[i]!)), 5);
    }
    expect(chance.inTimeFrame.mean).toBeCloseTo(sum / 400, 12);
    expect(chanceWithLoad(result.drawn, climate, 5, new Float64Array(400).fill(1))).toBeCloseTo(
      sum / 400,
      12,
    );
  });

  it('orders itself: a year below the time frame, all sides below the worst, either mode above each', () => {
    expect(chance.perYear.mean).toBeLessThan(chance.inTimeFrame.mean);
    expect(chance.evenInTimeFrame).toBeLessThan(chance.inTimeFrame.mean);
    for (const mode of [chance.breakage, chance.uprooting]) {
      expect(mode.inTimeFrame.mean).toBeLessThanOrEqual(chance.inTimeFrame.mean);
      expect(mode.inTimeFrame.p05).toBeLessThanOrEqual(mode.inTimeFrame.p50);
      expect(mode.byDirection).toHaveLength(36);
      const most = Math.max(...mode.byDirection.map((row) => row.inTimeFrame));
      expect(mode.byDirection.find((row) => row.directionDeg === mode.directionDeg)!.inTimeFrame).toBe(most);
    }
    // The lean weakens the side it leans to.
    expect(Math.abs(chance.uprooting.directionDeg - 70)).toBeLessThanOrEqual(20);
  });

  it('grows with the time frame and the wind, and falls with a lighter load', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 20 }),
        (factor, years) => {
          const full = new Float64Array(400).fill(1);
          const less = new Float64Array(400).fill(factor);
          const whole = chanceWithLoad(result.drawn, climate, years, full);
          expect(chanceWithLoad(result.drawn, climate, years, less)).toBeLessThanOrEqual(whole);
          expect(chanceWithLoad(result.drawn, climate, years + 1, full)).toBeGreaterThanOrEqual(whole);
        },
      ),
      { numRuns: 20 },
    );
    const windier = assessedTree({ tree: TREE, site: { ...SITE, basicWindSpeedMs: 30 } });
    const calmer = assessedTree({ tree: TREE });
    expect(windier.decision.chance.inTimeFrame.mean).toBeGreaterThan(calmer.decision.chance.inTimeFrame.mean);
  });

  it('falls once the tree is known to have stood, most where the versions differ most', () => {
    const rates = Float64Array.of(2, 0.001);
    const prior = (chanceWithin(2, 5) + chanceWithin(0.001, 5)) / 2;
    const stood = chanceHavingStood(rates, rates, 5, 5);
    expect(stood).toBeLessThan(prior);
    // By hand: weights exp(-10) and exp(-0.005).
    const [a, b] = [Math.exp(-10), Math.exp(-0.005)];
    expect(stood).toBeCloseTo((a * (1 - Math.exp(-10)) + b * (1 - Math.exp(-0.005))) / (a + b), 12);
    expect(chanceHavingStood(rates, rates, 5, 0)).toBeCloseTo(prior, 12);
    const doomed = Float64Array.of(1e9);
    expect(chanceHavingStood(doomed, doomed, 5, 5)).toBe(1);
  });

  it('is worded no finer than it is worth', () => {
    expect(chanceInWords(0.0001)).toBe('below 0.1 %');
    expect(chanceInWords(0.043)).toBe('4.3 %');
    expect(chanceInWords(0.43)).toBe('43 %');
  });
});
