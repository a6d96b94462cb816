/**
 * Pairs of simulated traces: a drilling and its repeat some years on, through the same wood, with known growth at the
 * cambium and known movement of the decay front. The second needle enters a little elsewhere and a little askew, its drill
 * is set otherwise, and the bark may have thickened.
 */
import { type Random, randomFrom } from '../../../packages/engine/src/random.ts';
import type { Trace } from '../../../packages/engine/src/trace/types.ts';
import {
  type SimulateTraceOptions,
  simulateTrace,
  type TraceStretch,
  wander,
} from '../traces/simulateTrace.ts';

export const RING_FAMILIES = ['ring-porous', 'conifer', 'diffuse', 'faint'] as const;
export type RingFamily = (typeof RING_FAMILIES)[number];

export interface PairOptions {
  seed: number;
  family: RingFamily;
  years: number;
  /** Movement of the front towards the bark at the place of the first hole, mm. */
  frontMovedMm: number;
  /** Radial growth at the cambium, mm; drawn when left out. */
  growthMm?: number;
}

export interface SimulatedPair {
  earlier: { trace: Trace; barkMm: number };
  later: { trace: Trace; barkMm: number };
  truth: { growthMm: number; frontMovedMm: number; wallThenMm: number; wallDifferenceMm: number };
}

const CONTRAST: Record<RingFamily, number> = { 'ring-porous': 0.4, conifer: 0.45, diffuse: 0.06, faint: 0 };
const STEP_MM = 0.1;
const NEW_WOOD_MM = 80;
const OLD_WOOD_MM = 460;
/** How far the second hole lies from the first (mm), the slope of the front there, and the scale of its depths: standard deviations. */
const OFFSET_SD_MM = 20;
const SLOPE_SD = 0.2;
const SCALE_SD = 0.012;
/** Rings a hand's breadth on lie a little otherwise: a smooth wander of their depth, mm, over about this length. */
const RING_WANDER_MM = 0.5;
const RING_WANDER_LENGTH_MM = 60;

const between = (random: Random, a: number, b: number) => a + (b - a) * random.uniform();

/** Texture of the wood by depth below the first visit's cambium, from `-NEW_WOOD_MM` on. */
function woodOf(family: RingFamily, random: Random): Float64Array {
  const n = Math.round((NEW_WOOD_MM + OLD_WOOD_MM) / STEP_MM);
  const out = wander(n, STEP_MM, 5, random).map((v) => 0.03 * v);
  const contrast = CONTRAST[family];
  const usual = between(random, 1.5, 4.5);
  let vigour = 0;
  let i = 0;
  while (i < n) {
    vigour = 0.5 * vigour + 0.25 * random.normal();
    const width = Math.max(0.6, usual * Math.exp(vigour));
    const strength = contrast * Math.exp(0.2 * random.normal());
    const from = i;
    for (; i < n && (i - from) * STEP_MM < width; i++) {
      const u = ((i - from) * STEP_MM) / width;
      let shape = Math.cos(2 * Math.PI * u);
      if (family === 'ring-porous') shape = u < 0.35 ? -0.75 : 0.4;
      else if (family === 'conifer') shape = u < 0.6 ? -0.4 : -0.4 + 2.6 * (u - 0.6);
      out[i] = out[i]! + strength * shape;
    }
  }
  return out;
}

function setting(random: Random): Omit<SimulateTraceOptions, 'stretches' | 'seed'> {
  return {
    soundLevelPct: between(random, 28, 65),
    zeroPct: between(random, 0, 4),
    frictionPctPerMm: between(random, 0.005, 0.04),
    frictionOnsetPct: between(random, 0, 3),
    noiseSdPct: between(random, 0.5, 1.8),
    tipMm: between(random, 0.8, 1.6),
    barkShare: between(random, 0.1, 0.25),
    spacingMm: 0.1,
  };
}

/** A pair of traces with the truth behind them. */
export function simulatePair({ seed, family, years, frontMovedMm, growthMm }: PairOptions): SimulatedPair {
  const random = randomFrom(seed).fork('pair');
  const wood = woodOf(family, random.fork('wood'));
  const own = wander(wood.length, STEP_MM, 4, random.fork('own'));
  const drift = wander(wood.length, STEP_MM, RING_WANDER_LENGTH_MM, random.fork('drift'));
  const growth =
    growthMm ?? years * 1.5 * (-Math.log(random.uniform() + 1e-12) - Math.log(random.uniform() + 1e-12));
  const wallThenMm = between(random, Math.max(60, frontMovedMm + 30), 180);
  const incipientMm = random.uniform() < 0.7 ? between(random, 8, 25) : 0;
  const decayedMm = between(random, 60, 120);
  const decayShare = between(random, 0.12, 0.35);
  const trendShare = between(random, -0.08, 0.08);
  const offset = OFFSET_SD_MM * random.normal() * SLOPE_SD * random.normal();
  const scale = 1 + SCALE_SD * random.normal();
  const barkThen = between(random, 8, 22);
  const barkNow = barkThen + between(random, -2, 4);
  const edge = { incipient: between(random, 3, 8), decayed: between(random, 3, 8) };

  const layout = (barkMm: number, wallMm: number): TraceStretch[] => [
    { kind: 'bark', lengthMm: barkMm },
    { kind: 'sound', lengthMm: wallMm },
    ...(incipientMm > 0
      ? [{ kind: 'incipient' as const, lengthMm: incipientMm, share: 0.7, edgeMm: edge.incipient }]
      : []),
    { kind: 'decayed', lengthMm: decayedMm, share: decayShare, edgeMm: edge.decayed },
    { kind: 'sound', lengthMm: 60, edgeMm: 5 },
  ];
  const at = (values: Float64Array, oldDepthMm: number) =>
    values[Math.min(values.length - 1, Math.max(0, Math.round((oldDepthMm + NEW_WOOD_MM) / STEP_MM)))]!;

  const earlier = simulateTrace({
    ...setting(random.fork('setting then')),
    stretches: layout(barkThen, wallThenMm),
    trendShare,
    seed: seed * 2 + 1,
    woodTexture: (depth) => at(wood, depth - barkThen),
  }).trace;
  const wallNowMm = wallThenMm - frontMovedMm + growth + offset;
  const later = simulateTrace({
    ...setting(random.fork('setting now')),
    stretches: layout(barkNow, wallNowMm * scale),
    trendShare,
    seed: seed * 2 + 2,
    woodTexture: (depth) => {
      const old = (depth - barkNow) / scale - growth;
      return at(wood, old + RING_WANDER_MM * at(drift, old)) + 0.02 * at(own, old);
    },
  }).trace;
  return {
    earlier: { trace: earlier, barkMm: barkThen },
    later: { trace: later, barkMm: barkNow },
    truth: {
      growthMm: growth,
      frontMovedMm,
      wallThenMm,
      wallDifferenceMm: growth - frontMovedMm,
    },
  };
}
