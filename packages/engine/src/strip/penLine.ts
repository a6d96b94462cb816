/** From the path along the ink to the line the pen's middle took. */
import type { Path } from './bestPath.ts';
import { type Evidence, FULL } from './ink.ts';

/** The line in rows of the flat chart, a value a column. */
export interface PenLine {
  /** Level, and the highest and lowest the pen's middle reached (rows: the highest is the smallest number). */
  row: Float64Array;
  top: Float64Array;
  bottom: Float64Array;
  /** Likeness of the ink on the path to the pen, 0 to 1. */
  likeness: Float64Array;
  state: Uint8Array;
  /** Width of the pen, rows. */
  penWidth: number;
}

export const GAP = 0;
export const READ = 1;
/** Not seen, but so short a stretch between seen ink that it can only be joined. */
export const JOINED = 2;

const HALF = 0.5;
/** Least likeness that counts as ink of the pen. */
const LEAST = 0.42;
/** The tip is this share as broad as the ink it leaves at its narrowest: a hand, a machine and blur broaden every stroke. */
const TIP_SHARE = 0.85;
/** Discs touch a boundary at the same place when so many columns apart at most. */
const SAME_TOUCH = 1.5;
/** Rows of print that may cover the pen within one stroke. */
const MOST_HIDDEN = 8;

/**
 * Reads the line. Ink is the path of the pen's middle widened by the pen's round tip (a dilation by a disc); the
 * upper and lower boundary of the ink are therefore eroded by that disc, which gives back the path wherever it can
 * be told. At a peak the upper boundary holds it, in a trough the lower; where strokes fill the paper both stand
 * as envelope and the level is their middle.
 * @param startsAt the side the pen came from: there a line that comes out of the frame is followed back along it
 */
export function penLine(
  field: Evidence,
  path: Path,
  fromColumn: number,
  toColumn: number,
  startsAt: 'left' | 'right' | null = null,
): PenLine {
  const { columns, rows, evidence, hidden } = field;
  const above = new Float64Array(columns).fill(Number.NaN);
  const below = new Float64Array(columns).fill(Number.NaN);
  const seen = new Float64Array(columns);
  const covered = new Uint8Array(columns);
  for (let x = fromColumn; x <= toColumn; x++) {
    const at = x * rows;
    const lo = Math.min(path.first[x]!, path.last[x]!);
    const hi = Math.max(path.first[x]!, path.last[x]!);
    let peak = 0;
    for (let y = lo; y <= hi; y++) if (evidence[at + y]! > peak) peak = evidence[at + y]!;
    // The path keeps to the ink's edge as gladly as to its middle: look a little to either side for how dark it is.
    for (let y = Math.max(0, lo - 2); y <= Math.min(rows - 1, hi + 2); y++) {
      if (evidence[at + y]! > peak && evidence[at + y]! < 1.5 * peak + 30) peak = evidence[at + y]!;
      // Print wider than the pen hides it, narrower print leaves its fringe.
      if (hidden[at + y]) covered[x] = 1;
    }
    seen[x] = Math.min(1, peak / FULL);
    if (peak < LEAST * FULL) continue;
    const edge = Math.min(peak, FULL) * HALF;
    let a = lo;
    while (a <= hi && evidence[at + a]! < edge) a++;
    let b = hi;
    while (b >= lo && evidence[at + b]! < edge) b--;
    if (a > b) {
      a = lo;
      while (a > 0 && evidence[at + a]! < edge && lo - a < 2) a--;
      if (evidence[at + a]! < edge) {
        a = hi;
        while (a < rows - 1 && evidence[at + a]! < edge && a - hi < 2) a++;
      }
      if (evidence[at + a]! < edge) continue;
      b = a;
    }
    above[x] = boundary(evidence, hidden, at, a, -1, rows, edge);
    below[x] = boundary(evidence, hidden, at, b, 1, rows, edge);
  }

  const penWidth = penWidthOf(field, above, below, fromColumn, toColumn);
  const { top, bottom, touches } = eroded(above, below, (TIP_SHARE * penWidth) / 2, fromColumn, toColumn);
  const row = levelOf(field, { top, bottom, above, below, touches }, penWidth, fromColumn, toColumn);
  const state = new Uint8Array(columns);
  for (let x = fromColumn; x <= toColumn; x++) if (Number.isFinite(row[x]!)) state[x] = READ;
  dropCrumbs(state, fromColumn, toColumn, penWidth);
  join(field, { row, top, bottom }, state, fromColumn, toColumn, penWidth);
  if (startsAt !== null)
    lead({ row, top, bottom }, state, covered, path, startsAt, fromColumn, toColumn, penWidth);
  return { row, top, bottom, likeness: seen, state, penWidth };
}

/** Where the ink ends from a row inside it, between rows; print as dark as the pen is crossed if ink lies beyond. */
function boundary(
  evidence: Uint8Array,
  hidden: Uint8Array,
  at: number,
  start: number,
  step: 1 | -1,
  rows: number,
  edge: number,
): number {
  let y = start;
  for (;;) {
    const next = y + step;
    if (next < 0 || next >= rows) return y;
    if (evidence[at + next]! >= edge) {
      y = next;
      continue;
    }
    if (hidden[at + next]) {
      let over = next;
      let count = 0;
      while (over >= 0 && over < rows && hidden[at + over] && count < MOST_HIDDEN) {
        over += step;
        count++;
      }
      if (over >= 0 && over < rows && !hidden[at + over] && evidence[at + over]! >= edge) {
        y = over;
        continue;
      }
      return y + step * 0.5;
    }
    const inside = evidence[at + y]!;
    const outside = evidence[at + next]!;
    return y + (step * (inside - edge)) / Math.max(1, inside - outside);
  }
}

/** The pen's width: the lesser of the ink's height and breadth at places along the line, at its usual least. */
function penWidthOf(
  { evidence, hidden, rows }: Evidence,
  above: Float64Array,
  below: Float64Array,
  from: number,
  to: number,
): number {
  const widths: number[] = [];
  for (let x = from + 1; x < to; x += 2) {
    const height = below[x]! - above[x]!;
    if (!(height > 0)) continue;
    // What print cuts short tells nothing of the pen.
    const cut = (row: number) => hidden[x * rows + row] === 1;
    if (cut(Math.max(0, Math.floor(above[x]! - 0.5))) || cut(Math.min(rows - 1, Math.ceil(below[x]! + 0.5))))
      continue;
    for (const share of [0.2, 0.5, 0.8]) {
      const row = Math.round(above[x]! + share * height);
      const at = (column: number) => evidence[column * rows + row]!;
      const inside = at(x);
      const edge = Math.min(inside, FULL) * HALF;
      if (inside < LEAST * FULL) continue;
      let left = x;
      while (left > from && at(left - 1) >= edge && x - left < height) left--;
      let right = x;
      while (right < to && at(right + 1) >= edge && right - x < height) right++;
      if (hidden[(left - 1) * rows + row] || hidden[(right + 1) * rows + row]) continue;
      widths.push(Math.min(height, right - left + 1));
    }
  }
  if (!widths.length) return 1;
  widths.sort((a, b) => a - b);
  return Math.max(1, widths[Math.floor(widths.length * 0.12)]!);
}

/** Erosion of the ink's upper and lower boundary by the pen's disc. */
function eroded(
  above: Float64Array,
  below: Float64Array,
  radius: number,
  from: number,
  to: number,
): Pick<Bounds, 'top' | 'bottom' | 'touches'> {
  const columns = above.length;
  const touches = { top: new Float64Array(columns), bottom: new Float64Array(columns) };
  const top = new Float64Array(columns).fill(Number.NaN);
  const bottom = new Float64Array(columns).fill(Number.NaN);
  const half = Math.min(16, Math.max(3, Math.ceil(2 * radius)));
  const offsets: number[] = [];
  const depths: number[] = [];
  for (let i = -half; i <= half; i++) {
    const angle = (Math.PI / 2) * (i / half);
    offsets.push(radius * Math.sin(angle));
    depths.push(radius * Math.cos(angle));
  }
  for (let x = from; x <= to; x++) {
    if (!Number.isFinite(above[x]!)) continue;
    let t = above[x]! + radius;
    let b = below[x]! - radius;
    let touchesTop = x;
    let touchesBottom = x;
    for (let i = 0; i < offsets.length; i++) {
      const at = x + offsets[i]!;
      const k = Math.floor(at);
      if (k < from || k + 1 > to) continue;
      const f = at - k;
      const ta = above[k]! * (1 - f) + (f > 0 ? above[k + 1]! * f : 0) + depths[i]!;
      if (ta > t) {
        t = ta;
        touchesTop = at;
      }
      const ba = below[k]! * (1 - f) + (f > 0 ? below[k + 1]! * f : 0) - depths[i]!;
      if (ba < b) {
        b = ba;
        touchesBottom = at;
      }
    }
    touches.top[x] = touchesTop;
    touches.bottom[x] = touchesBottom;
    // Where the pen was narrower than thought the two pass each other.
    top[x] = Math.min(t, b);
    bottom[x] = Math.max(t, b);
  }
  return { top, bottom, touches };
}

interface Bounds {
  /** The ink's boundaries, and the same eroded by the pen: where the pen's middle was highest and lowest. */
  above: Float64Array;
  below: Float64Array;
  top: Float64Array;
  bottom: Float64Array;
  /** Column at which the pen's disc touches either boundary when its middle is there. */
  touches: Record<'top' | 'bottom', Float64Array>;
}

/**
 * Level of each column. Where the eroded boundaries meet, the line is there. Where they stand apart over few columns,
 * between places where they meet, it is a peak (both neighbours lower), a trough (both higher), or one upright stroke,
 * whose place along the chart is then measured across it.
 */
function levelOf(field: Evidence, bounds: Bounds, penWidth: number, from: number, to: number): Float64Array {
  const { above, below, top, bottom } = bounds;
  const row = new Float64Array(top.length).fill(Number.NaN);
  const apart = (x: number) => {
    if (!Number.isFinite(row[x]!)) return false;
    const open = bottom[x]! - top[x]!;
    return open > 1.2 && open > 0.35 * (below[x]! - above[x]!);
  };
  for (let x = from; x <= to; x++) row[x] = (top[x]! + bottom[x]!) / 2;
  const widest = Math.min(2.5 * penWidth + 3, penWidth + 7.5);
  for (const [first, last] of stretches(apart, from, to)) {
    if (last - first + 1 <= widest) settle(field, bounds, row, first, last, penWidth);
    else {
      for (let x = first; x <= last; x++) row[x] = levelBetween(bounds, x, first, last);
      // Strokes fill the paper here: only where they stand apart far more than is usual in them is there a step.
      const open = Array.from({ length: last - first + 1 }, (_, i) => bottom[first + i]! - top[first + i]!);
      const usual = open.sort((p, q) => p - q)[open.length >> 1]!;
      const leaps = (x: number) => bottom[x]! - top[x]! > 1.6 * usual + 2;
      for (const [start, end] of stretches(leaps, first, last)) {
        if (end - start + 1 <= widest) settle(field, bounds, row, start, end, penWidth);
      }
    }
  }
  return row;
}

/**
 * Level where strokes run together. A boundary tells where the pen's middle was where its disc touches it at a place of
 * its own. Where ink has filled a notch, discs of many columns touch the notch's corner: there the other boundary tells.
 */
function levelBetween({ top, bottom, touches }: Bounds, x: number, first: number, last: number): number {
  const told = (at: Float64Array) => {
    let alike = 1;
    for (let k = x - 1; k >= first && Math.abs(at[k]! - at[x]!) <= SAME_TOUCH; k--) alike++;
    for (let k = x + 1; k <= last && Math.abs(at[k]! - at[x]!) <= SAME_TOUCH; k++) alike++;
    return 1 / (alike * alike);
  };
  const up = told(touches.top);
  const down = told(touches.bottom);
  return (top[x]! * up + bottom[x]! * down) / (up + down);
}

function stretches(holds: (x: number) => boolean, from: number, to: number): [number, number][] {
  const out: [number, number][] = [];
  for (let x = from; x <= to; x++) {
    if (!holds(x)) continue;
    const start = x;
    while (x + 1 <= to && holds(x + 1)) x++;
    out.push([start, x]);
  }
  return out;
}

/** Decides what stands apart over a few columns: peak, trough or upright stroke. */
function settle(
  field: Evidence,
  { top, bottom, above, below }: Bounds,
  row: Float64Array,
  first: number,
  last: number,
  penWidth: number,
): void {
  let before = row[first - 1] ?? Number.NaN;
  let after = row[last + 1] ?? Number.NaN;
  // A line that begins or ends with an upright stroke comes from its far end.
  const far = (near: number, x: number) =>
    Math.abs(near - top[x]!) > Math.abs(near - bottom[x]!) ? top[x]! : bottom[x]!;
  if (Number.isNaN(before) && Number.isNaN(after)) return;
  if (Number.isNaN(before)) before = far(after, first);
  if (Number.isNaN(after)) after = far(before, last);
  let stroke: Stroke | null | undefined;
  for (let k = first; k <= last; k++) {
    const middle = row[k]!;
    if (before > middle && after > middle) row[k] = top[k]!;
    else if (before < middle && after < middle) row[k] = bottom[k]!;
    else {
      if (stroke === undefined) {
        // Only what lies between the strokes on either side belongs to the upright one alone.
        const [out, into] = before < after ? [below, above] : [above, below];
        const from = out[first - 1] ?? before;
        const to = into[last + 1] ?? after;
        const clear = (to - from) * (after - before) > 0 && Math.abs(to - from) > 2;
        stroke = uprightStroke(field, clear ? from : before, clear ? to : after, first, last, penWidth);
      }
      if (stroke) row[k] = Math.min(bottom[k]!, Math.max(top[k]!, rowAt(stroke, k, before, after)));
    }
  }
}

const HEIGHTS = 9;

interface Stroke {
  crossings: Float64Array;
  /** Rows between which the heights lie. */
  from: number;
  to: number;
}

/** Columns at which an upright stroke between two levels crosses evenly spaced heights, null when it is no single stroke. */
function uprightStroke(
  { evidence, columns, rows }: Evidence,
  from: number,
  to: number,
  first: number,
  last: number,
  penWidth: number,
): Stroke | null {
  const crossings = new Float64Array(HEIGHTS);
  const most = 2.5 * penWidth + 3;
  for (let i = 0; i < HEIGHTS; i++) {
    const y = Math.round(from + ((to - from) * (i + 0.5)) / HEIGHTS);
    const at = (x: number) => (x < 0 || x >= columns ? 0 : evidence[x * rows + y]!);
    let inside = first;
    for (let x = first; x <= last; x++) if (at(x) > at(inside)) inside = x;
    const edge = Math.min(at(inside), FULL) * HALF;
    if (at(inside) < LEAST * FULL) return null;
    let left = inside;
    while (at(left - 1) >= edge && inside - left < most) left--;
    let right = inside;
    while (at(right + 1) >= edge && right - inside < most) right++;
    if (right - left > most) return null;
    const a = left - (at(left) - edge) / Math.max(1, at(left) - at(left - 1));
    const b = right + (at(right) - edge) / Math.max(1, at(right) - at(right + 1));
    crossings[i] = (a + b) / 2;
    // One stroke goes one way.
    if (i > 0 && crossings[i]! < crossings[i - 1]!) crossings[i] = crossings[i - 1]!;
  }
  return { crossings, from, to };
}

/** Row at which a stroke crosses a column, by its crossings of evenly spaced heights. */
function rowAt({ crossings, from, to }: Stroke, x: number, before: number, after: number): number {
  let i = 0;
  while (i < HEIGHTS && crossings[i]! < x) i++;
  const height = (k: number) => from + ((to - from) * (k + 0.5)) / HEIGHTS;
  if (i === 0) return before;
  if (i === HEIGHTS) return after;
  const run = crossings[i]! - crossings[i - 1]!;
  const share = run > 1e-6 ? (x - crossings[i - 1]!) / run : 0.5;
  return height(i - 1) + share * (height(i) - height(i - 1));
}

/** Specks of ink that a path over bare paper happens to touch are no line. */
function dropCrumbs(state: Uint8Array, from: number, to: number, penWidth: number): void {
  const least = Math.max(4, 2 * penWidth);
  for (let x = from; x <= to; x++) {
    if (state[x] !== READ) continue;
    let end = x;
    let blank = 0;
    let read = 0;
    let last = x;
    while (end <= to && blank <= 2) {
      if (state[end] === READ) {
        read++;
        blank = 0;
        last = end;
      } else blank++;
      end++;
    }
    if (read < least) for (let k = x; k <= last; k++) state[k] = GAP;
    x = end;
  }
}

interface Rows {
  row: Float64Array;
  top: Float64Array;
  bottom: Float64Array;
}

/** Joins stretches that print or a scratch has parted: short ones, and ones along print that the line goes in and out of. */
function join(
  { hidden, rows }: Evidence,
  { row, top, bottom }: Rows,
  state: Uint8Array,
  from: number,
  to: number,
  penWidth: number,
): void {
  const short = Math.max(3, 1.5 * penWidth);
  let last = -1;
  for (let x = from; x <= to; x++) {
    if (state[x] !== READ) continue;
    const missing = x - last - 1;
    if (last >= 0 && missing > 0) {
      // Where paper shows along the way the pen was lifted, however near the print lies.
      let hiddenShare = 0;
      for (let k = last + 1; k < x; k++) {
        const middle = Math.round(row[last]! + ((row[x]! - row[last]!) * (k - last)) / (x - last));
        for (let y = Math.max(0, middle - 2); y <= Math.min(rows - 1, middle + 2); y++) {
          if (!hidden[k * rows + y]) continue;
          hiddenShare += 1 / missing;
          break;
        }
      }
      const step = Math.abs(row[x]! - row[last]!);
      if (missing <= short || (hiddenShare > 0.9 && step <= 2 * penWidth)) {
        for (let k = last + 1; k < x; k++) {
          const f = (k - last) / (x - last);
          row[k] = row[last]! * (1 - f) + row[x]! * f;
          top[k] = top[last]! * (1 - f) + top[x]! * f;
          bottom[k] = bottom[last]! * (1 - f) + bottom[x]! * f;
          state[k] = JOINED;
        }
      }
    }
    last = x;
  }
}

/** Share of the chart along which a line that comes out of the frame's print may be followed back. */
const LEAD_SHARE = 0.08;

/** A pen that starts on the frame, which hides it, and then leaves it. */
function lead(
  { row, top, bottom }: Rows,
  state: Uint8Array,
  covered: Uint8Array,
  path: Path,
  startsAt: 'left' | 'right',
  from: number,
  to: number,
  penWidth: number,
): void {
  const step = startsAt === 'left' ? 1 : -1;
  const start = startsAt === 'left' ? from : to;
  let first = start;
  let hidden = 0;
  while (first >= from && first <= to && state[first] !== READ) {
    hidden += covered[first]!;
    first += step;
  }
  const length = Math.abs(first - start);
  if (length === 0 || length > LEAD_SHARE * (to - from) || hidden < 0.85 * length) return;
  const along = path.last[first - step]!;
  if (Math.abs(along - row[first]!) > 2 * penWidth + 2) return;
  for (let x = start; x !== first; x += step) {
    row[x] = path.last[x]!;
    top[x] = row[x]!;
    bottom[x] = row[x]!;
    state[x] = JOINED;
  }
}
