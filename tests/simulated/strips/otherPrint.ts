/** What else a sheet bears besides its chart: lines of words, ruled tables, boxes to fill in, bands of colour. Seeded. */
import type { Random } from '../../../packages/engine/src/random.ts';
import { type Colour, drawStroke, drawText, fillBox, type Sheet } from './canvas.ts';

export interface OtherPrint {
  kind: 'words' | 'table' | 'boxes' | 'band' | 'bracket';
  side: 'above' | 'below';
  /** Colour of its lines and letters. */
  colour: Colour;
  /** From where to where, shares of the chart's width. */
  span: readonly [number, number];
  /** Rows of words or of a table, parts of a row of boxes or of a band. */
  parts: number;
  /** Height of a row, pixels of the sheet. */
  rowPx: number;
  /** Colours a band is filled with, in turn. */
  fills?: readonly Colour[];
}

const GAP_PX = 14;
const LETTERS = '0123456789AcehmrT% ';

/** Height it takes up, with the gap below it, pixels of the sheet. */
export function heightOf({ kind, parts, rowPx }: OtherPrint): number {
  return GAP_PX + (kind === 'words' || kind === 'table' ? parts : 1) * rowPx;
}

/** Prints it from row `top` down, beside a chart between two columns. */
export function printOther(
  sheet: Sheet,
  { kind, colour, span, parts, rowPx, fills = [] }: OtherPrint,
  chartLeft: number,
  chartRight: number,
  top: number,
  random: Random,
): void {
  const across = chartRight - chartLeft;
  const left = chartLeft + span[0] * across;
  const right = chartLeft + span[1] * across;
  const letter = 0.5 * rowPx;
  const words = (count: number) =>
    Array.from({ length: count }, () => LETTERS[Math.floor(random.uniform() * LETTERS.length)]).join('');
  const line = (x0: number, y0: number, x1: number, y1: number, width = 1.5) =>
    drawStroke(sheet, { path: [x0, y0, x1, y1], width, colour });
  const bottom = top + rowPx;
  if (kind === 'words') {
    for (let row = 0; row < parts; row++) {
      const share = 0.4 + 0.6 * random.uniform();
      const count = Math.floor((share * (right - left)) / (0.9 * letter));
      drawText(sheet, words(count), left, top + row * rowPx + 0.2 * rowPx, letter, colour);
    }
  } else if (kind === 'table') {
    const columns = [0, 0.18, 0.5, 0.72, 1];
    for (let row = 0; row <= parts; row++) line(left, top + row * rowPx, right, top + row * rowPx);
    for (const share of columns) {
      const x = left + share * (right - left);
      line(x, top, x, top + parts * rowPx);
    }
    for (let row = 0; row < parts; row++) {
      for (const share of columns.slice(0, -1)) {
        const x = left + share * (right - left) + 5;
        drawText(sheet, words(7), x, top + row * rowPx + 0.25 * rowPx, letter, colour);
      }
    }
  } else if (kind === 'boxes') {
    const each = (right - left) / parts;
    for (let i = 0; i < parts; i++) {
      const [a, b] = [left + i * each, left + (i + 0.8) * each];
      drawStroke(sheet, { path: [a, top, b, top, b, bottom, a, bottom, a, top], width: 1.5, colour });
      drawText(sheet, words(4), a + 5, top + 0.25 * rowPx, letter, colour);
    }
  } else if (kind === 'band') {
    let a = left;
    for (let i = 0; i < parts; i++) {
      const b = i === parts - 1 ? right : a + ((right - a) * (0.5 + random.uniform())) / (parts - i);
      const fill = fills[i % fills.length];
      if (fill) fillBox(sheet, [a, top, b, bottom], fill);
      drawStroke(sheet, { path: [a, top, b, top, b, bottom, a, bottom, a, top], width: 1.5, colour });
      const count = Math.min(9, Math.floor((b - a - 10) / (0.9 * letter)));
      if (count > 1) drawText(sheet, words(count), (a + b) / 2, top + 0.25 * rowPx, letter, colour, 'middle');
      a = b;
    }
  } else {
    // A measure from one side to the other: ends, and a line with a gap for its words.
    const middle = (left + right) / 2;
    const y = (top + bottom) / 2;
    for (const x of [left, right]) line(x, top, x, bottom);
    line(left, y, middle - 60, y);
    line(middle + 60, y, right, y);
    drawText(sheet, words(8), middle, y - letter / 2, letter, colour, 'middle');
  }
}
