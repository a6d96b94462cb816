/** Pairs of edges of two rings that come near each other, without looking at all pairs. */
import type { RingMm } from './types.ts';

/**
 * Calls `visit(i, k)` for every edge i of one ring and k of another whose upright boxes come within `withinMm` of each
 * other (edge i runs from corner i to the next). Stops early when `visit` returns true.
 */
export function forNearEdges(
  one: RingMm,
  other: RingMm,
  withinMm: number,
  visit: (i: number, k: number) => boolean | undefined,
): void {
  const n = other.length;
  const order = Array.from({ length: n }, (_, k) => k);
  const low = Float64Array.from(other, (p, k) => Math.min(p[0], other[(k + 1) % n]![0]));
  const high = Float64Array.from(other, (p, k) => Math.max(p[0], other[(k + 1) % n]![0]));
  order.sort((a, b) => low[a]! - low[b]!);
  const widest = low.reduce((most, from, k) => Math.max(most, high[k]! - from), 0);
  for (let i = 0; i < one.length; i++) {
    const a = one[i]!;
    const b = one[(i + 1) % one.length]!;
    const minX = Math.min(a[0], b[0]) - withinMm;
    const maxX = Math.max(a[0], b[0]) + withinMm;
    const minY = Math.min(a[1], b[1]) - withinMm;
    const maxY = Math.max(a[1], b[1]) + withinMm;
    let from = 0;
    let to = n;
    while (from < to) {
      const middle = (from + to) >> 1;
      if (low[order[middle]!]! < minX - widest) from = middle + 1;
      else to = middle;
    }
    for (; from < n; from++) {
      const k = order[from]!;
      if (low[k]! > maxX) break;
      if (high[k]! < minX) continue;
      const y1 = other[k]![1];
      const y2 = other[(k + 1) % n]![1];
      if (Math.max(y1, y2) < minY || Math.min(y1, y2) > maxY) continue;
      if (visit(i, k)) return;
    }
  }
}
