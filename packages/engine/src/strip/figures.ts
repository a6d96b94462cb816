/** Four-sided figures that printed lines bound on the small copy of a photo: what may be a chart. */
import type { Ridges, StraightLine } from './straightLines.ts';

/** Lines of each family that are tried as sides. */
const LONGEST_TRIED = 30;
const OTHERS_TRIED = 4;
/** Least share of a side along which a line must be seen. */
const SEEN = 0.7;
/** Ticks run over the chart's edge by this share of its longer side, and of the side they prolong, at most. */
const TICKS = 0.012;
const TICKS_OF_SIDE = 0.045;
/** A chart's side is at least this share of the photo's. */
const LEAST_SHARE = 0.05;

type Point = readonly [number, number];

type Corners = [Point, Point, Point, Point];

/** A figure that may be a chart, pixels of the small copy. */
export interface Figure {
  /** Clockwise from its top left. */
  corners: Corners;
  from: 'frame' | 'grid' | 'axes';
  /** A larger figure is likelier the chart than one within it, and one of dark lines than one of faint ones: 0.5 to 1. */
  size: number;
  clear: number;
}

/** Figures looked at on the photo before one is chosen; of those that cover nearly the same ground so many. */
const MOST_FIGURES = 6;
const MOST_ALIKE = 3;
const ALIKE = 0.75;
/** Figures kept while they are sought. */
const MOST_KEPT = 24;
/** Pairs of axes looked at; no line runs along this share of both other sides, to so many places and so large a share of a side. */
const MOST_AXES = 3;
const SAME_GROUND = 0.85;
const OPEN_PX = 6;
const OPEN_SHARE = 0.6;
const OPEN_OFF = 0.03;
/** Axes are at least this share of the photo's width, run past their origin (as ticks do) by no more than this share, weighed so. */
const LEAST_AXIS = 0.2;
const PAST_ORIGIN = 0.03;
const MOST_PAST = 0.1;
/** Figures whose corners all lie nearer than this, pixels of the small copy, are one. */
const SAME_PX = 4;

/** Figures that four lines bound, the likeliest first, and two axes with their parallels. */
export function figuresOf(ridges: Ridges, level: StraightLine[], upright: StraightLine[]): Figure[] {
  const bounded = boundedFigures(ridges, level, upright);
  const axes: Figure[] = [];
  for (const figure of axesFigures(ridges, level, upright)) {
    // The left and the bottom side of a figure are no axes.
    const sides = bounded.some(
      ({ corners }) =>
        cornersNear(corners, figure.corners) >= 3 || shared(corners, figure.corners) > SAME_GROUND,
    );
    if (sides || axes.some(({ corners }) => shared(corners, figure.corners) > ALIKE)) continue;
    axes.push(figure);
    if (axes.length === MOST_AXES) break;
  }
  return [...bounded, ...axes];
}

const cornersNear = (a: Corners, b: Corners) =>
  a.filter(([x, y], i) => Math.hypot(x - b[i]![0], y - b[i]![1]) < OPEN_PX).length;

function boundedFigures(ridges: Ridges, level: StraightLine[], upright: StraightLine[]): Figure[] {
  const rows = outermost(level);
  const columns = outermost(upright);
  const best: { corners: Corners; score: number; darkness: number }[] = [];
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
          const score = closes * sizeOf(ridges, corners) * clearOf(darkness);
          if (score <= (best.length < MOST_KEPT ? 0 : best.at(-1)!.score)) continue;
          const same = best.findIndex((other) => apart(other.corners, corners) < SAME_PX);
          if (same >= 0 && best[same]!.score >= score) continue;
          if (same >= 0) best.splice(same, 1);
          best.push({ corners, score, darkness });
          best.sort((p, q) => q.score - p.score);
          best.length = Math.min(best.length, MOST_KEPT);
        }
      }
    }
  }
  const chosen: typeof best = [];
  for (const figure of best) {
    const alike = chosen.filter((other) => shared(other.corners, figure.corners) > ALIKE).length;
    if (alike < MOST_ALIKE) chosen.push(figure);
  }
  const darkness = [...level, ...upright].map((line) => line.darkness).sort((p, q) => p - q);
  const usual = darkness[darkness.length >> 1] ?? 0;
  return chosen.slice(0, MOST_FIGURES).map((figure) => ({
    corners: figure.corners,
    from: darkness.length <= 8 || figure.darkness > 1.4 * usual ? 'frame' : 'grid',
    size: sizeOf(ridges, figure.corners),
    clear: clearOf(figure.darkness),
  }));
}

const clearOf = (darkness: number) => 0.6 + 0.4 * Math.min(1, (3 * darkness) / 255);

/** Ground two figures share, of what they cover together, by the boxes that lie about them. */
function shared(a: Corners, b: Corners): number {
  const box = (corners: Corners) => {
    const xs = corners.map(([x]) => x);
    const ys = corners.map(([, y]) => y);
    return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
  };
  const [p, q] = [box(a), box(b)];
  const wide = Math.min(p[2], q[2]) - Math.max(p[0], q[0]);
  const high = Math.min(p[3], q[3]) - Math.max(p[1], q[1]);
  if (wide <= 0 || high <= 0) return 0;
  const area = (box: readonly [number, number, number, number]) => (box[2] - box[0]) * (box[3] - box[1]);
  return (wide * high) / (area(p) + area(q) - wide * high);
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
    score *= inked * Math.max(0.7, 1 - beyond);
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

/** Charts drawn with two axes only: a level and an upright line that meet at their ends, the rest by parallels; the likeliest first. */
function axesFigures(ridges: Ridges, level: StraightLine[], upright: StraightLine[]): Figure[] {
  const { width, height } = ridges;
  const found: { corners: Corners; score: number }[] = [];
  for (const bottom of level) {
    for (const left of upright) {
      const origin = cross(ridges, bottom, left);
      const reach = bottom.to - origin[0];
      const rise = origin[1] - left.from;
      if (reach < LEAST_AXIS * width || rise < LEAST_SHARE * height) continue;
      const past =
        Math.max(0, Math.abs(bottom.from - origin[0]) / reach - PAST_ORIGIN) +
        Math.max(0, Math.abs(left.to - origin[1]) / rise - PAST_ORIGIN);
      if (past > MOST_PAST) continue;
      const end: Point = [bottom.to, bottom.at + bottom.slope * (bottom.to - width / 2)];
      const peak: Point = [left.at + left.slope * (left.from - height / 2), left.from];
      // Where both other sides are drawn too it is a box, not a pair of axes.
      const above = level.some((line) => closes(line, peak[0], reach, peak, width, rise));
      const beside = upright.some((line) =>
        closes(line, end[1] - rise, rise, [end[1], end[0]], height, reach),
      );
      if (above && beside) continue;
      const score = reach * rise * (1 - past * 5) * Math.min(bottom.darkness, left.darkness);
      found.push({
        score,
        corners: [peak, [peak[0] + end[0] - origin[0], peak[1] + end[1] - origin[1]], end, origin],
      });
    }
  }
  return found
    .sort((p, q) => q.score - p.score)
    .map(({ corners }) => ({ corners, from: 'axes', size: 1, clear: 1 }));
}

/** Whether a line runs along much of a side from `from` on, and past the axis's end at place `end`, `across` it. */
function closes(
  line: StraightLine,
  from: number,
  length: number,
  [end, across]: Point,
  photo: number,
  axis: number,
): boolean {
  const place = line.at + line.slope * (end - photo / 2);
  const covered = Math.min(line.to, from + length) - Math.max(line.from, from);
  return covered > OPEN_SHARE * length && Math.abs(place - across) < OPEN_PX + OPEN_OFF * axis;
}
