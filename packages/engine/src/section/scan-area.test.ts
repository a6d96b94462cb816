import { describe, expect, it } from 'vitest';
import { scanAreaMm2 } from './scan-area.ts';
import type { PointMm } from './types.ts';

const box = (x: number, y: number, w: number, h: number): PointMm[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];

describe('area by scanning', () => {
  it('of a ring alone, in either sense', () => {
    expect(scanAreaMm2(box(0, 0, 4, 3), [])).toBe(12);
    expect(scanAreaMm2([...box(0, 0, 4, 3)].reverse(), [])).toBe(12);
  });

  it('takes overlapping voids once and nothing outside', () => {
    expect(scanAreaMm2(box(0, 0, 10, 10), [box(2, 2, 4, 4), box(4, 4, 4, 4), box(8, 8, 10, 10)])).toBe(
      100 - 28 - 4,
    );
  });

  it('handles shared edges and slanted crossings', () => {
    expect(scanAreaMm2(box(0, 0, 10, 10), [box(0, 0, 10, 5)])).toBe(50);
    const slanted: PointMm[] = [
      [-5, 5],
      [5, -5],
      [15, 5],
      [5, 15],
    ];
    expect(scanAreaMm2(box(0, 0, 10, 10), [slanted])).toBeCloseTo(0, 12);
    expect(scanAreaMm2(slanted, [box(0, 0, 10, 10)])).toBeCloseTo(100, 12);
  });
});
