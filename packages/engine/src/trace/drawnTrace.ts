import type { Trace, TraceReading } from './types.ts';

/** A trace reduced for drawing: per column the least and greatest reading, and the modelled friction. */
export interface DrawnTrace {
  depthMm: number[];
  lowPct: number[];
  highPct: number[];
  frictionPct: number[];
}

/**
 * Reduce a trace to at most `columns` columns of equal depth so that no spike is lost: each holds the least and the
 * greatest reading in it. Columns without a reading are left out. `frictionPct` is the modelled floor (idle level and
 * friction: where a void reads), interpolated at the column's middle.
 */
export function drawnTrace(trace: Trace, reading: TraceReading, columns: number): DrawnTrace {
  const { depthMm, resistancePct } = trace;
  const n = depthMm.length;
  const from = depthMm[0]!;
  const width = (depthMm[n - 1]! - from) / columns;
  const out: DrawnTrace = { depthMm: [], lowPct: [], highPct: [], frictionPct: [] };
  const { gridMm, frictionPct } = reading;
  let g = 0;
  for (let i = 0; i < n; ) {
    const column = Math.min(columns - 1, Math.floor((depthMm[i]! - from) / width));
    let low = Infinity;
    let high = -Infinity;
    for (; i < n && Math.min(columns - 1, Math.floor((depthMm[i]! - from) / width)) === column; i++) {
      const y = resistancePct[i]!;
      if (y < low) low = y;
      if (y > high) high = y;
    }
    const x = from + (column + 0.5) * width;
    while (g < gridMm.length - 2 && gridMm[g + 1]! < x) g++;
    out.depthMm.push(x);
    out.lowPct.push(low);
    out.highPct.push(high);
    out.frictionPct.push(at(gridMm, frictionPct, g, x));
  }
  return out;
}

/** Linear interpolation in the grid interval that starts at `g`, held flat beyond the grid's ends. */
function at(gridMm: Float64Array, values: Float64Array, g: number, x: number): number {
  if (gridMm.length < 2) return values[0] ?? 0;
  const u = (x - gridMm[g]!) / (gridMm[g + 1]! - gridMm[g]!);
  return values[g]! + Math.min(1, Math.max(0, u)) * (values[g + 1]! - values[g]!);
}
