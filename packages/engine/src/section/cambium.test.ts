import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { cambiumRing } from './cambium.ts';
import { outlineRing } from './outline.ts';
import { contains, distanceToSegment, selfCrossing, signedAreaMm2 } from './ring.ts';
import type { PointMm, RingMm } from './types.ts';

const distance = (ring: RingMm, [x, y]: PointMm) =>
  ring.reduce((least, a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return Math.min(least, distanceToSegment(x, y, a[0], a[1], b[0], b[1]));
  }, Infinity);

describe('cambium', () => {
  it('of a circle is the circle less the bark', () => {
    for (const barkMm of [1, 20, 250, 399]) {
      const ring = cambiumRing(outlineRing({ kind: 'circle', diameterMm: 800 }), barkMm);
      // The ring's sides lie 5 micrometres inside its corners at this size.
      expect(Math.abs(Math.sqrt(Math.abs(signedAreaMm2(ring)) / Math.PI) - (400 - barkMm))).toBeLessThan(
        0.005,
      );
    }
  });

  it('of a square is a square with sharp corners, in the outline’s own sense', () => {
    const square: PointMm[] = [
      [100, 100],
      [100, -100],
      [-100, -100],
      [-100, 100],
    ];
    const ring = cambiumRing(square, 20);
    expect(ring).toHaveLength(4);
    expect(signedAreaMm2(ring)).toBeCloseTo(-160 * 160, 6);
  });

  it('leaves no bark as it is', () => {
    const ring = outlineRing({ kind: 'circle', diameterMm: 100 });
    expect(cambiumRing(ring, 0)).toBe(ring);
  });

  it('rounds a hollow corner at the bark’s distance', () => {
    const corner: PointMm[] = [
      [-300, -300],
      [300, -300],
      [300, 0],
      [0, 0],
      [0, 300],
      [-300, 300],
    ];
    const ring = cambiumRing(corner, 50);
    // Two legs 500 × 200 and 200 × 300, and a quarter disc taken out of the square between their ends.
    const exact = 500 * 200 + 200 * 300 + 50 * 50 - (Math.PI * 50 * 50) / 4;
    expect(signedAreaMm2(ring) / exact).toBeCloseTo(1, 5);
  });

  it('drops a lobe thinner than twice the bark and keeps the piece with the origin', () => {
    // A body 400 across with an arm 60 wide that ends in a larger knob.
    const lobed: PointMm[] = [
      [-200, -200],
      [200, -200],
      [200, -30],
      [500, -30],
      [500, -400],
      [1200, -400],
      [1200, 400],
      [500, 400],
      [500, 30],
      [200, 30],
      [200, 200],
      [-200, 200],
    ];
    const ring = cambiumRing(lobed, 40);
    expect(contains(ring, 0, 0)).toBe(true);
    expect(contains(ring, 800, 0)).toBe(false);
    // Where the arm joins, its two corners keep a little wood within 40 mm of neither: the mouth is 30 deep at most.
    expect(Math.abs(signedAreaMm2(ring)) / (320 * 320)).toBeGreaterThan(1);
    expect(Math.abs(signedAreaMm2(ring)) / (320 * 320)).toBeLessThan(1.01);
  });

  it('of lobed outlines is simple, inside, and touches the bark’s depth all round', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 200, max: 600 }), { minLength: 4, maxLength: 14 }),
        fc.integer({ min: 5, max: 90 }),
        (radii, barkMm) => {
          const outline = outlineRing({
            kind: 'radii',
            radii: radii.map((radiusMm, i) => ({ azimuthDeg: (360 * i) / radii.length, radiusMm })),
          });
          const ring = cambiumRing(outline, barkMm);
          expect(selfCrossing(ring)).toBeNull();
          ring.forEach((point, i) => {
            if (i % 7 > 0) return;
            expect(contains(outline, point[0], point[1])).toBe(true);
            const off = distance(outline, point) / barkMm;
            expect(off).toBeGreaterThan(1 - 1e-6);
            expect(off).toBeLessThan(1 + 1e-3);
          });
        },
      ),
      { numRuns: 25 },
    );
  });

  it('manages sides that fall on each other exactly', () => {
    // A slot in the wood between two walls 100 apart: at 50 mm they meet in a line.
    const slotted: PointMm[] = [
      [-300, -300],
      [300, -300],
      [300, 300],
      [150, 300],
      [150, 0],
      [50, 0],
      [50, 300],
      [-300, 300],
    ];
    const ring = cambiumRing(slotted, 75);
    expect(contains(ring, 0, -150)).toBe(true);
    expect(contains(ring, 225, 200)).toBe(false);
    for (const point of ring) expect(distance(slotted, point)).toBeGreaterThan(75 * (1 - 1e-3));
  });

  it.each([-1, Number.NaN, 400, 1000])('refuses bark of %f mm on a stem of 400 mm radius', (barkMm) => {
    expect(() =>
      cambiumRing(outlineRing({ kind: 'circle', diameterMm: 800 }), barkMm, 'sections[0].barkMm'),
    ).toThrow(InputFault);
  });
});
