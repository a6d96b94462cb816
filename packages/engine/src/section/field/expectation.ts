/**
 * Expectation propagation: the Gaussian that best stands for the latent field given what the needles met, and the
 * evidence for the scenario. Rasmussen & Williams (2006), section 3.6, with likelihoods that are mixtures of
 * probits (an ordered scale of three kinds, each with a chance of being misread), one site after another.
 */
import { cholesky, solveLower, solveUpperOfLower } from './linear.ts';
import { normalBelow, normalDensity } from './normal.ts';

/** What the needles met at each site: chances of the reading under each kind, up to a common factor. */
export interface SiteLikelihoods {
  none: Float64Array;
  incipient: Float64Array;
  sound: Float64Array;
  /** Standard deviation of the probit, in units of the field. */
  width: number;
  /** Height of the incipient band. */
  band: number;
}

/** The Gaussian that stands for the posterior of the weights. */
export interface FittedGaussian {
  /** Precision, and precision times mean, of each site's Gaussian about the field's prior mean. */
  precision: Float64Array;
  shift: Float64Array;
  /** Mean of the weights, and the lower Cholesky factor of their precision. */
  mean: Float64Array;
  precisionFactor: Float64Array;
  logEvidence: number;
}

const SWEEPS = 20;
/** From this sweep on, only a part of each change is made, so that stiff scenarios do not swing. */
const CALM_FROM = 4;
const CALM = 0.6;
/** Sum of the changes of the sites' parts of the log evidence below which a sweep is the last. */
const SETTLED = 0.5;
/** A site whose update would move its own marginal by less than this, relative to its spread, is left as it is. */
const UNMOVED = 0.003;

/**
 * Fits the weights w (standard normal a priori) to the sites, where the field is priorMean + rows · w.
 *
 * @param rows values of the weights' functions at the sites, M × `size`
 */
export function expectationPropagation(
  rows: Float64Array,
  size: number,
  priorMean: Float64Array,
  likelihood: SiteLikelihoods,
  sweeps = SWEEPS,
): FittedGaussian {
  const count = priorMean.length;
  const precision = new Float64Array(count);
  const shift = new Float64Array(count);
  const logSite = new Float64Array(count);
  // The posterior is kept either over the weights or over the sites, whichever is fewer.
  const state = 2 * size * size < count * count ? overWeights(rows, size) : overSites(rows, size, count);
  const moments = new Float64Array(3);
  let changed = 0;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    changed = 0;
    const part = sweep < CALM_FROM ? 1 : CALM;
    for (let step = 0; step < count; step++) {
      const i = sweep % 2 === 0 ? step : count - 1 - step;
      state.look(i);
      const variance = Math.max(1e-10, state.variance);
      const cavityPrecision = Math.max(1e-9, 1 / variance - precision[i]!);
      const cavityVariance = 1 / cavityPrecision;
      const cavityMean = (state.mean / variance - shift[i]!) * cavityVariance;
      tilted(likelihood, i, priorMean[i]! + cavityMean, cavityVariance, moments);
      const newPrecision = Math.max(1e-8, 1 / Math.max(1e-10, moments[2]!) - cavityPrecision);
      const combined = cavityPrecision + newPrecision;
      const pull = cavityMean * cavityPrecision;
      const newShift = (moments[1]! - priorMean[i]!) * combined - pull;
      // Rank-one change of the posterior (R&W equation 3.70), and of its mean.
      const change = part * (newPrecision - precision[i]!);
      const denominator = 1 + change * variance;
      const shiftChange = part * (newShift - shift[i]!);
      const push = (shiftChange - change * state.mean) / denominator;
      if (Math.abs(change) * variance > UNMOVED || push * push * variance > UNMOVED * UNMOVED) {
        state.move(change / denominator, push);
        precision[i] = precision[i]! + change;
        shift[i] = shift[i]! + shiftChange;
      }
      // The site's factor that makes its Gaussian as likely as the site itself, given the rest.
      const together = cavityPrecision + precision[i]!;
      const log =
        Math.log(moments[0]!) +
        0.5 * Math.log(together * cavityVariance) -
        0.5 * ((pull + shift[i]!) ** 2 / together - cavityMean * pull);
      changed += Math.abs(log - logSite[i]!);
      logSite[i] = log;
    }
    if (changed < SETTLED) break;
  }
  const { mean, precisionFactor, quadratic } = weightsGiven(rows, size, precision, shift);
  // An evidence that has not settled is not trusted: what still moves is taken off.
  let logEvidence = 0.5 * quadratic - (changed > SETTLED ? changed : 0);
  for (let i = 0; i < count; i++) logEvidence += logSite[i]!;
  for (let k = 0; k < size; k++) logEvidence -= Math.log(precisionFactor[k * size + k]!);
  return { precision, shift, mean, precisionFactor, logEvidence };
}

interface PosteriorState {
  /** Looks at a site: sets its variance and mean. */
  look(i: number): void;
  variance: number;
  mean: number;
  /** Takes `scale` times the square of the looked-at site's column off, and adds `push` times it to the mean. */
  move(scale: number, push: number): void;
}

function overWeights(rows: Float64Array, size: number): PosteriorState {
  const covariance = new Float64Array(size * size);
  for (let k = 0; k < size; k++) covariance[k * size + k] = 1;
  const mean = new Float64Array(size);
  const column = new Float64Array(size);
  return {
    variance: 0,
    mean: 0,
    look(i) {
      const at = i * size;
      let variance = 0;
      let m = 0;
      for (let j = 0; j < size; j++) {
        let c = 0;
        const row = j * size;
        for (let k = 0; k < size; k++) c += covariance[row + k]! * rows[at + k]!;
        column[j] = c;
        variance += c * rows[at + j]!;
        m += mean[j]! * rows[at + j]!;
      }
      this.variance = variance;
      this.mean = m;
    },
    move: (scale, push) => rankOne(covariance, mean, column, size, scale, push),
  };
}

function overSites(rows: Float64Array, size: number, count: number): PosteriorState {
  const covariance = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      let c = 0;
      for (let k = 0; k < size; k++) c += rows[i * size + k]! * rows[j * size + k]!;
      covariance[i * count + j] = c;
      covariance[j * count + i] = c;
    }
  }
  const mean = new Float64Array(count);
  const column = new Float64Array(count);
  return {
    variance: 0,
    mean: 0,
    look(i) {
      for (let j = 0; j < count; j++) column[j] = covariance[i * count + j]!;
      this.variance = column[i]!;
      this.mean = mean[i]!;
    },
    move: (scale, push) => rankOne(covariance, mean, column, count, scale, push),
  };
}

function rankOne(
  covariance: Float64Array,
  mean: Float64Array,
  column: Float64Array,
  n: number,
  scale: number,
  push: number,
): void {
  for (let j = 0; j < n; j++) {
    mean[j] = mean[j]! + push * column[j]!;
    const c = scale * column[j]!;
    const at = j * n;
    for (let k = 0; k < n; k++) covariance[at + k] = covariance[at + k]! - c * column[k]!;
  }
}

/**
 * Weights given Gaussian sites (Rasmussen & Williams 2006, equations 2.7 and 2.8): mean, lower Cholesky factor of the
 * precision, and shiftᵀ rows mean.
 */
export function weightsGiven(
  rows: Float64Array,
  size: number,
  precision: Float64Array,
  shift: Float64Array,
): { mean: Float64Array; precisionFactor: Float64Array; quadratic: number } {
  const a = new Float64Array(size * size);
  const mean = new Float64Array(size);
  for (let k = 0; k < size; k++) a[k * size + k] = 1;
  for (let s = 0; s < precision.length; s++) {
    const at = s * size;
    const tau = precision[s]!;
    const nu = shift[s]!;
    for (let i = 0; i < size; i++) {
      const left = rows[at + i]!;
      mean[i] = mean[i]! + left * nu;
      const scaled = left * tau;
      const row = i * size;
      for (let j = 0; j <= i; j++) a[row + j] = a[row + j]! + scaled * rows[at + j]!;
    }
  }
  const pulled = Float64Array.from(mean);
  cholesky(a, size);
  solveLower(a, size, mean);
  solveUpperOfLower(a, size, mean);
  let quadratic = 0;
  for (let k = 0; k < size; k++) quadratic += pulled[k]! * mean[k]!;
  return { mean, precisionFactor: a, quadratic };
}

/**
 * Zeroth moment, mean and variance of a normal times a site's likelihood: Rasmussen & Williams (2006), section 3.9,
 * for each probit of the mixture.
 */
export function tilted(
  likelihood: SiteLikelihoods,
  i: number,
  mu: number,
  variance: number,
  out: Float64Array,
): void {
  const none = likelihood.none[i]!;
  const incipient = likelihood.incipient[i]!;
  const sound = likelihood.sound[i]!;
  const spread = Math.sqrt(likelihood.width * likelihood.width + variance);
  const z0 = mu / spread;
  const z1 = (mu - likelihood.band) / spread;
  const a0 = incipient - none;
  const a1 = sound - incipient;
  const d0 = a0 * normalDensity(z0);
  const d1 = a1 * normalDensity(z1);
  const z = none + a0 * normalBelow(z0) + a1 * normalBelow(z1);
  // First and second moments about mu, so that nothing large cancels.
  const ratio = variance / spread;
  const first = (ratio * (d0 + d1)) / z;
  const second = variance - (ratio * ratio * (z0 * d0 + z1 * d1)) / z;
  out[0] = z;
  out[1] = mu + first;
  out[2] = second - first * first;
}

/** A site's likelihood at a value of the field. */
export function siteLikelihood(likelihood: SiteLikelihoods, i: number, g: number): number {
  const none = likelihood.none[i]!;
  const incipient = likelihood.incipient[i]!;
  return (
    none +
    (incipient - none) * step(g / likelihood.width) +
    (likelihood.sound[i]! - incipient) * step((g - likelihood.band) / likelihood.width)
  );
}

/** The normal distribution function, cut to 0 and 1 where a likelihood with a floor no longer tells. */
function step(x: number): number {
  return x > 6 ? 1 : x < -6 ? 0 : normalBelow(x);
}
