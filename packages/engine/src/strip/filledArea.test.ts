import { expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { filledArea } from './filledArea.ts';
import { readStrip } from './readStrip.ts';
import type { CornersPx } from './types.ts';
import type { FlatChart } from './warp.ts';

const [columns, rows] = [421, 221];
const edges = { left: 10, right: 410, top: 10, bottom: 210 };
/** Row of the curve: a hill on a plain. */
const curve = (x: number) => 170 - 100 * Math.exp(-(((x - 210) / 60) ** 2));
const FILL = 120;
const PAPER = 220;

/** Paper in a shadow that deepens to the right, with what `at` puts on it. */
function chart(at: (x: number, y: number) => number): FlatChart {
  const plane = new Uint8Array(columns * rows);
  for (let y = 0; y < rows; y++) {
    for (let x = 0; x < columns; x++) {
      const framed =
        Math.min(Math.abs(x - edges.left), Math.abs(x - edges.right)) < 1.5 ||
        Math.min(Math.abs(y - edges.top), Math.abs(y - edges.bottom)) < 1.5;
      plane[y * columns + x] = (framed ? 40 : at(x, y)) * (1 - (0.3 * x) / columns);
    }
  }
  return { columns, rows, red: plane, green: plane, blue: plane };
}
const below = (x: number, y: number) => Math.min(1, Math.max(0, y + 0.5 - curve(x)));
const area = (x: number, y: number) => PAPER + (FILL - PAPER) * below(x, y);

it('reads the upper edge of a filled area, rules drawn over it or not', () => {
  for (const rules of [false, true]) {
    const found = filledArea(
      chart((x, y) => (rules && (x % 40 === 0 || y % 30 === 0) ? 100 : area(x, y))),
      edges,
    )!;
    let worst = 0;
    for (let x = edges.left + 5; x < edges.right - 5; x++) {
      if (rules && x % 40 === 0) continue;
      worst = Math.max(worst, Math.abs(found.line.row[x]! - curve(x)));
    }
    expect(worst).toBeLessThan(rules ? 1.5 : 0.6);
  }
});

it('leaves a line on paper, an area with a line along it, and paper filled all over to others', () => {
  const line = (x: number, y: number) => (Math.abs(y - curve(x)) < 2 ? 60 : PAPER);
  expect(filledArea(chart(line), edges)).toBeNull();
  expect(
    filledArea(
      chart((x, y) => Math.min(line(x, y), area(x, y))),
      edges,
    ),
  ).toBeNull();
  expect(
    filledArea(
      chart(() => FILL),
      edges,
    ),
  ).toBeNull();
});

it.each([
  ['plain', () => 0],
  ['grainy', (k: number) => ((k * 7919) % 13) - 6],
])('no line is read on a %s band of one colour', (_, grain) => {
  const [widthPx, heightPx] = [600, 200];
  const rgba = new Uint8ClampedArray(4 * widthPx * heightPx).fill(255);
  for (let k = 0; k < widthPx * heightPx; k++) {
    const [x, y] = [k % widthPx, Math.floor(k / widthPx)];
    const within = x >= 20 && x <= 580 && y >= 15 && y <= 185;
    const inside = x > 21 && x < 579 && y > 16 && y < 184;
    const [red, green, blue] = inside ? [190, 160, 90] : within ? [40, 40, 40] : [240, 240, 240];
    rgba.set([red! + grain(k), green! + grain(k), blue! + grain(k)], 4 * k);
  }
  const cornersPx: CornersPx = [
    [20, 15],
    [580, 15],
    [580, 185],
    [20, 185],
  ];
  const chart = { cornersPx, depthMm: [0, 300], resistance: [0, 100] } as const;
  expect(() => readStrip({ widthPx, heightPx, rgba }, chart)).toThrow(InputFault);
});
