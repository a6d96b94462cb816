import type { StretchPosterior } from './semiMarkov.ts';
import type { Interval } from './types.ts';

/**
 * The residual wall's distribution from the posterior over stretches: where the wood begins and where its first whole
 * run ends, taken as independent, blurred by what edges are uncertain by. Wood that does not begin sound is a wall of
 * nothing.
 *
 * @param shiftMm what refining the edges has added to the wall found on the grid.
 * @param edgeSdMm what its edges are uncertain by beyond the model's own doubt, standard deviation.
 */
export function wallInterval(
  posterior: StretchPosterior,
  cellMm: number,
  shiftMm: number,
  edgeSdMm: number,
): Interval {
  const { woodBegins, wholeEnds, brokenAtOnce } = posterior;
  const n = woodBegins.length;
  const mass = new Float64Array(n);
  const begins: number[] = [];
  for (let s = 0; s < n; s++) if (woodBegins[s]! > 1e-4) begins.push(s);
  for (let e = 0; e < n; e++) {
    if (wholeEnds[e]! < 1e-6) continue;
    for (const s of begins) if (s < e) mass[e - s]! += woodBegins[s]! * wholeEnds[e]!;
  }
  let total = 0;
  for (let d = 1; d < n; d++) total += mass[d]!;
  const broken = Math.min(1, Math.max(total > 0 ? 0 : 1, brokenAtOnce));
  const lengths: number[] = [];
  for (let d = 1; d < n; d++) if (mass[d]! > 1e-6 * total) lengths.push(d);
  const cumulative = (x: number) => {
    let sum = 0;
    for (const d of lengths) sum += mass[d]! * normalBelow((x - d * cellMm - shiftMm) / edgeSdMm);
    return broken + (total > 0 ? ((1 - broken) * sum) / total : 0);
  };
  const top = (n + 8) * cellMm + Math.abs(shiftMm);
  const point = (q: number) => {
    if (cumulative(0) >= q) return 0;
    let a = 0;
    let b = top;
    for (let i = 0; i < 30; i++) {
      const m = 0.5 * (a + b);
      if (cumulative(m) < q) a = m;
      else b = m;
    }
    return 0.5 * (a + b);
  };
  return { p05: point(0.05), p50: point(0.5), p95: point(0.95) };
}

/** Standard normal distribution function (logistic form of Bowling et al. 2009, absolute error below 2e-4). */
function normalBelow(z: number): number {
  return 1 / (1 + Math.exp(-z * (1.5976 + 0.07056 * z * z)));
}
