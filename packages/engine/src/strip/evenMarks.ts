/**
 * Stretch along a chart undone by what is printed on it at even distances, grid lines or ticks: on paper that was folded
 * each part lies at a tilt of its own, and takes up more or less of the photo for it.
 */
import type { Edges } from './findLines.ts';
import { middleOf } from './middle.ts';
import { PAPER, pointOf } from './paper.ts';
import type { FlatChart } from './warp.ts';

/** The distance from mark to mark differs along a chart by this share at most, and so many marks may be missing between two. */
const UNEVEN = 0.25;
const MOST_STEPS = 3;
/** The first and the last distance are like those next to them to this: a frame round a grid is seldom one of its lines. */
const UNEVEN_END = 0.03;
/** A missing mark speaks against a spacing by this share of a seen one. */
const MISSING = 0.6;
/** Marks must be at least so many, reach over this share of the chart, and be this share of all that were seen. */
const LEAST_MARKS = 6;
const LEAST_REACH = 0.9;
const MARKS_SHARE = 0.7;
/** A mark lies between its neighbours to this share of their distance, but where the paper is folded. */
const BETWEEN_SHARE = 0.02;
/** A stretch of less than this share of the chart is left as it is, and one less than so many times as far as a mark is off by chance. */
const LEAST_STRETCH = 0.0004;
const CHANCE_TIMES = 4;
/** Beyond the first and the last mark the paper goes on as along so many next to them. */
const END_MARKS = 5;
/** Ticks are looked for in these rows beyond an edge, and are narrower than this share of the chart. */
const TICK_ROWS = [3, 7] as const;
const BROADEST_TICK = 0.006;
const LEAST_DARKNESS = 12;
const GRAIN_TIMES = 5;

/**
 * Where each column would lie were the marks evenly spaced, the chart's left and right edge staying where they are.
 * @param gridLines columns of upright printed lines, ascending
 * @returns null where no marks tell, or nothing is stretched
 */
export function evenedColumns(
  chart: FlatChart,
  edges: Edges,
  gridLines: readonly number[],
): Float64Array | null {
  for (const places of [gridLines, ticksBeyond(chart, edges, 'bottom'), ticksBeyond(chart, edges, 'top')]) {
    const marks = evenMarks(places, edges);
    if (marks) return evened(marks, edges, chart.columns);
  }
  return null;
}

interface Marks {
  places: number[];
  /** Which mark each is, counted from the first, those missing counted too. */
  numbers: number[];
}

interface Measured extends Marks {
  /** How far a mark usually lies from where its neighbours put it, columns. */
  chance: number;
}

/** The places that are evenly spaced but for a stretch, counted; null where they are too few. */
function evenMarks(places: readonly number[], { left, right }: Edges): Measured | null {
  const across = right - left;
  const inside = places.filter((place) => place > left - 1.5 && place < right + 1.5);
  if (inside.length < LEAST_MARKS) return null;
  let best: Marks | null = null;
  let most = 0;
  const distances = inside.slice(1).map((place, i) => place - inside[i]!);
  // Distances tried lie so far apart that one of them is near the true one.
  const tried = new Map(distances.map((distance) => [Math.round(12 * Math.log(distance)), distance]));
  for (const spacing of tried.values()) {
    const chain = chained(inside, spacing);
    if (chain.score <= most) continue;
    most = chain.score;
    best = chain.marks;
  }
  if (best) best = withoutOddEnds(best);
  if (!best || best.places.length < Math.max(LEAST_MARKS, MARKS_SHARE * inside.length)) return null;
  if (best.places.at(-1)! - best.places[0]! < LEAST_REACH * across) return null;
  const off = best.places.slice(1, -1).map((place, i) => {
    const [a, b] = [best!.places[i]!, best!.places[i + 2]!];
    const [m, n] = [best!.numbers[i]!, best!.numbers[i + 2]!];
    const share = (best!.numbers[i + 1]! - m) / (n - m);
    const columns = Math.abs(place - a - share * (b - a));
    return { columns, share: columns / (b - a) };
  });
  if (middleOf(off.map(({ share }) => share)) > BETWEEN_SHARE) return null;
  return { ...best, chance: middleOf(off.map(({ columns }) => columns)) };
}

/** Marks without a first or last one at another distance than the marks next to it are apart. */
function withoutOddEnds({ places, numbers }: Marks): Marks {
  const apart = (k: number) => (places[k + 1]! - places[k]!) / (numbers[k + 1]! - numbers[k]!);
  const odd = (k: number, next: number) => Math.abs(apart(k) / apart(next) - 1) > UNEVEN_END;
  const last = places.length - 1;
  if (last < 2) return { places, numbers };
  const from = odd(0, 1) ? 1 : 0;
  const to = odd(last - 1, last - 2) ? last : last + 1;
  return { places: places.slice(from, to), numbers: numbers.slice(from, to) };
}

/** The longest row of places about a spacing apart. */
function chained(places: readonly number[], spacing: number): { marks: Marks; score: number } {
  const score = new Float64Array(places.length).fill(1);
  const before = new Int32Array(places.length).fill(-1);
  const steps = new Int32Array(places.length);
  let last = 0;
  for (let i = 0; i < places.length; i++) {
    for (let j = i - 1; j >= 0; j--) {
      const apart = (places[i]! - places[j]!) / spacing;
      if (apart > MOST_STEPS + 0.5) break;
      const count = Math.round(apart);
      if (count < 1 || Math.abs(apart / count - 1) > UNEVEN) continue;
      const through = score[j]! + 1 - MISSING * (count - 1) - Math.abs(apart / count - 1);
      if (through <= score[i]!) continue;
      score[i] = through;
      before[i] = j;
      steps[i] = count;
    }
    if (score[i]! > score[last]!) last = i;
  }
  const chain: number[] = [];
  for (let i = last; i >= 0; i = before[i]!) chain.unshift(i);
  let number = 0;
  const numbers = chain.map((i, k) => {
    if (k > 0) number += steps[i]!;
    return number;
  });
  return { marks: { places: chain.map((i) => places[i]!), numbers }, score: score[last]! };
}

/** Columns put where evenly spaced marks have them; null where that moves none to speak of. */
function evened(
  { places, numbers, chance }: Measured,
  { left, right }: Edges,
  columns: number,
): Float64Array | null {
  const out = new Float64Array(columns);
  let k = 0;
  const last = places.length - 1;
  const along = (from: number, to: number, x: number) => {
    const share = (x - places[from]!) / (places[to]! - places[from]!);
    return numbers[from]! + share * (numbers[to]! - numbers[from]!);
  };
  for (let x = 0; x < columns; x++) {
    while (k < last - 1 && places[k + 1]! < x) k++;
    if (x < places[0]!) out[x] = along(0, Math.min(last, END_MARKS), x);
    else if (x > places[last]!) out[x] = along(last, Math.max(0, last - END_MARKS), x);
    else out[x] = along(k, k + 1, x);
  }
  const [from, to] = [out[left]!, out[right]!];
  let most = 0;
  for (let x = 0; x < columns; x++) {
    out[x] = left + ((right - left) * (out[x]! - from)) / (to - from);
    if (x >= left && x <= right) most = Math.max(most, Math.abs(out[x]! - x));
  }
  return most >= Math.max(LEAST_STRETCH * (right - left), CHANCE_TIMES * chance) ? out : null;
}

/** Columns of ticks that stand out from the chart's top or bottom edge. */
function ticksBeyond(
  { columns, rows, red, green, blue }: FlatChart,
  { left, right, top, bottom }: Edges,
  edge: 'top' | 'bottom',
): number[] {
  const [from, to] =
    edge === 'bottom'
      ? [bottom + TICK_ROWS[0], bottom + TICK_ROWS[1]]
      : [top - TICK_ROWS[1], top - TICK_ROWS[0]];
  if (from < 0 || to >= rows) return [];
  const dark = new Float64Array(columns);
  const counts = new Uint32Array(256);
  for (let x = 0; x < columns; x++) {
    let sum = 0;
    for (let y = from; y <= to; y++) {
      const k = y * columns + x;
      sum += PAPER - Math.min(red[k]!, green[k]!, blue[k]!);
    }
    dark[x] = Math.max(0, sum / (to - from + 1));
    counts[Math.min(255, Math.round(dark[x]!))]!++;
  }
  const least = Math.max(LEAST_DARKNESS, GRAIN_TIMES * pointOf(counts, columns / 2));
  const places: number[] = [];
  for (let x = Math.max(0, left - 2); x <= Math.min(columns - 1, right + 2); x++) {
    if (dark[x]! < least) continue;
    let sum = 0;
    let weighted = 0;
    const start = x;
    for (; x < columns && dark[x]! >= least; x++) {
      sum += dark[x]!;
      weighted += x * dark[x]!;
    }
    if (x - start <= BROADEST_TICK * columns) places.push(weighted / sum);
  }
  return places;
}
