/**
 * Random outlines with random voids, cut out by Shapely (GEOS) and integrated over slabs with NumPy:
 * section-shapely.py says how, and how to remake section-shapely.json.
 */
import { cambiumRing, type PointMm, ringModulusByDirection, sectionProperties } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import fixture from './section-shapely.json' with { type: 'json' };

/** The project's own mark for polygons. */
const EXACT = 1e-9;
/** Hollow corners are rounded in 5° steps here and in 1.4° steps there. */
const MOVED_IN = 1e-3;

const cases = fixture.cases as unknown as {
  outline: PointMm[];
  voids: PointMm[][];
  pieces: number;
  opens: boolean;
  areaMm2: number;
  centroidMm: [number, number];
  ixxMm4: number;
  iyyMm4: number;
  ixyMm4: number;
  modulusMm3: number[];
  soundModulusMm3: number[];
  movedInMm: number;
  movedInAreaMm2: number;
}[];

const area = (ring: readonly PointMm[]) =>
  Math.abs(
    ring.reduce((sum, [x, y], i) => {
      const [px, py] = ring[(i + ring.length - 1) % ring.length]!;
      return sum + (px * y - x * py) / 2;
    }, 0),
  );

const off = (value: number, truth: number, scale = Math.abs(truth)) => Math.abs(value - truth) / scale;

describe('sections cut out and integrated by Shapely and NumPy', () => {
  it('has forty of them, many opening to the outside and some in pieces', () => {
    expect(cases).toHaveLength(40);
    expect(cases.filter((c) => c.opens).length).toBeGreaterThan(15);
    expect(cases.filter((c) => c.pieces > 1).length).toBeGreaterThan(3);
  });

  it.each(cases.map((c, i) => [i, c] as const))('agrees on section %i', (_, truth) => {
    const ours = sectionProperties({
      outline: { kind: 'polygon', points: truth.outline },
      voids: truth.voids,
    });
    const size = Math.sqrt(truth.areaMm2);
    const stiff = truth.ixxMm4 + truth.iyyMm4;
    expect(ours.pieces).toBe(truth.pieces);
    expect(off(ours.areaMm2, truth.areaMm2)).toBeLessThan(EXACT);
    expect(off(ours.centroidMm[0], truth.centroidMm[0], size)).toBeLessThan(EXACT);
    expect(off(ours.centroidMm[1], truth.centroidMm[1], size)).toBeLessThan(EXACT);
    expect(off(ours.ixxMm4, truth.ixxMm4)).toBeLessThan(EXACT);
    expect(off(ours.iyyMm4, truth.iyyMm4)).toBeLessThan(EXACT);
    expect(off(ours.ixyMm4, truth.ixyMm4, stiff)).toBeLessThan(EXACT);
    ours.modulusMm3.forEach(({ directionDeg, value }, k) => {
      expect(directionDeg).toBe(10 * k);
      expect(off(value, truth.modulusMm3[k]!)).toBeLessThan(EXACT);
      expect(off(ours.remaining[k]!.value, truth.modulusMm3[k]! / truth.soundModulusMm3[k]!)).toBeLessThan(
        EXACT,
      );
    });
    ringModulusByDirection(truth.outline, truth.voids).forEach((value, k) => {
      expect(off(value, truth.modulusMm3[k]!)).toBeLessThan(EXACT);
    });
    ringModulusByDirection(truth.outline).forEach((value, k) => {
      expect(off(value, truth.soundModulusMm3[k]!)).toBeLessThan(EXACT);
    });
  });

  it.each(cases.map((c, i) => [i, c] as const))('moves outline %i in by the same bark', (_, truth) => {
    const inner = cambiumRing(truth.outline, truth.movedInMm);
    expect(off(area(inner), truth.movedInAreaMm2)).toBeLessThan(MOVED_IN);
  });
});
