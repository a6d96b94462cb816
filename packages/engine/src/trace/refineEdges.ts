import { type ConditionedTrace, FINE_STEP_MM, quantile } from './conditionTrace.ts';
import type { Stretch } from './semiMarkov.ts';

/** How far from the grid's edge the true one is looked for, and how far off levels are taken, mm. */
const REACH_MM = 4;
const LEVEL_TO_MM = 9;
const LEVEL_FROM_MM = 1.5;
/** Residuals beyond this many standard deviations count no more: rings and notches must not drag an edge. */
const CAP_SIGMAS = 2.5;

/**
 * Edges between stretches to a fraction of a cell: the least-squares change point on the fine grid between the levels
 * on the two sides, residuals capped. The tip's blur is even, so the middle of the slope is the edge.
 *
 * @returns positions in mm, one for each boundary between stretches.
 */
export function refineEdges(c: ConditionedTrace, stretches: readonly Stretch[], leastStep: number): number[] {
  const start = c.gridMm[0]! - c.cellMm / 2;
  const y = c.finePct;
  const n = y.length;
  const at = (mm: number) => Math.round((mm - start) / FINE_STEP_MM);
  const out: number[] = [];
  for (let b = 0; b + 1 < stretches.length; b++) {
    const left = stretches[b]!;
    const right = stretches[b + 1]!;
    const edge = start + left.to * c.cellMm;
    const before = out.at(-1) ?? start;
    const leftLength = edge - before;
    const rightLength = (right.to - right.from) * c.cellMm;
    const gapLeft = Math.min(LEVEL_FROM_MM, leftLength / 3);
    const gapRight = Math.min(LEVEL_FROM_MM, rightLength / 3);
    const a = y.slice(
      at(Math.max(before + Math.min(1, leftLength / 4), edge - LEVEL_TO_MM)),
      at(edge - gapLeft) + 1,
    );
    const d = y.slice(
      at(edge + gapRight),
      at(Math.min(edge + rightLength - Math.min(1, rightLength / 4), edge + LEVEL_TO_MM)) + 1,
    );
    if (a.length < 2 || d.length < 2) {
      out.push(edge);
      continue;
    }
    const levelLeft = quantile(a, 0.5);
    const levelRight = quantile(d, 0.5);
    if (Math.abs(levelLeft - levelRight) < leastStep) {
      out.push(edge);
      continue;
    }
    const step = Math.abs(levelLeft - levelRight);
    const spread = (v: Float64Array, m: number) =>
      Math.max(
        0.12 * step,
        1.48 *
          quantile(
            v.map((t) => Math.abs(t - m)),
            0.5,
          ),
        c.readingNoisePct * 0.5,
        0.2,
      );
    const sdLeft = spread(a, levelLeft);
    const sdRight = spread(d, levelRight);
    const from = at(Math.max(before + 0.5, edge - Math.min(REACH_MM, leftLength / 2)));
    const to = Math.min(
      n,
      at(Math.min(edge + Math.min(REACH_MM, rightLength / 2), start + n * FINE_STEP_MM)),
    );
    // Cost of putting the edge at fine step k: cells before k belong to the left.
    let cost = 0;
    let best = 0;
    let bestAt = from;
    for (let k = from; k < to; k++) {
      const l = Math.min(CAP_SIGMAS, Math.abs(y[k]! - levelLeft) / sdLeft);
      const r = Math.min(CAP_SIGMAS, Math.abs(y[k]! - levelRight) / sdRight);
      cost += 0.5 * (l * l - r * r) + Math.log(sdLeft / sdRight);
      if (cost < best) {
        best = cost;
        bestAt = k + 1;
      }
    }
    out.push(start + bestAt * FINE_STEP_MM);
  }
  return out;
}
