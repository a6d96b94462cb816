import { describe, expect, it } from 'vitest';
import { TREE } from '../advice/testTree.ts';
import type { TargetInput } from '../case.ts';
import { consequencesOf } from './consequences.ts';
import { impactOf, shareTowards } from './impact.ts';

const EVEN = new Array<number>(36).fill(0.01);
const impact = (target: Partial<TargetInput>, chances = EVEN) =>
  impactOf(
    TREE,
    { what: 'path', occupancy: 'frequent', distanceM: 12, ...target },
    'whole tree',
    chances,
    undefined,
  );

describe('impactOf the whole tree', () => {
  it.each([
    ['rare', 'none', 'very low'],
    ['occasional', 'none', 'low'],
    ['occasional', 'partial', 'very low'],
    ['frequent', 'none', 'medium'],
    ['frequent', 'partial', 'low'],
    ['constant', 'none', 'high'],
    ['constant', 'partial', 'medium'],
    ['constant', 'good', 'low'],
  ] as const)('%s with protection %s is %s', (occupancy, protection, word) => {
    expect(impact({ occupancy, protection }).suggested).toBe(word);
  });

  it('takes a word it does not know, or none, as not stated, on the safe side', () => {
    for (const occupancy of ['busy', '', undefined]) {
      expect(impact({ occupancy })).toMatchObject({ occupancy: 'frequent', occupancyStated: false });
    }
    expect(impact({ occupancy: ' Constant ' })).toMatchObject({
      occupancy: 'constant',
      occupancyStated: true,
    });
  });

  it('follows the reach of the tree', () => {
    expect(impact({ distanceM: 17 }).reach).toBe('within reach');
    expect(impact({ distanceM: 20 })).toMatchObject({ reach: 'thrown pieces only', suggested: 'low' });
    expect(impact({ distanceM: 28, occupancy: 'constant' })).toMatchObject({
      reach: 'out of reach',
      suggested: 'very low',
    });
    expect(impact({ distanceM: undefined }).reach).toBe('distance not stated');
  });

  it('is one word higher for an often used place under the crown', () => {
    expect(impact({ distanceM: 4 }).suggested).toBe('high');
    expect(impact({ distanceM: 4, protection: 'partial' }).suggested).toBe('low');
    expect(impact({ distanceM: 4, occupancy: 'occasional' }).suggested).toBe('low');
  });

  it('is one word lower where next to no failure falls that way', () => {
    const north = EVEN.map((_, d) => (d < 3 || d > 33 ? 0.1 : 0.0001));
    expect(impact({ directionDeg: 180 }, north)).toMatchObject({ suggested: 'low' });
    expect(impact({ directionDeg: 0 }, north)).toMatchObject({ suggested: 'medium' });
    expect(impact({ directionDeg: 0 }, north).shareOfFalls).toBeGreaterThan(0.9);
  });

  it('counts the falls whose crown covers the target', () => {
    // Half the crown, 6 m, at 6 m: 45 degrees to either side, nine of 36 directions and half one more.
    expect(shareTowards(EVEN, 0, 6, 12)).toBeCloseTo(9 / 36, 9);
    expect(shareTowards(EVEN, 0, 1e9, 12)).toBeCloseTo(1 / 36, 9);
    expect(shareTowards(new Array<number>(36).fill(0), 0, 6, 12)).toBe(0);
  });
});

describe('impactOf a limb', () => {
  const limb = (target: Partial<TargetInput>, azimuthDeg?: number) =>
    impactOf(TREE, { what: 'path', occupancy: 'frequent', distanceM: 5, ...target }, 'limb', EVEN, {
      kind: 'dead limb',
      azimuthDeg,
    });

  it('reaches what lies under the crown on its side', () => {
    expect(limb({ directionDeg: 90 }, 100)).toMatchObject({ reach: 'within reach', suggested: 'medium' });
    expect(limb({ directionDeg: 270 }, 100)).toMatchObject({ reach: 'out of reach', suggested: 'very low' });
    expect(limb({ directionDeg: 270 }).reach).toBe('within reach');
    expect(limb({ distanceM: 9 }).reach).toBe('out of reach');
  });
});

describe('consequencesOf', () => {
  it.each([
    ['footpath across the green', 'severe', 'significant'],
    ['village road', 'severe', 'significant'],
    ['Playground', 'severe', 'severe'],
    ['parked cars', 'significant', 'minor'],
    ['garden fence', 'severe', 'significant'],
    ['fence', 'minor', 'negligible'],
    ['meadow', 'negligible', 'negligible'],
    ['bedroom window', 'severe', 'significant'],
    ['something else', 'severe', 'significant'],
  ] as const)('%s: %s by the tree, %s by a limb', (what, tree, limb) => {
    expect(consequencesOf({ what }, 'whole tree').suggested).toBe(tree);
    expect(consequencesOf({ what }, 'limb').suggested).toBe(limb);
  });

  it('follows what was stated', () => {
    expect(consequencesOf({ what: 'meadow', consequence: 'severe' }, 'limb').suggested).toBe('severe');
  });
});
