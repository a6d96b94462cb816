import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinRound } from './radii.ts';
import { RAD } from './ring.ts';

const anyRadii = fc
  .uniqueArray(
    fc.record({ azimuthDeg: fc.integer({ min: 0, max: 359 }), radiusMm: fc.integer({ min: 100, max: 900 }) }),
    {
      minLength: 1,
      maxLength: 24,
      selector: (p) => p.azimuthDeg,
    },
  )
  .map((points) => points.map((p) => ({ ...p })));

describe('radii joined round', () => {
  it('goes through every point, whatever their order and turn', () => {
    fc.assert(
      fc.property(anyRadii, fc.integer({ min: -3, max: 3 }), (points, turns) => {
        const curve = joinRound(points);
        for (const { azimuthDeg, radiusMm } of points) {
          expect(curve.radius((azimuthDeg + 360 * turns) * RAD) / radiusMm).toBeCloseTo(1, 9);
        }
      }),
    );
  });

  it('stays positive and within bounds that the points set', () => {
    fc.assert(
      fc.property(anyRadii, (points) => {
        const curve = joinRound(points);
        const radii = points.map((p) => p.radiusMm);
        const low = Math.min(...radii);
        const high = Math.max(...radii);
        // Held-back slopes overshoot a knot by less than half the ratio to its nearer neighbour.
        const swing = Math.sqrt(high / low);
        for (let a = 0; a < 360; a += 3) {
          const r = curve.radius(a * RAD);
          expect(r).toBeGreaterThan(low / swing / 1.0001);
          expect(r).toBeLessThan(high * swing * 1.0001);
        }
      }),
    );
  });

  it('has the rate of change it says, and is periodic and continuous', () => {
    const curve = joinRound([
      { azimuthDeg: 10, radiusMm: 400 },
      { azimuthDeg: 95, radiusMm: 520 },
      { azimuthDeg: 170, radiusMm: 450 },
      { azimuthDeg: 300, radiusMm: 380 },
    ]);
    const h = 1e-6;
    for (let a = 1.5; a < 720; a += 7) {
      const t = a * RAD;
      expect(curve.rate(t)).toBeCloseTo((curve.radius(t + h) - curve.radius(t - h)) / (2 * h), 2);
    }
    for (const knot of curve.knotsRad) {
      expect(curve.radius(knot - 1e-9)).toBeCloseTo(curve.radius(knot + 1e-9), 4);
      expect(curve.rate(knot - 1e-9)).toBeCloseTo(curve.rate(knot + 1e-9), 4);
    }
  });

  it('makes a circle of one radius and puts the extremes of two where they were measured', () => {
    const one = joinRound([{ azimuthDeg: 77, radiusMm: 300 }]);
    for (let a = 0; a < 360; a += 30) expect(one.radius(a * RAD)).toBeCloseTo(300, 10);
    const two = joinRound([
      { azimuthDeg: 0, radiusMm: 300 },
      { azimuthDeg: 180, radiusMm: 400 },
    ]);
    expect(two.rate(0)).toBeCloseTo(0, 10);
    expect(two.rate(Math.PI)).toBeCloseTo(0, 10);
    expect(two.radius(Math.PI / 2)).toBeCloseTo(Math.sqrt(300 * 400), 8);
  });

  it('follows an off-centre circle from eight radii within a millimetre in half a metre', () => {
    const R = 500;
    const e = 60;
    const exact = (deg: number) =>
      e * Math.cos(deg * RAD) + Math.sqrt(R * R - (e * Math.sin(deg * RAD)) ** 2);
    const curve = joinRound(
      Array.from({ length: 8 }, (_, i) => ({ azimuthDeg: 13 + 45 * i, radiusMm: exact(13 + 45 * i) })),
    );
    for (let a = 0; a < 360; a += 5) expect(Math.abs(curve.radius(a * RAD) - exact(a))).toBeLessThan(1);
  });

  it('does not swing between two levels where readings lie close', () => {
    const curve = joinRound([
      { azimuthDeg: 0, radiusMm: 300 },
      { azimuthDeg: 5, radiusMm: 450 },
      { azimuthDeg: 120, radiusMm: 450 },
      { azimuthDeg: 240, radiusMm: 300 },
    ]);
    for (let a = 0; a < 360; a += 1) {
      expect(curve.radius(a * RAD)).toBeGreaterThan(299.9);
      expect(curve.radius(a * RAD)).toBeLessThan(450.1);
    }
  });
});
