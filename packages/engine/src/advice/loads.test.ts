import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare, safetyAt } from '../decision/compare.ts';
import { confidence, loadLeft, safetyAfter } from './loads.ts';
import { reliefOf } from './pruning.ts';
import { assessedTree } from './testTree.ts';

/** Shares of draws may differ by one draw on the mark itself. */
const ONE_DRAW = 1.5 / 400;

describe('safetyAt', () => {
  it('is what compare gives, draw by draw and direction by direction', () => {
    for (const leanDeg of [0, 6]) {
      const { result } = assessedTree({ tree: { leanDeg, leanTowardDeg: 73 }, draws: 50 });
      for (const place of [...result.drawn.breakage.places, ...result.drawn.uprooting.places]) {
        const whole = compare(place);
        for (let i = 0; i < 50; i++) {
          for (let d = 0; d < 36; d++) {
            expect(safetyAt(place, i, d, 1)).toBeCloseTo(whole.safety[i * 36 + d]!, 9);
          }
        }
      }
    }
  });
});

describe('safetyAfter and confidence', () => {
  it('give back the safety as it stands when nothing is taken off', () => {
    for (const leanDeg of [0, 5]) {
      const { loads, standing, result } = assessedTree({ tree: { leanDeg, leanTowardDeg: 40 } });
      const untouched = loadLeft(loads, reliefOf(standing, { kind: 'reduce', amount: 0 }));
      expect(safetyAfter(loads, untouched).governing).toEqual(result.assessment.governing);
      const both = result.drawn.breakage.leastSafety.map((least, i) =>
        Math.min(least, result.drawn.uprooting.leastSafety[i]!),
      );
      const share = both.filter((least) => least >= 1.5).length / both.length;
      expect(Math.abs(confidence(loads, untouched, 1.5) - share)).toBeLessThanOrEqual(ONE_DRAW);
    }
  });

  it('scale with the load in an upright tree', () => {
    const { loads, standing, result } = assessedTree();
    const relief = reliefOf(standing, { kind: 'thin', amount: 0.2 });
    const left = loadLeft({ ...loads, uniforms: loads.uniforms.map(() => 0.5) }, relief);
    const after = safetyAfter(loads, left).governing;
    expect(after.p50 * 0.8).toBeCloseTo(result.assessment.governing.p50, 9);
  });

  it('more pruning never leaves less safety or confidence, upright or leaning', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        fc.constantFrom('reduce' as const, 'thin' as const),
        fc.constantFrom(0, 4, 12),
        fc.integer({ min: 0, max: 35 }),
        (a, b, kind, leanDeg, weak) => {
          const { loads, standing } = assessedTree({
            tree: { leanDeg, leanTowardDeg: 130 },
            left: (d) => (d === weak ? 0.4 : 0.8),
            draws: 200,
          });
          const at = (amount: number) => loadLeft(loads, reliefOf(standing, { kind, amount }));
          const less = at(Math.min(a, b));
          const more = at(Math.max(a, b));
          expect(safetyAfter(loads, more).governing.p05).toBeGreaterThanOrEqual(
            safetyAfter(loads, less).governing.p05 - 1e-9,
          );
          for (const mark of [1, 1.5, 2.5]) {
            expect(confidence(loads, more, mark)).toBeGreaterThanOrEqual(confidence(loads, less, mark));
          }
        },
      ),
      { numRuns: 25 },
    );
  });
});
