/** The scale of a chart from the numbers printed along its edges. */
import { homographyFrom } from '../homography.ts';
import { evenOutPaper } from '../paper.ts';
import type { CornersPx, StripImage } from '../types.ts';
import { layFlat } from '../warp.ts';
import { type PrintedNumber, piecesOfPrint, printedNumbers } from './words.ts';

/** What the numbers along the bottom and left (or right) edge say; null where they say nothing for certain. */
export interface PrintedScale {
  depthMm: readonly [number, number] | null;
  resistance: readonly [number, number] | null;
}

/** Numbers that must lie on one straight scale, and the share of all that are read on that edge. */
const LEAST_AGREEING = 3;
const AGREEING_SHARE = 0.6;
/** Numbers lie on the scale when they are centred on their tick to this share of it. */
const CENTRED = 0.016;
/** A scale's end is the round number it comes this near to, as share of the scale. */
const ROUND_WITHIN = 0.006;
/** A number printed this near to the chart's edge, as share of the scale, is the edge's own, */
const EDGE = 0.03;
/** if the others put it there to this: numbers below are centred on their tick; those beside it stand on a line of print. */
const OWN_WITHIN = { below: ROUND_WITHIN, beside: 0.015 };
/** A shorter depth is hardly in mm, and no needle goes deeper; a level beyond 100, or of a few steps, is hardly in percent: better ask. */
const LEAST_DEPTH = 80;
const MOST_DEPTH = 1600;
const LEAST_LEVEL = 20;
const MOST_LEVEL = 100;
const MOST_SIDE = 2400;
/** A box is looked at first at so many places along one, for as many pieces of print at least, so many places high. */
const COARSE = 2;
const LEAST_PIECES = 2;
const LEAST_PIECE = 3;

type Scale = readonly [number, number];

/** Reads the numbers below the chart as depth in mm, and those beside it as level in percent. */
export function printedScale(image: StripImage, corners: CornersPx): PrintedScale {
  const { below, beside } = scalesAround(image, corners);
  return { depthMm: asDepth(below), resistance: asLevel(beside) };
}

/**
 * Reads a chart that stands upright and whose numbers stand upright too: those beside it as depth, those below it as
 * level.
 * @param corners clockwise from the photo's top left
 * @returns the scale as the chart's own reader sees it, who has the photo's right for the chart's top
 */
export function printedUpright(image: StripImage, corners: CornersPx): PrintedScale {
  const { below, beside } = scalesAround(image, corners);
  return { depthMm: asDepth(beside && [beside[1], beside[0]]), resistance: asLevel(below) };
}

const span = ([from, to]: Scale) => Math.abs(to - from);
const asDepth = (scale: Scale | null) =>
  scale && span(scale) >= LEAST_DEPTH && Math.max(...scale) <= MOST_DEPTH ? scale : null;
const asLevel = (scale: Scale | null) =>
  scale && span(scale) >= LEAST_LEVEL && Math.min(...scale) >= 0 && Math.max(...scale) <= MOST_LEVEL
    ? scale
    : null;

/** The scales of the numbers below the chart, from left to right, and beside it, from bottom to top. */
function scalesAround(image: StripImage, corners: CornersPx): { below: Scale | null; beside: Scale | null } {
  const { below, beside } = numbersAround(image, corners);
  return {
    below: straightScale(below, OWN_WITHIN.below),
    beside: beside.reduce<Scale | null>(
      (scale, numbers) => scale ?? straightScale(numbers, OWN_WITHIN.beside),
      null,
    ),
  };
}

/** A number printed along an edge, and where along it, 0 to 1: from the left, or from the bottom. */
export type NumberAlong = PrintedNumber & { at: number };

/** The numbers printed below a chart, and those on its left and on its right. */
export function numbersAround(
  image: StripImage,
  corners: CornersPx,
): { below: NumberAlong[]; beside: NumberAlong[][] } {
  const side = (i: number, j: number) =>
    Math.hypot(corners[j]![0] - corners[i]![0], corners[j]![1] - corners[i]![1]);
  const wide = Math.max(side(0, 1), side(3, 2));
  const high = Math.max(side(0, 3), side(1, 2));
  // Small print is enlarged, so that its digits have places enough to be told.
  const scale = Math.min(2, MOST_SIDE / wide);
  const across = Math.round(wide * scale);
  const down = Math.round(high * scale);
  // Print is of a size with the chart's long side, whichever way it lies.
  const long = Math.max(across, down);
  const under = Math.min(0.3 * down, 0.09 * long);
  const aside = Math.min(0.3 * across, 0.1 * long);
  const within = (left: number, top: number, right: number, bottom: number) =>
    numbersIn(image, corners, across, down, left, top, right, bottom);

  const below = within(-0.06 * across, down + 2, 1.06 * across, down + under);
  const beside = [
    [-aside, -2],
    [across + 2, across + aside],
  ].map(([from, to]) => within(from!, -0.08 * down, to!, 1.08 * down));
  return {
    below: below.map((number) => ({ ...number, at: number.column / across })),
    beside: beside.map((numbers) => numbers.map((number) => ({ ...number, at: 1 - number.row / down }))),
  };
}

/** Numbers in a box given in pixels of the flat chart, from its top left. */
function numbersIn(
  image: StripImage,
  corners: CornersPx,
  across: number,
  down: number,
  left: number,
  top: number,
  right: number,
  bottom: number,
): PrintedNumber[] {
  const columns = Math.round(right - left);
  const rows = Math.round(bottom - top);
  const chartToPhoto = homographyFrom(
    [
      [0, 0],
      [across, 0],
      [across, down],
      [0, down],
    ],
    corners,
  );
  if (!chartToPhoto || columns < 12 || rows < 12) return [];
  const [a, b, c, d, e, f, g, h, i] = chartToPhoto as unknown as number[];
  /** The box laid flat, so many of its places along one. */
  const laidAt = (coarse: number) => {
    const flat = layFlat(
      image,
      Math.ceil(columns / coarse),
      Math.ceil(rows / coarse),
      (column, row, out) => {
        const x = coarse * column + left;
        const y = coarse * row + top;
        const w = g! * x + h! * y + i!;
        out[0] = (a! * x + b! * y + c!) / w;
        out[1] = (d! * x + e! * y + f!) / w;
      },
      1,
    );
    evenOutPaper(flat);
    return flat;
  };
  // Most boxes hold no print at all, which a coarse look tells.
  if (piecesOfPrint(laidAt(COARSE), LEAST_PIECE) < LEAST_PIECES) return [];
  return printedNumbers(laidAt(1)).map((number) => ({
    ...number,
    column: number.column + left,
    row: number.row + top,
  }));
}

/** Values at the ends (0 and 1) of the straight scale that most numbers lie on, rounded where they plainly end round. */
function straightScale(
  numbers: readonly (PrintedNumber & { at: number })[],
  ownWithin: number,
): readonly [number, number] | null {
  let best: readonly [number, number] | null = null;
  let most = 0;
  for (const p of numbers) {
    for (const q of numbers) {
      if (q.at - p.at < 0.15 || p.value === q.value) continue;
      const perShare = (q.value - p.value) / (q.at - p.at);
      const start = p.value - perShare * p.at;
      const agreeing = numbers.filter((n) => Math.abs((n.value - start) / perShare - n.at) < CENTRED);
      const values = new Set(agreeing.map((n) => n.value)).size;
      if (values <= most || values !== agreeing.length) continue;
      most = values;
      best = fitted(agreeing);
    }
  }
  if (!best || most < LEAST_AGREEING || most < AGREEING_SHARE * numbers.length) return null;
  const whole = span(best);
  // Where the others put the edge's own number beyond the edge, it is the edge that was found in the wrong place.
  const atEdge = (end: 0 | 1) =>
    numbers.find((n) => Math.abs(n.at - end) < EDGE && Math.abs(n.value - best![end]) <= ownWithin * whole)
      ?.value;
  const unit = 10 ** Math.floor(Math.log10(whole) - 1);
  const ends = best.map((end, i) => {
    const own = atEdge(i as 0 | 1);
    if (own !== undefined) return own;
    const round = Math.round(end / unit) * unit;
    return Math.abs(end - round) <= ROUND_WITHIN * whole ? round : Number.NaN;
  });
  // A chart that ends at no round number was not read well enough.
  return ends.every(Number.isFinite) ? [ends[0]!, ends[1]!] : null;
}

/** Least squares of value over place, at places 0 and 1. */
function fitted(numbers: readonly { at: number; value: number }[]): readonly [number, number] {
  const n = numbers.length;
  const meanAt = numbers.reduce((sum, { at }) => sum + at, 0) / n;
  const mean = numbers.reduce((sum, { value }) => sum + value, 0) / n;
  const slope =
    numbers.reduce((sum, { at, value }) => sum + (at - meanAt) * (value - mean), 0) /
    numbers.reduce((sum, { at }) => sum + (at - meanAt) ** 2, 0);
  const start = mean - slope * meanAt;
  return [start, start + slope];
}
