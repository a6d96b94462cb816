import type { Trace } from './types.ts';

/** Step of the fine grid, mm: a quarter of what the tip averages over, so that no edge or crack is lost to it. */
export const FINE_STEP_MM = 0.25;
/** Fine steps to one cell of the grid that zones are told on. */
export const FINE_PER_CELL = 4;
/** Half width, in readings, of the neighbourhood a spike is told against, and how far out of it a spike stands. */
const SPIKE_REACH = 4;
const SPIKE_SIGMAS = 6;
/** Widest run of fine cells a spike can fill: 0.5 mm. The tip averages over more, so wood cannot look like it. */
const SPIKE_CELLS = 2;
/** A stretch longer than this without a reading, and than three times the usual distance between them, is a gap, mm. */
const LEAST_GAP_MM = 3;

/** A trace on an even grid, spikes tamed, nothing smoothed. Levels in percent of full scale. */
export interface ConditionedTrace {
  /** Middles of the fine steps, mm, and the level there. */
  fineMm: Float64Array;
  finePct: Float64Array;
  /** Middles of the cells, mm; the mean level and the least fine level in each. */
  gridMm: Float64Array;
  levelPct: Float64Array;
  lowPct: Float64Array;
  /** 1 for cells that lie in a stretch without a reading: their levels are joined across, and tell nothing. */
  unread: Uint8Array;
  cellMm: number;
  /** Depth of the last reading, mm: up to a cell beyond the grid. */
  endMm: number;
  /** Mean distance between readings, mm. */
  spacingMm: number;
  /** Noise of one reading, and what is left of it in a cell, percent of full scale. */
  readingNoisePct: number;
  cellNoisePct: number;
  spikes: number;
  /** Share of readings at the top of the scale. */
  clippedShare: number;
}

/**
 * Put a trace on an even grid in one pass: readings are averaged within fine steps of 0.25 mm (interpolated where
 * readings are further apart), single readings or runs up to 0.5 mm that stand far out of their neighbourhood are
 * replaced by its median (a Hampel filter: Hampel 1974; nothing narrower than the tip can be wood), and cells of
 * 1 mm take the mean. Memory grows with the depth spanned, not with the number of readings.
 */
export function conditionTrace(trace: Trace): ConditionedTrace {
  const { depthMm, resistancePct } = trace;
  const n = depthMm.length;
  const from = depthMm[0]!;
  const span = depthMm[n - 1]! - from;
  const cells = Math.max(4, Math.floor(span / (FINE_STEP_MM * FINE_PER_CELL) + 1e-9));
  const steps = cells * FINE_PER_CELL;
  const step = FINE_STEP_MM;

  // One pass: sums within fine steps, clipped readings, and differences for the noise.
  const sum = new Float64Array(steps);
  const count = new Float64Array(steps);
  const stride = Math.max(1, Math.floor(n / 20000));
  const jumps: number[] = [];
  let clipped = 0;
  for (let i = 0; i < n; i++) {
    const y = resistancePct[i]!;
    let k = ((depthMm[i]! - from) / step) | 0;
    if (k >= steps) k = steps - 1;
    sum[k] = sum[k]! + y;
    count[k] = count[k]! + 1;
    if (y >= 99.5) clipped++;
    if (i % stride === 0 && i > 1)
      jumps.push(Math.abs(y - 2 * resistancePct[i - 1]! + resistancePct[i - 2]!));
  }
  // Second differences of white noise have variance 6; the lower quartile of their size leaves signal out.
  const readingNoisePct = quantile(Float64Array.from(jumps), 0.3) / (0.3853 * Math.sqrt(6));

  const filled: number[] = [];
  for (let k = 0; k < steps; k++) if (count[k]! > 0) filled.push(k);
  const values = Float64Array.from(filled, (k) => sum[k]! / count[k]!);
  const spacingMm = span / (n - 1);
  const spikes = spacingMm <= 0.6 ? tameSpikes(values, readingNoisePct) : 0;

  // Back to an even grid, interpolating over steps without a reading.
  const finePct = new Float64Array(steps);
  let f = 0;
  for (let k = 0; k < steps; k++) {
    while (f < filled.length - 1 && filled[f + 1]! <= k) f++;
    const a = filled[f]!;
    const b = filled[f + 1];
    finePct[k] =
      b === undefined || k <= a
        ? values[f]!
        : values[f]! + ((k - a) / (b - a)) * (values[f + 1]! - values[f]!);
  }

  const fineMm = Float64Array.from({ length: steps }, (_, k) => from + (k + 0.5) * step);
  const gridMm = new Float64Array(cells);
  const levelPct = new Float64Array(cells);
  const lowPct = new Float64Array(cells);
  for (let c = 0; c < cells; c++) {
    let total = 0;
    let low = Infinity;
    for (let k = c * FINE_PER_CELL; k < (c + 1) * FINE_PER_CELL; k++) {
      total += finePct[k]!;
      if (finePct[k]! < low) low = finePct[k]!;
    }
    gridMm[c] = from + (c + 0.5) * step * FINE_PER_CELL;
    levelPct[c] = total / FINE_PER_CELL;
    lowPct[c] = low;
  }
  const cellMm = step * FINE_PER_CELL;
  const unread = new Uint8Array(cells);
  for (let i = 1; i < n; i++) {
    if (depthMm[i]! - depthMm[i - 1]! <= Math.max(LEAST_GAP_MM, 3 * spacingMm)) continue;
    const last = Math.min(cells, Math.floor((depthMm[i]! - from) / cellMm));
    for (let k = Math.ceil((depthMm[i - 1]! - from) / cellMm); k < last; k++) unread[k] = 1;
  }
  return {
    fineMm,
    finePct,
    gridMm,
    levelPct,
    lowPct,
    unread,
    cellMm,
    endMm: Math.max(depthMm[n - 1]!, from + cells * cellMm),
    spacingMm,
    readingNoisePct,
    cellNoisePct: readingNoisePct * Math.sqrt(Math.min(1, spacingMm / cellMm)),
    spikes,
    clippedShare: clipped / n,
  };
}

/** Replace runs of one or two values that stand far out of their neighbours by the neighbours' median, in place. */
function tameSpikes(values: Float64Array, noise: number): number {
  const n = values.length;
  const original = values.slice();
  const around = new Float64Array(2 * SPIKE_REACH);
  let tamed = 0;
  for (let i = 0; i < n; i++) {
    // Cheap test first: a spike stands off the values two and three places away on both sides.
    const a = original[Math.max(0, i - SPIKE_CELLS)]!;
    const b = original[Math.min(n - 1, i + SPIKE_CELLS)]!;
    const y = original[i]!;
    const off = y > Math.max(a, b) ? y - Math.max(a, b) : Math.min(a, b) - y;
    if (off < 4 * noise + 4) continue;
    let m = 0;
    for (let j = i - SPIKE_REACH; j <= i + SPIKE_REACH; j++)
      if (j !== i && j >= 0 && j < n) around[m++] = original[j]!;
    const near = around.slice(0, m).sort();
    const middle = near[m >> 1]!;
    const spread = near[Math.floor(0.8 * (m - 1))]! - near[Math.floor(0.2 * (m - 1))]!;
    if (Math.abs(y - middle) > SPIKE_SIGMAS * Math.max(noise, spread / 1.7, 1)) {
      values[i] = middle;
      tamed++;
    }
  }
  return tamed;
}

/** The q-quantile of values, by sorting a copy; 0 for none. */
export function quantile(values: Float64Array, q: number): number {
  if (values.length === 0) return 0;
  const sorted = values.slice().sort();
  const u = q * (sorted.length - 1);
  const i = Math.floor(u);
  const v = sorted[i]!;
  return i + 1 < sorted.length ? v + (u - i) * (sorted[i + 1]! - v) : v;
}
