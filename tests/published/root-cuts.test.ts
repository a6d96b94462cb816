/**
 * Roots cut: Smiley 2008 AUF 34:123 (young willow oaks, read, abstract) and Smiley, Holmes and Fraedrich 2014 AUF 40:230
 * (red maples with 6 to 10 buttress roots, read, abstract): the drop of the force that pulls a tree over by one degree.
 */
import { randomFrom } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { anchorageDraws } from '../../packages/engine/src/roots/index.ts';

const tree = {
  label: 'worked example',
  species: 'Quercus phellos',
  stemDiameterMm: 600,
  heightM: 18,
  leanDeg: 0,
  leanTowardDeg: 0,
  crown: { baseHeightM: 5, widthM: 12, shape: 'ellipse', inLeaf: true },
} as const;
const DRAWS = 1000;

/** Loss by direction of fall: mean over the draws, least and most. */
function losses(cut: { azimuthDeg: number; distanceM: number; widthDeg: number; depthM: number }) {
  const { remaining } = anchorageDraws(
    { tree, flares: [], signs: [], rootCuts: [cut] },
    randomFrom(1),
    DRAWS,
  );
  return Array.from({ length: 36 }, (_, d) => {
    const column = Array.from({ length: DRAWS }, (_, i) => 1 - remaining[i * 36 + d]!);
    return {
      mean: column.reduce((a, b) => a + b, 0) / DRAWS,
      least: Math.min(...column),
      most: Math.max(...column),
    };
  });
}
const atStem = (widthDeg: number) => losses({ azimuthDeg: 0, distanceM: 0, widthDeg, depthM: 2 });
const meanOf = (rows: { mean: number }[]) => rows.reduce((sum, { mean }) => sum + mean, 0) / rows.length;
const SOUTH = 18;
const EAST = 9;

describe('at the stem', () => {
  it('one root of six to ten cut took 12 % on the mean: between 36 and 60 degrees of arc', () => {
    expect(meanOf(atStem(360 / 10))).toBeLessThan(0.12);
    expect(meanOf(atStem(360 / 6))).toBeGreaterThan(0.12);
  });

  it('half the buttress roots took 30 %: the mild end, across the cut', () => {
    const half = atStem(180);
    expect(half[EAST]!.least).toBeCloseTo(0.3, 2);
    // Nearly linear (2014): half of the roots, half of the force.
    expect(half[EAST]!.most).toBeCloseTo(0.5, 2);
  });

  it('a trench along the stem took 35 %: within the range of the pull away from it', () => {
    const trench = atStem(180)[SOUTH]!;
    expect(trench.least).toBeLessThanOrEqual(0.365);
    expect(trench.least).toBeGreaterThanOrEqual(0.3);
    expect(trench.most).toBeGreaterThan(0.35);
  });
});

describe('by distance', () => {
  it('cuts took a measurable force only within three stem diameters', () => {
    const at = (distanceM: number) =>
      losses({ azimuthDeg: 0, distanceM, widthDeg: 180, depthM: 2 })[SOUTH]!.mean;
    expect(at(3 * 0.6)).toBe(0);
    expect(at(3 * 0.6 * 0.9)).toBeGreaterThan(0);
    expect(at(0)).toBeGreaterThan(at(0.6));
    expect(at(0.6)).toBeGreaterThan(at(1.2));
  });
});
