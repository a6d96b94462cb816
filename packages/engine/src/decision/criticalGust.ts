/**
 * The gust at which demand meets capacity.
 *
 * Above the top tested speed the drag coefficient is constant, the load goes with the square of the speed, and
 * v = v_design sqrt(λ). Below it the crown streamlines less and the load falls more slowly than the square, so the
 * power of the drag law is followed there; taking the square throughout would flatter a weak tree.
 */
import type { Streamlining } from '../wind/index.ts';

/** Load on the crown at a gust, in units of that with drag 1 at the top tested speed. */
function load(streamlining: Streamlining, gustMs: number): number {
  const held = Math.min(Math.max(gustMs, streamlining.leastMs), streamlining.topMs);
  return gustMs * gustMs * (held / streamlining.topMs) ** streamlining.exponent;
}

/** Multiple of the design gust at which the wind's moment is `loadRatio` times that of the design gust. */
export function gustRatio(streamlining: Streamlining, loadRatio: number): number {
  const { gustMs, exponent, leastMs, topMs } = streamlining;
  if (loadRatio <= 0) return 0;
  const wanted = loadRatio * load(streamlining, gustMs);
  if (wanted >= load(streamlining, topMs)) return Math.sqrt(wanted) / gustMs;
  if (wanted >= load(streamlining, leastMs))
    return (wanted / topMs ** -exponent) ** (1 / (2 + exponent)) / gustMs;
  return Math.sqrt(wanted / (leastMs / topMs) ** exponent) / gustMs;
}
