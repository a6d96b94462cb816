import { expect, it } from 'vitest';
import { depthByRuler } from './ruler.ts';
import type { CornersPx } from './types.ts';

const flat: CornersPx = [
  [100, 50],
  [1100, 50],
  [1100, 350],
  [100, 350],
];
const ruler = {
  px: [
    [800, 400],
    [400, 420],
  ],
  distanceMm: 100,
  startMm: 10,
  startsAt: 'left',
} as const;

it('takes the scale from two points a known distance apart, beside the chart, in either order', () => {
  const [left, right] = depthByRuler(flat, ruler, 'ruler');
  expect(left).toBe(10);
  expect(right).toBeCloseTo(260, 9);
});

it('runs right to left where depth begins at the right', () => {
  const [left, right] = depthByRuler(flat, { ...ruler, startsAt: 'right' }, 'ruler');
  expect(left).toBeCloseTo(260, 9);
  expect(right).toBe(10);
});

it('refuses points that tell no scale', () => {
  const across = [
    [400, 60],
    [410, 340],
  ] as const;
  expect(() => depthByRuler(flat, { ...ruler, px: across }, 'ruler')).toThrow(/too close/);
  expect(() => depthByRuler(flat, { ...ruler, distanceMm: 0 }, 'ruler')).toThrow(/above 0/);
});
