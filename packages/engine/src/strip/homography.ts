/** Plane projective maps: how a flat chart looks on a photo taken at a tilt. */
import type { CornersPx } from './types.ts';

/** Nine numbers, row after row: (x, y) goes to ((h0 x + h1 y + h2) / w, (h3 x + h4 y + h5) / w), w = h6 x + h7 y + h8. */
export type Homography = Float64Array;

type Point = readonly [number, number];

/**
 * The map that takes each point of `from` to its partner in `to`: exactly with four pairs, by least squares with more.
 * Direct linear transform on coordinates shifted and scaled to the origin (R. Hartley, A. Zisserman 2004, Multiple
 * View Geometry in Computer Vision, 2nd ed., algorithm 4.2), solved by Householder reflections.
 * @returns null when no such map exists (fewer than four pairs, three in a line, crossed)
 */
export function homographyFrom(from: readonly Point[], to: readonly Point[]): Homography | null {
  const count = Math.min(from.length, to.length);
  if (count < 4) return null;
  const a = normalising(from);
  const b = normalising(to);
  if (!a || !b) return null;
  // Centred points lie round the origin, which no sensible view sends to infinity: its weight can be set to 1.
  const rows = 2 * count;
  const matrix = new Float64Array(rows * 8);
  const right = new Float64Array(rows);
  for (let i = 0; i < count; i++) {
    const x = (from[i]![0] - a.x) * a.scale;
    const y = (from[i]![1] - a.y) * a.scale;
    const u = (to[i]![0] - b.x) * b.scale;
    const v = (to[i]![1] - b.y) * b.scale;
    matrix.set([x, y, 1, 0, 0, 0, -u * x, -u * y], 16 * i);
    matrix.set([0, 0, 0, x, y, 1, -v * x, -v * y], 16 * i + 8);
    right[2 * i] = u;
    right[2 * i + 1] = v;
  }
  const h = leastSquares(matrix, right, rows, 8);
  if (!h) return null;
  const inner = Float64Array.of(h[0]!, h[1]!, h[2]!, h[3]!, h[4]!, h[5]!, h[6]!, h[7]!, 1);
  const into = Float64Array.of(a.scale, 0, -a.scale * a.x, 0, a.scale, -a.scale * a.y, 0, 0, 1);
  const out = Float64Array.of(1 / b.scale, 0, b.x, 0, 1 / b.scale, b.y, 0, 0, 1);
  const whole = product(out, product(inner, into));
  const last = whole[8]!;
  return Math.abs(last) > 1e-12 ? whole.map((value) => value / last) : whole;
}

/** The map from a chart's shares (0 to 1 from its left, 0 to 1 from its top) to the photo; null when the corners are no chart. */
export const homographyOfChart = (corners: CornersPx): Homography | null =>
  homographyFrom(
    [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ],
    corners,
  );

/** Where a point goes. */
export function project(h: Homography, x: number, y: number): [number, number] {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return [(h[0]! * x + h[1]! * y + h[2]!) / w, (h[3]! * x + h[4]! * y + h[5]!) / w];
}

/** The map back. */
export function inverseHomography(h: Homography): Homography {
  const [a, b, c, d, e, f, g, i, j] = h as unknown as number[];
  const inverse = Float64Array.of(
    e! * j! - f! * i!,
    c! * i! - b! * j!,
    b! * f! - c! * e!,
    f! * g! - d! * j!,
    a! * j! - c! * g!,
    c! * d! - a! * f!,
    d! * i! - e! * g!,
    b! * g! - a! * i!,
    a! * e! - b! * d!,
  );
  const last = inverse[8]!;
  return Math.abs(last) > 1e-300 ? inverse.map((value) => value / last) : inverse;
}

function product(a: Homography, b: Homography): Homography {
  const out = new Float64Array(9);
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      let sum = 0;
      for (let k = 0; k < 3; k++) sum += a[3 * row + k]! * b[3 * k + column]!;
      out[3 * row + column] = sum;
    }
  }
  return out;
}

/** Shift to the centroid and scale to a mean distance of √2. */
function normalising(points: readonly Point[]): { x: number; y: number; scale: number } | null {
  let x = 0;
  let y = 0;
  for (const p of points) {
    x += p[0] / points.length;
    y += p[1] / points.length;
  }
  let distance = 0;
  for (const p of points) distance += Math.hypot(p[0] - x, p[1] - y) / points.length;
  return distance > 0 && Number.isFinite(distance) ? { x, y, scale: Math.SQRT2 / distance } : null;
}

/**
 * Solves min |A x - b| by Householder reflections.
 * @param a rows × columns, row after row; destroyed
 * @param b destroyed
 * @returns null when the columns depend on one another
 */
export function leastSquares(
  a: Float64Array,
  b: Float64Array,
  rows: number,
  columns: number,
): Float64Array | null {
  const diagonal = new Float64Array(columns);
  for (let k = 0; k < columns; k++) {
    let norm = 0;
    for (let i = k; i < rows; i++) norm = Math.hypot(norm, a[i * columns + k]!);
    if (a[k * columns + k]! > 0) norm = -norm;
    if (Math.abs(norm) < 1e-9) return null;
    diagonal[k] = norm;
    // The reflection's vector is kept in the column; its first entry is shifted by the norm.
    a[k * columns + k]! -= norm;
    const head = -norm * a[k * columns + k]!;
    for (let j = k + 1; j < columns; j++) {
      let dot = 0;
      for (let i = k; i < rows; i++) dot += a[i * columns + k]! * a[i * columns + j]!;
      dot /= head;
      for (let i = k; i < rows; i++) a[i * columns + j]! -= dot * a[i * columns + k]!;
    }
    let dot = 0;
    for (let i = k; i < rows; i++) dot += a[i * columns + k]! * b[i]!;
    dot /= head;
    for (let i = k; i < rows; i++) b[i]! -= dot * a[i * columns + k]!;
  }
  const x = new Float64Array(columns);
  for (let k = columns - 1; k >= 0; k--) {
    let sum = b[k]!;
    for (let j = k + 1; j < columns; j++) sum -= a[k * columns + j]! * x[j]!;
    x[k] = sum / diagonal[k]!;
  }
  return x;
}
