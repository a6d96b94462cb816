import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { ringModulusByDirection } from './capacity.ts';
import { outlineRing } from './outline.ts';
import { sectionProperties } from './properties.ts';
import { RAD } from './ring.ts';
import type { Outline, PointMm, RingMm } from './types.ts';

/** Rounding only. */
const EXACT = 1e-9;

const near = (value: number, truth: number, scale = Math.abs(truth), tolerance = EXACT) =>
  expect(Math.abs(value - truth) / scale, `${value} against ${truth}`).toBeLessThan(tolerance);

/** A star-shaped ring of uneven radii about a point. */
const blob = (about: fc.Arbitrary<PointMm>, sizes: { min: number; max: number }) =>
  fc
    .tuple(
      about,
      fc.array(fc.integer(sizes), { minLength: 3, maxLength: 12 }),
      fc.integer({ min: 0, max: 359 }),
    )
    .map(([[x, y], radii, turn]) =>
      radii.map((r, i): PointMm => {
        const a = turn * RAD + (2 * Math.PI * i) / radii.length;
        return [x + r * Math.sin(a), y + r * Math.cos(a)];
      }),
    );

const anywhere = fc
  .tuple(fc.integer({ min: -350, max: 350 }), fc.integer({ min: -350, max: 350 }))
  .map((p): PointMm => p);
const outlines = blob(fc.constant([0, 0] as PointMm), { min: 300, max: 600 });
const voidLists = fc.array(blob(anywhere, { min: 20, max: 150 }), { maxLength: 4 });

const turned = (ring: RingMm, deg: number, [dx, dy]: PointMm = [0, 0]): PointMm[] =>
  // Clockwise, as azimuths go.
  ring.map(([x, y]) => [
    x * Math.cos(deg * RAD) + y * Math.sin(deg * RAD) + dx,
    y * Math.cos(deg * RAD) - x * Math.sin(deg * RAD) + dy,
  ]);

const polygon = (points: RingMm): Outline => ({ kind: 'polygon', points: [...points] });

describe('laws that hold for every section', () => {
  it('moved and turned by tens of degrees, it is the same section', () => {
    fc.assert(
      fc.property(
        outlines,
        voidLists,
        fc.integer({ min: 0, max: 35 }),
        fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 })),
        (outline, voids, tens, shift) => {
          const p = sectionProperties({ outline: polygon(outline), voids });
          const q = sectionProperties({
            outline: polygon(turned(outline, 10 * tens, shift)),
            voids: voids.map((ring) => turned(ring, 10 * tens, shift)),
          });
          near(q.areaMm2, p.areaMm2);
          near(q.principal.mostMm4, p.principal.mostMm4);
          near(q.principal.leastMm4, p.principal.leastMm4);
          near(q.least.modulusMm3, p.least.modulusMm3);
          const [[cx, cy]] = turned([p.centroidMm], 10 * tens, shift) as [PointMm];
          near(q.centroidMm[0], cx, 1000);
          near(q.centroidMm[1], cy, 1000);
          p.modulusMm3.forEach(({ value }, k) => {
            near(q.modulusMm3[(k + tens) % 36]!.value, value);
          });
        },
      ),
      { numRuns: 40 },
    );
  });

  it('scaled by s: area s², second moments s⁴, moduli s³, remaining alike', () => {
    fc.assert(
      fc.property(outlines, voidLists, fc.double({ min: 0.2, max: 9, noNaN: true }), (outline, voids, s) => {
        const grown = (ring: RingMm) => ring.map(([x, y]): PointMm => [s * x, s * y]);
        const p = sectionProperties({ outline: polygon(outline), voids });
        const q = sectionProperties({ outline: polygon(grown(outline)), voids: voids.map(grown) });
        near(q.areaMm2, p.areaMm2 * s * s);
        near(q.ixxMm4, p.ixxMm4 * s ** 4);
        near(q.ixyMm4, p.ixyMm4 * s ** 4, p.principal.mostMm4 * s ** 4);
        p.modulusMm3.forEach(({ value }, k) => {
          near(q.modulusMm3[k]!.value, value * s ** 3);
          near(q.remaining[k]!.value, p.remaining[k]!.value);
        });
      }),
      { numRuns: 40 },
    );
  });

  it('taking more wood never raises area or either principal second moment', () => {
    // Section modulus may rise (a projecting lip taken off): that is not claimed.
    fc.assert(
      fc.property(outlines, voidLists, blob(anywhere, { min: 20, max: 150 }), (outline, voids, more) => {
        const p = sectionProperties({ outline: polygon(outline), voids });
        const q = sectionProperties({ outline: polygon(outline), voids: [...voids, more] });
        const slack = 1 + EXACT;
        expect(q.areaMm2).toBeLessThanOrEqual(p.areaMm2 * slack);
        expect(q.principal.leastMm4).toBeLessThanOrEqual(p.principal.leastMm4 * slack);
        expect(q.principal.mostMm4).toBeLessThanOrEqual(p.principal.mostMm4 * slack);
      }),
      { numRuns: 40 },
    );
  });

  it('does not care for turning sense, first corner or order of rings', () => {
    fc.assert(
      fc.property(outlines, voidLists, fc.integer({ min: 0, max: 11 }), (outline, voids, start) => {
        const from = (ring: RingMm) => {
          const k = start % ring.length;
          return [...ring.slice(k), ...ring.slice(0, k)].reverse();
        };
        const p = sectionProperties({ outline: polygon(outline), voids });
        const q = sectionProperties({ outline: polygon(from(outline)), voids: voids.map(from).reverse() });
        near(q.areaMm2, p.areaMm2);
        near(q.ixxMm4, p.ixxMm4);
        expect(q.pieces).toBe(p.pieces);
        p.modulusMm3.forEach(({ value }, k) => {
          near(q.modulusMm3[k]!.value, value);
        });
      }),
      { numRuns: 40 },
    );
  });

  it('the least modulus is no more than any of the 36, opposite directions are alike', () => {
    fc.assert(
      fc.property(outlines, voidLists, (outline, voids) => {
        const p = sectionProperties({ outline: polygon(outline), voids });
        p.modulusMm3.forEach(({ value }, k) => {
          expect(p.least.modulusMm3).toBeLessThanOrEqual(value * (1 + EXACT));
          expect(p.modulusMm3[(k + 18) % 36]!.value).toBe(value);
        });
        const ring = ringModulusByDirection(outline, voids);
        p.modulusMm3.forEach(({ value }, k) => {
          near(ring[k]!, value);
        });
      }),
      { numRuns: 40 },
    );
  });

  it('a smooth outline and its own many-sided ring agree, voids across the edge included', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 300, max: 600 }), { minLength: 1, maxLength: 9 }),
        voidLists,
        (radii, voids) => {
          const outline: Outline = {
            kind: 'radii',
            radii: radii.map((radiusMm, i) => ({ azimuthDeg: 7 + (360 * i) / radii.length, radiusMm })),
          };
          const p = sectionProperties({ outline, voids });
          const q = sectionProperties({ outline: polygon(outlineRing(outline)), voids });
          // The ring has the curve's area and radii to 1e-5.
          near(q.areaMm2, p.areaMm2, p.areaMm2, 1e-4);
          near(q.principal.leastMm4, p.principal.leastMm4, p.principal.leastMm4, 3e-4);
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe('voids', () => {
  const circle: Outline = { kind: 'circle', diameterMm: 1000 };
  const box = (x: number, y: number, w: number, h: number): PointMm[] => [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ];

  it('overlapping count once, touching along an edge leave no skin between them', () => {
    const one = sectionProperties({ outline: circle, voids: [box(-200, -100, 400, 200)] });
    const halves = sectionProperties({
      outline: circle,
      voids: [box(-200, -100, 200 + 1e-8, 200), box(0, -100, 200, 200)],
    });
    near(halves.areaMm2, one.areaMm2);
    const overlapping = sectionProperties({
      outline: circle,
      voids: [box(-200, -100, 300, 200), box(-100, -100, 300, 200)],
    });
    near(overlapping.iyyMm4, one.iyyMm4);
  });

  it('a void drawn along a polygon’s own edge opens it: no skin of wood is left at the edge', () => {
    const outline = turned(box(-300, -200, 600, 400), 17);
    const notch = turned(
      [
        [-100, 200 - 3e-14],
        [100, 200 + 5e-14],
        [100, 50],
        [-100, 50],
      ],
      17,
    );
    const past = turned(box(-100, 50, 200, 900), 17);
    const p = sectionProperties({ outline: polygon(outline), voids: [notch] });
    const q = sectionProperties({ outline: polygon(outline), voids: [past] });
    near(p.areaMm2, q.areaMm2);
    expect(p.pieces).toBe(1);
    p.modulusMm3.forEach(({ value }, k) => {
      near(value, q.modulusMm3[k]!.value);
    });
  });

  it('a void drawn along a circle in short sides leaves shreds, which are left out and said', () => {
    const arc = Array.from(
      { length: 19 },
      (_, i): PointMm => [500 * Math.sin((5 * i - 45) * RAD), 500 * Math.cos((5 * i - 45) * RAD)],
    );
    const p = sectionProperties({ outline: circle, voids: [[[0, 0], ...arc]] });
    const q = sectionProperties({
      outline: circle,
      voids: [
        [
          [0, 0],
          [-900, 900],
          [900, 900],
        ],
      ],
    });
    expect(p.pieces).toBe(1);
    expect(p.warnings.join()).toContain('shreds');
    near(p.areaMm2, q.areaMm2, q.areaMm2, 1e-8);
    p.modulusMm3.forEach(({ value }, k) => {
      near(value, q.modulusMm3[k]!.value, value, 1e-8);
    });
  });

  it('outside the outline takes nothing, and is remarked on', () => {
    const p = sectionProperties({ outline: circle, voids: [box(600, 600, 50, 50)] });
    near(p.areaMm2, Math.PI * 500 ** 2);
    expect(p.warnings.join()).toContain('voids[0] lies outside');
  });

  it('a hair from the outside is remarked on', () => {
    const p = sectionProperties({ outline: circle, voids: [box(-50, 300, 100, 197.2)] });
    expect(p.warnings.join()).toMatch(/voids\[0\] comes within 0\.\d+ mm/);
  });

  it('parting the wood is said, with the capacity of the pieces alone', () => {
    const p = sectionProperties({ outline: circle, voids: [box(-600, -20, 1200, 40)] });
    expect(p.pieces).toBe(2);
    expect(p.warnings.join()).toContain('2 pieces');
    expect(p.piecesAlone!.remaining[0]!.value).toBeLessThan(0.5);
    expect(p.remaining[0]!.value).toBeGreaterThan(0.95);
    expect(sectionProperties({ outline: circle, voids: [] }).piecesAlone).toBeNull();
  });

  it.each<[string, RingMm, string]>([
    ['everything gone', box(-600, -600, 1200, 1200), 'all the wood'],
    [
      'two points',
      [
        [0, 0],
        [10, 10],
      ],
      'voids[0]',
    ],
    [
      'crossing itself',
      [
        [0, 0],
        [100, 100],
        [100, 0],
        [0, 100],
      ],
      'crosses',
    ],
    [
      'no breadth',
      [
        [0, 0],
        [100, 100],
        [200, 200],
      ],
      'two sides',
    ],
    [
      'not numbers',
      [
        [0, 0],
        [Number.NaN, 1],
        [2, 2],
      ],
      'voids[0][1]',
    ],
  ])('%s is refused', (_, ring, words) => {
    const attempt = () => sectionProperties({ outline: circle, voids: [ring] });
    expect(attempt).toThrow(InputFault);
    expect(attempt).toThrow(words);
  });
});
