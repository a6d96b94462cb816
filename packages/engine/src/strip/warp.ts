/** Laying a chart flat: the photo resampled on the chart's own rows and columns. */
import type { StripImage } from './types.ts';

/** Red, green and blue of the chart laid flat, a byte each, row after row. */
export interface FlatChart {
  columns: number;
  rows: number;
  red: Uint8Array;
  green: Uint8Array;
  blue: Uint8Array;
}

/** Where a place of the flat chart lies on the photo. Writes x to `out[0]`, y to `out[1]`. */
export type FlatToPhoto = (column: number, row: number, out: Float64Array) => void;

/** Rows between which places on the photo are joined by straight lines: the maps are smooth at this scale. */
const KNOT = 8;
const { imul } = Math;

/** Parts of a pixel that places are rounded to. */
const ONE = 256;

/**
 * Resamples the photo. Each place of the flat chart takes the mean of `fold` × `fold` bilinear samples spread over
 * the photo pixels it covers, so that shrinking averages rather than skips.
 * @param toPhoto smooth map; it is asked on a mesh of every eighth row and column and joined linearly between
 * @param fold how many photo pixels lie along one pixel of the flat chart, rounded: 1 when not shrunk
 */
export function layFlat(
  image: StripImage,
  columns: number,
  rows: number,
  toPhoto: FlatToPhoto,
  fold: number,
): FlatChart {
  const { widthPx, heightPx, rgba } = image;
  const size = columns * rows;
  const flat = {
    columns,
    rows,
    red: new Uint8Array(size),
    green: new Uint8Array(size),
    blue: new Uint8Array(size),
  };
  const knotsAcross = Math.ceil((columns - 1) / KNOT) + 1;
  const knotsDown = Math.ceil((rows - 1) / KNOT) + 1;
  const meshX = new Float64Array(knotsAcross * knotsDown);
  const meshY = new Float64Array(knotsAcross * knotsDown);
  const at = new Float64Array(2);
  for (let j = 0; j < knotsDown; j++) {
    for (let i = 0; i < knotsAcross; i++) {
      toPhoto(i * KNOT, j * KNOT, at);
      meshX[j * knotsAcross + i] = at[0]!;
      meshY[j * knotsAcross + i] = at[1]!;
    }
  }
  // Places in 256ths of a pixel: finer than the photo tells, and whole numbers are quick.
  const lastX = ONE * (widthPx - 1);
  const lastY = ONE * (heightPx - 1);
  const mostX0 = Math.max(0, widthPx - 2);
  const mostY0 = Math.max(0, heightPx - 2);
  const across = widthPx > 1 ? 4 : 0;
  const down = heightPx > 1 ? 4 * widthPx : 0;
  const share = 1 / (fold * fold * ONE * ONE);
  const sums = new Int32Array(3 * columns);
  for (let row = 0; row < rows; row++) {
    const j = Math.min(knotsDown - 2, Math.floor(row / KNOT));
    sums.fill(0);
    for (let sy = 0; sy < fold; sy++) {
      const v = (row + (sy + 0.5) / fold - 0.5) / KNOT - j;
      for (let i = 0; i < knotsAcross - 1; i++) {
        // The cell's corners: places at this row move linearly along the cell.
        const from = i * KNOT;
        const to = Math.min(columns, from + KNOT);
        const knot = j * knotsAcross + i;
        const leftX = meshX[knot]! + v * (meshX[knot + knotsAcross]! - meshX[knot]!);
        const leftY = meshY[knot]! + v * (meshY[knot + knotsAcross]! - meshY[knot]!);
        const rightX = meshX[knot + 1]! + v * (meshX[knot + knotsAcross + 1]! - meshX[knot + 1]!);
        const rightY = meshY[knot + 1]! + v * (meshY[knot + knotsAcross + 1]! - meshY[knot + 1]!);
        const stepX = (ONE * (rightX - leftX)) / (KNOT * fold);
        const stepY = (ONE * (rightY - leftY)) / (KNOT * fold);
        let x = ONE * leftX + (0.5 - 0.5 * fold) * stepX;
        let y = ONE * leftY + (0.5 - 0.5 * fold) * stepY;
        for (let column = from; column < to; column++) {
          let red = 0;
          let green = 0;
          let blue = 0;
          for (let sx = 0; sx < fold; sx++) {
            const xi = x <= 0 ? 0 : x >= lastX ? lastX : (x + 0.5) | 0;
            const yi = y <= 0 ? 0 : y >= lastY ? lastY : (y + 0.5) | 0;
            x += stepX;
            y += stepY;
            const x0 = Math.min(xi >> 8, mostX0);
            const y0 = Math.min(yi >> 8, mostY0);
            const fx = (xi - (x0 << 8)) | 0;
            const fy = (yi - (y0 << 8)) | 0;
            // Whole numbers all the way, which is told to the compiler: it checks for nothing else then.
            const d = imul(fx, fy);
            const c = (imul(ONE, fy) - d) | 0;
            const b = (imul(ONE, fx) - d) | 0;
            const a = (ONE * ONE - b - c - d) | 0;
            const p = (imul(y0, widthPx) + x0) << 2;
            const q = (p + across) | 0;
            const r = (p + down) | 0;
            const s = (r + across) | 0;
            red = (red + imul(a, rgba[p]!) + imul(b, rgba[q]!) + imul(c, rgba[r]!) + imul(d, rgba[s]!)) | 0;
            green =
              (green +
                imul(a, rgba[p + 1]!) +
                imul(b, rgba[q + 1]!) +
                imul(c, rgba[r + 1]!) +
                imul(d, rgba[s + 1]!)) |
              0;
            blue =
              (blue +
                imul(a, rgba[p + 2]!) +
                imul(b, rgba[q + 2]!) +
                imul(c, rgba[r + 2]!) +
                imul(d, rgba[s + 2]!)) |
              0;
          }
          sums[3 * column]! += red;
          sums[3 * column + 1]! += green;
          sums[3 * column + 2]! += blue;
        }
      }
    }
    const at = row * columns;
    for (let column = 0; column < columns; column++) {
      flat.red[at + column] = sums[3 * column]! * share + 0.5;
      flat.green[at + column] = sums[3 * column + 1]! * share + 0.5;
      flat.blue[at + column] = sums[3 * column + 2]! * share + 0.5;
    }
  }
  return flat;
}
