/**
 * The chart's own print: level and upright lines that run right across it (frame and grid). They are told from the
 * pen by where they are, not by their colour: at one row or column over the chart's whole extent.
 */
import { PAPER, pointOf } from './paper.ts';
import type { FlatChart } from './warp.ts';

/**
 * Share of its brightness that print leaves to the paper, for the rows and columns that print runs along.
 * `factor` holds for each stretch of a line and each channel a number from near 0 (black print) to 1 (none).
 */
export interface PrintedLines {
  /** Middle of each printed line, rows (or columns) of the flat chart, ascending. */
  middles: number[];
  /** For each row (or column): 0 where nothing is printed along it, else 1 + its index into `factor`. */
  indexOf: Uint16Array;
  /** `factor[((index - 1) * stretches + stretch) * 3 + channel]`. */
  factor: Float32Array;
  stretches: number;
  stretchLength: number;
}

/** A line is printed where so much of the chart's extent is dark along it; pen traces stay at one level for less. */
const PRINTED_SHARE = 0.8;
const LEAST_DARKNESS = 4;
/** Print is as dark as the brighter part of what lies along it: the pen, where it crosses, is on the darker side. */
const PRINT_POINT = 0.65;
/** How much darker print may be in one stretch than is usual, share of the paper's brightness. */
const UNEVEN_PRINT = 0.06;
const REACH = 3;

/** Finds printed lines. @param upright columns instead of rows */
export function printedLines(chart: FlatChart, upright: boolean): PrintedLines {
  const { columns, rows, red, green, blue } = chart;
  const across = upright ? columns : rows;
  const along = upright ? rows : columns;
  const stepAcross = upright ? 1 : columns;
  const stepAlong = upright ? columns : 1;

  // How dark the row is along 80 % of its length, a line that wanders by a pixel still counted as one.
  const thin = Math.max(1, Math.floor(along / 500));
  const profile = new Float64Array(across);
  const counts = new Uint32Array(256);
  const darkest = darkestAlong(chart, upright);
  let total = 0;
  for (let a = 0; a < across; a++) {
    counts.fill(0);
    total = 0;
    const before = a > 0 ? a - 1 : 0;
    const after = a < across - 1 ? a + 1 : a;
    for (let b = 0; b < along; b += thin) {
      const p = b * stepAlong;
      let value = darkest[a * stepAcross + p]!;
      const u = darkest[before * stepAcross + p]!;
      const v = darkest[after * stepAcross + p]!;
      if (u < value) value = u;
      if (v < value) value = v;
      counts[value]!++;
      total++;
    }
    profile[a] = PAPER - pointOf(counts, total * PRINTED_SHARE);
  }
  const base = runningMedian(profile, 12);
  const raised = profile.map((value, a) => value - base[a]!);
  const noise = [...raised].map(Math.abs).sort((x, y) => x - y)[across >> 1]! * 1.5;
  const least = Math.max(LEAST_DARKNESS, 4 * noise);

  const middles: number[] = [];
  const indexOf = new Uint16Array(across);
  let used = 0;
  for (let a = 0; a < across; a++) {
    if (raised[a]! < least) continue;
    let end = a;
    let sum = 0;
    let weighted = 0;
    while (end < across && raised[end]! >= least) {
      sum += raised[end]!;
      weighted += end * raised[end]!;
      end++;
    }
    middles.push(weighted / sum);
    for (let k = Math.max(0, a - 1); k < Math.min(across, end + 1); k++) {
      if (!indexOf[k]) indexOf[k] = ++used;
    }
    a = end;
  }

  const stretches = Math.max(1, Math.min(16, Math.floor(along / 48)));
  const stretchLength = Math.ceil(along / stretches);
  const factor = new Float32Array(used * stretches * 3).fill(1);
  const planes = [red, green, blue];
  for (let a = 0; a < across; a++) {
    const index = indexOf[a]!;
    if (!index) continue;
    for (let channel = 0; channel < 3; channel++) {
      const plane = planes[channel]!;
      const found: number[] = [];
      for (let s = 0; s < stretches; s++) {
        counts.fill(0);
        let seen = 0;
        const end = Math.min(along, (s + 1) * stretchLength);
        for (let b = s * stretchLength; b < end; b += thin) {
          counts[plane[a * stepAcross + b * stepAlong]!]!++;
          seen++;
        }
        found.push(Math.min(1, pointOf(counts, seen * PRINT_POINT) / PAPER));
      }
      // Where the pen runs along the print for a stretch, the print must not be taken for as dark as the pen.
      const usual = [...found].sort((x, y) => x - y)[Math.floor(found.length * PRINT_POINT)]!;
      for (let s = 0; s < stretches; s++) {
        const value = Math.min(1, Math.max(found[s]!, usual - UNEVEN_PRINT, 0.04));
        factor[((index - 1) * stretches + s) * 3 + channel] = value;
      }
    }
  }
  return { middles, indexOf, factor, stretches, stretchLength };
}

/** The darkest channel, averaged over a few pixels along the lines looked for, so that noise counts less. */
function darkestAlong(chart: FlatChart, upright: boolean): Uint8Array {
  const { columns, rows, red, green, blue } = chart;
  const size = columns * rows;
  const least = new Uint8Array(size);
  for (let k = 0; k < size; k++) {
    const r = red[k]!;
    const g = green[k]!;
    const b = blue[k]!;
    const m = Math.min(r, g);
    least[k] = Math.min(m, b);
  }
  const out = new Uint8Array(size);
  const step = upright ? columns : 1;
  const reach = REACH * step;
  for (let k = 0; k < size; k++) {
    const a = k - reach < 0 ? k : k - reach;
    const b = k + reach >= size ? k : k + reach;
    out[k] = (least[a]! + 2 * least[k]! + least[b]!) >> 2;
  }
  return out;
}

function runningMedian(values: Float64Array, reach: number): Float64Array {
  const out = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) {
    const window = values.slice(Math.max(0, i - reach), i + reach + 1).sort();
    out[i] = window[window.length >> 1]!;
  }
  return out;
}
