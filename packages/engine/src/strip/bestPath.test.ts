import fc from 'fast-check';
import { expect, it } from 'vitest';
import { bestPath } from './bestPath.ts';

/** Plain twin: Dijkstra over pixels by repeated relaxation, moves right, up and down. */
function slowCost(levels: Uint8Array, columns: number, rows: number, price: Float64Array): number {
  const cost = new Float64Array(columns * rows).fill(Number.POSITIVE_INFINITY);
  for (let y = 0; y < rows; y++) cost[y] = price[levels[y]!]!;
  for (let changed = true; changed; ) {
    changed = false;
    for (let x = 0; x < columns; x++) {
      for (let y = 0; y < rows; y++) {
        const k = x * rows + y;
        const enter = price[levels[k]!]!;
        const ways = [
          x > 0 ? cost[k - rows]! : Number.POSITIVE_INFINITY,
          y > 0 ? cost[k - 1]! : Number.POSITIVE_INFINITY,
          y < rows - 1 ? cost[k + 1]! : Number.POSITIVE_INFINITY,
        ];
        const least = Math.min(...ways) + enter;
        if (least < cost[k]! - 1e-12) {
          cost[k] = least;
          changed = true;
        }
      }
    }
  }
  return Math.min(...cost.slice((columns - 1) * rows));
}

const price = Float64Array.from({ length: 256 }, (_, value) => 0.01 + (1 - value / 255) ** 2);

it('costs what the slow twin costs, and the path it gives costs that', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 9 }).chain((columns) =>
        fc.integer({ min: 1, max: 9 }).chain((rows) =>
          fc.record({
            columns: fc.constant(columns),
            rows: fc.constant(rows),
            levels: fc.uint8Array({ minLength: columns * rows, maxLength: columns * rows }),
          }),
        ),
      ),
      ({ columns, rows, levels }) => {
        const { first, last, cost } = bestPath(levels, columns, rows, price);
        expect(cost).toBeCloseTo(slowCost(levels, columns, rows, price), 9);
        let walked = 0;
        for (let x = 0; x < columns; x++) {
          if (x > 0) expect(first[x]).toBe(last[x - 1]);
          const step = Math.sign(last[x]! - first[x]!) || 1;
          for (let y = first[x]!; y !== last[x]! + step; y += step) walked += price[levels[x * rows + y]!]!;
        }
        expect(walked).toBeCloseTo(cost, 9);
      },
    ),
  );
});

it('climbs a spike of ink rather than cut across paper at its foot', () => {
  const columns = 30;
  const rows = 40;
  const levels = new Uint8Array(columns * rows);
  const ink = (x: number, y: number) => {
    levels[x * rows + y] = 255;
  };
  for (let x = 0; x < columns; x++) if (x < 12 || x > 18) ink(x, 35);
  for (let y = 5; y <= 35; y++) {
    ink(12, y);
    ink(18, y);
  }
  for (let x = 12; x <= 18; x++) ink(x, 5);
  const { first, last } = bestPath(levels, columns, rows, price);
  expect([first[15], last[15]]).toEqual([5, 5]);
});
