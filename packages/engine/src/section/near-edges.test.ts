import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forNearEdges } from './near-edges.ts';
import { boxOf } from './ring.ts';
import type { PointMm } from './types.ts';

const ring = fc.array(
  fc.tuple(fc.integer({ min: 0, max: 50 }), fc.integer({ min: 0, max: 50 })).map((p): PointMm => p),
  { minLength: 3, maxLength: 12 },
);

describe('near edges', () => {
  it('finds the same pairs as looking at all of them', () => {
    fc.assert(
      fc.property(ring, ring, fc.integer({ min: 0, max: 5 }), (one, other, within) => {
        const found: string[] = [];
        forNearEdges(one, other, within, (i, k) => {
          found.push(`${i} ${k}`);
          return undefined;
        });
        const all: string[] = [];
        one.forEach((a, i) => {
          other.forEach((c, k) => {
            const p = boxOf([a, one[(i + 1) % one.length]!]);
            const q = boxOf([c, other[(k + 1) % other.length]!]);
            const near =
              p.minX - within <= q.maxX &&
              q.minX <= p.maxX + within &&
              p.minY - within <= q.maxY &&
              q.minY <= p.maxY + within;
            if (near) all.push(`${i} ${k}`);
          });
        });
        expect(found.sort()).toEqual(all.sort());
      }),
    );
  });

  it('stops when told', () => {
    let seen = 0;
    const square: PointMm[] = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ];
    forNearEdges(square, square, 1, () => {
      seen += 1;
      return true;
    });
    expect(seen).toBe(1);
  });
});
