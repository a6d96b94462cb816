/** Finding the chart on a photo by its frame or grid. */
import { measureSide, type Side, sideOffset } from './sides.ts';
import { type Ridges, ridgesOf, type StraightLine, straightLines } from './straightLines.ts';
import type { ChartFound, CornersPx, PointPx, StripImage, StripProgress } from './types.ts';

/** Lines of each family that are tried as sides. */
const LONGEST_TRIED = 30;
const OTHERS_TRIED = 4;
/** Least share of a side along which a line must be seen. */
const SEEN = 0.7;
/** Ticks run over the chart's edge by this share of its longer side, and of the side they prolong, at most. */
const TICKS = 0.012;
const TICKS_OF_SIDE = 0.045;
/** Paper bows by this share of its length at most. */
const MOST_BOW = 0.03;
/** A chart's side is at least this share of the photo's. */
const LEAST_SHARE = 0.05;

type Point = readonly [number, number];

/**
 * Looks for a chart: the largest four-sided figure whose sides are printed lines that end at its corners. The corners
 * are then set by the lines as they run on the full photo, to a part of a pixel.
 * @param onProgress told the share done before each step, by what the steps usually take
 * @returns null when there is none to be seen
 */
export function findChart(image: StripImage, onProgress: StripProgress = () => {}): ChartFound | null {
  onProgress(0, 'looking for printed lines');
  const ridges = ridgesOf(image);
  onProgress(0.3, 'looking for printed lines');
  const level = straightLines(ridges, false);
  onProgress(0.5, 'looking for printed lines');
  const upright = straightLines(ridges, true);
  onProgress(0.7, 'putting a frame together');
  const quads = bestQuads(ridges, level, upright);
  if (!quads.length) quads.push(...axesQuads(ridges, level, upright));
  let best: ChartFound | null = null;
  for (const [i, quad] of quads.entries()) {
    onProgress(0.8 + (0.2 * i) / quads.length, 'measuring its corners');
    const found = settled(image, quad, ridges.fold);
    if (found && found.sure > (best?.sure ?? 0)) best = found;
  }
  onProgress(1, 'done');
  return best;
}

/** A figure found on the small copy, settled on the photo itself; null when its sides are not seen there. */
function settled(image: StripImage, quad: Quad, fold: number): ChartFound | null {
  const rough = quad.corners.map(([x, y]) => [
    x * fold + (fold - 1) / 2,
    y * fold + (fold - 1) / 2,
  ]) as unknown as CornersPx;
  const { corners, seen } = settleCorners(image, rough, 3 * fold + 4);
  const axes = quad.from === 'axes';
  if ((axes ? Math.min(seen[2]!, seen[3]!) : secondLeast(seen)) < SEEN) return null;
  const clear = seen.reduce((sum, share) => sum + share, 0) / 4;
  const sides = seen.filter((share) => share >= SEEN).length;
  const sure = axes ? 0.5 * clear : clear * (0.4 + 0.6 * (sides / 4)) * (0.6 + 0.4 * quad.closes);
  return { cornersPx: corners, sure: Math.round(100 * Math.min(0.99, sure)) / 100, from: quad.from };
}

/** Of four sides one may be hard to see. */
const secondLeast = (seen: number[]) => [...seen].sort((a, b) => a - b)[1]!;

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
  const sides = corners.map((corner, i) => {
    const next = corners[(i + 1) % 4]!;
    const bow = MOST_BOW * Math.hypot(next[0] - corner[0], next[1] - corner[1]);
    return measureSide(image, corner, next, reachPx + bow, reachPx);
  });
  const settled = corners.map((corner, i) => {
    const into = sides[(i + 3) % 4] ?? null;
    const out = sides[i] ?? null;
    return meeting(corner, corners[(i + 3) % 4]!, corners[(i + 1) % 4]!, into, out);
  });
  return { corners: settled as unknown as CornersPx, seen: sides.map((side) => side?.seen ?? 0) };
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

type Corners = [Point, Point, Point, Point];

interface Quad {
  corners: Corners;
  from: 'frame' | 'grid' | 'axes';
  /** How cleanly the lines bound it, 0 to 1: they cover its sides and end at its corners. */
  closes: number;
}

/** Figures settled on the photo before one is chosen. */
const MOST_QUADS = 3;
/** Figures whose corners all lie nearer than this, pixels of the small copy, are one. */
const SAME_PX = 4;

function bestQuads(ridges: Ridges, level: StraightLine[], upright: StraightLine[]): Quad[] {
  const rows = outermost(level);
  const columns = outermost(upright);
  const best: { corners: Corners; score: number; closes: number; darkness: number }[] = [];
  for (const top of rows) {
    for (const bottom of rows) {
      if (middleOf(top) >= middleOf(bottom)) continue;
      const joining = columns.filter(
        (column) => mayMeet(ridges, top, column) && mayMeet(ridges, bottom, column),
      );
      for (const left of joining) {
        for (const right of joining) {
          if (middleOf(left) >= middleOf(right)) continue;
          const corners: Corners = [
            cross(ridges, top, left),
            cross(ridges, top, right),
            cross(ridges, bottom, right),
            cross(ridges, bottom, left),
          ];
          const closes = closesOf(ridges, corners, top, right, bottom, left);
          if (closes === 0) continue;
          const darkness = Math.min(top.darkness, right.darkness, bottom.darkness, left.darkness);
          const score = closes * sizeOf(ridges, corners) * (0.6 + 0.4 * Math.min(1, (3 * darkness) / 255));
          if (score <= (best.length < MOST_QUADS ? 0 : best.at(-1)!.score)) continue;
          const same = best.findIndex((other) => apart(other.corners, corners) < SAME_PX);
          if (same >= 0 && best[same]!.score >= score) continue;
          if (same >= 0) best.splice(same, 1);
          best.push({ corners, score, closes, darkness });
          best.sort((p, q) => q.score - p.score);
          best.length = Math.min(best.length, MOST_QUADS);
        }
      }
    }
  }
  const darkness = [...level, ...upright].map((line) => line.darkness).sort((p, q) => p - q);
  const usual = darkness[darkness.length >> 1] ?? 0;
  return best.map((quad) => ({
    corners: quad.corners,
    from: darkness.length <= 8 || quad.darkness > 1.4 * usual ? 'frame' : 'grid',
    closes: Math.min(1, quad.closes),
  }));
}

const apart = (a: Corners, b: Corners) =>
  Math.max(...a.map(([x, y], i) => Math.hypot(x - b[i]![0], y - b[i]![1])));

/** The lines that may be sides: the longest, the darkest and those nearest the outside. */
function outermost(lines: StraightLine[]): StraightLine[] {
  const length = (line: StraightLine) => line.to - line.from;
  const byPlace = [...lines].sort((a, b) => middleOf(a) - middleOf(b));
  const byLength = [...lines].sort((a, b) => length(b) - length(a));
  const byDarkness = [...lines].sort((a, b) => b.darkness * length(b) - a.darkness * length(a));
  return [
    ...new Set([
      ...byLength.slice(0, LONGEST_TRIED),
      ...byDarkness.slice(0, OTHERS_TRIED),
      ...byPlace.slice(0, OTHERS_TRIED),
      ...byPlace.slice(-OTHERS_TRIED),
    ]),
  ];
}

const middleOf = (line: StraightLine) => line.at;

/** Where a level and an upright line cross. */
function cross({ width, height }: Ridges, level: StraightLine, upright: StraightLine): Point {
  // y = a + s (x - w/2), x = b + t (y - h/2)
  const s = level.slope;
  const t = upright.slope;
  const y = (level.at + s * (upright.at - (t * height) / 2 - width / 2)) / (1 - s * t);
  const x = upright.at + t * (y - height / 2);
  return [x, y];
}

/** Whether two lines may be sides of one chart: each reaches the other, but for the share of a side that may be unseen. */
function mayMeet(ridges: Ridges, level: StraightLine, upright: StraightLine): boolean {
  const [x, y] = cross(ridges, level, upright);
  return reaches(level, x) && reaches(upright, y);
}

const MOST_SHORT = (1 - SEEN) / SEEN;
function reaches({ from, to }: StraightLine, place: number): boolean {
  const short = MOST_SHORT * (to - from);
  return place >= from - short && place <= to + short;
}

/** How cleanly four lines bound a chart, 0 when they do not. */
function closesOf(
  { width, height }: Ridges,
  corners: Corners,
  top: StraightLine,
  right: StraightLine,
  bottom: StraightLine,
  left: StraightLine,
): number {
  const edge = 2;
  for (const [x, y] of corners) if (x < -edge || y < -edge || x > width + edge || y > height + edge) return 0;
  const [a, b, c, d] = corners;
  const wide = Math.min(b[0] - a[0], c[0] - d[0]);
  const high = Math.min(d[1] - a[1], c[1] - b[1]);
  if (wide < LEAST_SHARE * width || high < LEAST_SHARE * height || Math.min(wide, high) < 16) return 0;
  const ticks = TICKS * Math.max(wide, high);
  const across = Math.min(ticks, TICKS_OF_SIDE * wide);
  const down = Math.min(ticks, TICKS_OF_SIDE * high);
  const sides = [
    covers(top, a[0], b[0], across),
    covers(bottom, d[0], c[0], across),
    covers(left, a[1], d[1], down),
    covers(right, b[1], c[1], down),
  ];
  let score = 1;
  for (const { seen, inked, beyond } of sides) {
    if (seen < SEEN) return 0;
    score *= inked * Math.max(0.05, 1 - 4 * beyond);
  }
  return score;
}

/** A larger figure is likelier the chart than one within it. */
function sizeOf({ width, height }: Ridges, [a, b, c, d]: Corners): number {
  const wide = Math.min(b[0] - a[0], c[0] - d[0]);
  const high = Math.min(d[1] - a[1], c[1] - b[1]);
  return 0.5 + 0.5 * Math.sqrt((wide * high) / (width * height));
}

/**
 * Share of a side a line covers, share without its breaks, and how far its ink runs on beyond the side's ends, in shares of the side. What begins
 * again after a break, like a table as wide as the chart below it, is no running on.
 * @param ticks how far ticks run over, which is no running on either
 */
function covers(
  line: StraightLine,
  from: number,
  to: number,
  ticks: number,
): { seen: number; inked: number; beyond: number } {
  const seen = Math.max(0, Math.min(line.to, to) - Math.max(line.from, from));
  let inked = 0;
  let over = 0;
  for (const [start, end] of line.runs) {
    inked += Math.max(0, Math.min(end, to) - Math.max(start, from));
    if (start < from && end > from) over += Math.max(0, from - start - ticks);
    if (end > to && start < to) over += Math.max(0, end - to - ticks);
  }
  const length = to - from;
  return { seen: seen / length, inked: inked / length, beyond: over / length };
}

/** A chart drawn with two axes only: a level and an upright line that meet at their ends, the rest by parallels. */
function axesQuads(ridges: Ridges, level: StraightLine[], upright: StraightLine[]): Quad[] {
  let best: { corners: Corners; score: number } | null = null;
  for (const bottom of level) {
    for (const left of upright) {
      const origin = cross(ridges, bottom, left);
      const reach = bottom.to - origin[0];
      const rise = origin[1] - left.from;
      if (reach < 0.2 * ridges.width || rise < LEAST_SHARE * ridges.height) continue;
      const apart =
        Math.max(0, Math.abs(bottom.from - origin[0]) / reach - 0.03) +
        Math.max(0, Math.abs(left.to - origin[1]) / rise - 0.03);
      if (apart > 0.1) continue;
      const score = reach * rise * (1 - apart * 5) * Math.min(bottom.darkness, left.darkness);
      if (score <= (best?.score ?? 0)) continue;
      const end: Point = [bottom.to, bottom.at + bottom.slope * (bottom.to - ridges.width / 2)];
      const peak: Point = [left.at + left.slope * (left.from - ridges.height / 2), left.from];
      best = {
        score,
        corners: [peak, [peak[0] + end[0] - origin[0], peak[1] + end[1] - origin[1]], end, origin],
      };
    }
  }
  return best ? [{ corners: best.corners, from: 'axes', closes: 1 }] : [];
}
