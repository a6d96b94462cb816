/**
 * Projective maps and the warp against OpenCV 4.6.0 (Debian's python3-opencv): cv2.getPerspectiveTransform,
 * cv2.findHomography and cv2.warpPerspective. The values are in strip-opencv.json, made by strip-opencv.py beside it.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { homographyFrom, project } from '../../packages/engine/src/strip/homography.ts';
import { layFlat } from '../../packages/engine/src/strip/warp.ts';

interface Fixture {
  maps: { from: Pair[]; to: Pair[]; matrix: number[]; points: Pair[]; mapped: Pair[] }[];
  many: { from: Pair[]; to: Pair[]; matrix: number[] };
  warp: {
    width: number;
    height: number;
    image: number[];
    corners: Pair[];
    columns: number;
    rows: number;
    warped: number[];
  };
}
type Pair = [number, number];

const fixture: Fixture = JSON.parse(readFileSync(new URL('./strip-opencv.json', import.meta.url), 'utf8'));

/** OpenCV solves without normalising: its own maps miss their four corners by up to 5e-5 px; ours by rounding only. */
const PLACE_PX = 1e-4;
const ROUNDING_PX = 1e-9;
/** OpenCV refines many pairs by Levenberg-Marquardt on places, ours is algebraic: a part of the noise of 0.3 px. */
const FITTED_PX = 0.1;
/** OpenCV's warp samples at steps of 1/32 pixel and rounds: the steepest slope in the image is 13 a pixel. */
const WARP_BYTES = 1.5;

describe('projective maps against cv2', () => {
  it.each(fixture.maps.map((map, i) => [i, map] as const))('four corners, map %i', (_, map) => {
    const ours = homographyFrom(map.from, map.to)!;
    map.points.forEach(([x, y], k) => {
      const [u, v] = project(ours, x, y);
      expect(Math.abs(u - map.mapped[k]![0])).toBeLessThan(PLACE_PX);
      expect(Math.abs(v - map.mapped[k]![1])).toBeLessThan(PLACE_PX);
    });
    map.from.forEach(([x, y], k) => {
      const [u, v] = project(ours, x, y);
      expect(Math.hypot(u - map.to[k]![0], v - map.to[k]![1])).toBeLessThan(ROUNDING_PX);
    });
  });

  it('twenty noisy pairs', () => {
    const { from, to, matrix } = fixture.many;
    const ours = homographyFrom(from, to)!;
    const theirs = Float64Array.from(matrix);
    for (const [x, y] of from) {
      const [u, v] = project(ours, x, y);
      const [p, q] = project(theirs, x, y);
      expect(Math.hypot(u - p, v - q)).toBeLessThan(FITTED_PX);
    }
  });
});

it('lays flat as cv2.warpPerspective does', () => {
  const { width, height, image, corners, columns, rows, warped } = fixture.warp;
  const rgba = new Uint8Array(4 * width * height).fill(255);
  for (let k = 0; k < width * height; k++) rgba.fill(image[k]!, 4 * k, 4 * k + 3);
  const toPhoto = homographyFrom(
    [
      [0, 0],
      [columns - 1, 0],
      [columns - 1, rows - 1],
      [0, rows - 1],
    ],
    corners,
  )!;
  const flat = layFlat(
    { widthPx: width, heightPx: height, rgba },
    columns,
    rows,
    (column, row, out) => out.set(project(toPhoto, column, row)),
    1,
  );
  let worst = 0;
  for (const plane of [flat.red, flat.green, flat.blue]) {
    plane.forEach((value, k) => {
      worst = Math.max(worst, Math.abs(value - warped[k]!));
    });
  }
  expect(worst).toBeLessThanOrEqual(WARP_BYTES);
});
