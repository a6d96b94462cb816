/**
 * One drilling and its repeat: growth at the cambium, movement of the decay front and change of the wall, by draws.
 *
 * With the front at depth e below the cambium as read, g the shift that lays the old wood over the new and 1 + s the depth
 * scale: movement towards the bark m = e₁ (1 + s) + g − e₂. The errors of where the cambium lies cancel in it, since the
 * rings carry the match; they enter the growth, g − c₂ + c₁, and the walls, e − c. A second hole is not the first: the
 * front lies elsewhere there by the offset times the front's slope against the rings, whatever happened in between, and
 * that is carried too.
 */
import type { Random } from '../random.ts';
import { constant } from '../reference/index.ts';
import type { Trace, TraceReading } from '../trace/types.ts';
import { interval } from '../wind/interval.ts';
import { stratifiedNormals, stratifiedUniforms } from '../wind/sampling.ts';
import { type AlignedTraces, alignTraces } from './alignTraces.ts';
import { cambiumSd, frontDraws } from './edges.ts';
import { ringTexture } from './ringTexture.ts';
import type { Alignment, DrillingChange, FrontVerdict } from './types.ts';

export interface DrillingToCompare {
  trace: Trace;
  reading: TraceReading;
}

export interface CompareOptions {
  /** Years between the visits; null when not known. */
  years: number | null;
  /** Round the stem from where the first hole was recorded to where the second was, mm. */
  recordedOffsetMm: number;
}

/** What is measured of the front, for the speed: middle and standard deviation, mm, or that it moved at least so far. */
export type FrontMeasure =
  | { kind: 'moved by'; meanMm: number; sdMm: number }
  | { kind: 'moved at least'; meanMm: number; sdMm: number }
  | { kind: 'nothing' };

export interface DrillingComparison {
  alignment: Alignment;
  growthMm: DrillingChange['growthMm'];
  growthDraws: Float64Array;
  front: DrillingChange['front'];
  frontMm: DrillingChange['frontMm'];
  frontAtLeastMm: number | null;
  verdict: FrontVerdict;
  chance: DrillingChange['chance'];
  wallDifferenceMm: DrillingChange['wallDifferenceMm'];
  measure: FrontMeasure;
}

/** Years taken for the growth's prior where the dates are not known. */
const YEARS_UNKNOWN = 4;
/** A front counts as moved at this chance of any movement towards the bark: half the 5 % of false alarms aimed at. */
const SURE = 0.975;
/** Widest 90 % interval, mm, with which "within error" says something; beyond it nothing can be told. */
const TELLING_WIDTH_MM = 35;
/** The match must be this likely to be what the comparison rests on. */
const MATCHED = 0.8;
const MM_PER_CM = 10;

/** Compares a drilling with its repeat. Same input and stream, same result. */
export function compareDrilling(
  earlier: DrillingToCompare,
  later: DrillingToCompare,
  { years, recordedOffsetMm }: CompareOptions,
  random: Random,
  draws: number,
): DrillingComparison {
  const span = Math.max(years ?? YEARS_UNKNOWN, 0.1);
  const cambiumThen = cambiumSd(earlier.reading);
  const cambiumNow = cambiumSd(later.reading);
  const errorSd = Math.hypot(cambiumThen, cambiumNow);
  const growth = growthPrior(span);
  const aligned = alignTraces(
    ringTexture(earlier.trace, earlier.reading),
    ringTexture(later.trace, later.reading),
    (shift) => Math.log(shiftPrior(shift, growth, errorSd)),
    -3 * errorSd - 1,
    growth.mostMm + 3 * errorSd,
  );
  const drawn = drawAlignment(aligned, random, draws);
  const drift = stratifiedNormals(random.fork('drift'), draws);
  const driftSd = constant('ring drift').value;

  // Growth: the shift less the errors of the two cambium entries, weighed by what growth can be.
  const growthDraws = new Float64Array(draws);
  const cambiumError = new Float64Array(draws);
  const pick = stratifiedUniforms(random.fork('cambium'), draws);
  for (let i = 0; i < draws; i++) {
    cambiumError[i] = conditionalError(drawn.shift[i]!, growth, errorSd, pick[i]!);
    growthDraws[i] = Math.max(0, drawn.shift[i]! - cambiumError[i]!);
  }

  const then = earlier.reading;
  const now = later.reading;
  const front = frontOf(then, now);
  const entry = reentrySd(recordedOffsetMm);
  const entryDraws = stratifiedNormals(random.fork('re-entry'), draws);
  const base = {
    alignment: described(aligned, drawn.shift, draws),
    growthMm: interval(growthDraws.slice()),
    growthDraws,
    front,
  };
  if (front === 'neither' || front === 'only then') {
    return {
      ...base,
      frontMm: null,
      frontAtLeastMm: null,
      verdict: front === 'neither' ? 'no front' : 'cannot tell',
      chance: null,
      wallDifferenceMm: null,
      measure: { kind: 'nothing' },
    };
  }
  const e2 = frontDraws(now, random.fork('front now'), draws);
  // Where the first needle met no front, the wood it passed stands for it: the front lay deeper still.
  const e1 =
    front === 'both'
      ? frontDraws(then, random.fork('front then'), draws)
      : new Float64Array(draws).fill(then.residualWallMm);
  const moved = new Float64Array(draws);
  const wall = new Float64Array(draws);
  for (let i = 0; i < draws; i++) {
    const enter = entry * entryDraws[i]! + driftSd * drift[i]!;
    const scale = 1 + drawn.stretch[i]!;
    moved[i] = e1[i]! * scale + drawn.shift[i]! - e2[i]! + enter;
    wall[i] = e2[i]! - e1[i]! * scale - cambiumError[i]! - enter;
  }
  const { mean, sd } = momentsOf(moved);
  if (front === 'only now') {
    return {
      ...base,
      frontMm: null,
      frontAtLeastMm: interval(moved.slice()).p05,
      verdict: shareAbove(moved, 0) >= SURE ? 'moved' : 'cannot tell',
      chance: null,
      wallDifferenceMm: null,
      measure: { kind: 'moved at least', meanMm: mean, sdMm: sd },
    };
  }
  const telling = constant('telling front').value;
  const frontMm = interval(moved.slice());
  return {
    ...base,
    frontMm,
    frontAtLeastMm: null,
    verdict: verdictOf(frontMm, shareAbove(moved, 0)),
    chance: {
      outward: shareAbove(moved, telling),
      stood: shareAbove(moved, -telling) - shareAbove(moved, telling),
      deeper: 1 - shareAbove(moved, -telling),
    },
    wallDifferenceMm: interval(wall),
    measure: { kind: 'moved by', meanMm: mean, sdMm: sd },
  };
}

function verdictOf({ p05, p95 }: { p05: number; p95: number }, chanceOfAny: number): FrontVerdict {
  if (chanceOfAny >= SURE) return 'moved';
  return p95 - p05 <= TELLING_WIDTH_MM && p95 >= 0 ? 'not moved' : 'cannot tell';
}

/** Standard deviation of the front's depth from one hole to another, mm. */
function reentrySd(recordedOffsetMm: number): number {
  return constant('front slope').value * Math.hypot(constant('reentry offset').value, recordedOffsetMm);
}

function frontOf(then: TraceReading, now: TraceReading): DrillingChange['front'] {
  if (then.residualWallAtLeast) return now.residualWallAtLeast ? 'neither' : 'only now';
  return now.residualWallAtLeast ? 'only then' : 'both';
}

interface GrowthPrior {
  shape: number;
  scaleMm: number;
  mostMm: number;
}

/** Gamma distribution of the growth at one place over `years`. */
function growthPrior(years: number): GrowthPrior {
  const shape = constant('growth shape').value;
  const mean = constant('stem growth').value * MM_PER_CM * years;
  const scaleMm = mean / shape;
  return { shape, scaleMm, mostMm: Math.max(10, 4 * mean) };
}

function growthDensity(growthMm: number, { shape, scaleMm }: GrowthPrior): number {
  if (growthMm < 0) return 0;
  const x = growthMm / scaleMm;
  return x ** (shape - 1) * Math.exp(-x);
}

/** Points of the cambium errors' distribution, as standard scores. */
const ERROR_POINTS = Array.from({ length: 25 }, (_, k) => (k - 12) / 4);

/** Density of a shift: growth with the errors of the two cambium entries upon it (to a factor). */
function shiftPrior(shiftMm: number, growth: GrowthPrior, errorSd: number): number {
  let sum = 1e-9;
  for (const z of ERROR_POINTS) sum += Math.exp(-0.5 * z * z) * growthDensity(shiftMm - z * errorSd, growth);
  return sum;
}

/** An error of the cambium entries given the shift, at the share `u` of its distribution. */
function conditionalError(shiftMm: number, growth: GrowthPrior, errorSd: number, u: number): number {
  const weights = ERROR_POINTS.map(
    (z) => Math.exp(-0.5 * z * z) * growthDensity(shiftMm - z * errorSd, growth),
  );
  const total = weights.reduce((a, b) => a + b, 0);
  // A shift that no growth explains: the errors alone.
  if (!(total > 1e-12)) return Math.min(0, shiftMm);
  let left = u * total;
  for (let k = 0; k < weights.length; k++) {
    if (left <= weights[k]!) {
      const step = ERROR_POINTS[1]! - ERROR_POINTS[0]!;
      return (ERROR_POINTS[k]! + (left / weights[k]! - 0.5) * step) * errorSd;
    }
    left -= weights[k]!;
  }
  return ERROR_POINTS.at(-1)! * errorSd;
}

function drawAlignment(
  { shiftsMm, stretches, probability }: AlignedTraces,
  random: Random,
  draws: number,
): { shift: Float64Array; stretch: Float64Array } {
  const shift = new Float64Array(draws);
  const stretch = new Float64Array(draws);
  const u = stratifiedUniforms(random.fork('alignment'), draws);
  const within = random.fork('within');
  const cumulative = new Float64Array(probability.length);
  let sum = 0;
  probability.forEach((p, i) => {
    sum += p;
    cumulative[i] = sum;
  });
  const columns = stretches.length;
  const shiftStep = shiftsMm[1]! - shiftsMm[0]!;
  const stretchStep = stretches[1]! - stretches[0]!;
  for (let i = 0; i < draws; i++) {
    const wanted = u[i]! * sum;
    let low = 0;
    let high = cumulative.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (cumulative[middle]! < wanted) low = middle + 1;
      else high = middle;
    }
    shift[i] = shiftsMm[Math.floor(low / columns)]! + (within.uniform() - 0.5) * shiftStep;
    stretch[i] = stretches[low % columns]! + (within.uniform() - 0.5) * stretchStep;
  }
  return { shift, stretch };
}

function described(aligned: AlignedTraces, shifts: Float64Array, draws: number): Alignment {
  const columns = aligned.stretches.length;
  let stretch = 0;
  aligned.probability.forEach((p, i) => {
    stretch += p * aligned.stretches[i % columns]!;
  });
  return {
    matchedChance: aligned.matchedChance,
    correlation: aligned.correlation,
    overlapMm: aligned.overlapMm,
    shiftMm: interval(shifts.slice(0, draws)),
    stretch: 1 + stretch,
    restsOn: aligned.matchedChance >= MATCHED ? 'ring pattern' : 'cambium entry',
  };
}

function momentsOf(values: Float64Array): { mean: number; sd: number } {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const variance = values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length;
  return { mean, sd: Math.sqrt(variance) };
}

function shareAbove(values: Float64Array, mark: number): number {
  let above = 0;
  for (const value of values) if (value > mark) above++;
  return above / values.length;
}
