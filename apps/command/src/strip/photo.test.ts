import { describe, expect, it } from 'vitest';
import { turned } from './photo.ts';

/** Where the pixel stored at a row and column is seen, in a picture seen `high` rows by `wide` columns (EXIF 2.3, tag 0x0112). */
const SEEN_AT: Record<number, (r: number, c: number, high: number, wide: number) => [number, number]> = {
  1: (r, c) => [r, c],
  2: (r, c, _, wide) => [r, wide - 1 - c],
  3: (r, c, high, wide) => [high - 1 - r, wide - 1 - c],
  4: (r, c, high) => [high - 1 - r, c],
  5: (r, c) => [c, r],
  6: (r, c, _, wide) => [c, wide - 1 - r],
  7: (r, c, high, wide) => [high - 1 - c, wide - 1 - r],
  8: (r, c, high) => [high - 1 - c, r],
};

describe('turned', () => {
  it.each(Object.keys(SEEN_AT).map(Number))(
    'shows a picture stored with orientation %i upright',
    (orientation) => {
      const [high, wide] = [3, 5];
      const [rows, columns] = orientation >= 5 ? [wide, high] : [high, wide];
      const rgba = new Uint8ClampedArray(4 * rows * columns);
      for (let r = 0; r < rows; r++) {
        for (let c = 0; c < columns; c++) {
          const [y, x] = SEEN_AT[orientation]!(r, c, high, wide);
          rgba.set([10 * y, 10 * x, orientation, 255], 4 * (r * columns + c));
        }
      }
      const upright = turned({ widthPx: columns, heightPx: rows, rgba }, orientation);
      expect([upright.heightPx, upright.widthPx]).toEqual([high, wide]);
      for (let y = 0; y < high; y++) {
        for (let x = 0; x < wide; x++) {
          const at = 4 * (y * wide + x);
          expect([...upright.rgba.subarray(at, at + 4)]).toEqual([10 * y, 10 * x, orientation, 255]);
        }
      }
    },
  );
});
