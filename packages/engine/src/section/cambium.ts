/**
 * The wood inside the bark: the outline moved inwards by the bark's thickness.
 */

import { InputFault } from '../faults.ts';
import { clip } from './clip.ts';
import { forNearEdges } from './near-edges.ts';
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
const ROUND_STEP = Math.PI / 90;

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
      : chosen(trimmed(points, outer, barkMm) ?? cutIn(outer, barkMm), outer);
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
    const turn = signedTurn(before, Math.atan2(c[1] - b[1], c[0] - b[0]));
    first[i] = points.length;
    if (turn < -ROUND_STEP) {
      // Folds in: the points at distance d from the corner make an arc.
      const steps = Math.ceil(-turn / ROUND_STEP);
      // Its chords must not cut nearer than d, so the corners between stand a little further off.
      const reach = d / Math.cos(turn / steps / 2);
      points.push([b[0] - d * Math.sin(before), b[1] + d * Math.cos(before)]);
      for (let k = 0; k < steps; k++) {
        const normal = before + (turn * (k + 0.5)) / steps + Math.PI / 2;
        points.push([b[0] + reach * Math.cos(normal), b[1] + reach * Math.sin(normal)]);
      }
      points.push([b[0] - d * Math.sin(before + turn), b[1] + d * Math.cos(before + turn)]);
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
 * A moved-in ring that crosses itself, cut at its crossings and freed of every part nearer the outline than `d`: the
 * closed rings that remain, or null when the parts do not close (sides that fall on each other exactly).
 */
function trimmed(points: readonly PointMm[], outer: readonly PointMm[], d: number): PointMm[][] | null {
  const n = points.length;
  const nodes: PointMm[] = [...points];
  const along: { node: number; share: number }[][] = points.map(() => []);
  forNearEdges(points, points, 0, (i, k) => {
    if (k <= i + 1 || (i === 0 && k === n - 1)) return undefined;
    const meeting = crossing(points[i]!, points[(i + 1) % n]!, points[k]!, points[(k + 1) % n]!);
    if (meeting) {
      along[i]!.push({ node: nodes.length, share: meeting.share });
      along[k]!.push({ node: nodes.length, share: meeting.otherShare });
      nodes.push(meeting.point);
    }
    return undefined;
  });
  const next = new Map<number, number>();
  const keep = (from: number, to: number): boolean => {
    const [ax, ay] = nodes[from]!;
    const [bx, by] = nodes[to]!;
    if (!isInside(outer, (ax + bx) / 2, (ay + by) / 2, d * (1 - 1e-7))) return true;
    if (next.has(from)) return false;
    next.set(from, to);
    return true;
  };
  for (let i = 0; i < n; i++) {
    const stops = along[i]!.sort((a, b) => a.share - b.share).map(({ node }) => node);
    let from = i;
    for (const to of [...stops, (i + 1) % n]) {
      if (!keep(from, to)) return null;
      from = to;
    }
  }
  const rings: PointMm[][] = [];
  while (next.size > 0) {
    const start = next.keys().next().value!;
    const ring: PointMm[] = [];
    let at = start;
    do {
      ring.push(nodes[at]!);
      const to = next.get(at);
      if (to === undefined) return null;
      next.delete(at);
      at = to;
    } while (at !== start);
    rings.push(withoutRepeats(ring));
  }
  return rings;
}

/** Where two segments cross, with the share of each up to there. */
function crossing(a: PointMm, b: PointMm, c: PointMm, d: PointMm) {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const vx = d[0] - c[0];
  const vy = d[1] - c[1];
  const across = ux * vy - uy * vx;
  if (across === 0) return null;
  const share = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / across;
  const otherShare = ((c[0] - a[0]) * uy - (c[1] - a[1]) * ux) / across;
  if (share < 0 || share > 1 || otherShare < 0 || otherShare > 1) return null;
  const point: PointMm = [a[0] + share * ux, a[1] + share * uy];
  return { point, share, otherShare };
}

/** Whether a point lies inside the ring and at least `d` from it. */
function isInside(ring: readonly PointMm[], x: number, y: number, d: number): boolean {
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[(i + 1) % ring.length]!;
    if (distanceToSegment(x, y, a[0], a[1], b[0], b[1]) < d) return false;
  }
  return contains(ring, x, y);
}

/** Of several pieces of wood the one that holds the origin, else the largest; null when there is none worth the name. */
function chosen(pieces: readonly PointMm[][], outer: RingMm): PointMm[] | null {
  // Where strips of bark meet, rounding can leave specks between them.
  const speck = 1e-6 * signedAreaMm2(outer);
  let best: PointMm[] | null = null;
  for (const ring of pieces) {
    const area = Math.abs(signedAreaMm2(ring));
    if (area < speck) continue;
    if (contains(ring, 0, 0)) return ring;
    if (!best || area > Math.abs(signedAreaMm2(best))) best = ring;
  }
  return best;
}

/**
 * The outline less every strip of breadth `d` along its edges and every sector round its hollow corners, cut out with
 * exact polygon clipping. Slow for rings of many corners, but nothing can tangle it.
 */
function cutIn(outer: readonly PointMm[], d: number): PointMm[][] {
  const n = outer.length;
  const bark: PointMm[][] = [];
  for (let i = 0; i < n; i++) {
    const [ax, ay] = outer[(i + n - 1) % n]!;
    const [bx, by] = outer[i]!;
    const [cx, cy] = outer[(i + 1) % n]!;
    const heading = Math.atan2(cy - by, cx - bx);
    const inX = -d * Math.sin(heading);
    const inY = d * Math.cos(heading);
    bark.push([
      [bx, by],
      [cx, cy],
      [cx + inX, cy + inY],
      [bx + inX, by + inY],
    ]);
    const before = Math.atan2(by - ay, bx - ax);
    const turn = signedTurn(before, heading);
    if (turn >= 0) continue;
    const steps = Math.ceil(-turn / ROUND_STEP);
    bark.push([
      [bx, by],
      ...Array.from({ length: steps + 1 }, (_, k): PointMm => {
        const normal = before + (turn * k) / steps + Math.PI / 2;
        return [bx + d * Math.cos(normal), by + d * Math.sin(normal)];
      }),
    ]);
  }
  return clip(outer, bark)?.pieces.map((piece) => piece.outer) ?? [];
}

/** Turn from one heading to another, radians in (−π, π]. */
function signedTurn(from: number, to: number): number {
  const turn = to - from;
  return turn > Math.PI ? turn - 2 * Math.PI : turn <= -Math.PI ? turn + 2 * Math.PI : turn;
}
