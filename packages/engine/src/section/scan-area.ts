/**
 * Area left of a ring when others are taken out, by scanning: slow and plain, to check the clipping by.
 */
import { forNearEdges } from './near-edges.ts';
import type { PointMm, RingMm } from './types.ts';

/**
 * Area of `outer` outside all of `rings`, mm². Between neighbouring corners and crossings in x, the breadth of what is
 * left varies linearly, so the sum over such strips of strip width times breadth at its middle is exact. Nothing here can
 * tangle: a crossing missed for rounding costs only a rounding error. Rings must be simple.
 */
export function scanAreaMm2(outer: RingMm, rings: readonly RingMm[]): number {
  const all = [outer, ...rings];
  const stops: number[] = all.flatMap((ring) => ring.map(([x]) => x));
  for (let j = 0; j < all.length; j++) {
    for (let i = 0; i < j; i++) addCrossings(all[i]!, all[j]!, stops);
  }
  stops.sort((a, b) => a - b);
  const edges = all
    .flatMap((ring, of) => ring.map((a, k) => ({ of, a, b: ring[(k + 1) % ring.length]! })))
    .filter(({ a, b }) => a[0] !== b[0])
    .map(({ of, a, b }) => (a[0] < b[0] ? { of, a, b } : { of, a: b, b: a }))
    .sort((p, q) => p.a[0] - q.a[0]);
  let active: typeof edges = [];
  let coming = 0;
  let area = 0;
  for (let s = 0; s + 1 < stops.length; s++) {
    const left = stops[s]!;
    const right = stops[s + 1]!;
    const x = (left + right) / 2;
    if (!(left < x && x < right)) continue;
    while (coming < edges.length && edges[coming]!.a[0] < x) active.push(edges[coming++]!);
    active = active.filter(({ b }) => b[0] > x);
    const passings = active
      .map(({ of, a, b }) => ({ of, y: a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]) }))
      .sort((p, q) => p.y - q.y);
    area += (right - left) * breadthLeft(passings, all.length);
  }
  return area;
}

/** Total length inside ring 0 and outside the others along a line, from where it passes each ring, in order. */
function breadthLeft(passings: readonly { of: number; y: number }[], count: number): number {
  const inside = new Uint8Array(count);
  let voids = 0;
  let breadth = 0;
  passings.forEach(({ of, y }, i) => {
    if (i > 0 && inside[0] && voids === 0) breadth += y - passings[i - 1]!.y;
    inside[of]! ^= 1;
    if (of > 0) voids += inside[of] ? 1 : -1;
  });
  return breadth;
}

function addCrossings(one: RingMm, other: RingMm, stops: number[]): void {
  forNearEdges(one, other, 0, (i, k) => {
    const a = one[i]!;
    const c = other[k]!;
    const [ux, uy] = way(a, one[(i + 1) % one.length]!);
    const [vx, vy] = way(c, other[(k + 1) % other.length]!);
    const across = ux * vy - uy * vx;
    if (across === 0) return undefined;
    const share = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / across;
    const otherShare = ((c[0] - a[0]) * uy - (c[1] - a[1]) * ux) / across;
    if (share > 0 && share < 1 && otherShare > 0 && otherShare < 1) stops.push(a[0] + share * ux);
    return undefined;
  });
}

const way = (from: PointMm, to: PointMm): PointMm => [to[0] - from[0], to[1] - from[1]];
