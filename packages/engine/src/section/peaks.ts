/**
 * Points of a smooth boundary where a stress that is linear over the section peaks between corners.
 */
import type { Loop } from './polygon.ts';
import { rootBetween } from './root.ts';
import type { PointMm } from './types.ts';

/** Points of the boundaries' arcs at which gx·x + gy·y is greatest or least nearby. */
export function peaksTowards(loops: readonly Loop[], gx: number, gy: number): PointMm[] {
  return stationary(loops, (_, rate) => gx * rate[0] + gy * rate[1]);
}

/** Points of the boundaries' arcs at which |A (r − c)| is greatest or least nearby; A symmetric as [xx, xy, yy]. */
export function peaksOfLength(
  loops: readonly Loop[],
  [axx, axy, ayy]: readonly [number, number, number],
  [cx, cy]: PointMm,
): PointMm[] {
  return stationary(loops, ([x, y], rate) => {
    const vx = axx * (x - cx) + axy * (y - cy);
    const vy = axy * (x - cx) + ayy * (y - cy);
    return vx * (axx * rate[0] + axy * rate[1]) + vy * (axy * rate[0] + ayy * rate[1]);
  });
}

/** Points of arcs where a slope along the boundary, given point and rate, goes through nought. */
function stationary(loops: readonly Loop[], slope: (point: PointMm, rate: PointMm) => number): PointMm[] {
  const found: PointMm[] = [];
  for (const { arc, curve } of loops) {
    if (!arc || !curve) continue;
    const along = (t: number) => slope(curve.at(t), curve.rate(t));
    for (let i = 0; i < arc.length; i += 2) {
      if (Number.isNaN(arc[i]!)) continue;
      const t = rootBetween(along, arc[i]!, arc[i + 1]!);
      if (t !== null) found.push(curve.at(t));
    }
  }
  return found;
}
