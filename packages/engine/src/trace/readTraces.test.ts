import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulateTrace, type TraceStretch } from '../../../../tests/simulated/traces/simulateTrace.ts';
import { InputFault } from '../faults.ts';
import { drawnTrace } from './drawnTrace.ts';
import { readTraces } from './readTraces.ts';
import { type Trace, type TraceReading, ZONE_KINDS, type Zone } from './types.ts';

/** Rounding of sums of a few thousand probabilities. */
const SUM_TOLERANCE = 1e-9;
/** Edges may move this far when only the drill's settings or the sampling change, mm. */
const EDGE_TOLERANCE_MM = 1.5;

const bark: TraceStretch = { kind: 'bark', lengthMm: 12 };
const sound = (lengthMm: number): TraceStretch => ({ kind: 'sound', lengthMm });
const decayed = (lengthMm: number, share = 0.3): TraceStretch => ({ kind: 'decayed', lengthMm, share });
const hollow = (lengthMm: number): TraceStretch => ({ kind: 'void', lengthMm });

const read = (trace: Trace, barkMm?: number): TraceReading =>
  readTraces([{ id: 'd1', trace, ...(barkMm === undefined ? {} : { barkMm }) }])[0]!;
const kinds = (zones: readonly Zone[]) => zones.map((z) => z.kind);

describe('readTraces', () => {
  it('reads a pocket between sound wood, and the wall before it', () => {
    const { trace } = simulateTrace({ seed: 4, stretches: [bark, sound(90), decayed(30), sound(100)] });
    const r = read(trace);
    expect(kinds(r.zones)).toEqual(['bark', 'sound', 'decayed', 'sound']);
    expect(Math.abs(r.residualWallMm - 90)).toBeLessThan(EDGE_TOLERANCE_MM);
    expect(r.residualWallAtLeast).toBe(false);
    expect(r.residualWallInterval.p05).toBeLessThan(90);
    expect(r.residualWallInterval.p95).toBeGreaterThan(90);
    expect(Math.abs(r.woodFromMm - 12)).toBeLessThan(EDGE_TOLERANCE_MM);
  });

  it('says that the wall is at least what was drilled when no unsound wood was met', () => {
    const r = read(simulateTrace({ seed: 5, stretches: [bark, sound(200)] }).trace);
    expect(kinds(r.zones)).toEqual(['bark', 'sound']);
    expect(r.residualWallAtLeast).toBe(true);
    expect(Math.abs(r.residualWallMm - 200)).toBeLessThan(EDGE_TOLERANCE_MM);
  });

  it('holds friction still through a void', () => {
    const r = read(
      simulateTrace({
        seed: 6,
        frictionPctPerMm: 0.06,
        stretches: [bark, sound(100), hollow(60), sound(80)],
      }).trace,
    );
    const within = r.frictionPct.filter((_, i) => r.gridMm[i]! > 116 && r.gridMm[i]! < 168);
    expect(Math.max(...within) - Math.min(...within)).toBe(0);
    expect(kinds(r.zones)).toEqual(['bark', 'sound', 'void', 'sound']);
  });

  it('tells air beyond the far side from a void when the bark comes out as it went in', () => {
    const r = read(
      simulateTrace({
        seed: 7,
        stretches: [{ kind: 'air', lengthMm: 8 }, bark, sound(180), bark, { kind: 'air', lengthMm: 25 }],
      }).trace,
    );
    expect(kinds(r.zones)).toEqual(['air', 'bark', 'sound', 'bark', 'air']);
    expect(r.residualWallAtLeast).toBe(true);
  });

  it('believes no exit long before the outline puts it', () => {
    const { trace } = simulateTrace({
      seed: 8,
      stretches: [bark, sound(100), { kind: 'decayed', lengthMm: 12, share: 0.15 }, hollow(40)],
    });
    const [r] = readTraces([{ id: 'd1', trace, exitMm: 600 }]);
    const wood = r!.zones.findIndex((z) => z.kind === 'sound');
    expect(kinds(r!.zones.slice(wood))).not.toContain('air');
    expect(kinds(r!.zones.slice(wood))).not.toContain('bark');
    expect(r!.residualWallAtLeast).toBe(false);
  });

  it('judges a drilling that is rotten throughout by the sound wood of the others', () => {
    const of = (seed: number, wood: TraceStretch[]) =>
      simulateTrace({ seed, stretches: [bark, ...wood], zeroPct: 2, frictionPctPerMm: 0.03 }).trace;
    const readings = readTraces([
      { id: 'a', trace: of(11, [sound(220)]) },
      { id: 'b', trace: of(12, [decayed(220, 0.4)]) },
      { id: 'c', trace: of(13, [sound(80), decayed(60), sound(60)]) },
    ]);
    expect(readings[1]!.zones.some((z) => z.kind === 'sound')).toBe(false);
    expect(readings[1]!.residualWallMm).toBe(0);
    expect(readings[1]!.reference.restsOn).toBe('all drillings of the tree');
    for (const r of readings) {
      expect(r.reference.levelPct).toBeGreaterThan(38);
      expect(r.reference.levelPct).toBeLessThan(52);
    }
  });

  it('reads the first sound centimetres of a trace that is rotten beyond them', () => {
    const r = read(simulateTrace({ seed: 14, stretches: [bark, sound(25), decayed(230, 0.3)] }).trace);
    expect(r.zones.map((z) => z.kind).slice(0, 2)).toEqual(['bark', 'sound']);
    expect(Math.abs(r.residualWallMm - 25)).toBeLessThan(2 * EDGE_TOLERANCE_MM);
  });

  it('does not take ring-porous earlywood, knots or the pith for decay', () => {
    const r = read(
      simulateTrace({
        seed: 15,
        stretches: [bark, sound(280)],
        rings: 'ring-porous',
        ringMm: 4,
        features: [
          { atMm: 80, widthMm: 24, rise: 0.5 },
          { atMm: 200, widthMm: 10, rise: -0.2 },
        ],
      }).trace,
    );
    expect(kinds(r.zones)).toEqual(['bark', 'sound']);
  });

  it('finds a crack of 3 mm', () => {
    const r = read(
      simulateTrace({ seed: 16, stretches: [bark, sound(90), { kind: 'crack', lengthMm: 3 }, sound(90)] })
        .trace,
    );
    const crack = r.zones.find((z) => z.kind === 'crack');
    expect(crack).toBeDefined();
    expect(Math.abs((crack!.fromMm + crack!.toMm) / 2 - 103.5)).toBeLessThan(EDGE_TOLERANCE_MM);
  });

  it('warns of clipping, coarse sampling and an unsound end', () => {
    const clipped = read(
      simulateTrace({ seed: 17, soundLevelPct: 95, frictionPctPerMm: 0.05, stretches: [bark, sound(150)] })
        .trace,
    );
    expect(clipped.warnings.join(' ')).toMatch(/top of the scale/);
    const coarse = read(
      simulateTrace({ seed: 18, spacingMm: 1.8, stretches: [bark, sound(100), hollow(60)] }).trace,
    );
    expect(coarse.warnings.join(' ')).toMatch(/1\.8 mm apart/);
    expect(coarse.warnings.join(' ')).toMatch(/ended in unsound wood/);
  });

  it('names the drilling whose trace is at fault', () => {
    const { trace } = simulateTrace({ seed: 1, stretches: [bark, sound(50)] });
    trace.resistancePct[3] = Number.NaN;
    expect(() => readTraces([{ id: 'd7', trace }])).toThrow(InputFault);
    expect(() => readTraces([{ id: 'd7', trace }])).toThrow(/d7.*row 4/);
  });

  it('reads nothing from nothing', () => {
    expect(readTraces([])).toEqual([]);
  });

  it('stays in range on flat, all-zero and all-full traces', () => {
    for (const level of [0, 37, 100]) {
      const depthMm = Float64Array.from({ length: 800 }, (_, i) => 0.25 * i);
      const r = read({ depthMm, resistancePct: new Float64Array(800).fill(level) });
      expect(r.probability.every((p) => p >= 0 && p <= 1 + SUM_TOLERANCE)).toBe(true);
      expect(Number.isFinite(r.residualWallMm)).toBe(true);
      expect(Number.isFinite(r.residualWallInterval.p50)).toBe(true);
    }
  });
});

const stretchArbitrary = fc.oneof(
  fc.integer({ min: 20, max: 90 }).map(sound),
  fc
    .tuple(fc.integer({ min: 12, max: 50 }), fc.double({ min: 0.1, max: 0.45, noNaN: true }))
    .map(([l, s]) => decayed(l, s)),
  fc.integer({ min: 12, max: 60 }).map(hollow),
  fc.integer({ min: 20, max: 60 }).map((l): TraceStretch => ({ kind: 'incipient', lengthMm: l, share: 0.7 })),
);
const caseArbitrary = fc.record({
  seed: fc.integer({ min: 1, max: 1_000_000 }),
  wood: fc.array(stretchArbitrary, { minLength: 1, maxLength: 4 }),
  spacingMm: fc.constantFrom(0.05, 0.2, 0.9),
  noiseSdPct: fc.double({ min: 0.3, max: 4, noNaN: true }),
  rings: fc.constantFrom('none' as const, 'diffuse' as const, 'ring-porous' as const, 'conifer' as const),
});

describe('properties', () => {
  it('zones are in order, touch and cover; probabilities sum to one; the interval is in order', () => {
    fc.assert(
      fc.property(caseArbitrary, ({ wood, ...setting }) => {
        const { trace } = simulateTrace({ ...setting, stretches: [bark, sound(30), ...wood] });
        const r = read(trace);
        const { zones, gridMm, probability } = r;
        expect(zones[0]!.fromMm).toBeCloseTo(trace.depthMm[0]!, 9);
        expect(zones.at(-1)!.toMm).toBeCloseTo(trace.depthMm.at(-1)!, 9);
        zones.forEach((z, i) => {
          expect(z.toMm).toBeGreaterThan(z.fromMm);
          if (i > 0) {
            expect(z.fromMm).toBe(zones[i - 1]!.toMm);
            expect(z.kind).not.toBe(zones[i - 1]!.kind);
          }
          expect(z.confidence).toBeGreaterThanOrEqual(0);
          expect(z.confidence).toBeLessThanOrEqual(1 + SUM_TOLERANCE);
        });
        for (let i = 0; i < gridMm.length; i++) {
          let sum = 0;
          for (let k = 0; k < ZONE_KINDS.length; k++) sum += probability[i * ZONE_KINDS.length + k]!;
          expect(Math.abs(sum - 1)).toBeLessThan(SUM_TOLERANCE);
        }
        const { p05, p50, p95 } = r.residualWallInterval;
        expect(p05).toBeLessThanOrEqual(p50);
        expect(p50).toBeLessThanOrEqual(p95);
        expect(p05).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 15, seed: 1 },
    );
  });

  it('the same trace gives the same bytes', () => {
    const { trace } = simulateTrace({ seed: 3, stretches: [bark, sound(60), decayed(20), sound(40)] });
    expect(JSON.stringify(read(trace))).toBe(JSON.stringify(read(trace)));
  });

  it('gain and zero error of the drill leave the zones where they are', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100_000 }),
        fc.double({ min: 0.6, max: 1.4, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (seed, gain, offset) => {
          const { trace } = simulateTrace({ seed, stretches: [bark, sound(70), hollow(25), sound(70)] });
          const changed = {
            depthMm: trace.depthMm,
            resistancePct: trace.resistancePct.map((y) => gain * y + offset),
          };
          const a = read(trace).zones;
          const b = read(changed).zones;
          expect(kinds(b)).toEqual(kinds(a));
          for (const [i, z] of a.entries())
            expect(Math.abs(z.toMm - b[i]!.toMm)).toBeLessThan(EDGE_TOLERANCE_MM);
        },
      ),
      { numRuns: 10, seed: 2 },
    );
  });

  it('so does the spacing of the readings', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), fc.constantFrom(3, 10, 20), (seed, every) => {
        const { trace } = simulateTrace({
          seed,
          stretches: [{ kind: 'air', lengthMm: 8 }, bark, sound(70), decayed(30, 0.35), sound(70)],
          spacingMm: 0.05,
        });
        const thin = (v: Float64Array) => v.filter((_, i) => i % every === 0);
        const a = read(trace).zones;
        const b = read({ depthMm: thin(trace.depthMm), resistancePct: thin(trace.resistancePct) }).zones;
        expect(kinds(b)).toEqual(kinds(a));
        // The edge between air and ragged bark is a weak one; the others are held to.
        for (let i = 1; i + 1 < a.length; i++)
          expect(Math.abs(a[i]!.toMm - b[i]!.toMm)).toBeLessThan(EDGE_TOLERANCE_MM);
      }),
      { numRuns: 8, seed: 3 },
    );
  });

  it('hollowing out sound wood never thickens the wall', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), fc.integer({ min: 30, max: 120 }), (seed, at) => {
        const whole = simulateTrace({ seed, stretches: [bark, sound(180)] }).trace;
        const resistancePct = whole.resistancePct.map((y, i) => {
          const x = whole.depthMm[i]! - 12 - at;
          return x > 0 && x < 25 ? 2.5 + 0.02 * at + 0.1 * (y % 1) : y;
        });
        const before = read(whole).residualWallMm;
        const after = read({ depthMm: whole.depthMm, resistancePct }).residualWallMm;
        expect(after).toBeLessThanOrEqual(before + EDGE_TOLERANCE_MM);
        expect(Math.abs(after - at)).toBeLessThan(EDGE_TOLERANCE_MM);
      }),
      { numRuns: 8, seed: 4 },
    );
  });

  it('reads a needle that met no wood at all, however long, with chances that sum to 1', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100_000 }),
        fc.integer({ min: 60, max: 800 }),
        fc.integer({ min: 0, max: 25 }),
        (seed, lengthMm, barkMm) => {
          const { trace } = simulateTrace({
            seed,
            stretches: [hollow(lengthMm)],
            noiseSdPct: 1,
            zeroPct: 1,
            spacingMm: 0.5,
          });
          const r = read(trace, barkMm);
          for (let i = 0; i < r.gridMm.length; i++) {
            let sum = 0;
            for (let k = 0; k < ZONE_KINDS.length; k++) sum += r.probability[i * ZONE_KINDS.length + k]!;
            expect(Math.abs(sum - 1)).toBeLessThan(SUM_TOLERANCE);
          }
          expect(kinds(r.zones)).not.toContain('sound');
          expect(r.residualWallInterval.p50).toBe(0);
        },
      ),
      { numRuns: 12, seed: 6 },
    );
  });
});

describe('drawnTrace', () => {
  it('loses no spike and keeps to the columns asked for', () => {
    const { trace } = simulateTrace({ seed: 9, stretches: [bark, sound(200)] });
    trace.resistancePct[1234] = 99;
    const drawn = drawnTrace(trace, read(trace), 300);
    expect(drawn.depthMm.length).toBeLessThanOrEqual(300);
    expect(Math.max(...drawn.highPct)).toBe(99);
    expect(drawn.lowPct.every((low, i) => low <= drawn.highPct[i]!)).toBe(true);
    expect(drawn.frictionPct.every(Number.isFinite)).toBe(true);
  });
});
