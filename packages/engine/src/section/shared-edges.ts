/**
 * Rings that are meant to share a corner or an edge, but differ in the last digits, made to share it exactly.
 */
import { distanceToSegment } from './ring.ts';
import type { PointMm } from './types.ts';

/**
 * Moves each corner that lies within `withinMm` of a corner of an earlier ring onto it, then gives each edge a corner
 * wherever another ring's corner lies within `withinMm` of it. Without this a void drawn along the outline leaves skins
 * of wood a rounding error thick, and these would count as the outermost fibre.
 */
export function shareEdges(rings: readonly (readonly PointMm[])[], withinMm: number): PointMm[][] {
  const moved: PointMm[][] = [];
  const earlier: ((point: PointMm) => PointMm | undefined)[] = [];
  for (const ring of rings) {
    const points = ring.map((point) => {
      for (const twinOf of earlier) {
        const twin = twinOf(point);
        if (twin) return twin;
      }
      return point;
    });
    moved.push(points);
    const near = pointsByX(points.map((point) => ({ point, ring: 0 })));
    earlier.push((point) => {
      const box = boxRound(point, point, withinMm);
      return near(box)[0]?.point;
    });
  }
  const all = pointsByX(moved.flatMap((points, ring) => points.map((point) => ({ point, ring }))));
  return moved.map((points, k) =>
    points.flatMap((a, i) => {
      const b = points[(i + 1) % points.length]!;
      const on: { point: PointMm; along: number }[] = [];
      for (const { point, ring } of all(boxRound(a, b, withinMm))) {
        if (ring === k || same(point, a) || same(point, b)) continue;
        if (distanceToSegment(point[0], point[1], a[0], a[1], b[0], b[1]) > withinMm) continue;
        if (on.some((other) => same(other.point, point))) continue;
        on.push({ point, along: (point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1]) });
      }
      return [a, ...on.sort((p, q) => p.along - q.along).map(({ point }) => point)];
    }),
  );
}

type Box = [minX: number, minY: number, maxX: number, maxY: number];
type Placed = { point: PointMm; ring: number };

/** Points in order of x, to be asked for those inside a box. */
function pointsByX(points: Placed[]): (box: Box) => Placed[] {
  const sorted = [...points].sort((p, q) => p.point[0] - q.point[0]);
  return ([minX, minY, maxX, maxY]) => {
    let from = 0;
    let to = sorted.length;
    while (from < to) {
      const middle = (from + to) >> 1;
      if (sorted[middle]!.point[0] < minX) from = middle + 1;
      else to = middle;
    }
    const found: Placed[] = [];
    for (; from < sorted.length && sorted[from]!.point[0] <= maxX; from++) {
      const y = sorted[from]!.point[1];
      if (y >= minY && y <= maxY) found.push(sorted[from]!);
    }
    return found;
  };
}

const boxRound = (a: PointMm, b: PointMm, by: number): Box => [
  Math.min(a[0], b[0]) - by,
  Math.min(a[1], b[1]) - by,
  Math.max(a[0], b[0]) + by,
  Math.max(a[1], b[1]) + by,
];

const same = (p: PointMm, q: PointMm) => p[0] === q[0] && p[1] === q[1];
