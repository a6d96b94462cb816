/** Crown outlines against the areas and centroids of plane geometry (any handbook of mathematics). */

import type { CrownShape } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { crownProfile } from '../../packages/engine/src/wind/crown.ts';

const WIDTH = 12;
const HEIGHT = 13;
const BASE = 5;
/** Midpoint sums over this many slices of outlines with a square-root end. */
const SLICES = 200_000;
const SLICED = 1e-6;

const SHAPES: [CrownShape, number, number][] = [
  ['ellipse', Math.PI / 4, 1 / 2],
  ['dome', Math.PI / 4, 4 / (3 * Math.PI)],
  ['rectangle', 1, 1 / 2],
  ['cone', 1 / 2, 1 / 3],
  ['paraboloid', 2 / 3, 2 / 5],
  ['rhombus', 1 / 2, 1 / 2],
  ['inverted-cone', 1 / 2, 2 / 3],
];

describe.each(SHAPES)('%s', (shape, areaFactor, centroidFactor) => {
  const profile = crownProfile({ baseHeightM: BASE, widthM: WIDTH, shape, inLeaf: true }, BASE + HEIGHT);

  it('has the area and centroid of its outline', () => {
    expect(profile.areaM2).toBeCloseTo(areaFactor * WIDTH * HEIGHT, 6);
    expect(profile.centroidM).toBeCloseTo(BASE + centroidFactor * HEIGHT, 6);
  });

  it('has widths that add up to them', () => {
    let area = 0;
    let first = 0;
    const step = HEIGHT / SLICES;
    for (let i = 0; i < SLICES; i++) {
      const z = BASE + (i + 0.5) * step;
      area += profile.widthM(z) * step;
      first += profile.widthM(z) * z * step;
    }
    expect(Math.abs(area / profile.areaM2 - 1)).toBeLessThan(SLICED);
    expect(Math.abs(first / area / profile.centroidM - 1)).toBeLessThan(SLICED);
  });

  it('is as wide as recorded somewhere and nothing outside', () => {
    let widest = 0;
    for (let i = 0; i <= 1000; i++) widest = Math.max(widest, profile.widthM(BASE + (i * HEIGHT) / 1000));
    expect(widest).toBeCloseTo(WIDTH, 9);
    expect(profile.widthM(BASE - 0.01)).toBe(0);
    expect(profile.widthM(BASE + HEIGHT + 0.01)).toBe(0);
  });
});
