/** Summaries of draws: the 5 %, 50 % and 95 % points, of one set or by direction. */
import type { DirectionalInterval } from '../section/types.ts';
import type { Interval } from '../trace/types.ts';
import { DIRECTIONS } from './types.ts';

/** Puts the k-th smallest at k, smaller ones before it (Hoare 1961), in place, between `low` and `high`. */
function select(values: Float64Array, k: number, low: number, high: number): void {
  while (low < high) {
    const pivot = values[(low + high) >> 1]!;
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i <= j) {
        const kept = values[i]!;
        values[i++] = values[j]!;
        values[j--] = kept;
      }
    }
    if (k <= j) high = j;
    else if (k >= i) low = i;
    else return;
  }
}

/** The p-quantile, linear between order statistics (Hyndman and Fan 1996, type 7). Reorders `values` from `low` up. */
function quantileFrom(values: Float64Array, p: number, low: number): number {
  const last = values.length - 1;
  const place = p * last;
  const k = Math.floor(place);
  select(values, k, low, last);
  const below = values[k]!;
  if (k === last || place === k) return below;
  let above = Number.POSITIVE_INFINITY;
  for (let i = k + 1; i <= last; i++) if (values[i]! < above) above = values[i]!;
  // Equal ends first: the difference of two infinities is no number.
  return below === above ? below : below + (place - k) * (above - below);
}

/** 5 %, 50 % and 95 % points of draws. Reorders `draws`. */
export function interval(draws: Float64Array): Interval {
  const p05 = quantileFrom(draws, 0.05, 0);
  const p50 = quantileFrom(draws, 0.5, Math.floor(0.05 * (draws.length - 1)));
  const p95 = quantileFrom(draws, 0.95, Math.floor(0.5 * (draws.length - 1)));
  return { p05, p50, p95 };
}

/** Intervals by direction of `draws` rows of 36. Leaves `values` as they are. */
export function directionalIntervals(values: Float64Array, draws: number): DirectionalInterval[] {
  const column = new Float64Array(draws);
  return Array.from({ length: DIRECTIONS }, (_, d) => {
    for (let i = 0; i < draws; i++) column[i] = values[i * DIRECTIONS + d]!;
    return { directionDeg: (d * 360) / DIRECTIONS, ...interval(column) };
  });
}
