/**
 * A smooth closed outline through measured radii: periodic, positive, and free of wild overshoot.
 */
import { RAD } from './ring.ts';

/** A radius for each azimuth, with its rate of change. */
export interface RadialCurve {
  /** Radius at an azimuth in radians clockwise from north, mm. */
  radius(azimuthRad: number): number;
  /** Rate of change of the radius, mm per radian. */
  rate(azimuthRad: number): number;
  /** Azimuths at which it was measured, radians, ascending in [0, 2π). */
  knotsRad: Float64Array;
}

/**
 * Joins measured values all round. The logarithm of the value is a periodic cubic spline whose slopes are held
 * back by Hyman's filter, so the curve goes through every point, stays positive, scales with the values, and
 * swings no further between points than the points themselves do. One value gives a circle; of two, each is an
 * extreme. Azimuths may be unsorted and beyond 0 to 360; they must differ modulo 360 and values must be positive.
 *
 * Sources: periodic cubic spline, de Boor 1978, A Practical Guide to Splines, ch. IV; filter, Hyman 1983,
 * SIAM J. Sci. Stat. Comput. 4:645-654 (both from memory).
 */
export function joinRound(points: readonly { azimuthDeg: number; radiusMm: number }[]): RadialCurve {
  const sorted = points
    .map((p) => ({ at: ((p.azimuthDeg % 360) + 360) % 360, log: Math.log(p.radiusMm) }))
    .sort((a, b) => a.at - b.at);
  const n = sorted.length;
  const knots = Float64Array.from(sorted, (p) => p.at * RAD);
  const logs = Float64Array.from(sorted, (p) => p.log);
  const gap = Float64Array.from(knots, (at, i) =>
    i + 1 < n ? knots[i + 1]! - at : knots[0]! + 2 * Math.PI - at,
  );
  const chord = Float64Array.from(gap, (h, i) => (logs[(i + 1) % n]! - logs[i]!) / h);
  const slope = n < 3 ? new Float64Array(n) : heldBack(splineSlopes(gap, chord), chord);

  const locate = (azimuthRad: number) => {
    const turn = 2 * Math.PI;
    const at = azimuthRad - Math.floor(azimuthRad / turn) * turn;
    let low = 0;
    let high = n;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (knots[middle]! <= at) low = middle + 1;
      else high = middle;
    }
    const i = (low + n - 1) % n;
    const from = at - knots[i]!;
    return { i, s: (from < 0 ? from + turn : from) / gap[i]! };
  };
  const logAt = (i: number, s: number) => {
    const j = (i + 1) % n;
    const h = gap[i]!;
    const r = 1 - s;
    return (
      logs[i]! * (1 + 2 * s) * r * r +
      logs[j]! * (3 - 2 * s) * s * s +
      h * s * r * (slope[i]! * r - slope[j]! * s)
    );
  };
  return {
    knotsRad: knots,
    radius(azimuthRad) {
      const { i, s } = locate(azimuthRad);
      return Math.exp(logAt(i, s));
    },
    rate(azimuthRad) {
      const { i, s } = locate(azimuthRad);
      const j = (i + 1) % n;
      const logRate =
        6 * s * (1 - s) * chord[i]! + slope[i]! * (1 - s) * (1 - 3 * s) + slope[j]! * s * (3 * s - 2);
      return Math.exp(logAt(i, s)) * logRate;
    },
  };
}

/** Slopes at the knots of the twice-differentiable periodic cubic spline, from gaps and chord slopes (n ≥ 3). */
function splineSlopes(gap: Float64Array, chord: Float64Array): Float64Array {
  const n = gap.length;
  const below = new Float64Array(n);
  const diagonal = new Float64Array(n);
  const above = new Float64Array(n);
  const right = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const before = (i + n - 1) % n;
    below[i] = 1 / gap[before]!;
    above[i] = 1 / gap[i]!;
    diagonal[i] = 2 * (below[i]! + above[i]!);
    right[i] = 3 * (chord[before]! / gap[before]! + chord[i]! / gap[i]!);
  }
  return solveCyclic(below, diagonal, above, right);
}

/** Solves a diagonally dominant cyclic tridiagonal system by the Sherman-Morrison formula. */
function solveCyclic(
  below: Float64Array,
  diagonal: Float64Array,
  above: Float64Array,
  right: Float64Array,
): Float64Array {
  const n = diagonal.length;
  const gamma = -diagonal[0]!;
  const main = Float64Array.from(diagonal);
  main[0]! -= gamma;
  main[n - 1]! -= (above[n - 1]! * below[0]!) / gamma;
  const corner = new Float64Array(n);
  corner[0] = gamma;
  corner[n - 1] = above[n - 1]!;
  const x = solveTridiagonal(below, main, above, right);
  const z = solveTridiagonal(below, main, above, corner);
  const factor = (x[0]! + (below[0]! * x[n - 1]!) / gamma) / (1 + z[0]! + (below[0]! * z[n - 1]!) / gamma);
  return x.map((value, i) => value - factor * z[i]!);
}

function solveTridiagonal(
  below: Float64Array,
  main: Float64Array,
  above: Float64Array,
  right: Float64Array,
): Float64Array {
  const n = main.length;
  const ratio = new Float64Array(n);
  const x = new Float64Array(n);
  let pivot = main[0]!;
  x[0] = right[0]! / pivot;
  for (let i = 1; i < n; i++) {
    ratio[i] = above[i - 1]! / pivot;
    pivot = main[i]! - below[i]! * ratio[i]!;
    x[i] = (right[i]! - below[i]! * x[i - 1]!) / pivot;
  }
  for (let i = n - 2; i >= 0; i--) x[i]! -= ratio[i + 1]! * x[i + 1]!;
  return x;
}

/** Hyman's filter: no slope steeper than three times the gentler neighbouring chord, none against both chords. */
function heldBack(slope: Float64Array, chord: Float64Array): Float64Array {
  const n = slope.length;
  return slope.map((m, i) => {
    const before = chord[(i + n - 1) % n]!;
    const after = chord[i]!;
    const most = 3 * Math.min(Math.abs(before), Math.abs(after));
    if (before * after > 0) return Math.sign(before) * Math.min(most, Math.max(0, m * Math.sign(before)));
    return Math.sign(m) * Math.min(most, Math.abs(m));
  });
}
