import { type ConditionedTrace, FINE_STEP_MM, quantile } from './conditionTrace.ts';

/** Ring widths looked for, mm; window and step they are looked for in, mm. */
const NARROWEST_MM = 0.75;
const WIDEST_MM = 9;
const WINDOW_MM = 32;
const HOP_MM = 4;
/** Autocorrelation at the ring width from which rings count as seen; noise alone seldom reaches it in a window. */
export const SEEN = 0.35;
/** Share of windows that must show rings for a species or setting to count as showing them at all. */
const ENOUGH = 0.4;

export interface Rings {
  /** Whether rings show in this trace; where they do not, their absence says nothing. */
  visible: boolean;
  /** Height of the autocorrelation's peak in each cell, 0 to 1. */
  clarity: Float64Array;
  /** Ring width where rings are seen, mm (median), or 0. */
  widthMm: number;
}

/**
 * Find the ring pattern: in windows of 32 mm the level is detrended by its running mean over the widest ring and its
 * autocorrelation searched for a peak at a lag of 0.75 to 9 mm that stands over a trough before it. Rings that are
 * not even enough to repeat are not counted. In diffuse-porous wood nothing is found, which is no evidence of decay.
 */
export function findRings(c: ConditionedTrace): Rings {
  const y = c.finePct;
  const n = y.length;
  const cells = c.gridMm.length;
  const clarity = new Float64Array(cells);
  const none = { visible: false, clarity, widthMm: 0 };
  const lagFrom = Math.max(2, Math.round(Math.max(NARROWEST_MM, 2.5 * c.spacingMm) / FINE_STEP_MM));
  const lagTo = Math.round(WIDEST_MM / FINE_STEP_MM);
  const width = Math.round(WINDOW_MM / FINE_STEP_MM);
  if (n < width + lagTo || lagFrom >= lagTo) return none;

  const reach = lagTo >> 1;
  const sum = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) sum[i + 1] = sum[i]! + y[i]!;
  const d = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const a = Math.max(0, i - reach);
    const b = Math.min(n, i + reach + 1);
    d[i] = y[i]! - (sum[b]! - sum[a]!) / (b - a);
  }

  const hop = Math.round(HOP_MM / FINE_STEP_MM);
  const tops: number[] = [];
  const lags: number[] = [];
  const middles: number[] = [];
  const correlation = new Float64Array(lagTo + 1);
  for (let from = 0; from + width <= n; from += hop) {
    // Steps at zone edges would rule the correlation: each window's values are capped at three times their median size.
    const size = quantile(d.slice(from, from + width).map(Math.abs), 0.5);
    const cap = 3 * size + 1e-9;
    const capped = d.slice(from, from + width).map((v) => Math.max(-cap, Math.min(cap, v)));
    let power = 0;
    for (const v of capped) power += v * v;
    let top = 0;
    let at = 0;
    let trough = 1;
    for (let lag = 1; lag <= lagTo; lag++) {
      let s = 0;
      for (let i = 0; i + lag < width; i++) s += capped[i]! * capped[i + lag]!;
      correlation[lag] = (s / (width - lag)) * (width / (power + 1e-9));
      if (lag >= lagFrom && correlation[lag]! > top && trough < 0.05) {
        top = correlation[lag]!;
        at = lag;
      }
      trough = Math.min(trough, correlation[lag]!);
    }
    tops.push(Math.min(1, top));
    lags.push(at * FINE_STEP_MM);
    middles.push((from + width / 2) / (n / cells));
  }
  const seen = tops.map((t, i) => (t > SEEN ? lags[i]! : 0)).filter((v) => v > 0);
  if (seen.length < ENOUGH * tops.length) return none;
  let w = 0;
  for (let i = 0; i < cells; i++) {
    while (w < middles.length - 2 && middles[w + 1]! < i) w++;
    const u = Math.max(0, Math.min(1, (i - middles[w]!) / Math.max(1, (middles[w + 1] ?? i) - middles[w]!)));
    clarity[i] = tops[w]! + u * ((tops[w + 1] ?? tops[w]!) - tops[w]!);
  }
  return { visible: true, clarity, widthMm: quantile(Float64Array.from(seen), 0.5) };
}
