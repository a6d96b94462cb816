/**
 * The wood inside the bark: the outline moved inwards by the bark's thickness.
 */

import { union } from 'polyclip-ts';
import { InputFault } from '../faults.ts';
import {
  contains,
  counterClockwise,
  distanceToSegment,
  extentMm,
  selfCrossing,
  signedAreaMm2,
  withoutRepeats,
} from './ring.ts';
import type { PointMm, RingMm } from './types.ts';

/** Widest turn left as one corner when a hollow corner is rounded, radians. */
const ROUND_STEP = Math.PI / 36;

/**
 * The ring of all points that lie `barkMm` inside the outline (every point of the wood is at least that far from
 * the outline). Corners that bulge stay sharp, corners that fold in are rounded, and a lobe thinner than twice the
 * bark vanishes. When the bark would cut the wood in pieces, the piece that holds the origin is returned, or the
 * largest when none does. The ring keeps the outline's turning sense.
 *
 * @throws InputFault when bark is negative or not a number, or nothing is left inside it.
 */
export function cambiumRing(ring: RingMm, barkMm: number, where = 'barkMm'): RingMm {
  if (!Number.isFinite(barkMm) || barkMm < 0) {
    throw new InputFault(`Bark thickness is ${barkMm}. Give millimetres, 0 or more.`, where);
  }
  if (barkMm === 0) return ring;
  const clockwise = signedAreaMm2(ring) < 0;
  const outer = withoutRepeats(counterClockwise(ring));
  const { points, clean } = movedIn(outer, barkMm);
  const inside =
    clean && signedAreaMm2(points) > 0 && selfCrossing(points) === null
      ? points
      : largestTruePiece(points, outer, barkMm);
  if (!inside) {
    throw new InputFault(
      `Bark of ${barkMm} mm leaves no wood inside an outline ${Math.round(extentMm(ring))} mm across. Check the bark and the outline, both in millimetres.`,
      where,
    );
  }
  return clockwise ? [...inside].reverse() : inside;
}

/** Each edge of a counter-clockwise ring moved inwards and joined up; `clean` when no edge was turned round. */
function movedIn(ring: readonly PointMm[], d: number): { points: PointMm[]; clean: boolean } {
  const n = ring.length;
  const points: PointMm[] = [];
  // Index in `points` of the first and last point made for each corner.
  const first = new Int32Array(n);
  const last = new Int32Array(n);
  for (let i = 0; i < n; i++) {
    const a = ring[(i + n - 1) % n]!;
    const b = ring[i]!;
    const c = ring[(i + 1) % n]!;
    const before = Math.atan2(b[1] - a[1], b[0] - a[0]);
    let turn = Math.atan2(c[1] - b[1], c[0] - b[0]) - before;
    if (turn > Math.PI) turn -= 2 * Math.PI;
    if (turn <= -Math.PI) turn += 2 * Math.PI;
    first[i] = points.length;
    if (turn < -ROUND_STEP) {
      // Folds in: the points at distance d from the corner make an arc.
      const steps = Math.ceil(-turn / ROUND_STEP);
      for (let k = 0; k <= steps; k++) {
        const normal = before + (turn * k) / steps + Math.PI / 2;
        points.push([b[0] + d * Math.cos(normal), b[1] + d * Math.sin(normal)]);
      }
    } else if (turn > 0.99 * Math.PI) {
      // A needle-sharp corner: its mitre would shoot far off, so leave the two ends for the sorting out.
      for (const heading of [before, before + turn]) {
        points.push([b[0] - d * Math.sin(heading), b[1] + d * Math.cos(heading)]);
      }
    } else {
      const reach = d / Math.cos(turn / 2);
      const normal = before + turn / 2 + Math.PI / 2;
      points.push([b[0] + reach * Math.cos(normal), b[1] + reach * Math.sin(normal)]);
    }
    last[i] = points.length - 1;
  }
  let clean = true;
  for (let i = 0; i < n && clean; i++) {
    const j = (i + 1) % n;
    const p = points[last[i]!]!;
    const q = points[first[j]!]!;
    const dx = ring[j]![0] - ring[i]![0];
    const dy = ring[j]![1] - ring[i]![1];
    clean = (q[0] - p[0]) * dx + (q[1] - p[1]) * dy > 0;
  }
  return { points, clean };
}

/**
 * Of the pieces a moved-in ring falls into where it crosses itself, those that truly lie `d` inside the outline;
 * of these the one that holds the origin, else the largest; null when there is none.
 */
function largestTruePiece(
  points: readonly PointMm[],
  outer: readonly PointMm[],
  d: number,
): PointMm[] | null {
  const pieces = union([points.map((p): [number, number] => [p[0], p[1]])]);
  let best: PointMm[] | null = null;
  for (const piece of pieces) {
    const ring = withoutRepeats(piece[0] ?? []);
    if (ring.length < 3 || !liesInside(ring, outer, d)) continue;
    if (contains(ring, 0, 0)) return ring;
    if (!best || Math.abs(signedAreaMm2(ring)) > Math.abs(signedAreaMm2(best))) best = ring;
  }
  return best;
}

/** Whether the whole piece lies inside the outline and at least `d` from it (to a thousandth). */
function liesInside(piece: readonly PointMm[], outer: readonly PointMm[], d: number): boolean {
  const enough = d * (1 - 1e-3);
  return piece.every(([x, y]) => {
    if (!contains(outer, x, y)) return false;
    for (let i = 0; i < outer.length; i++) {
      const a = outer[i]!;
      const b = outer[(i + 1) % outer.length]!;
      if (distanceToSegment(x, y, a[0], a[1], b[0], b[1]) < enough) return false;
    }
    return true;
  });
}
