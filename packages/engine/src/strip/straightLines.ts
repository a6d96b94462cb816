/** Thin dark straight lines on a photo, found by voting. */
import { greatestAround, leastAround } from './extremes.ts';
import { pointOf } from './paper.ts';
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
  /** Stretch of x (of y when upright) from its first end to its last. */
  from: number;
  to: number;
  /** Stretches of it that are seen, without breaks to speak of. */
  runs: readonly (readonly [number, number])[];
  /** Mean darkness along it, 0 to 255. */
  darkness: number;
  votes: number;
}

const SMALL_SIDE = 1100;
const MOST_SLOPE = Math.tan((38 * Math.PI) / 180);
/** Paper in shadow is at least so bright, as share of the brightest. */
const PAPER_SHARE = 0.28;
const LINES = 60;
/** Slopes tried lie so far apart: a line followed gives way by more than this. */
const SLOPE_STEP = 0.004;
/** A dark place votes with its darkness, but with no more than this. */
const MOST_WEIGHT = 90;
/** Votes are counted in whole parts, so that a vote taken back leaves nothing behind. */
const VOTE_PARTS = 64;
/** A line is seen where it is at least this share as dark as it usually is. */
const USUAL_SHARE = 0.4;
/** Shorter lines, as share of the photo, are no chart's sides. */
const LEAST_LENGTH = 0.055;
/** Ink after a break of so many places, or of 1/250 of the photo, is no more of the same stroke. */
const LEAST_BREAK = 3;
/** A place that keeps more of its votes than this, once a line there is taken, has no more to give. */
const LEFT_OVER = 0.98;

/** The photo's thin dark structures: a closing by a window wider than any line, less the image (a black top-hat). */
export function ridgesOf(image: StripImage): Ridges {
  const { widthPx, heightPx } = image;
  const fold = Math.max(1, Math.ceil(Math.max(widthPx, heightPx) / SMALL_SIDE));
  const width = Math.max(1, Math.floor(widthPx / fold));
  const height = Math.max(1, Math.floor(heightPx / fold));
  const grey = smallGrey(image, width, height, fold);
  const half = Math.max(4, Math.round(Math.max(width, height) / 140));
  const size = { length: width, lines: height };
  const filled = greatestAround({ bytes: grey, ...size }, half, 'mirrored');
  const closed = leastAround({ bytes: filled, ...size }, half, 'mirrored');
  const dark = new Uint8Array(width * height);
  const counts = new Uint32Array(256);
  for (let k = 0; k < closed.length; k++) counts[closed[k]!]!++;
  // A table's grain is no print: what is far darker than the brightest paper is left out.
  const least = Math.max(24, PAPER_SHARE * pointOf(counts, 0.9 * closed.length));
  for (let k = 0; k < dark.length; k++) {
    const paper = closed[k]!;
    if (paper > least) dark[k] = (255 * (paper - grey[k]!)) / paper;
  }
  return { width, height, dark, fold };
}

/** The darkest channel, averaged over squares of `fold` by `fold` pixels. */
function smallGrey({ widthPx, rgba }: StripImage, width: number, height: number, fold: number): Uint8Array {
  const grey = new Uint8Array(width * height);
  // On a large photo every second pixel, like the white fields of a chessboard, tells as much.
  const stride = fold >= 4 && fold % 2 === 0 ? 2 : 1;
  const share = stride / (fold * fold);
  const sums = new Uint32Array(width);
  for (let y = 0; y < height; y++) {
    sums.fill(0);
    for (let j = 0; j < fold; j++) {
      let p = 4 * ((y * fold + j) * widthPx + (stride > 1 ? j & 1 : 0));
      for (let x = 0; x < width; x++) {
        let sum = 0;
        for (let i = 0; i < fold; i += stride, p += 4 * stride) {
          sum += Math.min(Math.min(rgba[p]!, rgba[p + 1]!), rgba[p + 2]!);
        }
        sums[x]! += sum;
      }
    }
    for (let x = 0; x < width; x++) grey[y * width + x] = sums[x]! * share;
  }
  return grey;
}

/** The longest straight lines, level or upright within 38 degrees, by a Hough transform (R. Duda, P. Hart 1972). */
export function straightLines(ridges: Ridges, upright: boolean): StraightLine[] {
  const { width, height, dark } = ridges;
  const along = upright ? height : width;
  const across = upright ? width : height;
  const stepAlong = upright ? width : 1;
  const stepAcross = upright ? 1 : width;
  const slopeStep = Math.max(2 / along, SLOPE_STEP);
  const half = Math.ceil(MOST_SLOPE / slopeStep);
  const slopes = 2 * half + 1;
  const reach = Math.ceil((MOST_SLOPE * along) / 2) + 1;
  const bins = across + 2 * reach + 1;
  const votes = new Int32Array(slopes * bins);
  const middle = along / 2;
  const least = thresholdOf(dark);
  const voted = new Uint8Array(dark.length);
  // A vote is shared between the two nearest places, so that a line between two rows is not two weak ones. Which places
  // those are shifts with `a` and by nothing else.
  const binOf = new Int32Array(slopes * Math.ceil(along / 2));
  const beyondOf = new Uint8Array(binOf.length);
  for (let b = 0; b < along; b += 2) {
    for (let s = 0; s < slopes; s++) {
      const place = reach - (s - half) * slopeStep * (b - middle);
      const k = (b >> 1) * slopes + s;
      binOf[k] = s * bins + Math.floor(place);
      beyondOf[k] = VOTE_PARTS * (place - Math.floor(place));
    }
  }
  const vote = (a: number, b: number, weight: number) => {
    const from = (b >> 1) * slopes;
    const whole = VOTE_PARTS * weight;
    for (let k = from; k < from + slopes; k++) {
      const bin = (a + binOf[k]!) | 0;
      const second = Math.imul(weight, beyondOf[k]!);
      votes[bin]! += (whole - second) | 0;
      votes[bin + 1]! += second;
    }
  };
  for (let a = 0; a < across; a++) {
    for (let b = 0; b < along; b += 2) {
      const p = a * stepAcross + b * stepAlong;
      const value = dark[p]!;
      if (value < least) continue;
      // A line is darker than what lies across it on either side.
      if (a > 0 && dark[p - stepAcross]! > value) continue;
      if (a < across - 1 && dark[p + stepAcross]! >= value) continue;
      if (a > 1 && dark[p - 2 * stepAcross]! > value) continue;
      if (a < across - 2 && dark[p + 2 * stepAcross]! > value) continue;
      voted[p] = Math.min(value, MOST_WEIGHT);
      vote(a, b, voted[p]!);
    }
  }
  const bounds = new Float64Array(slopes).fill(Number.POSITIVE_INFINITY);
  const lines: StraightLine[] = [];
  const enough = 0.012 * MOST_WEIGHT * VOTE_PARTS * along;
  for (let n = 0; n < LINES; n++) {
    const [best, most] = greatest(votes, bins, bounds);
    if (most <= enough) break;
    const s = Math.floor(best / bins);
    const bin = best % bins;
    const at = bin - reach;
    const slope = (s - half) * slopeStep;
    const found = traced(ridges, upright, at, slope, least, most / VOTE_PARTS, voted);
    // What voted for it has had its say: along the line as followed, or else along the straight one. What lies in line
    // with it beyond its ends, as a second chart on the sheet does, has not.
    const [first, last] = found ? [found.line.from, found.line.to] : [0, along - 1];
    for (let b = first + (first % 2); b <= last; b += 2) {
      const courses = [at + slope * (b - middle)];
      if (found) courses.push(found.course[b]!);
      for (const course of courses) {
        for (let a = Math.max(0, Math.round(course) - 2); a <= Math.min(across - 1, course + 2); a++) {
          const p = a * stepAcross + b * stepAlong;
          if (!voted[p]) continue;
          vote(a, b, -voted[p]!);
          voted[p] = 0;
        }
      }
    }
    if (!found || votes[best]! > LEFT_OVER * most) votes[best] = 0;
    if (found && found.line.to - found.line.from > LEAST_LENGTH * along) lines.push(found.line);
  }
  return lines;
}

/**
 * The greatest of votes that only ever fall: what was greatest in a row bounds it from above, so that only rows whose
 * bound still leads are looked through again.
 */
function greatest(votes: Int32Array, bins: number, bounds: Float64Array): [number, number] {
  for (;;) {
    let row = 0;
    for (let s = 1; s < bounds.length; s++) if (bounds[s]! > bounds[row]!) row = s;
    let at = row * bins;
    for (let k = at + 1; k < (row + 1) * bins; k++) if (votes[k]! > votes[at]!) at = k;
    const before = bounds[row]!;
    bounds[row] = votes[at]!;
    if (votes[at]! === before) return [at, before];
  }
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

/**
 * Follows a line from where what is left of it is clearest to both its ends, small breaks allowed, giving way as it bends; the line
 * is then put through its ends.
 */
function traced(
  ridges: Ridges,
  upright: boolean,
  at: number,
  slope: number,
  least: number,
  votes: number,
  voted: Uint8Array,
): { line: StraightLine; course: Float32Array } | null {
  const { width, height, dark } = ridges;
  const along = upright ? height : width;
  const across = upright ? width : height;
  const stepAlong = upright ? width : 1;
  const stepAcross = upright ? 1 : width;
  const breaks = Math.max(6, along / 40);
  const ends = Math.max(LEAST_BREAK, along / 250);
  /** The darkest place within two of `a` at `b`: how dark, and where. */
  const look = (b: number, a: number): [number, number] => {
    let value = 0;
    let where = a;
    const middle = Math.round(a);
    for (let k = Math.max(0, middle - 2); k <= Math.min(across - 1, middle + 2); k++) {
      const v = dark[k * stepAcross + b * stepAlong]!;
      // Of places as dark, the one nearest the course.
      if (v > value || (v === value && Math.abs(k - a) < Math.abs(where - a))) {
        value = v;
        where = k;
      }
    }
    return [value, where];
  };
  const straight = (b: number) => at + slope * (b - along / 2);
  const values: number[] = [];
  for (let b = 0; b < along; b++) {
    const [value] = look(b, straight(b));
    if (value >= least) values.push(value);
  }
  if (values.length < 16) return null;
  values.sort((p, q) => p - q);
  // Grain must not carry the line on past its end: it is as dark along its course as it usually is.
  const usual = values[Math.floor(0.7 * values.length)]!;
  const enough = Math.max(least, USUAL_SHARE * usual);

  /** Whether ink is seen here that has not been taken for another line. */
  const fresh = (b: number) => {
    const middle = Math.round(straight(b));
    for (let k = Math.max(0, middle - 2); k <= Math.min(across - 1, middle + 2); k++) {
      if (voted[k * stepAcross + b * stepAlong]! > 0) return look(b, straight(b))[0] >= enough;
    }
    return false;
  };
  // Where it is seen most, over a window; every second place has voted.
  const window = 2 * Math.max(8, Math.round(along / 32));
  let seen = 0;
  let most = -1;
  let start = 0;
  for (let b = 0; b < along; b += 2) {
    if (fresh(b)) seen++;
    if (b >= window && fresh(b - window)) seen--;
    if (b >= window - 2 && seen > most) {
      most = seen;
      start = b - (window >> 1);
    }
  }
  const course = new Float32Array(along);
  const inked = new Uint8Array(along);
  let sum = 0;
  let count = 0;
  let bends = true;
  const follow = (direction: 1 | -1): [number, number] => {
    let a = straight(start);
    let drift = slope * direction;
    let last = start;
    let lastA = a;
    for (let b = start; b >= 0 && b < along && Math.abs(b - last) <= breaks; b += direction) {
      const [value, where] = look(b, a);
      course[b] = a;
      if (value >= enough) {
        const off = Math.max(-1, Math.min(1, where - a));
        // Ink far darker than the line is a stroke that crosses it, and leads astray.
        if (bends && value < 1.5 * usual) {
          a += 0.12 * off;
          drift += 0.0006 * off;
        }
        last = b;
        lastA = a;
        inked[b] = 1;
        sum += value;
        count++;
      }
      a += drift;
    }
    return [last, lastA];
  };
  let best: { line: StraightLine; course: Float32Array; count: number } | null = null;
  // A stroke met on the way can lead astray what gives way to it: the straight course may be the longer.
  for (bends of [true, false]) {
    sum = 0;
    count = 0;
    course.fill(0);
    inked.fill(0);
    const [to, toA] = follow(1);
    const [from, fromA] = follow(-1);
    if (to - from < 16 || count < 0.5 * (to - from) || count <= 1.1 * (best?.count ?? 0)) continue;
    const through = (toA - fromA) / (to - from);
    const line = {
      upright,
      at: fromA + through * (along / 2 - from),
      slope: through,
      from,
      to,
      runs: runsOf(inked, ends),
      darkness: sum / count,
      votes,
    };
    best = { line, course: course.slice(), count };
  }
  return best;
}

/** Stretches that are inked, breaks up to so many places let pass. */
function runsOf(inked: Uint8Array, most: number): [number, number][] {
  const runs: [number, number][] = [];
  for (let b = 0; b < inked.length; b++) {
    if (!inked[b]) continue;
    const last = runs.at(-1);
    if (last && b - last[1] <= most) last[1] = b;
    else runs.push([b, b]);
  }
  return runs;
}
