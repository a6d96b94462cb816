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
  const lastX = widthPx - 1;
  const lastY = heightPx - 1;
  const share = 1 / (fold * fold);
  for (let row = 0; row < rows; row++) {
    const j = Math.min(knotsDown - 2, Math.floor(row / KNOT));
    for (let i = 0; i < knotsAcross - 1; i++) {
      // The cell's corners: places at this row move linearly along the cell.
      const from = i * KNOT;
      const to = Math.min(columns, from + KNOT);
      const knot = Math.max(0, j) * knotsAcross + i;
      for (let column = from; column < to; column++) {
        let red = 0;
        let green = 0;
        let blue = 0;
        for (let sy = 0; sy < fold; sy++) {
          const v = (row + (sy + 0.5) / fold - 0.5) / KNOT - j;
          const leftX = meshX[knot]! + v * (meshX[knot + knotsAcross]! - meshX[knot]!);
          const leftY = meshY[knot]! + v * (meshY[knot + knotsAcross]! - meshY[knot]!);
          const rightX = meshX[knot + 1]! + v * (meshX[knot + knotsAcross + 1]! - meshX[knot + 1]!);
          const rightY = meshY[knot + 1]! + v * (meshY[knot + knotsAcross + 1]! - meshY[knot + 1]!);
          for (let sx = 0; sx < fold; sx++) {
            const u = (column + (sx + 0.5) / fold - 0.5 - from) / KNOT;
            let x = leftX + u * (rightX - leftX);
            let y = leftY + u * (rightY - leftY);
            x = x < 0 ? 0 : Math.min(x, lastX);
            y = y < 0 ? 0 : Math.min(y, lastY);
            const x0 = x | 0;
            const y0 = y | 0;
            const fx = x - x0;
            const fy = y - y0;
            const p = 4 * (y0 * widthPx + x0);
            const across = x0 < lastX ? 4 : 0;
            const down = y0 < lastY ? 4 * widthPx : 0;
            const a = (1 - fx) * (1 - fy);
            const b = fx * (1 - fy);
            const c = (1 - fx) * fy;
            const d = fx * fy;
            red += a * rgba[p]! + b * rgba[p + across]! + c * rgba[p + down]! + d * rgba[p + across + down]!;
            green +=
              a * rgba[p + 1]! +
              b * rgba[p + across + 1]! +
              c * rgba[p + down + 1]! +
              d * rgba[p + across + down + 1]!;
            blue +=
              a * rgba[p + 2]! +
              b * rgba[p + across + 2]! +
              c * rgba[p + down + 2]! +
              d * rgba[p + across + down + 2]!;
          }
        }
        const k = row * columns + column;
        flat.red[k] = red * share + 0.5;
        flat.green[k] = green * share + 0.5;
        flat.blue[k] = blue * share + 0.5;
      }
    }
  }
  return flat;
}
