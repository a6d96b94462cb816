/**
 * How fast the decay fronts of a section move, from what was measured at each drilling and what is known of such fronts.
 *
 * A front either stands (a barrier holds: CODIT, Shigo and Marx 1977) or moves at v_k = v exp(τ z_k), with v common to the
 * section and z_k from place to place. v has the spread of the decay-rates table: its slow, middle and fast scenarios as the
 * 5, 50 and 95 % points of a lognormal with a side for each. What a drilling measured (m ± σ over the years) weighs every
 * v, and at its own place every z. Places without a front say nothing; one met only now says "at least".
 */
import type { Random } from '../random.ts';
import { constant } from '../reference/index.ts';
import { normalQuantile, stratifiedUniforms } from '../wind/sampling.ts';
import type { FrontMeasure } from './compareDrilling.ts';

const Z95 = 1.6448536269514722;
/** Points of the common speed and of the scatter about it, in equal slices of probability. */
const SPEED_POINTS = 240;
const SCATTER_POINTS = 15;

/** Speeds, mm a year: 5, 50 and 95 % points believed before anything is measured. */
export interface SpeedPrior {
  slow: number;
  middle: number;
  fast: number;
}

export interface RateDraws {
  /** Per drilling, in order: speed of its front, mm a year, one a draw. */
  atDrillings: Float64Array[];
  /** Speed at a place of the section that was not drilled. */
  elsewhere: Float64Array;
}

function priorSpeed({ slow, middle, fast }: SpeedPrior, p: number): number {
  const z = normalQuantile(p);
  const least = 0.1;
  const m = Math.log(Math.max(middle, 2 * least));
  const below = (m - Math.log(Math.max(slow, least))) / Z95;
  const above = (Math.log(Math.max(fast, middle)) - m) / Z95;
  return Math.exp(m + z * (z < 0 ? below : above));
}

const normalDensity = (z: number) => Math.exp(-0.5 * z * z);
/** Standard normal distribution function (logistic form of Bowling et al. 2009). */
const normalBelow = (z: number) => 1 / (1 + Math.exp(-z * (1.5976 + 0.07056 * z * z)));

function likelihood(measure: FrontMeasure, movedMm: number): number {
  if (measure.kind === 'nothing') return 1;
  const z = (measure.meanMm - movedMm) / measure.sdMm;
  // A front met only now had moved at least so far: what speaks for a speed is the chance that it reached there.
  return measure.kind === 'moved by' ? normalDensity(z) + 1e-12 : normalBelow(-z) + 1e-12;
}

/** Draws of the speeds of a section's fronts. */
export function rateDraws(
  measures: readonly FrontMeasure[],
  years: number,
  prior: SpeedPrior,
  random: Random,
  draws: number,
): RateDraws {
  const standing = constant('standing fronts').value;
  const tau = constant('rate scatter').value;
  const speeds = Float64Array.from({ length: SPEED_POINTS }, (_, i) =>
    priorSpeed(prior, (i + 0.5) / SPEED_POINTS),
  );
  const factors = Float64Array.from({ length: SCATTER_POINTS }, (_, j) =>
    Math.exp(tau * normalQuantile((j + 0.5) / SCATTER_POINTS)),
  );
  const moving = (1 - standing) / SCATTER_POINTS;
  // Per drilling and common speed: the weight of standing and of each factor.
  const weights = measures.map((measure) =>
    Array.from(speeds, (v) => {
      const row = new Float64Array(SCATTER_POINTS + 1);
      row[0] = standing * likelihood(measure, 0);
      factors.forEach((factor, j) => {
        row[j + 1] = moving * likelihood(measure, v * factor * years);
      });
      return row;
    }),
  );
  const logs = Float64Array.from(speeds, (_, i) =>
    weights.reduce((sum, rows) => sum + Math.log(rows[i]!.reduce((a, b) => a + b, 0)), 0),
  );
  const most = logs.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const common = cumulative(logs.map((l) => Math.exp(l - most)));
  const u = stratifiedUniforms(random.fork('common speed'), draws);
  const chosen = Uint16Array.from(u, (p) => placeIn(common, p));
  const local = (stream: Random, row: (i: number) => Float64Array) => {
    const p = stratifiedUniforms(stream, draws);
    return Float64Array.from(chosen, (i, draw) => {
      const j = placeIn(cumulative(row(i)), p[draw]!);
      return j === 0 ? 0 : speeds[i]! * factors[j - 1]!;
    });
  };
  const free = new Float64Array(SCATTER_POINTS + 1).fill(moving);
  free[0] = standing;
  return {
    atDrillings: weights.map((rows, k) => local(random.fork(`speed ${k}`), (i) => rows[i]!)),
    elsewhere: local(random.fork('speed elsewhere'), () => free),
  };
}

function cumulative(weights: Float64Array): Float64Array {
  let sum = 0;
  const out = weights.map((w) => {
    sum += w;
    return sum;
  });
  return out.map((c) => c / sum);
}

function placeIn(rising: Float64Array, p: number): number {
  let low = 0;
  let high = rising.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle]! < p) low = middle + 1;
    else high = middle;
  }
  return low;
}
