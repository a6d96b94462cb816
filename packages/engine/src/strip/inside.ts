/** What lies inside a figure: what tells a chart from a table, a box with a word in it or a band of colour. */
import { likeliestLine } from './findLines.ts';
import { homographyFrom, project } from './homography.ts';
import { inkOf } from './ink.ts';
import { evenOutPaper, pointOf } from './paper.ts';
import { GAP, type PenLine } from './penLine.ts';
import { printedLines } from './printedLines.ts';
import { standsUpright } from './standsUpright.ts';
import type { CornersPx, StripImage } from './types.ts';
import { type FlatChart, layFlat } from './warp.ts';

/** The figure is looked at on so many columns and at most so many rows, just inside its sides. */
const COLUMNS = 400;
const MOST_ROWS = 180;
const INSET = 0.025;
const LEAST_INSET = 1.5;
/** Samples taken each way of the photo pixels under a place. */
const MOST_FOLD = 3;
/** A line as clear as a pen's along this share of the figure is one that runs through it: a trace may end well before its chart does. */
const ENOUGH = 0.5;
/** Pieces of a line shorter than this share of the figure, breaks of so many columns let pass, are no pen's. */
const LEAST_RUN = 0.12;
const MOST_BREAK = 2;
/** A figure without a line is worth this share of one with a line. */
const WITHOUT_LINE = 0.45;
/** So is one whose ground is printed over, and that has no grid: darker than the paper around it by this share. */
const FILLED = 0.8;
const DARKER = 0.05;
const LEAST_GRID = 2;
/** The paper around it is looked at so far from its sides, share of its shorter side, at so many places a side. */
const BESIDE = 0.05;
const BESIDE_PLACES = 40;

/** How like a chart's a figure's inside is, 0 to 1: paper or a grid, and a pen's line along its longer side. */
export function chartInside(image: StripImage, corners: CornersPx): number {
  const side = (i: number, j: number) =>
    Math.hypot(corners[j]![0] - corners[i]![0], corners[j]![1] - corners[i]![1]);
  const [wide, high] = [side(0, 1) + side(3, 2), side(0, 3) + side(1, 2)];
  const [a, b, c, d] = corners;
  const along: CornersPx = standsUpright(corners) ? [d, a, b, c] : corners;
  const longPx = along === corners ? wide / 2 : high / 2;
  const shortPx = along === corners ? high / 2 : wide / 2;
  const columns = Math.min(COLUMNS, Math.max(16, Math.round(longPx)));
  const rows = Math.min(MOST_ROWS, Math.max(16, Math.round((columns * shortPx) / longPx)));
  // The sides themselves are left out: what keeps to them is the frame.
  const inset = Math.max(LEAST_INSET, INSET * Math.min(columns, rows));
  const toPhoto = homographyFrom(
    [
      [-inset, -inset],
      [columns - 1 + inset, -inset],
      [columns - 1 + inset, rows - 1 + inset],
      [-inset, rows - 1 + inset],
    ],
    along,
  );
  if (!toPhoto) return 0;
  const place = (column: number, row: number) => project(toPhoto, column, row);
  const fold = Math.max(1, Math.min(MOST_FOLD, Math.round(longPx / columns)));
  const flat = layFlat(image, columns, rows, (column, row, out) => out.set(place(column, row)), fold);
  const darker = groundOf(flat) < (1 - DARKER) * paperAround(image, columns, rows, inset, place);
  if (evenOutPaper(flat).tooDark) return 0;
  const level = printedLines(flat, false);
  const upright = printedLines(flat, true);
  const grid = level.middles.length + upright.middles.length >= LEAST_GRID;
  const found = likeliestLine(inkOf(flat, level, upright), {
    left: 0,
    right: columns - 1,
    top: 0,
    bottom: rows - 1,
  });
  const line = found ? Math.min(1, readOf(found.line, columns) / ENOUGH) : 0;
  return (WITHOUT_LINE + (1 - WITHOUT_LINE) * line) * (darker && !grid ? FILLED : 1);
}

/** Share of the columns along which a line is read, weighed by how like the pen it is, in pieces long enough to be a pen's. */
function readOf({ state, likeness }: PenLine, columns: number): number {
  let sum = 0;
  let piece = 0;
  let from = 0;
  let last = Number.NEGATIVE_INFINITY;
  const end = () => {
    if (last - from + 1 >= LEAST_RUN * columns) sum += piece;
    piece = 0;
  };
  for (let x = 0; x < columns; x++) {
    if (state[x] === GAP) continue;
    if (x - last > MOST_BREAK + 1) {
      end();
      from = x;
    }
    piece += likeness[x]!;
    last = x;
  }
  end();
  return sum / columns;
}

/** Brightness of a figure's ground: the middle of what lies in it. */
function groundOf({ red, green, blue }: FlatChart): number {
  const counts = new Uint32Array(256);
  for (let k = 0; k < red.length; k++) counts[Math.min(red[k]!, green[k]!, blue[k]!)]!++;
  return pointOf(counts, red.length / 2);
}

/** Brightness of the paper around a figure: the middle of what lies a little beyond its sides. */
function paperAround(
  { widthPx, heightPx, rgba }: StripImage,
  columns: number,
  rows: number,
  inset: number,
  place: (column: number, row: number) => readonly [number, number],
): number {
  const counts = new Uint32Array(256);
  let total = 0;
  const beside = inset + BESIDE * Math.min(columns, rows);
  for (let i = 0; i < BESIDE_PLACES; i++) {
    const share = (i + 0.5) / BESIDE_PLACES;
    for (const [column, row] of [
      [share * columns, -beside],
      [share * columns, rows - 1 + beside],
      [-beside, share * rows],
      [columns - 1 + beside, share * rows],
    ] as const) {
      const [x, y] = place(column, row).map(Math.round) as [number, number];
      if (x < 0 || y < 0 || x >= widthPx || y >= heightPx) continue;
      const p = 4 * (y * widthPx + x);
      counts[Math.min(rgba[p]!, rgba[p + 1]!, rgba[p + 2]!)]!++;
      total++;
    }
  }
  return total ? pointOf(counts, total / 2) : 0;
}
