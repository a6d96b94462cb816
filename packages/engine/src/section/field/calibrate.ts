/**
 * The last step: what the model leaves out. Edges read to a few millimetres, the needle's wander and the outline's
 * finer detail are not in the draws, so where several needles agree the draws agree too well. Each direction's draws
 * are moved apart about their median, which stays: by 0.007 of the whole strength at the 5 and 95 % points,
 * in proportion between and beyond. Found on the tuning families; see docs/accuracy/sections.md. A draw in which all
 * the wood is sound stays at 1.
 */
import { DIRECTIONS } from './strength.ts';

/** Shift at the 5 and 95 % points, share of the whole strength. */
const LEFT_OUT = 0.007;
/** Farthest shift, for the outermost draws, in those units. */
const FARTHEST = 1.1;

/** Moves the draws of `remaining` (rows of 36 directions, alike after 18) apart in place. */
export function calibrate(remaining: Float64Array, draws: number): void {
  const half = DIRECTIONS / 2;
  const values = new Float64Array(draws);
  for (let d = 0; d < half; d++) {
    for (let i = 0; i < draws; i++) values[i] = remaining[i * DIRECTIONS + d]!;
    const sorted = Float64Array.from(values).sort();
    for (let i = 0; i < draws; i++) {
      const value = values[i]!;
      if (value === 1 || value === 0) continue;
      const rank = (lowerBound(sorted, value) + 0.5) / draws;
      const share = Math.max(-FARTHEST, Math.min(FARTHEST, (rank - 0.5) / 0.45));
      const most = Math.max(1, value);
      const moved = Math.min(most, Math.max(0, value + LEFT_OUT * share));
      remaining[i * DIRECTIONS + d] = moved;
      remaining[i * DIRECTIONS + d + half] = moved;
    }
  }
}

/** Number of sorted values below `value`. */
function lowerBound(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
