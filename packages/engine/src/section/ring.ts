/**
 * Rings of points in the section plane: sense, tidying, containment, and where a ring crosses itself.
 */
import type { PointMm, RingMm } from './types.ts';

/** Degrees to radians. */
export const RAD = Math.PI / 180;

/** Signed area of a ring, mm²: positive when it runs counter-clockwise (x east, y north). */
export function signedAreaMm2(ring: RingMm): number {
  const n = ring.length;
  if (n < 3) return 0;
  const [x0, y0] = ring[0]!;
  let twice = 0;
  let px = ring[n - 1]![0] - x0;
  let py = ring[n - 1]![1] - y0;
  for (let i = 0; i < n; i++) {
    const x = ring[i]![0] - x0;
    const y = ring[i]![1] - y0;
    twice += px * y - x * py;
    px = x;
    py = y;
  }
  return twice / 2;
}

/** The ring in counter-clockwise sense (the same array when it already is). */
export function counterClockwise(ring: RingMm): RingMm {
  return signedAreaMm2(ring) < 0 ? [...ring].reverse() : ring;
}

/** The ring without points that repeat the one before, and without a closing point that repeats the first. */
export function withoutRepeats(ring: RingMm): PointMm[] {
  const out: PointMm[] = [];
  for (const point of ring) {
    const last = out[out.length - 1];
    if (!last || last[0] !== point[0] || last[1] !== point[1]) out.push(point);
  }
  while (out.length > 1 && out[0]![0] === out[out.length - 1]![0] && out[0]![1] === out[out.length - 1]![1]) {
    out.pop();
  }
  return out;
}

/** Smallest upright box round a ring, mm. */
export interface Box {
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
}

/** The box round one ring or several. */
export function boxOf(...rings: RingMm[]): Box {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const ring of rings) {
    for (const [x, y] of ring) {
      if (x < box.minX) box.minX = x;
      if (x > box.maxX) box.maxX = x;
      if (y < box.minY) box.minY = y;
      if (y > box.maxY) box.maxY = y;
    }
  }
  return box;
}

/** Longer side of the box round a ring, mm. */
export function extentMm(ring: RingMm): number {
  const box = boxOf(ring);
  return Math.max(box.maxX - box.minX, box.maxY - box.minY);
}

/** Whether a point lies inside a ring (even-odd; a point on the edge may fall either way). */
export function contains(ring: RingMm, xMm: number, yMm: number): boolean {
  let inside = false;
  const n = ring.length;
  let [px, py] = ring[n - 1]!;
  for (let i = 0; i < n; i++) {
    const [x, y] = ring[i]!;
    if (y > yMm !== py > yMm && xMm < ((px - x) * (yMm - y)) / (py - y) + x) inside = !inside;
    px = x;
    py = y;
  }
  return inside;
}

/** Distance of a point from the segment a–b, mm. */
export function distanceToSegment(
  x: number,
  y: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): number {
  const dx = bx - ax;
  const dy = by - ay;
  const lengthSquared = dx * dx + dy * dy;
  const along = lengthSquared > 0 ? ((x - ax) * dx + (y - ay) * dy) / lengthSquared : 0;
  const t = Math.max(0, Math.min(1, along));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

const side = (ax: number, ay: number, bx: number, by: number, x: number, y: number) =>
  Math.sign((bx - ax) * (y - ay) - (by - ay) * (x - ax));

/** Whether two closed segments have a point in common. */
export function segmentsMeet(a: PointMm, b: PointMm, c: PointMm, d: PointMm): boolean {
  const [ax, ay] = a;
  const [bx, by] = b;
  const [cx, cy] = c;
  const [dx, dy] = d;
  if (Math.max(ax, bx) < Math.min(cx, dx) || Math.max(cx, dx) < Math.min(ax, bx)) return false;
  if (Math.max(ay, by) < Math.min(cy, dy) || Math.max(cy, dy) < Math.min(ay, by)) return false;
  return (
    side(ax, ay, bx, by, cx, cy) * side(ax, ay, bx, by, dx, dy) <= 0 &&
    side(cx, cy, dx, dy, ax, ay) * side(cx, cy, dx, dy, bx, by) <= 0
  );
}

/**
 * The first pair of edges of a ring that touch or cross where they should not, as indices of their first corners,
 * or null when the ring is simple. Edge i runs from corner i to the next. Neighbouring edges count only when one
 * doubles back over the other. Takes rings without repeated points.
 */
export function selfCrossing(ring: RingMm): [number, number] | null {
  const n = ring.length;
  const order = Array.from({ length: n }, (_, i) => i);
  const low = (i: number) => Math.min(ring[i]![0], ring[(i + 1) % n]![0]);
  const high = (i: number) => Math.max(ring[i]![0], ring[(i + 1) % n]![0]);
  order.sort((a, b) => low(a) - low(b));
  for (let p = 0; p < n; p++) {
    const i = order[p]!;
    const a = ring[i]!;
    const b = ring[(i + 1) % n]!;
    const end = high(i);
    for (let q = p + 1; q < n && low(order[q]!) <= end; q++) {
      const j = order[q]!;
      const c = ring[j]!;
      const d = ring[(j + 1) % n]!;
      const meets =
        (i + 1) % n === j
          ? doublesBack(a, b, d)
          : (j + 1) % n === i
            ? doublesBack(c, d, b)
            : segmentsMeet(a, b, c, d);
      if (meets) return i < j ? [i, j] : [j, i];
    }
  }
  return null;
}

/** Whether the way a–b–c turns straight back on itself at b. */
function doublesBack(a: PointMm, b: PointMm, c: PointMm): boolean {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const vx = c[0] - b[0];
  const vy = c[1] - b[1];
  return ux * vy - uy * vx === 0 && ux * vx + uy * vy < 0;
}
