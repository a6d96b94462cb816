/**
 * Covariances, Gaussian-process regression, conditional draws and censored moments against published formulas:
 * Rasmussen & Williams (2006), Gaussian Processes for Machine Learning; Wilson et al. (2020), Efficiently sampling functions from Gaussian process
 * posteriors. The numbers were worked out from those formulas independently of this code.
 */
import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../packages/engine/src/random.ts';
import { tilted, weightsGiven } from '../../packages/engine/src/section/field/expectation.ts';
import { matern52, periodic, squaredExponential } from '../../packages/engine/src/section/field/kernel.ts';
import { cholesky } from '../../packages/engine/src/section/field/linear.ts';

/** The check values are printed to six digits. */
const SIX_DIGITS = 1e-6;

describe('covariances', () => {
  it.each([
    ['Matérn 5/2 at one length', matern52(2, 2), 0.523994],
    ['periodic, l = 1, quarter turn', periodic(Math.PI / 2, 1), 0.367879],
    ['periodic, l = 1, half turn', periodic(Math.PI, 1), 0.135335],
  ])('%s', (_, value, expected) => {
    expect(Math.abs(value - expected)).toBeLessThan(SIX_DIGITS);
  });
});

/** Regression on y(0) = 1, y(1) = −1 with a squared exponential of length 1, through the field's own algebra. */
function regression(x: number, noiseVariance: number) {
  const at = [0, 1, x];
  const n = at.length;
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) factor[i * n + j] = squaredExponential(at[i]! - at[j]!, 1);
    factor[i * n + i] = factor[i * n + i]! + 1e-12;
  }
  cholesky(factor, n);
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) factor[i * n + j] = 0;
  const rows = factor.slice(0, 2 * n);
  const precision = Float64Array.of(1 / noiseVariance, 1 / noiseVariance);
  const shift = Float64Array.of(1 / noiseVariance, -1 / noiseVariance);
  const posterior = weightsGiven(rows, n, precision, shift);
  return { n, row: factor.slice(2 * n), ...posterior };
}

function solveFactor(l: Float64Array, n: number, z: Float64Array): Float64Array {
  const x = Float64Array.from(z);
  for (let i = n - 1; i >= 0; i--) {
    x[i] = x[i]! / l[i * n + i]!;
    for (let k = 0; k < i; k++) x[k] = x[k]! - l[i * n + k]! * x[i]!;
  }
  return x;
}

const dot = (a: Float64Array, b: Float64Array) => a.reduce((s, v, i) => s + v * b[i]!, 0);

describe('regression with noise variance 0.01 (Rasmussen & Williams, equations 2.25 and 2.26)', () => {
  it.each([
    [0.5, 0, 0.036454],
    [0.25, 0.531375, 0.023654],
    [2, -1.167859, 0.554625],
  ])('at x = %f', (x, mean, variance) => {
    const { n, row, mean: weights, precisionFactor } = regression(x, 0.01);
    expect(Math.abs(dot(row, weights) - mean)).toBeLessThan(SIX_DIGITS);
    // Variance rowᵀ A⁻¹ row by forward substitution.
    const half = Float64Array.from(row);
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < i; k++) half[i] = half[i]! - precisionFactor[i * n + k]! * half[k]!;
      half[i] = half[i]! / precisionFactor[i * n + i]!;
    }
    expect(Math.abs(dot(half, half) - variance)).toBeLessThan(SIX_DIGITS);
  });

  it('conditional draws have the moments of Wilson et al. at x = 0.25', () => {
    const draws = 100_000;
    const { n, row, mean, precisionFactor } = regression(0.25, 0.01);
    const random = randomFrom(1);
    let sum = 0;
    let squares = 0;
    const z = new Float64Array(n);
    for (let d = 0; d < draws; d++) {
      for (let k = 0; k < n; k++) z[k] = random.normal();
      const value = dot(row, mean) + dot(row, solveFactor(precisionFactor, n, z));
      sum += value;
      squares += value * value;
    }
    const sampleMean = sum / draws;
    // Four standard errors of a mean and of a variance of that many draws.
    expect(Math.abs(sampleMean - 0.53138)).toBeLessThan(4 * Math.sqrt(0.02365 / draws));
    expect(Math.abs(squares / draws - sampleMean ** 2 - 0.02365)).toBeLessThan(
      4 * 0.02365 * Math.sqrt(2 / draws),
    );
  });
});

describe('moments of N(10, 16) known to lie above 12 (Rasmussen & Williams, section 3.9)', () => {
  it.each([
    ['exactly', 1e-9, 0.308538, 14.564311, 4.295687],
    ['with noise of standard deviation 1', 1, 0.313813, 14.385724, 5.020904],
  ])('%s', (_, width, chance, mean, variance) => {
    const one = Float64Array.of(1);
    const none = Float64Array.of(0);
    const out = new Float64Array(3);
    tilted({ none, incipient: none, sound: one, width, band: 12 }, 0, 10, 16, out);
    expect(Math.abs(out[0]! - chance)).toBeLessThan(SIX_DIGITS);
    expect(Math.abs(out[1]! - mean)).toBeLessThan(SIX_DIGITS);
    expect(Math.abs(out[2]! - variance)).toBeLessThan(SIX_DIGITS);
  });
});
