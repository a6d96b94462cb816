/**
 * The latent field in a few hundred weights. Every part of the prior covariance is unchanged by a turn of the disc,
 * so it splits by Fourier order around, k(ρ, ρ', Δ) = Σₘ Cₘ(ρ, ρ') cos mΔ, and each Cₘ is factored across by a
 * pivoted Cholesky (Harbrecht, Peters & Schneider 2012), which stops when what is left is too small to matter.
 * A draw is then evaluated first across, then around: cheap enough for thousands of draws.
 */
import { matern52, periodic, squaredExponential } from './kernel.ts';
import type { Scenario } from './prior.ts';

/** Nodes across: relative radii 0, 1/32, …, 1. */
export const RADIAL_NODES = 33;
/** Highest Fourier order around. */
export const HIGHEST_ORDER = 12;
/** Share of a node's variance that may be left out. */
const LEFT_OUT = 0.004;

const ANGLES = 64;

export interface FieldBasis {
  /** Number of weights; each is standard normal before the drillings. */
  size: number;
  /** For each radial function: its Fourier order, and its values on the nodes (row after row). */
  orders: Uint8Array;
  radial: Float64Array;
  /** First radial function of each order; `HIGHEST_ORDER + 2` numbers, the last the count. */
  orderStart: Uint16Array;
  /** Prior mean of the field on the nodes. */
  mean: Float64Array;
}

/** Prior covariance of the latent field between relative radii `a` and `b`, `angleRad` apart. */
export function priorCovariance(scenario: Scenario, a: number, b: number, angleRad: number): number {
  const chord = Math.sqrt(Math.max(0, a * a + b * b - 2 * a * b * Math.cos(angleRad)));
  const sectorLengthRad = (scenario.sectorLengthDeg * Math.PI) / 180;
  return (
    scenario.levelSd ** 2 +
    scenario.shiftSd ** 2 * a * b * Math.cos(angleRad) +
    scenario.ovalSd ** 2 * a * a * b * b * Math.cos(2 * angleRad) +
    scenario.ringSd ** 2 * squaredExponential(a - b, scenario.ringLength) +
    scenario.blobSd ** 2 * matern52(chord, scenario.blobLength) +
    scenario.sectorSd ** 2 *
      a *
      b *
      matern52(Math.abs(a - b), scenario.sectorLength) *
      periodic(angleRad, sectorLengthRad)
  );
}

/** Weights' functions of a scenario. Depends on the scenario alone: keep it. */
export function fieldBasis(scenario: Scenario): FieldBasis {
  const n = RADIAL_NODES;
  const byOrder = Array.from({ length: HIGHEST_ORDER + 1 }, () => new Float64Array(n * n));
  const cosines = Array.from({ length: HIGHEST_ORDER + 1 }, (_, m) =>
    Float64Array.from({ length: ANGLES / 2 + 1 }, (_, k) => {
      const twice = k === 0 || k === ANGLES / 2 ? 1 : 2;
      return ((m === 0 ? 1 : 2) * twice * Math.cos((2 * Math.PI * k * m) / ANGLES)) / ANGLES;
    }),
  );
  const around = new Float64Array(ANGLES / 2 + 1);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      for (let k = 0; k <= ANGLES / 2; k++) {
        around[k] = priorCovariance(scenario, i / (n - 1), j / (n - 1), (2 * Math.PI * k) / ANGLES);
      }
      for (let m = 0; m <= HIGHEST_ORDER; m++) {
        const cosine = cosines[m]!;
        let s = 0;
        for (let k = 0; k <= ANGLES / 2; k++) s += around[k]! * cosine[k]!;
        byOrder[m]![i * n + j] = s;
        byOrder[m]![j * n + i] = s;
      }
    }
  }
  let greatest = 0;
  for (let i = 0; i < n; i++) {
    greatest = Math.max(greatest, priorCovariance(scenario, i / (n - 1), i / (n - 1), 0));
  }
  const enough = (LEFT_OUT * greatest) / (HIGHEST_ORDER + 1);
  const functions: Float64Array[] = [];
  const orders: number[] = [];
  const orderStart = new Uint16Array(HIGHEST_ORDER + 2);
  for (let m = 0; m <= HIGHEST_ORDER; m++) {
    orderStart[m] = functions.length;
    for (const f of pivotedCholesky(byOrder[m]!, n, enough)) {
      functions.push(f);
      orders.push(m);
    }
  }
  orderStart[HIGHEST_ORDER + 1] = functions.length;
  const radial = new Float64Array(functions.length * n);
  functions.forEach((f, k) => {
    radial.set(f, k * n);
  });
  const size = orders.reduce((count, m) => count + (m === 0 ? 1 : 2), 0);
  const { meanCentre, meanEdge, meanPower } = scenario;
  const mean = Float64Array.from(
    { length: n },
    (_, i) => meanCentre + (meanEdge - meanCentre) * (i / (n - 1)) ** meanPower,
  );
  return { size, orders: Uint8Array.from(orders), radial, orderStart, mean };
}

/** Columns f of a low-rank factor, Σ f fᵀ ≈ c, until no diagonal entry left is greater than `enough`. */
function pivotedCholesky(c: Float64Array, n: number, enough: number): Float64Array[] {
  const left = Float64Array.from({ length: n }, (_, i) => c[i * n + i]!);
  const columns: Float64Array[] = [];
  while (columns.length < n) {
    let pivot = 0;
    for (let i = 1; i < n; i++) if (left[i]! > left[pivot]!) pivot = i;
    if (!(left[pivot]! > enough)) break;
    const root = Math.sqrt(left[pivot]!);
    const column = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      let s = c[i * n + pivot]!;
      for (const f of columns) s -= f[i]! * f[pivot]!;
      column[i] = s / root;
      left[i] = left[i]! - column[i]! ** 2;
    }
    columns.push(column);
  }
  return columns;
}

/** Values of all weights' functions at one point; written to `row` from `at`. */
export function basisRow(
  basis: FieldBasis,
  rho: number,
  angleRad: number,
  row: Float64Array,
  at: number,
): void {
  const n = RADIAL_NODES;
  const x = Math.min(1, Math.max(0, rho)) * (n - 1);
  const i = Math.min(n - 2, Math.floor(x));
  const f = x - i;
  let k = at;
  for (let q = 0; q < basis.orders.length; q++) {
    const m = basis.orders[q]!;
    const value = basis.radial[q * n + i]! * (1 - f) + basis.radial[q * n + i + 1]! * f;
    if (m === 0) row[k++] = value;
    else {
      row[k++] = value * Math.cos(m * angleRad);
      row[k++] = value * Math.sin(m * angleRad);
    }
  }
}

/** Prior mean of the field at a relative radius. */
export function meanAt(basis: FieldBasis, rho: number): number {
  const x = Math.min(1, Math.max(0, rho)) * (RADIAL_NODES - 1);
  const i = Math.min(RADIAL_NODES - 2, Math.floor(x));
  return basis.mean[i]! + (basis.mean[i + 1]! - basis.mean[i]!) * (x - i);
}
