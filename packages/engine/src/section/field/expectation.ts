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

export interface GaussianSites {
  /** Precision and precision-times-mean of each site's Gaussian, about the field's prior mean. */
  precision: Float64Array;
  shift: Float64Array;
  /** Log of the evidence. */
  logEvidence: number;
}

const SWEEPS = 6;
/** Change of the log evidence below which a sweep is the last. */
const SETTLED = 0.3;

/**
 * @param covariance prior covariance of the field at the sites, M × M
 * @param mean prior mean at the sites
 */
export function expectationPropagation(
  covariance: Float64Array,
  mean: Float64Array,
  likelihood: SiteLikelihoods,
  sweeps = SWEEPS,
): GaussianSites {
  const count = mean.length;
  const precision = new Float64Array(count);
  const shift = new Float64Array(count);
  const logSite = new Float64Array(count);
  const posterior = Float64Array.from(covariance);
  const mu = new Float64Array(count);
  const column = new Float64Array(count);
  const moments = new Float64Array(3);
  let logDeterminant = 0;
  let before = Number.POSITIVE_INFINITY;
  let logEvidence = 0;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    for (let step = 0; step < count; step++) {
      const i = sweep % 2 === 0 ? step : count - 1 - step;
      const variance = Math.max(1e-10, posterior[i * count + i]!);
      const cavityPrecision = Math.max(1e-9, 1 / variance - precision[i]!);
      const cavityVariance = 1 / cavityPrecision;
      const cavityMean = (mu[i]! / variance - shift[i]!) * cavityVariance;
      tilted(likelihood, i, mean[i]! + cavityMean, cavityVariance, moments);
      const newVariance = Math.max(1e-10, moments[2]!);
      const newPrecision = Math.max(1e-8, 1 / newVariance - cavityPrecision);
      const newMean = moments[1]! - mean[i]!;
      const newShift = newMean * (cavityPrecision + newPrecision) - cavityMean * cavityPrecision;
      const combined = cavityPrecision + newPrecision;
      logSite[i] =
        Math.log(moments[0]!) +
        0.5 * Math.log(combined * cavityVariance) -
        0.5 * ((cavityMean * cavityPrecision + newShift) ** 2 / combined - cavityMean ** 2 * cavityPrecision);
      const change = newPrecision - precision[i]!;
      const shiftChange = newShift - shift[i]!;
      precision[i] = newPrecision;
      shift[i] = newShift;
      // Rank-one change of the posterior (R&W equation 3.70), and of its mean.
      const denominator = 1 + change * variance;
      const scale = change / denominator;
      const push = (shiftChange - change * mu[i]!) / denominator;
      const row = i * count;
      for (let j = 0; j < count; j++) column[j] = posterior[row + j]!;
      for (let j = 0; j < count; j++) {
        mu[j] = mu[j]! + push * column[j]!;
        const c = scale * column[j]!;
        const at = j * count;
        for (let k = 0; k < count; k++) posterior[at + k] = posterior[at + k]! - c * column[k]!;
      }
    }
    logDeterminant = logDeterminantOf(covariance, precision);
    let sum = 0;
    for (let i = 0; i < count; i++) sum += logSite[i]! + 0.5 * shift[i]! * mu[i]!;
    logEvidence = sum - logDeterminant;
    if (Math.abs(logEvidence - before) < SETTLED) break;
    before = logEvidence;
  }
  return { precision, shift, logEvidence };
}

/** Half the log determinant of I + S½ K S½. */
function logDeterminantOf(covariance: Float64Array, precision: Float64Array): number {
  const count = precision.length;
  const b = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      b[i * count + j] = Math.sqrt(precision[i]! * precision[j]!) * covariance[i * count + j]!;
    }
    b[i * count + i] = b[i * count + i]! + 1;
  }
  cholesky(b, count);
  let log = 0;
  for (let i = 0; i < count; i++) log += Math.log(b[i * count + i]!);
  return log;
}

/** Zeroth moment, mean and variance of a normal times a site's likelihood (R&W section 3.9, by parts). */
function tilted(
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
  const p0 = normalBelow(z0);
  const p1 = normalBelow(z1);
  const d0 = normalDensity(z0);
  const d1 = normalDensity(z1);
  const a0 = incipient - none;
  const a1 = sound - incipient;
  const z = none + a0 * p0 + a1 * p1;
  // E[g − mu] and E[(g − mu)²] under the tilted density, so that nothing large cancels.
  const first = ((variance / spread) * (a0 * d0 + a1 * d1)) / z;
  const second = variance - ((variance * variance) / (spread * spread)) * ((a0 * z0 * d0 + a1 * z1 * d1) / z);
  out[0] = z;
  out[1] = mu + first;
  out[2] = second - first * first;
}

/** Log of a site's likelihood at a value of the field. */
export function siteLogLikelihood(likelihood: SiteLikelihoods, i: number, g: number): number {
  const none = likelihood.none[i]!;
  const incipient = likelihood.incipient[i]!;
  const p0 = normalBelow(g / likelihood.width);
  const p1 = normalBelow((g - likelihood.band) / likelihood.width);
  return Math.log(none + (incipient - none) * p0 + (likelihood.sound[i]! - incipient) * p1);
}

/** Posterior of the weights given Gaussian sites: mean, and the factor of its precision. */
export function weightPosterior(
  rows: Float64Array,
  size: number,
  sites: GaussianSites,
): { mean: Float64Array; precisionFactor: Float64Array } {
  const count = sites.precision.length;
  const a = new Float64Array(size * size);
  const mean = new Float64Array(size);
  for (let k = 0; k < size; k++) a[k * size + k] = 1;
  for (let s = 0; s < count; s++) {
    const at = s * size;
    const tau = sites.precision[s]!;
    const nu = sites.shift[s]!;
    for (let i = 0; i < size; i++) {
      const left = rows[at + i]!;
      mean[i] = mean[i]! + left * nu;
      const scaled = left * tau;
      const row = i * size;
      for (let j = 0; j <= i; j++) a[row + j] = a[row + j]! + scaled * rows[at + j]!;
    }
  }
  cholesky(a, size);
  solveLower(a, size, mean);
  solveUpperOfLower(a, size, mean);
  return { mean, precisionFactor: a };
}
