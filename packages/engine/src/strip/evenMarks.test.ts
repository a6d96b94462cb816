import { expect, it } from 'vitest';
import { evenedColumns } from './evenMarks.ts';
import { PAPER } from './paper.ts';
import type { FlatChart } from './warp.ts';

const edges = { left: 10, right: 1010, top: 10, bottom: 110 };

/** Where a place of flat paper comes to lie when the middle third is folded away from the viewer. */
const folded = (share: number) => {
  const lengths = [0.36, 0.28, 0.36];
  const third = Math.min(2, Math.floor(3 * share));
  const before = lengths.slice(0, third).reduce((sum, length) => sum + length, 0);
  return edges.left + 1000 * (before + (3 * share - third) * lengths[third]!);
};
const marksAt = (count: number) => Array.from({ length: count + 1 }, (_, i) => folded(i / count));

function paper(ticks: readonly number[] = []): FlatChart {
  const [columns, rows] = [1021, 121];
  const grey = new Uint8Array(columns * rows).fill(PAPER);
  for (const tick of ticks) {
    for (let y = edges.bottom; y < rows; y++) grey[y * columns + Math.round(tick)] = 40;
  }
  return { columns, rows, red: grey, green: grey, blue: grey };
}

/** Greatest distance of columns as evened from where they belong, columns. */
function worst(even: Float64Array): number {
  let most = 0;
  for (let share = 0; share < 1; share += 0.01) {
    const x = Math.round(folded(share));
    const y = Math.round(folded(share + 0.01));
    const slope = (even[y]! - even[x]!) / (y - x);
    most = Math.max(most, Math.abs(even[x]! + slope * (folded(share) - x) - (edges.left + 1000 * share)));
  }
  return most;
}

it('undoes folds by grid lines, though some are missing and one is false', () => {
  const lines = marksAt(60).filter((_, i) => i % 13 !== 5);
  const even = evenedColumns(
    paper(),
    edges,
    [...lines, 333].sort((a, b) => a - b),
  )!;
  expect(worst(even)).toBeLessThan(2);
  expect(even[edges.left]).toBeCloseTo(edges.left, 9);
  expect(even[edges.right]).toBeCloseTo(edges.right, 9);
});

it('undoes folds by ticks below the chart where it has no grid', () => {
  const even = evenedColumns(paper(marksAt(30)), edges, [edges.left, edges.right])!;
  expect(worst(even)).toBeLessThan(3);
});

it('leaves a chart as it is whose marks are evenly spaced, too few, or at odd places', () => {
  const flat = Array.from({ length: 51 }, (_, i) => edges.left + 20 * i);
  expect(evenedColumns(paper(), edges, flat)).toBeNull();
  expect(evenedColumns(paper(), edges, marksAt(4))).toBeNull();
  const odd = Array.from({ length: 40 }, (_, i) => edges.left + ((i * i * 41) % 997)).sort((a, b) => a - b);
  expect(evenedColumns(paper(), edges, odd)).toBeNull();
});

it('takes a frame for no line of the grid it encloses', () => {
  // A grid line at each 50 of 290, and the frame at either end: flat paper.
  const lines = [0, 50, 100, 150, 200, 250, 290].map((mm) => edges.left + (1000 * mm) / 290);
  expect(evenedColumns(paper(), edges, lines)).toBeNull();
  const mirrored = lines.map((place) => edges.left + edges.right - place).reverse();
  expect(evenedColumns(paper(), edges, mirrored)).toBeNull();
});
