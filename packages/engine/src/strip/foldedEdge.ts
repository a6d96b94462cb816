/** A printed edge followed as it runs, kinks and all: paper that was folded bends by no smooth arch. */
import { middleOf } from './middle.ts';
import { darkestAlong, upperQuarter } from './sides.ts';
import type { PointPx, StripImage } from './types.ts';

/** Pixels from one place looked at to the next, and most places looked at. */
const STEP_PX = 3;
const MOST_PLACES = 480;
/** The edge is looked for on at most so many offsets to either side. */
const MOST_OFFSETS = 48;
/** Ink is a line where it is darker than what lies so many offsets to either side. */
const BESIDE = 4;
/** An offset more or less between places costs so much, in shares of the usual darkness: an edge runs straight but for its kinks. */
const TURN = 0.15;
/** The edge is seen at a place where it is this share as dark as it usually is, and must be seen at so many. */
const USUAL_SHARE = 0.35;
const SEEN = 0.75;
const LEAST_DARKNESS = 0.05;
/** Places to either side over which it is evened out. */
const EVENED = 5;

/**
 * Follows the dark line from one corner to another by dynamic programming (R. Bellman 1957).
 * @param reachPx how far from the chord it may run
 * @returns its offset to the right of the chord at shares i / (length - 1) of it, pixels, 0 at both ends; null where no
 * line runs all along
 */
export function followEdge(
  image: StripImage,
  from: PointPx,
  to: PointPx,
  reachPx: number,
): Float64Array | null {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const places = Math.min(MOST_PLACES, Math.round(length / STEP_PX));
  if (places < 4 * EVENED) return null;
  const half = Math.min(MOST_OFFSETS, Math.max(4, Math.round(reachPx)));
  const step = reachPx / half;
  const nx = (-step * (to[1] - from[1])) / length;
  const ny = (step * (to[0] - from[0])) / length;
  const offsets = 2 * half + 1;
  const dark = new Float64Array(places * offsets);
  const profile = new Float64Array(offsets + 2 * BESIDE);
  for (let i = 0; i < places; i++) {
    const t = i / (places - 1);
    const x = from[0] + t * (to[0] - from[0]);
    const y = from[1] + t * (to[1] - from[1]);
    const far = half + BESIDE;
    darkestAlong(image, x - far * nx, y - far * ny, nx, ny, profile);
    const paper = Math.max(1, upperQuarter(profile));
    for (let k = 0; k < offsets; k++) {
      const beside = Math.min(profile[k]!, profile[k + 2 * BESIDE]!);
      dark[i * offsets + k] = Math.max(0, beside - profile[k + BESIDE]!) / paper;
    }
  }
  const path = darkestPath(dark, places, offsets);
  const seen = Array.from(path, (k, i) => dark[i * offsets + k]!);
  const usual = middleOf([...seen]);
  if (usual < LEAST_DARKNESS) return null;
  const least = USUAL_SHARE * usual;
  if (seen.filter((value) => value >= least).length < SEEN * places) return null;
  const rough = Array.from(path, (k, i) =>
    seen[i]! >= least ? step * (between(dark, i * offsets, k, offsets) - half) : Number.NaN,
  );
  return anchored(evened(rough));
}

/** The way through the darkest offsets, one a place, from the middle at the first to the middle at the last. */
function darkestPath(dark: Float64Array, places: number, offsets: number): Int32Array {
  const sorted = dark.filter((value) => value > 0).sort();
  const usual = sorted[Math.floor(0.95 * sorted.length)] ?? 1;
  const half = offsets >> 1;
  const cost = new Float64Array(offsets).fill(Number.POSITIVE_INFINITY);
  const next = new Float64Array(offsets);
  const came = new Int8Array(places * offsets);
  for (let k = half - BESIDE + 1; k < half + BESIDE; k++) cost[k] = 0;
  for (let i = 0; i < places; i++) {
    for (let k = 0; k < offsets; k++) {
      let best = cost[k]!;
      let turn = 0;
      for (const d of [-1, 1]) {
        const other = (cost[k + d] ?? Number.POSITIVE_INFINITY) + TURN;
        if (other < best) {
          best = other;
          turn = d;
        }
      }
      came[i * offsets + k] = turn;
      next[k] = best + 1 - Math.min(1, dark[i * offsets + k]! / usual);
    }
    cost.set(next);
  }
  let k = half;
  for (let d = 1 - BESIDE; d < BESIDE; d++) if (cost[half + d]! < cost[k]!) k = half + d;
  const path = new Int32Array(places);
  for (let i = places - 1; i >= 0; i--) {
    path[i] = k;
    k += came[i * offsets + k]!;
  }
  return path;
}

/** The middle of a dark ridge between offsets, by the parabola through its darkest three. */
function between(dark: Float64Array, at: number, k: number, offsets: number): number {
  if (k === 0 || k === offsets - 1) return k;
  const [a, b, c] = [dark[at + k - 1]!, dark[at + k]!, dark[at + k + 1]!];
  const bend = a - 2 * b + c;
  return bend < 0 ? k + Math.max(-1, Math.min(1, (a - c) / (2 * bend))) : k;
}

/** Medians over a few places, then means: a stroke that crosses the edge does not lead it off, and a kink stays one. */
function evened(values: readonly number[]): Float64Array {
  const over = (at: number, reach: number, of: readonly number[]) =>
    of.slice(Math.max(0, at - reach), at + reach + 1).filter(Number.isFinite);
  const medians = values.map((_, i) => {
    const near = over(i, EVENED, values);
    return near.length ? middleOf(near) : Number.NaN;
  });
  let last = medians.find(Number.isFinite) ?? 0;
  return Float64Array.from(medians, (_, i) => {
    const near = over(i, EVENED >> 1, medians);
    if (near.length) last = near.reduce((sum, value) => sum + value, 0) / near.length;
    return last;
  });
}

/** Less the straight line through both ends: where an edge begins and ends is as the corners say. */
function anchored(offsets: Float64Array): Float64Array {
  const [first, last] = [offsets[0]!, offsets.at(-1)!];
  return offsets.map((value, i) => value - first - ((last - first) * i) / (offsets.length - 1));
}
