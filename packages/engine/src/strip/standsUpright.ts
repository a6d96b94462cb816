/** Whether a chart stands upright. Depth runs along the long side of every strip. */
import type { CornersPx, PointPx } from './types.ts';

/** A chart taller than wide by less than this is taken as it stands. */
const UPRIGHT = 1.3;

/** Whether a chart, as its corners stand, is clearly longer from top to bottom than from left to right. */
export function standsUpright([a, b, c, d]: CornersPx): boolean {
  const side = (p: PointPx, q: PointPx) => Math.hypot(q[0] - p[0], q[1] - p[1]);
  return side(a, d) + side(b, c) > UPRIGHT * (side(a, b) + side(d, c));
}
