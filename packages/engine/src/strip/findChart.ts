/** Finding the chart on a photo: the figure that printed lines bound and that a pen's line runs through. */
import { type Figure, figuresOf } from './figures.ts';
import { chartInside } from './inside.ts';
import { measureSide, overrun, type Side, sideOffset } from './sides.ts';
import { ridgesOf, straightLines } from './straightLines.ts';
import type { ChartFound, CornersPx, PointPx, StripImage, StripProgress } from './types.ts';

/** Least share of a side along which a line must be seen. */
const SEEN = 0.7;
/** A side seen along this share of its length is seen as well as need be: print is faint in places, and the pen covers it. */
const WELL_SEEN = 0.85;
/** A stretch of a side longer than this share of it on which no line is seen speaks against the figure, by so much. */
const LEAST_BLANK = 0.03;
const BLANK_WEIGHS = 4;
/** Of four sides one may be hard to see: it speaks against the figure no more than this. */
const UNSEEN_SIDE = 0.6;
/** Lines that run on beyond the corners speak against the figure by this many times their length, share of its longer side. */
const OVERRUN_WEIGHS = 2;
/** They are followed for this share of the longer side. */
const MOST_OVERRUN = 0.045;
/** Paper bows by this share of its length at most. */
const MOST_BOW = 0.03;
/** Corners of two figures are the same when nearer than this share of the diagonal; better bounded is by more than this. */
const SAME_CORNER = 0.006;
const BETTER = 0.02;
/** A border encloses a figure as well bounded and as like a chart inside, to this; with a pen's line in it, by this much. */
const AS_WELL = 0.1;
const WITH_LINE = 0.85;
/** It lies off it on every side by this share of its own depth; and is worth this share of it, as is one round two axes. */
const LEAST_MARGIN = 0.015;
const BORDER = 0.8;
/** Axes that a border is printed round are longer than this share of it. */
const AXES_SHARE = 0.5;
/** A figure on the same ground with other corners that scores more than this share of the best leaves doubt which is the chart, up to so much. */
const RIVAL = 0.85;
const DOUBT = 0.5;
/** A side is moved out where both lines that end at it run on alike, to this share, and by at least so much of the longer side. */
const ALIKE_OUT = 0.7;
const LEAST_OUT = 0.006;
/** A side once settled runs so near its chord. */
const NEAR_PX = 6;
/** Two axes that meet do not tell where the chart ends, so that its corners must be given: less than what is relied on. */
const AXES = 0.45;

type Point = readonly [number, number];

/**
 * Looks for a chart: the largest four-sided figure whose sides are printed lines, whole and ending at its corners, and
 * through which a pen's line runs. The corners are set by the lines as they run on the full photo, to a part of a pixel.
 * @param onProgress told the share done before each step, by what the steps usually take
 * @returns null when there is none to be seen
 */
export function findChart(image: StripImage, onProgress: StripProgress = () => {}): ChartFound | null {
  return chartAndAxes(image, onProgress).chart;
}

/** Two axes that no figure closes, with a line of a pen over them: what they would bound, and whether apart from the chart. */
export interface AxesFound {
  cornersPx: CornersPx;
  apart: boolean;
}

/** The chart, as `findChart` has it, and axes, if any: numbers along them may tell what their lines do not. */
export function chartAndAxes(
  image: StripImage,
  onProgress: StripProgress = () => {},
): { chart: ChartFound | null; axes: AxesFound | null } {
  onProgress(0, 'looking for printed lines');
  const ridges = ridgesOf(image);
  onProgress(0.3, 'looking for printed lines');
  const level = straightLines(ridges, false);
  onProgress(0.5, 'looking for printed lines');
  const upright = straightLines(ridges, true);
  onProgress(0.7, 'putting a frame together');
  const figures = figuresOf(ridges, level, upright);
  const bounded: Bounded[] = [];
  for (const [i, figure] of figures.entries()) {
    onProgress(0.75 + (0.2 * i) / figures.length, 'measuring its corners');
    const settled = settledFigure(image, figure, ridges.fold);
    if (settled) bounded.push({ ...figure, ...settled });
  }
  onProgress(0.95, 'looking for a line in it');
  const insides = new Map<Bounded, number>();
  const insideOf = (figure: Bounded) => {
    const inside = insides.get(figure) ?? chartInside(image, figure.corners);
    insides.set(figure, inside);
    return inside;
  };
  const scored: { figure: Bounded; score: number }[] = [];
  let most = 0;
  const ranked = bounded.map((figure) => ({ figure, rank: rankOf(figure, bounded, insideOf) }));
  for (const { figure, rank } of ranked.sort((p, q) => q.rank - p.rank)) {
    // No line makes up for what a figure lacks in its sides.
    if (rank <= RIVAL * most) break;
    const score = rank * insideOf(figure);
    scored.push({ figure, score });
    most = Math.max(most, score);
  }
  onProgress(1, 'done');
  const first = scored.find(({ score }) => score === most)?.figure;
  if (!first) return { chart: null, axes: null };
  const best = first.from === 'axes' ? first : grown(image, first, ridges.fold);
  const axes = bounded.find((figure) => figure.from === 'axes' && insideOf(figure) > WITH_LINE);
  const rivals = scored.filter(({ figure }) => figure !== first && isRival(figure, best));
  const rival = Math.max(0, ...rivals.map(({ score }) => score));
  const doubt = DOUBT * Math.max(0, (rival / most - RIVAL) / (1 - RIVAL));
  const sure = best.bounds * insideOf(first) * (1 - doubt);
  return {
    chart: { cornersPx: best.corners, sure: Math.round(100 * Math.min(0.99, sure)) / 100, from: best.from },
    axes: axes ? { cornersPx: axes.corners, apart: !overlap(axes, best) } : null,
  };
}

/** A figure settled on the photo, and how well its sides bound it, 0 to 1. */
interface Bounded extends Omit<Figure, 'corners'> {
  corners: CornersPx;
  bounds: number;
}

/**
 * How likely a figure is the chart, by its sides. What it has of size beyond a figure within it that shares two of its
 * corners and is bounded better counts for nothing: that is a chart with a table or a band printed next to it. A figure
 * that encloses one as well bounded, with a pen's line in it, is a border round the page: less than what it encloses.
 */
function rankOf(figure: Bounded, all: readonly Bounded[], insideOf: (figure: Bounded) => number): number {
  const within = all.filter(
    (other) => other.bounds > figure.bounds + BETTER && cornersShared(figure, other) === 2,
  );
  const enclosed = all.filter(
    (other) =>
      encloses(figure, other) &&
      other.bounds > figure.bounds - AS_WELL &&
      insideOf(other) > Math.max(WITH_LINE, insideOf(figure) - AS_WELL),
  );
  const sizes = [...within.map(({ size }) => size), ...enclosed.map(({ size }) => BORDER * size)];
  // Two axes with a line over them are a chart, however well a border is printed round them; short ones are strokes that
  // happen to meet within the chart.
  const axes = all.filter(
    (other) =>
      other.from === 'axes' &&
      longerSide(other) > AXES_SHARE * longerSide(figure) &&
      encloses(figure, other) &&
      insideOf(other) > WITH_LINE,
  );
  return Math.min(
    figure.bounds * figure.clear * Math.min(figure.size, ...sizes),
    ...axes.map((other) => BORDER * other.bounds),
  );
}

/**
 * Whether a figure casts doubt on the one chosen: another chart on the sheet does not, nor does one that shares two
 * corners with it and falls short of it, so that its lines run on.
 */
function isRival(figure: Bounded, chosen: Bounded): boolean {
  const same = cornersShared(figure, chosen);
  if (same === 4 || !overlap(figure, chosen)) return false;
  return same < 2 || figure.bounds > chosen.bounds - BETTER;
}

/**
 * A figure moved out to where its lines end: the outermost line of a grid may be too faint to have been tried, but the
 * lines across it run on to it.
 */
function grown(image: StripImage, figure: Bounded, fold: number): Bounded {
  let best = figure;
  for (let side = 0; side < 4; side++) {
    const [a, b] = [best.corners[side]!, best.corners[(side + 1) % 4]!];
    const [before, after] = [best.corners[(side + 3) % 4]!, best.corners[(side + 2) % 4]!];
    const longer = Math.max(distance(a, b), distance(a, before));
    const outA = runsOn(image, before, a, MOST_OVERRUN * longer);
    const outB = runsOn(image, after, b, MOST_OVERRUN * longer);
    if (Math.min(outA, outB) < LEAST_OUT * longer || Math.min(outA, outB) < ALIKE_OUT * Math.max(outA, outB))
      continue;
    const beyond = (from: PointPx, to: PointPx, by: number): PointPx => {
      const share = 1 + by / distance(from, to);
      return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
    };
    const corners = best.corners.map((corner, i) =>
      i === side ? beyond(before, a, outA) : i === (side + 1) % 4 ? beyond(after, b, outB) : corner,
    ) as unknown as CornersPx;
    const settled = boundedOnPhoto(image, corners, figure.from, 3 * fold + 4);
    if (settled && settled.bounds > best.bounds) best = { ...best, ...settled };
  }
  return best;
}

/** How far the line of a side runs on beyond its end, pixels. */
function runsOn(image: StripImage, from: PointPx, to: PointPx, most: number): number {
  const side = measureSide(image, from, to, NEAR_PX);
  return side ? overrun(image, from, to, side.darkness, most) : 0;
}

function longerSide({ corners: [a, b, , d] }: Bounded): number {
  return Math.max(distance(a, b), distance(a, d));
}

/** Whether the boxes about two figures share ground. */
function overlap(a: Bounded, b: Bounded): boolean {
  return [0, 1].every((axis) => {
    const places = (figure: Bounded) => figure.corners.map((corner) => corner[axis]!);
    const [p, q] = [places(a), places(b)];
    return Math.max(...p) > Math.min(...q) && Math.max(...q) > Math.min(...p);
  });
}

/** Whether a figure lies well inside another on all four sides. */
function encloses(outer: Bounded, inner: Bounded): boolean {
  return outer.corners.every((a, i) => {
    const b = outer.corners[(i + 1) % 4]!;
    const before = outer.corners[(i + 3) % 4]!;
    const along = distance(a, b);
    const deep = distance(a, before);
    // How far inside the side from a to b each corner lies.
    return inner.corners.every(([x, y]) => {
      const off = ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / along;
      return off > LEAST_MARGIN * deep;
    });
  });
}

function cornersShared(a: Bounded, b: Bounded): number {
  const near = SAME_CORNER * distance(a.corners[0], a.corners[2]);
  return a.corners.filter((corner, i) => distance(corner, b.corners[i]!) < near).length;
}

/**
 * A figure of the small copy settled on the photo itself, and how well its sides bound it, 0 to 1.
 * @returns null when its sides are not seen there
 */
function settledFigure(
  image: StripImage,
  { corners, from }: Figure,
  fold: number,
): { corners: CornersPx; bounds: number } | null {
  const rough = corners.map(([x, y]) => [
    x * fold + (fold - 1) / 2,
    y * fold + (fold - 1) / 2,
  ]) as unknown as CornersPx;
  return boundedOnPhoto(image, rough, from, 3 * fold + 4);
}

/** Corners settled on the photo, and how well its sides bound what lies between them; null when they are not seen. */
function boundedOnPhoto(
  image: StripImage,
  rough: CornersPx,
  from: Figure['from'],
  reachPx: number,
): { corners: CornersPx; bounds: number } | null {
  // Of two axes the other sides are parallels, along which no line is looked for.
  const settled = settledSides(image, rough, reachPx, from === 'axes' ? [2, 3] : undefined);
  const { sides } = settled;
  const seen = sides.map((side) => side?.seen ?? 0);
  if (from === 'axes') {
    if (Math.min(seen[2]!, seen[3]!) < SEEN) return null;
    return { corners: settled.corners, bounds: AXES * Math.min(1, (seen[2]! + seen[3]!) / (2 * WELL_SEEN)) };
  }
  if ([...seen].sort((a, b) => a - b)[1]! < SEEN) return null;
  const whole = sides.reduce((product, side) => product * wholenessOf(side), 1);
  const longer = Math.max(
    ...settled.corners.map((corner, i) => distance(corner, settled.corners[(i + 1) % 4]!)),
  );
  let over = 0;
  for (const [i, side] of sides.entries()) {
    if (!side) continue;
    const [a, b] = [settled.corners[i]!, settled.corners[(i + 1) % 4]!];
    over += overrun(image, a, b, side.darkness, MOST_OVERRUN * longer);
    over += overrun(image, b, a, side.darkness, MOST_OVERRUN * longer);
  }
  return { corners: settled.corners, bounds: whole * Math.max(0, 1 - (OVERRUN_WEIGHS * over) / longer) };
}

/** How whole a side is, 1 where its line is seen all along it. */
function wholenessOf(side: Side | null): number {
  if (!side) return UNSEEN_SIDE;
  const blank = Math.max(0, side.blank - LEAST_BLANK);
  return Math.max(UNSEEN_SIDE, Math.min(1, side.seen / WELL_SEEN) * (1 - BLANK_WEIGHS * blank));
}

const distance = (a: PointPx, b: PointPx) => Math.hypot(b[0] - a[0], b[1] - a[1]);

/**
 * Sets corners by the printed lines along the sides: each side is measured on the photo, and corners are put where
 * the curves meet. Sides on which no line is seen stay as they are.
 * @param reachPx how far from the given corners the lines may run; between them they may bow besides
 */
export function settleCorners(
  image: StripImage,
  corners: CornersPx,
  reachPx: number,
): { corners: CornersPx; seen: number[] } {
  const settled = settledSides(image, corners, reachPx);
  return { corners: settled.corners, seen: settled.sides.map((side) => side?.seen ?? 0) };
}

function settledSides(
  image: StripImage,
  corners: CornersPx,
  reachPx: number,
  drawn: readonly number[] = [0, 1, 2, 3],
): { corners: CornersPx; sides: (Side | null)[] } {
  const sides = corners.map((corner, i) => {
    if (!drawn.includes(i)) return null;
    const next = corners[(i + 1) % 4]!;
    return measureSide(image, corner, next, reachPx + MOST_BOW * distance(corner, next), reachPx);
  });
  const settled = corners.map((corner, i) => {
    const into = sides[(i + 3) % 4] ?? null;
    const out = sides[i] ?? null;
    return meeting(corner, corners[(i + 3) % 4]!, corners[(i + 1) % 4]!, into, out);
  });
  return { corners: settled as unknown as CornersPx, sides };
}

/** Where the side that ends at a corner and the one that starts there meet. */
function meeting(
  corner: PointPx,
  before: PointPx,
  after: PointPx,
  into: Side | null,
  out: Side | null,
): PointPx {
  const unit = (a: Point, b: Point) => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    return { x: (b[0] - a[0]) / length, y: (b[1] - a[1]) / length, length };
  };
  const u = unit(before, corner);
  const v = unit(corner, after);
  let x = corner[0];
  let y = corner[1];
  for (let round = 0; round < 4; round++) {
    // Offsets to the right of the walk, of each side's curve at the share of its chord this point lies at.
    const t = ((x - before[0]) * u.x + (y - before[1]) * u.y) / u.length;
    const s = ((x - corner[0]) * v.x + (y - corner[1]) * v.y) / v.length;
    const a = into ? sideOffset(into, Math.min(1.05, Math.max(-0.05, t))) : 0;
    const b = out ? sideOffset(out, Math.min(1.05, Math.max(-0.05, s))) : 0;
    // The point whose distance right of the first chord is a, and of the second b.
    const cross = u.x * v.y - u.y * v.x;
    if (Math.abs(cross) < 0.1) break;
    x = corner[0] + (a * v.x - b * u.x) / cross;
    y = corner[1] + (a * v.y - b * u.y) / cross;
  }
  return [x, y];
}
