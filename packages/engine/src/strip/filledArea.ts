/** A chart whose curve is the upper edge of an area filled in one colour, without a line along it. */
import type { Edges, FoundLine } from './findLines.ts';
import { PAPER, pointOf } from './paper.ts';
import { READ } from './penLine.ts';
import type { FlatChart } from './warp.ts';

/** Columns over which paper is taken for equally bright, the point of brightness that is paper, and the blocks an area may fill to the top. */
const BLOCK = 32;
const PAPER_POINT = 0.97;
const FILLED_BLOCKS = 3;
/** Columns next to the frame's uprights, which are no area. */
const FRAME_COLUMNS = 3;
/** The fill is looked for in this share of the rows, above the frame, and leaves less than this share of the light. */
const FOOT = 0.04;
const FRAME_ROWS = 4;
const MOST_LIGHT = 0.88;
/** In so many of all blocks the area stands on the bottom edge. */
const STANDS_IN = 0.4;
/** In a column of an area this share of places at most is like neither paper above nor fill below; so it is in most columns. */
const MOST_UNLIKE = 0.1;
const LIKE_IN = 0.85;
/** The area takes up at least this share of the chart. */
const LEAST_AREA = 0.06;
/** A line runs along an edge that is this much darker than the fill, in shares of the fill's own darkness, in half the columns. */
const OUTLINE = 0.35;
const NEAR_ROWS = 3;

/**
 * Reads the upper edge of an area that stands on the chart's bottom edge.
 * @param chart laid flat, shadow not yet evened out: that takes an area for paper
 * @returns null where there is no such area, or a line runs along its edge, which is then read instead
 */
export function filledArea(chart: FlatChart, edges: Edges): FoundLine | null {
  const { left, right } = edges;
  let fill: Fill | null = null;
  for (const plane of [chart.red, chart.green, chart.blue]) {
    const seen = fillOf(chart, plane, edges);
    if (seen && seen.light < (fill?.light ?? MOST_LIGHT)) fill = seen;
  }
  if (!fill) return null;
  const across = right - left + 1;
  const row = new Float64Array(chart.columns).fill(Number.NaN);
  const likeness = new Float64Array(chart.columns);
  const state = new Uint8Array(chart.columns);
  let like = 0;
  let outlined = 0;
  let area = 0;
  for (let x = left; x <= right; x++) {
    const edge = edgeOf(chart, fill, edges, x);
    area += edges.bottom - edge.row;
    if (edge.outlined) outlined++;
    likeness[x] = 1 - edge.unlike / (2 * MOST_UNLIKE);
    if (edge.unlike > MOST_UNLIKE || Math.min(x - left, right - x) < FRAME_COLUMNS) continue;
    like++;
    row[x] = edge.row;
    state[x] = READ;
  }
  if (like < LIKE_IN * across || 2 * outlined > across) return null;
  if (area < LEAST_AREA * across * (edges.bottom - edges.top)) return null;
  const darkness = PAPER * (1 - fill.light);
  return {
    line: { row, top: row, bottom: row, likeness, state, penWidth: 1 },
    pen: { colour: [darkness, darkness, darkness], strength: new Float64Array(chart.columns).fill(1) },
    coverage: like / across,
    score: like / across,
  };
}

/** One channel in which an area is darkest: the paper's brightness by block of columns, and how much of it the fill leaves. */
interface Fill {
  plane: Uint8Array;
  paper: Float64Array;
  light: number;
}

function fillOf({ columns }: FlatChart, plane: Uint8Array, { left, right, top, bottom }: Edges): Fill | null {
  const blocks = Math.ceil((right - left + 1) / BLOCK);
  const paper = new Float64Array(blocks);
  const feet: number[] = [];
  const foot = Math.max(2, Math.round(FOOT * (bottom - top)));
  const counts = new Uint32Array(256);
  const point = (block: number, from: number, to: number, share: number) => {
    counts.fill(0);
    let total = 0;
    const end = Math.min(right, left + (block + 1) * BLOCK - 1);
    for (let y = from; y <= to; y += 2) {
      for (let x = left + block * BLOCK; x <= end; x += 2) {
        counts[plane[y * columns + x]!]!++;
        total++;
      }
    }
    return pointOf(counts, share * total);
  };
  for (let block = 0; block < blocks; block++) {
    paper[block] = point(block, top + FRAME_ROWS, bottom - FRAME_ROWS, PAPER_POINT);
    feet.push(
      point(block, bottom - FRAME_ROWS - foot, bottom - FRAME_ROWS, 0.5) / Math.max(1, paper[block]!),
    );
  }
  feet.sort((p, q) => p - q);
  const light = feet[Math.floor(STANDS_IN * (blocks - 1))]!;
  const over = (values: Float64Array, of: (...values: number[]) => number) =>
    values.map((_, i) => of(...values.subarray(Math.max(0, i - FILLED_BLOCKS), i + FILLED_BLOCKS + 1)));
  // A block that the area fills has the paper of those beside it (a grey closing).
  const closed = over(over(paper, Math.max), Math.min);
  const bright = paper.map((value, i) => (value > ((1 + light) / 2) * closed[i]! ? value : closed[i]!));
  return { plane, paper: bright, light };
}

/** Where a column goes from paper to fill, and the share of its places that are like neither. */
function edgeOf(
  { columns }: FlatChart,
  { plane, paper, light }: Fill,
  { left, top, bottom }: Edges,
  x: number,
): { row: number; unlike: number; outlined: boolean } {
  const bright = paper[Math.floor((x - left) / BLOCK)]!;
  // 1 on paper, 0 on fill, below 0 on ink darker than it.
  const share = (y: number) => (plane[y * columns + x]! / bright - light) / (1 - light);
  const part = (y: number) => Math.min(1, Math.max(0, share(y)));
  const from = top + FRAME_ROWS;
  const to = bottom - FRAME_ROWS;
  let cost = 0;
  for (let y = from; y <= to; y++) cost += part(y);
  let least = cost;
  let edge = from;
  for (let y = from; y <= to; y++) {
    cost += 1 - 2 * part(y);
    if (cost >= least) continue;
    least = cost;
    edge = y + 1;
  }
  const a = Math.max(from, edge - NEAR_ROWS);
  const b = Math.min(to, edge + NEAR_ROWS - 1);
  let above = 0;
  let darkest = 0;
  for (let y = a; y <= b; y++) {
    above += part(y);
    darkest = Math.min(darkest, share(y));
  }
  // Paper down to the frame: the area is lower than can be seen above it.
  const row = edge > to ? bottom : a - 0.5 + above;
  return { row, unlike: least / (to - from + 1), outlined: darkest < -OUTLINE };
}
