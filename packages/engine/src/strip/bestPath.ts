/** The cheapest way across an image, exactly. */

export interface Path {
  /** First and last row the path visits in each column; it goes straight from one to the other. */
  first: Int32Array;
  last: Int32Array;
  /** Cost of the path. */
  cost: number;
}

const FROM_LEFT = 0;
const FROM_ABOVE = 1;
const FROM_BELOW = 2;

/**
 * The path of least cost from the first column to the last, that moves right, up and down by single pixels and never
 * left, and pays for each pixel it enters. Upright strokes thus cost as little as their ink is clear, and a leap over
 * paper costs its length. Dynamic programming (R. Bellman 1957) over columns; within a column the two sweeps of a
 * one-dimensional distance transform are exact.
 * @param levels a byte a pixel, column after column, `rows` a column
 * @param price cost of entering a pixel, by its byte; all above 0
 */
export function bestPath(levels: Uint8Array, columns: number, rows: number, price: Float64Array): Path {
  const came = new Uint8Array(columns * rows);
  const best = new Float64Array(rows);
  const cost = new Float64Array(rows);
  for (let x = 0; x < columns; x++) {
    const at = x * rows;
    for (let y = 0; y < rows; y++) {
      const c = price[levels[at + y]!]!;
      cost[y] = c;
      best[y]! += c;
    }
    for (let y = 1; y < rows; y++) {
      const through = best[y - 1]! + cost[y]!;
      if (through < best[y]!) {
        best[y] = through;
        came[at + y] = FROM_ABOVE;
      }
    }
    for (let y = rows - 2; y >= 0; y--) {
      const through = best[y + 1]! + cost[y]!;
      if (through < best[y]!) {
        best[y] = through;
        came[at + y] = FROM_BELOW;
      }
    }
  }
  let row = 0;
  for (let y = 1; y < rows; y++) if (best[y]! < best[row]!) row = y;
  const first = new Int32Array(columns);
  const last = new Int32Array(columns);
  const total = best[row]!;
  for (let x = columns - 1; x >= 0; x--) {
    last[x] = row;
    while (came[x * rows + row] !== FROM_LEFT) row += came[x * rows + row] === FROM_ABOVE ? -1 : 1;
    first[x] = row;
  }
  return { first, last, cost: total };
}
