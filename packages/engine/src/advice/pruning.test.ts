import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnRelief, type Pruning, reducedTree, reductionForFoliage, reliefOf } from './pruning.ts';
import { assessedTree, TREE } from './testTree.ts';

const { standing } = assessedTree();
const relief = (kind: Pruning['kind'], amount: number) => reliefOf(standing, { kind, amount });

describe('reliefOf', () => {
  it.each(['reduce', 'thin', 'raise'] as const)(
    '%s: nothing takes nothing, and more never relieves less',
    (kind) => {
      for (const { p05, p50, p95 } of relief(kind, 0).byLevel) {
        for (const part of [p05, p50, p95]) expect(part).toBeCloseTo(0, 12);
      }
      const most = kind === 'raise' ? 10 : 0.6;
      fc.assert(
        fc.property(
          fc.double({ min: 0, max: 1, noNaN: true }),
          fc.double({ min: 0, max: 1, noNaN: true }),
          fc.double({ min: 0, max: 0.999, noNaN: true }),
          (a, b, uniform) => {
            const less = relief(kind, Math.min(a, b) * most);
            const more = relief(kind, Math.max(a, b) * most);
            less.byLevel.forEach((range, level) => {
              expect(drawnRelief(more.byLevel[level]!, uniform)).toBeGreaterThanOrEqual(
                drawnRelief(range, uniform) - 1e-9,
              );
            });
            expect(more.foliageShare).toBeGreaterThanOrEqual(less.foliageShare - 1e-9);
          },
        ),
        { numRuns: 40 },
      );
    },
  );

  it('keeps its parts in order and below all of the load', () => {
    for (const kind of ['reduce', 'thin', 'raise'] as const) {
      for (const { p05, p50, p95 } of relief(kind, kind === 'raise' ? 4 : 0.3).byLevel) {
        expect(p05).toBeGreaterThanOrEqual(0);
        expect(p05).toBeLessThanOrEqual(p50);
        expect(p50).toBeLessThanOrEqual(p95);
        expect(p95).toBeLessThan(1);
      }
    }
  });

  it('takes more off at the same foliage by reduction than by thinning, and least by raising', () => {
    const foliage = 0.25;
    const reduced = relief('reduce', reductionForFoliage(foliage));
    expect(reduced.foliageShare).toBeCloseTo(foliage, 12);
    const thinned = relief('thin', foliage);
    expect(reduced.byMass).toBeGreaterThan(thinned.byMass);
    let raisedBy = 0;
    while (relief('raise', raisedBy).foliageShare < foliage) raisedBy += 0.1;
    expect(relief('raise', raisedBy).byLevel[0]!.p50).toBeLessThan(thinned.byLevel[0]!.p50);
  });

  it('scales the crown about its base and leaves the stem', () => {
    const after = reducedTree(TREE, 0.1);
    expect(after.heightM).toBeCloseTo(5 + 13 * 0.9, 12);
    expect(after.crown.widthM).toBeCloseTo(12 * 0.9, 12);
    expect(after.crown.baseHeightM).toBe(5);
    expect(after.stemDiameterMm).toBe(TREE.stemDiameterMm);
  });
});

describe('drawnRelief', () => {
  it('has its middle in the middle', () => {
    const range = { p05: 0.1, p50: 0.2, p95: 0.5 };
    expect(drawnRelief(range, 0)).toBe(0.1);
    expect(drawnRelief(range, 0.5)).toBe(0.2);
    expect(drawnRelief(range, 1)).toBe(0.5);
  });
});
