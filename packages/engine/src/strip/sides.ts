/** The printed lines along a chart's sides, measured on the photo itself: where they run and how they bow. */
import { leastSquares } from './homography.ts';
import type { PointPx, StripImage } from './types.ts';

/** A side's printed line against the straight chord from `from` to `to`, to the right of the walk being positive. */
export interface Side {
  /** Offset in pixels at share t of the chord: offset + slope (2t - 1) + bow (1 - (2t - 1)²) + twist of third order. */
  offset: number;
  slope: number;
  bow: number;
  twist: number;
  /** Share of the places looked at where a line was seen on the curve, and how dark it is there (0 to 1). */
  seen: number;
  darkness: number;
  /** How far what is seen lies off the curve, pixels: a standard deviation by its median. */
  spread: number;
  /** Longest stretch along which there is no ink on the curve, share of the chord. */
  blank: number;
}

const PLACES = 96;
/** A place agrees with the curve when within so many pixels of it, or so large a share of the photo's longer side. */
const AGREES_PX = 1.2;
const AGREES_SHARE = 0.0006;
/** Reaches longer than this are looked through at whole pixels, shorter ones at halves. */
const FAR_PX = 64;
const LEAST_AGREES_PX = 0.75;
const ROUNDS = 5;
/** Ink on a side is darker than this share of the side's usual darkness, against the paper of so many places to either side. */
const INKED = 0.5;
const NEXT_TO = 5;
/** A line that runs on is looked for across so many pixels to either side, and has ended after a gap of so many. */
const BESIDE_PX = 8;
const OVERRUN_GAP_PX = 2;
/** Standard deviation of a normal spread over its median distance. */
const MAD_TO_SD = 1.4826;
const LEAST_DARKNESS = 0.05;

/** Offset of the side's line at share t of its chord, pixels. */
export function sideOffset(side: Side, t: number): number {
  const s = 2 * t - 1;
  const arch = 1 - s * s;
  return side.offset + side.slope * s + side.bow * arch + side.twist * arch * s;
}

/**
 * Measures the dark line along a chord.
 * @param reachPx how far to either side it is looked for
 * @param endsPx how far from the chord's ends it may begin and end; the reach when left out
 * @returns null when no line runs along most of it
 */
export function measureSide(
  image: StripImage,
  from: PointPx,
  to: PointPx,
  reachPx: number,
  endsPx = reachPx,
): Side | null {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (!(length > 8)) return null;
  const nx = -(to[1] - from[1]) / length;
  const ny = (to[0] - from[0]) / length;
  const reach = Math.max(3, Math.round(reachPx));
  // Where much is to be looked through the photo is a large one, whose lines are broad.
  const step = reach > FAR_PX ? 1 : 0.5;
  const middle = Math.round(reach / step);
  const places: number[] = [];
  const offsets: number[] = [];
  const darkness: number[] = [];
  const papers: number[] = [];
  const profile = new Float64Array(2 * middle + 1);
  for (let i = 0; i < PLACES; i++) {
    const t = (i + 0.5) / PLACES;
    const x = from[0] + t * (to[0] - from[0]);
    const y = from[1] + t * (to[1] - from[1]);
    const far = step * middle;
    darkestAlong(image, x - far * nx, y - far * ny, step * nx, step * ny, profile);
    // The ridges of the profile: the line is the one nearest the curve that most places agree on.
    const paper = upperQuarter(profile);
    papers.push(paper);
    if (!(paper > 8)) continue;
    for (const ridge of ridges(profile, paper)) {
      const d = step * (ridge.at - middle);
      // What is seen beyond the photo is its mirror image.
      if (!isOn(image, x + d * nx, y + d * ny)) continue;
      places.push(t);
      offsets.push(d);
      darkness.push(ridge.darkness);
    }
  }
  const agrees = AGREES_PX + AGREES_SHARE * Math.max(image.widthPx, image.heightPx);
  const side = agreed(places, offsets, darkness, agrees, reach, Math.min(reach, endsPx));
  return side && { ...side, blank: longestBlank(image, from, to, side, papers) };
}

/**
 * Longest stretch of a side without ink on its curve, share of the chord. A pen or print that covers the line is ink
 * too: it hides where the line runs, but does not break it.
 * @param papers brightness of the paper about each place
 */
function longestBlank(
  { widthPx, heightPx, rgba }: StripImage,
  from: PointPx,
  to: PointPx,
  side: Side,
  papers: readonly number[],
): number {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const nx = -(to[1] - from[1]) / length;
  const ny = (to[0] - from[0]) / length;
  let longest = 0;
  let blank = 0;
  for (let i = 0; i < PLACES; i++) {
    const t = (i + 0.5) / PLACES;
    // Where a line runs across the side there is no paper beside it: that of the places next to it counts.
    const paper = Math.max(...papers.slice(Math.max(0, i - NEXT_TO), i + NEXT_TO + 1));
    const most = (1 - INKED * side.darkness) * paper;
    const offset = sideOffset(side, t);
    let inked = false;
    for (let k = -1; k <= 1 && !inked; k++) {
      const x = Math.round(from[0] + t * (to[0] - from[0]) + (offset + k) * nx);
      const y = Math.round(from[1] + t * (to[1] - from[1]) + (offset + k) * ny);
      // What the photo does not show is not known to be blank.
      if (x < 0 || y < 0 || x >= widthPx || y >= heightPx) inked = true;
      else {
        const p = 4 * (y * widthPx + x);
        inked = Math.min(rgba[p]!, rgba[p + 1]!, rgba[p + 2]!) <= most;
      }
    }
    blank = inked ? 0 : blank + 1;
    longest = Math.max(longest, blank);
  }
  return longest / PLACES;
}

/**
 * How far a side's line runs on beyond the end of its chord without a break, pixels.
 * @param darkness of the side's line, share of the paper's brightness
 * @param most how far it is followed
 */
export function overrun(
  image: StripImage,
  from: PointPx,
  to: PointPx,
  darkness: number,
  most: number,
): number {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const ux = (to[0] - from[0]) / length;
  const uy = (to[1] - from[1]) / length;
  const gap = OVERRUN_GAP_PX + AGREES_SHARE * Math.max(image.widthPx, image.heightPx);
  const half = BESIDE_PX;
  const profile = new Float64Array(2 * half + 1);
  let last = 0;
  for (let along = 1; along <= most && along - last <= gap; along++) {
    const x = to[0] + along * ux;
    const y = to[1] + along * uy;
    if (!isOn(image, x, y)) break;
    darkestAlong(image, x + half * uy, y - half * ux, -uy, ux, profile);
    const paper = upperQuarter(profile);
    const least = Math.min(profile[half - 1]!, profile[half]!, profile[half + 1]!);
    if (paper - least >= 0.5 * darkness * paper) last = along;
  }
  return last;
}

interface Ridge {
  at: number;
  darkness: number;
}

/** Dark ridges of a profile: their middle between the flanks at half depth, and their depth. */
function ridges(profile: Float64Array, paper: number): Ridge[] {
  const out: Ridge[] = [];
  const n = profile.length;
  for (let k = 1; k < n - 1; k++) {
    const here = profile[k]!;
    if (here > profile[k - 1]! || here >= profile[k + 1]!) continue;
    const depth = paper - here;
    if (depth < LEAST_DARKNESS * paper) continue;
    const half = paper - depth / 2;
    let a = k;
    while (a > 0 && profile[a - 1]! < half) a--;
    let b = k;
    while (b < n - 1 && profile[b + 1]! < half) b++;
    if (a === 0 || b === n - 1) continue;
    const low = a - (half - profile[a]!) / (profile[a - 1]! - profile[a]!);
    const high = b + (half - profile[b]!) / (profile[b + 1]! - profile[b]!);
    const at = (low + high) / 2;
    const last = out.at(-1);
    if (last && Math.abs(last.at - at) < 0.5) continue;
    out.push({ at, darkness: depth / paper });
  }
  return out;
}

/** The curve that most ridges lie on: straight lines and arches are tried, then fitted to what agrees. */
function agreed(
  places: number[],
  offsets: number[],
  darkness: number[],
  agrees: number,
  reach: number,
  endsReach: number,
): Side | null {
  let best: Side | null = null;
  let most = 0;
  const step = Math.max(0.75, agrees);
  const steps = Math.ceil(endsReach / step);
  for (let k = -steps; k <= steps; k++) {
    const ends = k * step;
    const bows = Math.floor(reach / step);
    for (let j = -bows; j <= bows; j++) {
      const bow = j * step;
      // Ends off by different amounts are found by the fit; the search need only come near.
      const trial = { offset: ends, slope: 0, bow, twist: 0, seen: 0, darkness: 0, spread: 0, blank: 1 };
      if (Math.abs(ends + bow) > reach) continue;
      let weight = 0;
      for (let i = 0; i < places.length; i++) {
        const off = Math.abs(offsets[i]! - sideOffset(trial, places[i]!)) / (1.5 * agrees);
        if (off < 1) weight += Math.min(0.5, darkness[i]!) * (1 - off * off);
      }
      // Of curves seen as well, the flattest and nearest to the chord.
      weight *= 1 - 0.15 * (Math.abs(ends) / reach) - 0.1 * (Math.abs(bow) / reach);
      if (weight > most) {
        most = weight;
        best = trial;
      }
    }
  }
  if (!best) return null;
  let limit = 2 * agrees;
  for (let round = 0; round < ROUNDS; round++) {
    const chosen: number[] = [];
    const nearest = new Map<number, number>();
    for (let i = 0; i < places.length; i++) {
      const off = Math.abs(offsets[i]! - sideOffset(best, places[i]!));
      if (off > limit) continue;
      const other = nearest.get(places[i]!);
      if (other === undefined || off < Math.abs(offsets[other]! - sideOffset(best, places[i]!))) {
        nearest.set(places[i]!, i);
      }
    }
    chosen.push(...nearest.values());
    if (chosen.length < 12) return null;
    const fitted: Side | null = fit(chosen, places, offsets);
    if (!fitted) return null;
    const dark = chosen.map((i) => darkness[i]!).sort((a, b) => a - b);
    best = { ...fitted, seen: chosen.length / PLACES, darkness: dark[dark.length >> 1]! };
    // A pen that starts close beside the side would pull it over: what lies farther off than is usual is left out.
    const off = chosen
      .map((i) => Math.abs(offsets[i]! - sideOffset(fitted, places[i]!)))
      .sort((p, q) => p - q);
    const usual = MAD_TO_SD * off[off.length >> 1]!;
    best.spread = usual;
    if (round > 0) limit = Math.min(agrees, Math.max(LEAST_AGREES_PX, 3 * usual));
  }
  return best;
}

function fit(chosen: number[], places: number[], offsets: number[]): Side | null {
  const a = new Float64Array(4 * chosen.length);
  const b = new Float64Array(chosen.length);
  chosen.forEach((i, row) => {
    const s = 2 * places[i]! - 1;
    const arch = 1 - s * s;
    a.set([1, s, arch, arch * s], 4 * row);
    b[row] = offsets[i]!;
  });
  const solved = leastSquares(a, b, chosen.length, 4);
  if (!solved) return null;
  const [offset, slope, bow, twist] = solved as unknown as number[];
  return {
    offset: offset!,
    slope: slope!,
    bow: bow!,
    twist: twist!,
    seen: 0,
    darkness: 0,
    spread: 0,
    blank: 1,
  };
}

/** The brightness that three quarters of a profile stay below. */
export function upperQuarter(profile: Float64Array): number {
  const counts = new Uint32Array(256);
  for (let k = 0; k < profile.length; k++) counts[profile[k]! | 0]!++;
  let seen = 0;
  for (let value = 255; value > 0; value--) {
    seen += counts[value]!;
    if (seen >= 0.25 * profile.length) return value;
  }
  return 0;
}

/** The darkest channel at places between pixels, 0 to 255, a step apart; the photo is mirrored at its edges. */
export function darkestAlong(
  { widthPx, heightPx, rgba }: StripImage,
  x: number,
  y: number,
  stepX: number,
  stepY: number,
  out: Float64Array,
): void {
  const endX = x + (out.length - 1) * stepX;
  const endY = y + (out.length - 1) * stepY;
  const inside =
    Math.min(x, endX) >= 0 &&
    Math.min(y, endY) >= 0 &&
    Math.max(x, endX) < widthPx - 1 &&
    Math.max(y, endY) < heightPx - 1;
  for (let k = 0; k < out.length; k++) {
    const cx = inside ? x + k * stepX : mirrored(x + k * stepX, widthPx);
    const cy = inside ? y + k * stepY : mirrored(y + k * stepY, heightPx);
    const x0 = cx | 0;
    const y0 = cy | 0;
    const fx = cx - x0;
    const fy = cy - y0;
    const a = (1 - fx) * (1 - fy);
    const b = fx * (1 - fy);
    const c = (1 - fx) * fy;
    const d = fx * fy;
    const p = 4 * (y0 * widthPx + x0);
    const q = p + 4 * widthPx;
    const red = a * rgba[p]! + b * rgba[p + 4]! + c * rgba[q]! + d * rgba[q + 4]!;
    const green = a * rgba[p + 1]! + b * rgba[p + 5]! + c * rgba[q + 1]! + d * rgba[q + 5]!;
    const blue = a * rgba[p + 2]! + b * rgba[p + 6]! + c * rgba[q + 2]! + d * rgba[q + 6]!;
    out[k] = Math.min(red, green, blue);
  }
}

function isOn({ widthPx, heightPx }: StripImage, x: number, y: number): boolean {
  return x >= -0.5 && y >= -0.5 && x <= widthPx - 0.5 && y <= heightPx - 0.5;
}

function mirrored(at: number, length: number): number {
  const inside = at < 0 ? -at : at > length - 1 ? 2 * (length - 1) - at : at;
  return Math.min(length - 1.001, Math.max(0, inside));
}
