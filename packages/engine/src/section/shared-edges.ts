/**
 * Rings that are meant to share a corner or an edge, but differ in the last digits, made to share it exactly.
 */
import type { Box } from './ring.ts';
import { boxOf, distanceToSegment } from './ring.ts';
import type { PointMm } from './types.ts';

/**
 * Moves each corner that lies within `withinMm` of a corner of an earlier ring onto it, then gives each edge a corner
 * wherever another ring's corner lies within `withinMm` of it. Without this a void drawn along the outline leaves skins
 * of wood a rounding error thick, and these would count as the outermost fibre.
 */
export function shareEdges(rings: readonly (readonly PointMm[])[], withinMm: number): PointMm[][] {
  const boxes = rings.map((ring) => grown(boxOf(ring), withinMm));
  const moved: PointMm[][] = [];
  rings.forEach((ring, k) => {
    moved.push(
      ring.map((point) => {
        for (let j = 0; j < k; j++) {
          if (!holds(boxes[j]!, point)) continue;
          const twin = moved[j]!.find(
            (other) => Math.abs(other[0] - point[0]) <= withinMm && Math.abs(other[1] - point[1]) <= withinMm,
          );
          if (twin) return twin;
        }
        return point;
      }),
    );
  });
  return moved.map((ring, k) => {
    const others: PointMm[] = [];
    moved.forEach((other, j) => {
      if (j !== k) for (const point of other) if (holds(boxes[k]!, point)) others.push(point);
    });
    return others.length ? withCornersOn(ring, others, withinMm) : ring;
  });
}

/** The ring with a corner added at each of the points that lies on one of its edges but on none of its corners. */
function withCornersOn(ring: readonly PointMm[], points: readonly PointMm[], withinMm: number): PointMm[] {
  const out: PointMm[] = [];
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[(i + 1) % ring.length]!;
    out.push(a);
    const box = grown(boxOf([a, b]), withinMm);
    const on: { point: PointMm; along: number }[] = [];
    for (const point of points) {
      if (!holds(box, point) || same(point, a) || same(point, b)) continue;
      if (distanceToSegment(point[0], point[1], a[0], a[1], b[0], b[1]) > withinMm) continue;
      if (on.some((other) => same(other.point, point))) continue;
      on.push({ point, along: (point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1]) });
    }
    on.sort((p, q) => p.along - q.along);
    for (const { point } of on) out.push(point);
  }
  return out;
}

const same = (p: PointMm, q: PointMm) => p[0] === q[0] && p[1] === q[1];

const holds = (box: Box, [x, y]: PointMm) => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;

const grown = (box: Box, by: number): Box => ({
  minX: box.minX - by,
  minY: box.minY - by,
  maxX: box.maxX + by,
  maxY: box.maxY + by,
});
