/**
 * What must hold of the soundness field on any section: not how good it is, but that it behaves.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../../packages/engine/src/random.ts';
import {
  type FieldDrilling,
  type FieldInput,
  type FieldPosterior,
  soundnessPosterior,
} from '../../../packages/engine/src/section/field/index.ts';
import type { PointMm, RingMm } from '../../../packages/engine/src/section/types.ts';
import type { ZoneKind } from '../../../packages/engine/src/trace/types.ts';
import { drillSection, readingFromZones } from './drillSection.ts';
import { JUDGING_FAMILIES, TUNING_FAMILIES, trueSection } from './trueSection.ts';

const DRAWS = 250;
/** Of a median from 250 draws whose spread is at most about 0.1: three standard errors and some. */
const MEDIAN_NOISE = 0.03;

const BARK_MM = 15;
const circle = (radiusMm: number): RingMm =>
  Array.from({ length: 360 }, (_, k): PointMm => {
    const a = (2 * Math.PI * k) / 360;
    return [radiusMm * Math.sin(a), radiusMm * Math.cos(a)];
  });

function drilling(azimuthDeg: number, parts: [ZoneKind, number][], offRadialDeg = 0): FieldDrilling {
  const stretches = parts.map(([kind, lengthMm]) => ({ kind, lengthMm }));
  return {
    id: `at ${azimuthDeg}`,
    pose: { azimuthDeg, offRadialDeg, downDeg: 0 },
    reading: readingFromZones(stretches),
  };
}

const run = (input: FieldInput, seed = 1, draws = DRAWS) =>
  soundnessPosterior(input, randomFrom(seed), draws);

function quantile(posterior: FieldPosterior, direction: number, share: number): number {
  const values = Float64Array.from(
    { length: posterior.draws },
    (_, d) => posterior.remaining[d * 36 + direction]!,
  );
  values.sort();
  return values[Math.round(share * (values.length - 1))]!;
}

/** Mean soundness of the picture at a point, x east and y north. */
function meanAt(posterior: FieldPosterior, x: number, y: number): number {
  const { azimuthsDeg, shells, cambiumMm, mean, centreMm } = posterior.picture;
  const [dx, dy] = [x - centreMm[0], y - centreMm[1]];
  const turns = Math.atan2(dx, dy) / (2 * Math.PI);
  const k = Math.round((turns - Math.floor(turns)) * azimuthsDeg.length) % azimuthsDeg.length;
  const i = Math.min(
    shells.length - 1,
    Math.round((Math.hypot(dx, dy) / cambiumMm[k]!) * (shells.length - 1)),
  );
  return mean[k * shells.length + i]!;
}

const families = [...Object.keys(TUNING_FAMILIES), ...Object.keys(JUDGING_FAMILIES)];
const anySection = fc.record({
  family: fc.constantFrom(...families),
  seed: fc.integer({ min: 1, max: 1e6 }),
});

describe('soundness posterior', () => {
  it('gives the same bytes for the same seed', () => {
    const { input } = drillSection(trueSection('keyhole', 3), { drillings: 5, seed: 4, readings: 'zones' });
    const a = run(input, 7, 100);
    const b = run(input, 7, 100);
    expect(Buffer.from(a.remaining.buffer).equals(Buffer.from(b.remaining.buffer))).toBe(true);
    expect(a.picture).toEqual(b.picture);
    const c = run(input, 8, 100);
    expect(Buffer.from(a.remaining.buffer).equals(Buffer.from(c.remaining.buffer))).toBe(false);
  });

  it('takes a surface found sound for less chance of an opening, and an opening seen for wood that is gone', () => {
    const outline = circle(400);
    const wall: [ZoneKind, number][] = [
      ['bark', BARK_MM],
      ['sound', 110],
      ['void', 200],
    ];
    const drillings = [0, 90, 180, 270].map((a) => drilling(a, wall));
    const unseen = run({ outline, barkMm: BARK_MM, drillings });
    const sound = run({
      outline,
      barkMm: BARK_MM,
      drillings,
      surface: [{ fromDeg: 0, toDeg: 0, state: 'sound' }],
    });
    const open = run({
      outline,
      barkMm: BARK_MM,
      drillings,
      surface: [
        { fromDeg: 65, toDeg: 25, state: 'sound' },
        { fromDeg: 25, toDeg: 65, state: 'open' },
      ],
    });
    const width = (p: FieldPosterior, d: number) => quantile(p, d, 0.95) - quantile(p, d, 0.05);
    for (const d of [0, 9]) {
      expect(width(sound, d)).toBeLessThan(width(unseen, d));
      expect(quantile(open, d, 0.95)).toBeLessThan(quantile(sound, d, 0.05));
    }
    const [east, north] = [375 * Math.sin(Math.PI / 4), 375 * Math.cos(Math.PI / 4)];
    expect(meanAt(open, east, north)).toBeLessThan(0.2);
    expect(meanAt(sound, east, north)).toBeGreaterThan(0.95);
  });

  it('is wide, not sure, before any drilling', () => {
    const posterior = run({ outline: circle(400), barkMm: BARK_MM, drillings: [] });
    expect(quantile(posterior, 0, 0.95) - quantile(posterior, 0, 0.05)).toBeGreaterThan(0.4);
  });

  it('says sound of a stem drilled sound from all sides', () => {
    const drillings = [0, 60, 120, 180, 240, 300].map((a) =>
      drilling(a, [
        ['bark', 15],
        ['sound', 380],
      ]),
    );
    const posterior = run({ outline: circle(400), barkMm: BARK_MM, drillings });
    expect(quantile(posterior, 0, 0.5)).toBeGreaterThan(0.98);
    expect(quantile(posterior, 0, 0.05)).toBeGreaterThan(0.85);
  });

  it('finds the strength of a round hollow met by six needles', () => {
    const wall = 100;
    const drillings = [10, 70, 130, 190, 250, 310].map((a) =>
      drilling(a, [
        ['bark', 15],
        ['sound', wall],
        ['void', 200],
      ]),
    );
    const posterior = run({ outline: circle(400), barkMm: BARK_MM, drillings });
    const truth = 1 - (1 - wall / 385) ** 4;
    for (let d = 0; d < 36; d += 6) {
      expect(quantile(posterior, d, 0.05)).toBeLessThan(truth);
      expect(quantile(posterior, d, 0.95)).toBeGreaterThan(truth);
      expect(quantile(posterior, d, 0.95) - quantile(posterior, d, 0.05)).toBeLessThan(0.25);
    }
  });

  it('holds what lies beyond the end of short needles for unknown', () => {
    const drillings = [0, 90, 180, 270].map((a) =>
      drilling(a, [
        ['bark', 15],
        ['sound', 120],
      ]),
    );
    const posterior = run({ outline: circle(500), barkMm: BARK_MM, drillings });
    const middle = meanAt(posterior, 0, 0);
    expect(middle).toBeGreaterThan(0.1);
    expect(middle).toBeLessThan(0.98);
    expect(meanAt(posterior, 0, 450)).toBeGreaterThan(0.97);
  });

  it('places what an off-radial needle meets on its true line', () => {
    // Entering at north and turned 30 degrees clockwise seen from above, it heads south-south-west.
    const straight = [90, 180, 270].map((a) =>
      drilling(a, [
        ['bark', 15],
        ['sound', 370],
      ]),
    );
    const skew = drilling(
      0,
      [
        ['bark', 15],
        ['sound', 200],
        ['void', 150],
      ],
      30,
    );
    const posterior = run({ outline: circle(400), barkMm: BARK_MM, drillings: [...straight, skew] });
    const depth = 280;
    const x = -depth * Math.sin(Math.PI / 6);
    const y = 400 - depth * Math.cos(Math.PI / 6);
    expect(meanAt(posterior, x, y)).toBeLessThan(0.15);
    expect(meanAt(posterior, -x, y)).toBeGreaterThan(0.5);
  });

  it('takes air or bark far inside the outline for no strength', () => {
    const sound = [90, 180, 270].map((a) =>
      drilling(a, [
        ['bark', 15],
        ['sound', 300],
      ]),
    );
    for (const kind of ['air', 'bark', 'void'] as const) {
      const open = drilling(0, [
        [kind, 150],
        ['sound', 150],
      ]);
      const posterior = run({ outline: circle(400), barkMm: BARK_MM, drillings: [...sound, open] });
      expect(meanAt(posterior, 0, 340)).toBeLessThan(0.1);
      expect(meanAt(posterior, 0, 150)).toBeGreaterThan(0.9);
    }
  });

  it('turns with the stem', () => {
    fc.assert(
      fc.property(anySection, fc.integer({ min: 1, max: 35 }), ({ family, seed }, steps) => {
        const { input } = drillSection(trueSection(family, seed), { drillings: 6, seed, readings: 'zones' });
        const angle = (2 * Math.PI * steps) / 36;
        const turned: FieldInput = {
          ...input,
          outline: input.outline.map(
            ([x, y]): PointMm => [
              x * Math.cos(angle) + y * Math.sin(angle),
              y * Math.cos(angle) - x * Math.sin(angle),
            ],
          ),
          drillings: input.drillings.map((d) => ({
            ...d,
            pose: { ...d.pose, azimuthDeg: d.pose.azimuthDeg + 10 * steps },
          })),
        };
        const a = run(input);
        const b = run(turned);
        for (let d = 0; d < 36; d += 4) {
          const width = quantile(a, d, 0.95) - quantile(a, d, 0.05);
          const there = quantile(b, (d + steps) % 36, 0.5);
          expect(Math.abs(quantile(a, d, 0.5) - there)).toBeLessThan(MEDIAN_NOISE + 0.2 * width);
        }
      }),
      { numRuns: 5, seed: 1 },
    );
  });

  it('is not lowered much by one more drilling that is sound all through', () => {
    fc.assert(
      fc.property(anySection, ({ family, seed }) => {
        const section = trueSection(family, seed);
        const { input } = drillSection(section, { drillings: 4, seed, readings: 'zones' });
        const gap = (input.drillings[0]!.pose.azimuthDeg + 45) % 360;
        const more = drilling(gap, [
          ['bark', section.barkMm],
          ['sound', 250],
        ]);
        const before = run(input);
        const after = run({ ...input, drillings: [...input.drillings, more] });
        for (let d = 0; d < 18; d += 3) {
          const width = quantile(before, d, 0.95) - quantile(before, d, 0.05);
          expect(quantile(after, d, 0.5)).toBeGreaterThan(
            quantile(before, d, 0.5) - MEDIAN_NOISE - 0.25 * width,
          );
        }
      }),
      { numRuns: 6, seed: 2 },
    );
  });

  it('narrows on average with more drillings', () => {
    const width = (drillings: number) => {
      let sum = 0;
      families
        .filter((_, k) => k % 2 === 0)
        .forEach((family, k) => {
          const { input } = drillSection(trueSection(family, 900 + k), {
            drillings,
            seed: k,
            readings: 'zones',
          });
          const posterior = run(input, 1, 200);
          for (let d = 0; d < 18; d += 3) sum += quantile(posterior, d, 0.95) - quantile(posterior, d, 0.05);
        });
      return sum;
    };
    const widths = [2, 4, 8].map(width);
    expect(widths[1]).toBeLessThan(widths[0]!);
    expect(widths[2]).toBeLessThan(widths[1]!);
  });
});
