import { describe, expect, it } from 'vitest';
import { PAPER } from '../paper.ts';
import type { FlatChart } from '../warp.ts';
import { GLYPH_HIGH, GLYPH_WIDE, GLYPHS } from './glyphs.ts';
import { printedNumbers } from './words.ts';

const TIMES = 2;

/** Writes digits of one typeface (by its place among the glyphs) on bare paper. */
function paperWith(words: { text: string; x: number; y: number }[], face: number): FlatChart {
  const columns = 260;
  const rows = 60;
  const plane = new Uint8Array(columns * rows).fill(PAPER);
  const faces = GLYPHS.length / 10;
  for (const { text, x, y } of words) {
    [...text].forEach((digit, n) => {
      const cells = GLYPHS[Number(digit) * faces + face]![1];
      for (let j = 0; j < GLYPH_HIGH * TIMES; j++) {
        for (let i = 0; i < GLYPH_WIDE * TIMES; i++) {
          const grey = Number.parseInt(
            cells[Math.floor(j / TIMES) * GLYPH_WIDE + Math.floor(i / TIMES)]!,
            16,
          );
          plane[(y + j) * columns + x + n * (GLYPH_WIDE * TIMES + 3) + i] = PAPER * (1 - grey / 15);
        }
      }
    });
  }
  return { columns, rows, red: plane, green: plane, blue: plane };
}

describe('printed numbers', () => {
  it.each([0, 4, 7, 10])('are read in typeface %i', (face) => {
    const numbers = printedNumbers(
      paperWith(
        [
          { text: '360', x: 10, y: 15 },
          { text: '1479', x: 90, y: 15 },
          { text: '258', x: 190, y: 15 },
        ],
        face,
      ),
    );
    expect(numbers.map(({ value }) => value).sort((a, b) => a - b)).toEqual([258, 360, 1479]);
  });

  it('leaves out what has a decimal point or other signs in it', () => {
    const chart = paperWith([{ text: '25', x: 40, y: 15 }], 4);
    const dot = (x: number, y: number, size: number) => {
      for (let j = 0; j < size; j++)
        chart.red.fill(0, (y + j) * chart.columns + x, (y + j) * chart.columns + x + size);
    };
    expect(printedNumbers(chart)).toHaveLength(1);
    dot(78, 35, 3);
    expect(printedNumbers(chart)).toHaveLength(0);
  });

  it('reads nothing on bare paper or in a block of ink', () => {
    expect(printedNumbers(paperWith([], 0))).toEqual([]);
    const block = paperWith([], 0);
    for (let y = 20; y < 40; y++) block.red.fill(10, y * block.columns + 50, y * block.columns + 70);
    expect(printedNumbers(block)).toEqual([]);
  });
});
