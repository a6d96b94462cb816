import { describe, expect, it } from 'vitest';
import { hatch } from './hatch.ts';
import type { Px } from './marks.ts';

const square: Px[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
const hole: Px[] = [
  [4, 0.5],
  [6, 0.5],
  [6, 9.5],
  [4, 9.5],
];

/** Line pieces of path data as [x0, y0, x1, y1]. */
function pieces(d: string): number[][] {
  return [...d.matchAll(/M(\S+) (\S+)L(\S+) ([^M]+)/g)].map((m) => m.slice(1).map(Number));
}

describe('hatch', () => {
  it('draws lines at the spacing, from edge to edge', () => {
    const lines = pieces(hatch([square], { angleDeg: 0, spacing: 2 }));
    expect(lines).toEqual([1, 3, 5, 7, 9].map((y) => [0, y, 10, y]));
  });

  it('leaves a ring within a ring free', () => {
    const lines = pieces(hatch([square, hole], { angleDeg: 0, spacing: 2 }));
    expect(lines).toHaveLength(10);
    for (const [x0, , x1] of lines) expect(x1! <= 4 || x0! >= 6).toBe(true);
  });

  it('keeps every line inside the region at any angle', () => {
    for (let angleDeg = -90; angleDeg <= 90; angleDeg += 15)
      for (const line of pieces(hatch([square], { angleDeg, spacing: 1.7 })))
        for (const v of line) {
          expect(v).toBeGreaterThanOrEqual(-0.01);
          expect(v).toBeLessThanOrEqual(10.01);
        }
  });

  it('covers the share of the area that spacing says', () => {
    const total = pieces(hatch([square], { angleDeg: 45, spacing: 0.1 })).reduce(
      (sum, [x0, y0, x1, y1]) => sum + Math.hypot(x1! - x0!, y1! - y0!),
      0,
    );
    expect(total * 0.1).toBeCloseTo(100, 0);
  });

  it('breaks lines into dashes', () => {
    const lines = pieces(hatch([square], { angleDeg: 0, spacing: 2, dash: [3, 2] }));
    expect(lines.slice(0, 2)).toEqual([
      [0, 1, 3, 1],
      [5, 1, 8, 1],
    ]);
  });

  it('is empty for an empty region', () => {
    expect(hatch([], { angleDeg: 0, spacing: 2 })).toBe('');
  });
});
