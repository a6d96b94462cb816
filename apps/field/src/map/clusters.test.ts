import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clustered, gapFor } from './clusters.ts';

const place = fc.record({
  x: fc.double({ min: -500, max: 500, noNaN: true }),
  y: fc.double({ min: -500, max: 500, noNaN: true }),
  riskPlace: fc.integer({ min: 0, max: 5 }),
});

describe('clusters', () => {
  it('hold each tree once, lie apart, and are led by their worst', () => {
    fc.assert(
      fc.property(fc.array(place, { maxLength: 80 }), fc.integer({ min: 5, max: 200 }), (points, gap) => {
        const clusters = clustered(points, gap);
        expect(clusters.flatMap(({ members }) => members).sort((a, b) => a - b)).toEqual(
          points.map((_, i) => i),
        );
        clusters.forEach((one, i) => {
          const risks = one.members.map((member) => points[member]!.riskPlace);
          expect(risks[0]).toBe(Math.min(...risks));
          for (const other of clusters.slice(i + 1))
            expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThanOrEqual(gap);
        });
      }),
    );
  });

  it('hold while the scale changes a little, and are never nearer on screen than asked', () => {
    expect(gapFor(1.2, 30)).toBe(gapFor(1.05, 30));
    for (const scale of [0.01, 0.3, 1, 1.7, 44]) {
      expect(gapFor(scale, 30) * scale).toBeGreaterThanOrEqual(30);
      expect(gapFor(scale, 30) * scale).toBeLessThan(30 * Math.SQRT2 * 1.001);
    }
  });
});
