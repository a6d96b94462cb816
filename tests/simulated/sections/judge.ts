/**
 * Judging the soundness field on simulated sections: interval against truth by direction, and the trade's own ways
 * beside it.
 */
import { randomFrom } from '../../../packages/engine/src/random.ts';
import { arcSpanDeg } from '../../../packages/engine/src/section/arc.ts';
import { cambiumRing } from '../../../packages/engine/src/section/cambium.ts';
import { ringModulusByDirection } from '../../../packages/engine/src/section/capacity.ts';
import { soundnessPosterior } from '../../../packages/engine/src/section/field/index.ts';
import { needleLine } from '../../../packages/engine/src/section/needle.ts';
import { outlineRadius } from '../../../packages/engine/src/section/outline.ts';
import { contains } from '../../../packages/engine/src/section/ring.ts';
import type { NeedlePose, PointMm, RingMm, SurfaceArc } from '../../../packages/engine/src/section/types.ts';
import { type DrillingPlan, drillSection } from './drillSection.ts';
import { trueSection } from './trueSection.ts';

export const BASELINES = [
  'smallest wall',
  'mean wall',
  'walls joined straight',
  'walls joined straight, openings cut out',
] as const;
export type Baseline = (typeof BASELINES)[number];

/** One direction of one section. Directions repeat after 180 degrees, so 18 are kept. */
export interface Judged {
  family: string;
  drillings: number;
  section: number;
  truth: number;
  p05: number;
  p50: number;
  p95: number;
  baseline: Record<Baseline, number>;
}

/** Numbers are compared as they are printed, to four decimals. */
const printed = (x: number) => Math.round(x * 1e4) / 1e4;

/** Simulates, drills and judges one section; `seed` makes the section and the drilling. */
export function judgeSection(
  family: string,
  seed: number,
  plan: Omit<DrillingPlan, 'seed'>,
  draws: number,
): Judged[] {
  const section = trueSection(family, seed);
  const { input } = drillSection(section, { ...plan, seed });
  const { remaining } = soundnessPosterior(input, randomFrom(seed), draws);
  const baselines = baselineEstimates({
    ...input,
    drillings: input.drillings.map(({ pose, reading }) => ({ pose, wallMm: reading.residualWallMm })),
  });
  const values = new Float64Array(draws);
  return Array.from({ length: 18 }, (_, d) => {
    for (let i = 0; i < draws; i++) values[i] = remaining[i * 36 + d]!;
    values.sort();
    const at = (share: number) => {
      const x = share * (draws - 1);
      const i = Math.min(draws - 2, Math.floor(x));
      return printed(values[i]! + (values[i + 1]! - values[i]!) * (x - i));
    };
    return {
      family,
      drillings: plan.drillings,
      section: seed,
      truth: printed(section.remaining[d]!),
      p05: at(0.05),
      p50: at(0.5),
      p95: at(0.95),
      baseline: Object.fromEntries(BASELINES.map((b) => [b, baselines[b][d]!])) as Judged['baseline'],
    };
  });
}

/** What the trade's ways go by: outline over bark, bark, each needle's residual wall, what was noted of the surface. */
export interface DrilledWalls {
  outline: RingMm;
  barkMm: number;
  drillings: { pose: NeedlePose; wallMm: number }[];
  surface?: readonly SurfaceArc[];
}

/**
 * What the trade's ways say of the same readings: a ring with the smallest or the mean wall, 1 − (1 − t/R)⁴; and a hollow
 * whose corners are the ends of the walls, joined straight (with fewer than three drillings, the mean wall); and the same
 * with what was seen to be open or decayed at the surface cut out, down to that hollow.
 */
export function baselineEstimates(input: DrilledWalls): Record<Baseline, number[]> {
  const wood = cambiumRing(input.outline, input.barkMm);
  const radius = outlineRadius(wood);
  const ends: { azimuthDeg: number; radiusMm: number; share: number }[] = [];
  for (const { pose, wallMm } of input.drillings) {
    const line = needleLine(input.outline, pose);
    const whole = radius(pose.azimuthDeg);
    const depth = wallMm * line.horizontalPerDepth;
    const across = Math.min(whole, depth);
    ends.push({ azimuthDeg: pose.azimuthDeg, radiusMm: Math.max(0, whole - across), share: across / whole });
  }
  const ring = (t: number) => new Array<number>(18).fill(1 - (1 - t) ** 4);
  const shares = ends.map((e) => e.share);
  const mean = ring(shares.reduce((a, b) => a + b, 0) / shares.length);
  const corners = ends
    .sort((a, b) => a.azimuthDeg - b.azimuthDeg)
    .map(({ azimuthDeg, radiusMm }): PointMm => {
      const a = (azimuthDeg * Math.PI) / 180;
      const r = Math.max(1, 0.999 * radiusMm);
      return [r * Math.sin(a), r * Math.cos(a)];
    });
  const intact = ringModulusByDirection(wood);
  const left = (voids: RingMm[]) =>
    Array.from(ringModulusByDirection(wood, voids), (z, d) => z / intact[d]!).slice(0, 18);
  const joined = corners.length >= 3 ? left([corners]) : mean;
  const inner = (1 - shares.reduce((a, b) => a + b, 0) / shares.length) * outlineMean(wood);
  const hollow = corners.length >= 3 ? corners : ringOf(() => Math.max(1, inner));
  const depth = outlineRadius(hollow);
  const holds = hollow.length >= 3 && contains(hollow, 0, 0);
  const cut = (input.surface ?? [])
    .filter(({ state }) => state !== 'sound')
    .map((arc) => opening(arc, (azimuthDeg) => (holds ? depth(azimuthDeg) : 1), radius));
  return {
    'smallest wall': ring(Math.min(...shares)),
    'mean wall': mean,
    'walls joined straight': joined,
    'walls joined straight, openings cut out': cut.length ? left([hollow, ...cut]) : joined,
  };
}

const outlineMean = (ring: RingMm) => ring.reduce((sum, [x, y]) => sum + Math.hypot(x, y), 0) / ring.length;

const ringOf = (radiusMm: (azimuthDeg: number) => number): RingMm =>
  Array.from({ length: 120 }, (_, k) => place(3 * k, radiusMm(3 * k)));

function place(azimuthDeg: number, radiusMm: number): PointMm {
  const a = (azimuthDeg * Math.PI) / 180;
  return [radiusMm * Math.sin(a), radiusMm * Math.cos(a)];
}

/** The part of the wood between the ends of an arc and outside the hollow, reaching past the bark. */
function opening(
  { fromDeg, toDeg }: SurfaceArc,
  innerMm: (azimuthDeg: number) => number,
  outerMm: (azimuthDeg: number) => number,
): RingMm {
  const span = arcSpanDeg(fromDeg, toDeg);
  const steps = Math.max(4, Math.ceil(span / 5));
  const azimuths = Array.from({ length: steps + 1 }, (_, k) => (fromDeg + (span * k) / steps) % 360);
  return [
    ...azimuths.map((a) => place(a, 1.3 * outerMm(a))),
    ...azimuths.reverse().map((a) => place(a, 0.99 * innerMm(a))),
  ];
}

/** Standard error of a coverage: directions of one section go together, so sections are what is counted. */
export function standardErrorOf(rows: readonly Judged[]): number {
  const bySection = new Map<string, number[]>();
  for (const r of rows) {
    const key = `${r.family} ${r.section} ${r.drillings}`;
    const list = bySection.get(key) ?? [];
    list.push(r.truth >= r.p05 && r.truth <= r.p95 ? 1 : 0);
    bySection.set(key, list);
  }
  const shares = [...bySection.values()].map((l) => l.reduce((a, b) => a + b, 0) / l.length);
  const mean = shares.reduce((a, b) => a + b, 0) / shares.length;
  const variance = shares.reduce((s, x) => s + (x - mean) ** 2, 0) / (shares.length - 1);
  return Math.sqrt(variance / shares.length);
}

export interface Coverage {
  rows: number;
  sections: number;
  covered: number;
  below: number;
  above: number;
  width: number;
  bias: number;
}

/** Share of truths held, shares below and above the interval, mean width, and mean of median less truth. */
export function coverageOf(rows: readonly Judged[]): Coverage {
  const mean = (f: (r: Judged) => number) => rows.reduce((s, r) => s + f(r), 0) / rows.length;
  return {
    rows: rows.length,
    sections: new Set(rows.map((r) => `${r.family} ${r.section} ${r.drillings}`)).size,
    covered: mean((r) => (r.truth >= r.p05 && r.truth <= r.p95 ? 1 : 0)),
    below: mean((r) => (r.truth < r.p05 ? 1 : 0)),
    above: mean((r) => (r.truth > r.p95 ? 1 : 0)),
    width: mean((r) => r.p95 - r.p05),
    bias: mean((r) => r.p50 - r.truth),
  };
}

/**
 * Mean width of a baseline's interval that holds the given share of these very truths: its errors' own quantiles added
 * to the estimate, cut to 0 and 1. Errors are taken as they are, and as shares of the estimated loss and strength; the
 * narrower of the two counts, so the baseline is shown at its best.
 */
export function baselineWidth(rows: readonly Judged[], baseline: Baseline, coverage: number): number {
  const scales: ((estimate: number) => number)[] = [() => 1, (e) => 0.02 + e * (1 - e)];
  const widths = scales.map((scale) => {
    const errors = rows
      .map((r) => (r.truth - r.baseline[baseline]) / scale(r.baseline[baseline]))
      .sort((a, b) => a - b);
    // The narrowest pair of quantiles that holds the share, as generous as can be to the baseline.
    const inside = Math.min(errors.length, Math.ceil(coverage * errors.length));
    let best = Number.POSITIVE_INFINITY;
    for (let i = 0; i + inside <= errors.length; i++) {
      const low = errors[i]!;
      const high = errors[i + inside - 1]!;
      let sum = 0;
      for (const r of rows) {
        const e = r.baseline[baseline];
        sum += Math.min(1, Math.max(0, e + high * scale(e))) - Math.min(1, Math.max(0, e + low * scale(e)));
      }
      best = Math.min(best, sum / rows.length);
    }
    return best;
  });
  return Math.min(...widths);
}
