/** What lies on the paper besides its own print, and how much of it looks like one pen. */
import { PAPER } from './paper.ts';
import type { PrintedLines } from './printedLines.ts';
import type { FlatChart } from './warp.ts';

/** Darkness of red, green and blue, 0 (paper) to `PAPER` (black), a byte each, column after column. */
export interface Ink {
  columns: number;
  rows: number;
  red: Uint8Array;
  green: Uint8Array;
  blue: Uint8Array;
  /** 1 where print is too dark to see anything on it. */
  covered: Uint8Array;
  level: PrintedLines;
  upright: PrintedLines;
}

/** Byte of `evidence` that means: as dark as the pen. */
export const FULL = 200;

/** How alike the pen each pixel is, column after column; `hidden` is 1 where print as dark as the pen covers it. */
export interface Evidence {
  columns: number;
  rows: number;
  evidence: Uint8Array;
  hidden: Uint8Array;
}

/** Print that leaves less than this share of the brightness covers what is on it. */
const COVERING = 0.3;
/** Columns turned at a time. */
const BAND = 32;

/** The chart's ink with the darkness of its printed lines divided out. */
export function inkOf(chart: FlatChart, level: PrintedLines, upright: PrintedLines): Ink {
  const { columns, rows } = chart;
  const out: Uint8Array[] = [];
  const covered = new Uint8Array(columns * rows);
  const planes = [chart.red, chart.green, chart.blue];
  for (let channel = 0; channel < 3; channel++) {
    const plane = planes[channel]!;
    const ink = darknessByColumns(plane, columns, rows);
    clearPrint(ink, plane, covered, level, upright, channel, columns, rows);
    out.push(ink);
  }
  const [red, green, blue] = out as [Uint8Array, Uint8Array, Uint8Array];
  for (let k = 0; k < covered.length; k++) {
    // A coloured print is seen through in one channel at least.
    covered[k] = covered[k] === 3 ? 1 : 0;
    if (covered[k]) red[k] = green[k] = blue[k] = 0;
  }
  return { columns, rows, red, green, blue, covered, level, upright };
}

/**
 * The ink on a coarser mesh, each place half the mean and half the darkest of `fold` × `fold`, so that a thin stroke is
 * not lost among its paper: enough to tell which line is the trace.
 * Print is kept as it lies on the finer mesh's coarser places.
 */
export function coarseInk(ink: Ink, fold: number): Ink {
  if (fold === 1) return ink;
  const columns = Math.floor(ink.columns / fold);
  const rows = Math.floor(ink.rows / fold);
  const places = fold * fold;
  const sums = new Int32Array(rows);
  const mosts = new Uint8Array(rows);
  /** Sum and greatest of each coarse place of a column. */
  const foldColumn = (plane: Uint8Array, x: number) => {
    sums.fill(0);
    mosts.fill(0);
    for (let i = 0; i < fold; i++) {
      let k = (x * fold + i) * ink.rows;
      for (let y = 0; y < rows; y++) {
        let sum = 0;
        let most = mosts[y]!;
        for (let j = 0; j < fold; j++, k++) {
          const value = plane[k]!;
          sum += value;
          most = Math.max(most, value);
        }
        sums[y]! += sum;
        mosts[y] = most;
      }
    }
  };
  const folded = (plane: Uint8Array) => {
    const out = new Uint8Array(columns * rows);
    for (let x = 0; x < columns; x++) {
      foldColumn(plane, x);
      for (let y = 0; y < rows; y++) out[x * rows + y] = (sums[y]! / places + mosts[y]!) / 2;
    }
    return out;
  };
  const covered = new Uint8Array(columns * rows);
  for (let x = 0; x < columns; x++) {
    foldColumn(ink.covered, x);
    for (let y = 0; y < rows; y++) covered[x * rows + y] = 2 * sums[y]! >= places ? 1 : 0;
  }
  const coarser = (lines: PrintedLines, count: number): PrintedLines => {
    const indexOf = new Uint16Array(count);
    for (let i = 0; i < count; i++) {
      // Print that covers half a coarse place covers it; less is lost in the mean.
      let covered = 0;
      for (let j = 0; j < fold; j++) {
        const index = lines.indexOf[i * fold + j]!;
        if (index) covered++;
        if (index && 2 * covered >= fold) indexOf[i] = index;
      }
    }
    return { ...lines, indexOf, stretchLength: lines.stretchLength / fold };
  };
  return {
    columns,
    rows,
    red: folded(ink.red),
    green: folded(ink.green),
    blue: folded(ink.blue),
    covered,
    level: coarser(ink.level, rows),
    upright: coarser(ink.upright, columns),
  };
}

/** Divides the print out of one channel's darkness, and counts in `covered` where it leaves too little to see by. */
function clearPrint(
  ink: Uint8Array,
  plane: Uint8Array,
  covered: Uint8Array,
  level: PrintedLines,
  upright: PrintedLines,
  channel: number,
  columns: number,
  rows: number,
): void {
  const clear = (x: number, y: number) => {
    const leaves = printLeaves(level, upright, x, y, channel);
    const k = x * rows + y;
    if (leaves < COVERING) covered[k]!++;
    ink[k] = Math.max(0, PAPER - plane[y * columns + x]! / leaves);
  };
  for (let y = 0; y < rows; y++) {
    if (level.indexOf[y]) for (let x = 0; x < columns; x++) clear(x, y);
  }
  for (let x = 0; x < columns; x++) {
    if (!upright.indexOf[x]) continue;
    for (let y = 0; y < rows; y++) if (!level.indexOf[y]) clear(x, y);
  }
}

/** From brightness, row after row, to darkness, column after column. */
function darknessByColumns(plane: Uint8Array, columns: number, rows: number): Uint8Array {
  const out = new Uint8Array(columns * rows);
  // A band of columns at a time, so that what is written lies close together.
  for (let from = 0; from < columns; from += BAND) {
    const to = Math.min(columns, from + BAND);
    for (let y = 0; y < rows; y++) {
      const at = y * columns;
      for (let x = from; x < to; x++) out[x * rows + y] = Math.max(0, PAPER - plane[at + x]!);
    }
  }
  return out;
}

/** Share of brightness that the print at a place leaves, of one channel. */
function printLeaves(
  level: PrintedLines,
  upright: PrintedLines,
  x: number,
  y: number,
  channel: number,
): number {
  const li = level.indexOf[y]!;
  const ui = upright.indexOf[x]!;
  const one = li ? leavesOf(level, li, x, channel) : 1;
  const other = ui ? leavesOf(upright, ui, y, channel) : 1;
  // Where two printed lines cross, the paper is printed as dark as the darker of them.
  return Math.min(one, other);
}

/** What one printed line leaves, of one channel, at a place along it. */
function leavesOf(lines: PrintedLines, index: number, along: number, channel: number): number {
  const stretch = Math.min(lines.stretches - 1, Math.floor(along / lines.stretchLength));
  return lines.factor[((index - 1) * lines.stretches + stretch) * 3 + channel]!;
}

/** A pen: the darkness it leaves in red, green and blue (0 to `PAPER`), and how strong it is in each column (1 usual). */
export interface Pen {
  colour: readonly [number, number, number];
  strength: Float64Array;
}

/** How far off the pen's colour, in shares of its darkness, ink may be and still be a little like it. */
const COLOUR_REACH = 0.45;
/** Colour noise that counts for nothing, bytes. */
const COLOUR_NOISE = 6;

/** Likeness of each pixel to a pen, by darkness along the pen's colour and distance from it. */
export function likeness(ink: Ink, pen: Pen): Evidence {
  const { columns, rows, red, green, blue, level, upright } = ink;
  const evidence = new Uint8Array(columns * rows);
  const hidden = new Uint8Array(columns * rows);
  const length = Math.hypot(...pen.colour);
  const ur = pen.colour[0] / length;
  const ug = pen.colour[1] / length;
  const ub = pen.colour[2] / length;
  const reach2 = COLOUR_REACH * COLOUR_REACH;
  const look = (r: number, g: number, b: number, dark: number): number => {
    const along = r * ur + g * ug + b * ub;
    if (along <= 0) return 0;
    const off = Math.max(0, Math.sqrt(Math.max(0, r * r + g * g + b * b - along * along)) - COLOUR_NOISE);
    // Ink far darker than the pen is not more like it.
    const share = along / dark;
    const q = off / dark / Math.max(1, share);
    const like = share * (1 - (q * q) / reach2);
    return Math.max(like, 0);
  };
  for (let x = 0; x < columns; x++) {
    const dark = length * pen.strength[x]!;
    const at = x * rows;
    for (let k = at; k < at + rows; k++) {
      const r = red[k]!;
      const g = green[k]!;
      const b = blue[k]!;
      if (r + g + b < 6) continue;
      const like = look(r, g, b, dark);
      evidence[k] = like >= 1.25 ? 250 : like * FULL;
    }
    const ui = upright.indexOf[x]!;
    for (let y = 0; y < rows; y++) {
      if (!ui && !level.indexOf[y]) continue;
      const lr = PAPER * (1 - printLeaves(level, upright, x, y, 0));
      const lg = PAPER * (1 - printLeaves(level, upright, x, y, 1));
      const lb = PAPER * (1 - printLeaves(level, upright, x, y, 2));
      if (ink.covered[at + y] || look(lr, lg, lb, dark) > 0.45) {
        hidden[at + y] = 1;
        evidence[at + y] = 0;
      }
    }
  }
  return { columns, rows, evidence, hidden };
}

/** Whatever is darkest (or, asked so, most coloured) in its neighbourhood of columns, before the pen is known. */
export function darkestInk(ink: Ink, coloured: boolean): { any: Evidence; strength: number } {
  const { columns, rows, red, green, blue } = ink;
  const evidence = new Uint8Array(columns * rows);
  const strongest = new Float64Array(columns);
  for (let x = 0; x < columns; x++) {
    const at = x * rows;
    let most = 0;
    for (let k = at; k < at + rows; k++) {
      const r = red[k]!;
      const g = green[k]!;
      const b = blue[k]!;
      const max = r > g ? Math.max(r, b) : Math.max(g, b);
      const value = coloured ? max - (r < g ? Math.min(r, b) : Math.min(g, b)) : max;
      evidence[k] = value;
      if (value > most) most = value;
    }
    strongest[x] = most;
  }
  const usual = slidingMedian(strongest, Math.max(8, columns >> 4));
  const hidden = ink.covered;
  for (let x = 0; x < columns; x++) {
    const gain = FULL / Math.max(4, usual[x]!);
    const at = x * rows;
    for (let k = at; k < at + rows; k++) {
      const value = evidence[k]! * gain;
      evidence[k] = Math.min(value, 250);
    }
  }
  const sorted = [...usual].sort((a, b) => a - b);
  return { any: { columns, rows, evidence, hidden }, strength: sorted[columns >> 1]! };
}

/** Median over a window of `reach` to either side, of finite values; asked at every few places and joined. */
function slidingMedian(values: Float64Array, reach: number): Float64Array {
  const n = values.length;
  const out = new Float64Array(n).fill(Number.NaN);
  const step = Math.max(1, reach >> 2);
  const knots: number[] = [];
  for (let i = 0; i < n; i += step) knots.push(i);
  if (knots.at(-1) !== n - 1) knots.push(n - 1);
  let before = -1;
  for (const i of knots) {
    const window = [...values.subarray(Math.max(0, i - reach), i + reach + 1)].filter(Number.isFinite);
    if (!window.length) continue;
    window.sort((a, b) => a - b);
    out[i] = window[window.length >> 1]!;
    const start = Math.max(before, 0);
    const from = before < 0 ? out[i]! : out[before]!;
    for (let k = start; k < i; k++) out[k] = from + ((out[i]! - from) * (k - start)) / (i - start);
    before = i;
  }
  if (before >= 0) for (let k = before; k < n; k++) out[k] = out[before]!;
  return out;
}
