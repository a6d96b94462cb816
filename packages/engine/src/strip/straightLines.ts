/** Thin dark straight lines on a photo, found by voting. */
import type { StripImage } from './types.ts';

/** A small grey copy of the photo in which only thin dark structures are left. */
export interface Ridges {
  width: number;
  height: number;
  /** Darkness against the paper beside it, 0 to 255. */
  dark: Uint8Array;
  /** Photo pixels along one of these. */
  fold: number;
}

/** A line through the small copy: level ones as y = at + slope (x - width / 2), upright ones likewise with x and y changed. */
export interface StraightLine {
  upright: boolean;
  at: number;
  slope: number;
  /** Stretch of x (of y when upright) along which it is seen. */
  from: number;
  to: number;
  /** Mean darkness along it, 0 to 255. */
  darkness: number;
  votes: number;
}

const SMALL_SIDE = 1100;
const MOST_SLOPE = Math.tan((38 * Math.PI) / 180);
const LINES = 60;

/** The photo's thin dark structures: a closing by a window wider than any line, less the image (a black top-hat). */
export function ridgesOf(image: StripImage): Ridges {
  const { widthPx, heightPx, rgba } = image;
  const fold = Math.max(1, Math.ceil(Math.max(widthPx, heightPx) / SMALL_SIDE));
  const width = Math.max(1, Math.floor(widthPx / fold));
  const height = Math.max(1, Math.floor(heightPx / fold));
  const grey = new Uint8Array(width * height);
  const share = 1 / (fold * fold);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let j = 0; j < fold; j++) {
        let p = 4 * ((y * fold + j) * widthPx + x * fold);
        for (let i = 0; i < fold; i++, p += 4) {
          sum += Math.min(rgba[p]!, rgba[p + 1]!, rgba[p + 2]!);
        }
      }
      grey[y * width + x] = sum * share;
    }
  }
  const half = Math.max(4, Math.round(Math.max(width, height) / 140));
  const closed = swept(swept(grey, width, height, half, true), width, height, half, false);
  const dark = new Uint8Array(width * height);
  for (let k = 0; k < dark.length; k++) {
    const paper = closed[k]!;
    if (paper > 24) dark[k] = (255 * (paper - grey[k]!)) / paper;
  }
  return { width, height, dark, fold };
}

/** Greatest (or least) over a square. */
function swept(plane: Uint8Array, width: number, height: number, half: number, greatest: boolean) {
  const across = new Uint8Array(plane.length);
  for (let y = 0; y < height; y++) sweepLine(plane, across, y * width, 1, width, half, greatest);
  const out = new Uint8Array(plane.length);
  for (let x = 0; x < width; x++) sweepLine(across, out, x, width, height, half, greatest);
  return out;
}

/** Running extreme by blocks of the window's length (M. van Herk 1992). */
function sweepLine(
  from: Uint8Array,
  to: Uint8Array,
  start: number,
  step: number,
  length: number,
  half: number,
  greatest: boolean,
): void {
  const window = 2 * half + 1;
  const padded = length + 2 * half;
  const values = new Uint8Array(padded);
  for (let i = 0; i < padded; i++) {
    const k = Math.min(length - 1, Math.max(0, i - half));
    values[i] = greatest ? from[start + k * step]! : 255 - from[start + k * step]!;
  }
  const forth = values.slice();
  const back = values.slice();
  for (let i = 1; i < padded; i++) if (i % window) forth[i] = Math.max(forth[i]!, forth[i - 1]!);
  for (let i = padded - 2; i >= 0; i--) {
    if ((i + 1) % window) back[i] = Math.max(back[i]!, back[i + 1]!);
  }
  for (let i = 0; i < length; i++) {
    const most = Math.max(back[i]!, forth[i + window - 1]!);
    to[start + i * step] = greatest ? most : 255 - most;
  }
}

/** The longest straight lines, level or upright within 38 degrees, by a Hough transform (R. Duda, P. Hart 1972). */
export function straightLines(ridges: Ridges, upright: boolean): StraightLine[] {
  const { width, height, dark } = ridges;
  const along = upright ? height : width;
  const across = upright ? width : height;
  const stepAlong = upright ? width : 1;
  const stepAcross = upright ? 1 : width;
  const slopeStep = Math.max(1.5 / along, 0.002);
  const half = Math.ceil(MOST_SLOPE / slopeStep);
  const slopes = 2 * half + 1;
  const reach = Math.ceil((MOST_SLOPE * along) / 2) + 1;
  const bins = across + 2 * reach;
  const votes = new Float32Array(slopes * bins);
  const middle = along / 2;
  const least = thresholdOf(dark);
  for (let a = 0; a < across; a++) {
    for (let b = 0; b < along; b += 2) {
      const p = a * stepAcross + b * stepAlong;
      const value = dark[p]!;
      if (value < least) continue;
      // A line is darker than what lies across it on either side.
      if (a > 1 && a < across - 2 && (dark[p - 2 * stepAcross]! > value || dark[p + 2 * stepAcross]! > value))
        continue;
      const weight = Math.min(value, 90);
      for (let s = 0; s < slopes; s++) {
        const bin = a - (s - half) * slopeStep * (b - middle) + reach;
        votes[s * bins + (bin | 0)]! += weight;
      }
    }
  }
  const lines: StraightLine[] = [];
  const enough = 90 * 0.1 * along * 0.5 * 0.3;
  for (let n = 0; n < LINES; n++) {
    let best = -1;
    let most = enough;
    for (let k = 0; k < votes.length; k++) {
      if (votes[k]! > most) {
        most = votes[k]!;
        best = k;
      }
    }
    if (best < 0) break;
    const s = Math.floor(best / bins);
    const bin = best % bins;
    const line = traced(ridges, upright, bin - reach + 0.5, (s - half) * slopeStep, least, most);
    // Votes for nearly the same line are spent.
    for (let i = Math.max(0, s - 12); i <= Math.min(slopes - 1, s + 12); i++) {
      const wide = 3 + Math.abs(i - s) * slopeStep * middle * 0.5;
      const from = Math.max(0, Math.floor(bin - wide));
      const to = Math.min(bins - 1, Math.ceil(bin + wide));
      votes.fill(0, i * bins + from, i * bins + to + 1);
    }
    if (line && line.to - line.from > 0.12 * along) lines.push(line);
  }
  return lines;
}

/** Darkness that stands out from grain and texture. */
function thresholdOf(dark: Uint8Array): number {
  const counts = new Uint32Array(256);
  for (let k = 0; k < dark.length; k += 3) counts[dark[k]!]!++;
  const total = Math.ceil(dark.length / 3);
  let seen = 0;
  for (let value = 255; value > 8; value--) {
    seen += counts[value]!;
    if (seen > 0.14 * total) return value;
  }
  return 8;
}

/** Follows a line along its course and keeps its longest stretch that is seen, small breaks allowed. */
function traced(
  ridges: Ridges,
  upright: boolean,
  at: number,
  slope: number,
  least: number,
  votes: number,
): StraightLine | null {
  const { width, height, dark } = ridges;
  const along = upright ? height : width;
  const across = upright ? width : height;
  const stepAlong = upright ? width : 1;
  const stepAcross = upright ? 1 : width;
  const breaks = Math.max(6, along / 40);
  let best: StraightLine | null = null;
  let from = -1;
  let last = -1;
  let sum = 0;
  let count = 0;
  const close = () => {
    if (from >= 0 && (!best || last - from > best.to - best.from) && count > 0.55 * (last - from)) {
      best = { upright, at, slope, from, to: last, darkness: sum / count, votes };
    }
    from = -1;
    sum = 0;
    count = 0;
  };
  for (let b = 0; b < along; b++) {
    const a = Math.round(at + slope * (b - along / 2));
    let value = 0;
    for (let k = Math.max(0, a - 2); k <= Math.min(across - 1, a + 2); k++) {
      const v = dark[k * stepAcross + b * stepAlong]!;
      if (v > value) value = v;
    }
    if (value >= least) {
      if (from >= 0 && b - last > breaks) close();
      if (from < 0) from = b;
      last = b;
      sum += value;
      count++;
    }
  }
  close();
  return best;
}
