import { expect, it } from 'vitest';
import { depthByTaps } from './settleChart.ts';
import type { CornersPx } from './types.ts';

const flat: CornersPx = [
  [100, 50],
  [1100, 50],
  [1100, 350],
  [100, 350],
];

it('takes the scale of a strip drawn 1:1 from two taps', () => {
  const taps = [
    { px: [300, 200], depthMm: 0 },
    { px: [700, 200], depthMm: 100 },
  ] as const;
  const [left, right] = depthByTaps(flat, taps, 'taps');
  expect(left).toBeCloseTo(-50, 9);
  expect(right).toBeCloseTo(200, 9);
});

it('runs right to left where the taps do', () => {
  const taps = [
    { px: [1000, 60], depthMm: 10 },
    { px: [200, 340], depthMm: 90 },
  ] as const;
  const [left, right] = depthByTaps(flat, taps, 'taps');
  expect(left).toBeCloseTo(100, 9);
  expect(right).toBeCloseTo(0, 9);
});

it('refuses taps that tell no scale', () => {
  const near = [
    { px: [300, 200], depthMm: 0 },
    { px: [310, 200], depthMm: 100 },
  ] as const;
  expect(() => depthByTaps(flat, near, 'taps')).toThrow(/too close/);
});
