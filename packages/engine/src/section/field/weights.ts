/**
 * Draws of the weights from a fitted scenario.
 */
import type { Random } from '../../random.ts';
import { siteLikelihood } from './expectation.ts';
import type { Fitted } from './posterior.ts';

/**
 * `draws` rows of weights. Each starts as a draw of the fitted Gaussian and is moved along the ellipse through
 * another such draw to a place where the true likelihoods hold, not only the Gaussians that stand for them
 * (elliptical slice sampling: Murray, Adams & MacKay 2010; about a fitted Gaussian: Nishihara, Murray & Adams 2014).
 * The other draw is the next one's start, so each Gaussian draw serves twice.
 */
export function weightDraws(f: Fitted, draws: number, random: Random): Float64Array {
  const { size } = f.basis;
  const { precision, shift, mean, precisionFactor } = f.gaussian;
  const count = precision.length;
  const weights = new Float64Array(draws * size);
  const w = new Float64Array(size);
  for (let d = 0; d < draws; d++) {
    for (let k = 0; k < size; k++) w[k] = random.normal();
    for (let i = size - 1; i >= 0; i--) {
      const row = i * size;
      const x = w[i]! / precisionFactor[row + i]!;
      w[i] = x;
      for (let k = 0; k < i; k++) w[k] = w[k]! - precisionFactor[row + k]! * x;
    }
    weights.set(w, d * size);
  }
  if (count === 0) return weights;

  // At the sites: the mean, and each draw's deviation from it.
  const centre = new Float64Array(count);
  const deviations = new Float64Array(draws * count);
  for (let s = 0; s < count; s++) {
    const at = s * size;
    let c = 0;
    for (let k = 0; k < size; k++) c += f.rows[at + k]! * mean[k]!;
    centre[s] = c;
  }
  for (let d = 0; d < draws; d++) {
    const from = d * size;
    const to = d * count;
    for (let s = 0; s < count; s++) {
      const at = s * size;
      let g = 0;
      for (let k = 0; k < size; k++) g += f.rows[at + k]! * weights[from + k]!;
      deviations[to + s] = g;
    }
  }
  /** Log of the likelihoods over their Gaussians at the centre plus `cos` × draw a + `sin` × draw b. */
  const misfit = (a: number, b: number, cos: number, sin: number) => {
    const fromA = a * count;
    const fromB = b * count;
    let log = 0;
    let product = 1;
    for (let s = 0; s < count; s++) {
      const h = centre[s]! + cos * deviations[fromA + s]! + sin * deviations[fromB + s]!;
      log += (0.5 * precision[s]! * h - shift[s]!) * h;
      product *= siteLikelihood(f.likelihood, s, f.priorMean[s]! + h);
      if (product < 1e-200) {
        log += Math.log(product);
        product = 1;
      }
    }
    return log + Math.log(product);
  };
  const out = new Float64Array(draws * size);
  for (let d = 0; d < draws; d++) {
    const other = (d + 1) % draws;
    const floor = misfit(d, d, 1, 0) + Math.log(Math.max(1e-12, random.uniform()));
    let angle = 2 * Math.PI * random.uniform();
    let low = angle - 2 * Math.PI;
    let high = angle;
    let cos = 1;
    let sin = 0;
    for (let attempt = 0; attempt < 40 && draws > 1; attempt++) {
      const c = Math.cos(angle);
      const s = Math.sin(angle);
      if (misfit(d, other, c, s) > floor) {
        cos = c;
        sin = s;
        break;
      }
      if (angle < 0) low = angle;
      else high = angle;
      angle = low + (high - low) * random.uniform();
    }
    for (let k = 0; k < size; k++) {
      out[d * size + k] = mean[k]! + cos * weights[d * size + k]! + sin * weights[other * size + k]!;
    }
  }
  return out;
}
