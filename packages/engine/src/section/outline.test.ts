import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { ringModulusByDirection } from './capacity.ts';
import { outlineRadius, outlineRing } from './outline.ts';
import { areaMoments, loopOfRing } from './polygon.ts';
import { RAD, signedAreaMm2 } from './ring.ts';
import type { PointMm } from './types.ts';

describe('outline rings', () => {
  it('circle: area and second moments to 1e-9, radii and moduli to 1e-5', () => {
    const ring = outlineRing({ kind: 'circle', diameterMm: 800 });
    const moments = areaMoments([loopOfRing(ring)], []);
    expect(Math.abs(moments.areaMm2 / (Math.PI * 400 ** 2) - 1)).toBeLessThan(1e-9);
    expect(Math.abs(moments.ixxMm4 / ((Math.PI * 400 ** 4) / 4) - 1)).toBeLessThan(1e-9);
    for (const z of ringModulusByDirection(ring)) {
      expect(Math.abs(z / ((Math.PI * 400 ** 3) / 4) - 1)).toBeLessThan(1e-5);
    }
    for (const [x, y] of ring) expect(Math.abs(Math.hypot(x, y) / 400 - 1)).toBeLessThan(1e-5);
  });

  it('ellipse: long axis clockwise from north', () => {
    const radius = outlineRadius(
      outlineRing({ kind: 'ellipse', longMm: 800, shortMm: 600, longAxisDeg: 30 }),
    );
    for (const [azimuth, r] of [
      [30, 400],
      [210, 400],
      [120, 300],
      [300, 300],
    ] as const) {
      expect(Math.abs(radius(azimuth) / r - 1)).toBeLessThan(1e-5);
    }
  });

  it('radii all alike: a circle', () => {
    const ring = outlineRing({
      kind: 'radii',
      radii: Array.from({ length: 7 }, (_, i) => ({ azimuthDeg: 51.3 * i, radiusMm: 400 })),
    });
    expect(Math.abs(signedAreaMm2(ring)) / (Math.PI * 400 ** 2)).toBeCloseTo(1, 9);
  });

  it('radii: passes through them, from the first azimuth on clockwise', () => {
    const radii = [
      { azimuthDeg: 350, radiusMm: 420 },
      { azimuthDeg: 45.2, radiusMm: 380 },
      { azimuthDeg: 200, radiusMm: 500 },
      { azimuthDeg: 121, radiusMm: 410 },
    ];
    const ring = outlineRing({ kind: 'radii', radii });
    const radius = outlineRadius(ring);
    for (const { azimuthDeg, radiusMm } of radii)
      expect(Math.abs(radius(azimuthDeg) - radiusMm)).toBeLessThan(0.01);
    expect(signedAreaMm2(ring)).toBeLessThan(0);
  });

  it('polygon: its own corners, without the closing one', () => {
    const points: PointMm[] = [
      [-100, -100],
      [100, -100],
      [0, 150],
      [-100, -100],
    ];
    expect(outlineRing({ kind: 'polygon', points })).toEqual(points.slice(0, 3));
  });
});

describe('outline radius', () => {
  it('meets a square where trigonometry says', () => {
    const square: PointMm[] = [
      [100, 100],
      [-100, 100],
      [-100, -100],
      [100, -100],
    ];
    const radius = outlineRadius(square);
    fc.assert(
      fc.property(fc.double({ min: -720, max: 720, noNaN: true }), (azimuth) => {
        const expected = 100 / Math.max(Math.abs(Math.sin(azimuth * RAD)), Math.abs(Math.cos(azimuth * RAD)));
        expect(radius(azimuth)).toBeCloseTo(expected, 6);
      }),
    );
  });

  it('takes the outermost of several meetings', () => {
    // A hook whose arm comes round in front of the body to the north.
    const hook: PointMm[] = [
      [-100, -100],
      [300, -100],
      [300, 300],
      [-100, 300],
      [-100, 250],
      [250, 250],
      [250, 100],
      [-100, 100],
    ];
    expect(outlineRadius(hook)(0)).toBeCloseTo(300, 9);
    expect(outlineRadius(hook)(270)).toBeCloseTo(100, 9);
  });

  it('refuses a ray that meets nothing', () => {
    const away: PointMm[] = [
      [100, 100],
      [200, 100],
      [200, 200],
    ];
    expect(() => outlineRadius(away)(270)).toThrow(InputFault);
  });
});
