/**
 * Projective maps and the warp against OpenCV 4.6.0 (Debian's python3-opencv): cv2.getPerspectiveTransform,
 * cv2.findHomography and cv2.warpPerspective. The values are in strip-opencv.json, made by strip-opencv.py beside it.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Homography, homographyFrom, project } from '../../packages/engine/src/strip/homography.ts';
import { layFlat } from '../../packages/engine/src/strip/warp.ts';

interface Fixture {
  maps: { from: Pair[]; to: Pair[]; matrix: number[]; points: Pair[]; mapped: Pair[] }[];
  many: { from: Pair[]; to: Pair[]; matrix: number[] };
  warp: Warp & { corners: Pair[] };
  steep: Warp & { matrix: number[] };
}
interface Warp {
  width: number;
  height: number;
  image: number[];
  columns: number;
  rows: number;
  warped: number[];
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
/** In noise neighbours differ by up to 255: their 64th of a pixel is up to 5 bytes, and 0.9 on the average. */
const NOISE_BYTES = 6;
const NOISE_MEAN_BYTES = 1;

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

describe('laid flat as cv2.warpPerspective does', () => {
  it('a smooth picture', () => {
    const { columns, rows, corners } = fixture.warp;
    const toPhoto = homographyFrom(
      [
        [0, 0],
        [columns - 1, 0],
        [columns - 1, rows - 1],
        [0, rows - 1],
      ],
      corners,
    )!;
    expect(differences(fixture.warp, toPhoto).worst).toBeLessThanOrEqual(WARP_BYTES);
  });

  it('noise in a window of a chart at a steep tilt', () => {
    const { worst, mean } = differences(fixture.steep, Float64Array.from(fixture.steep.matrix));
    expect(worst).toBeLessThanOrEqual(NOISE_BYTES);
    expect(mean).toBeLessThanOrEqual(NOISE_MEAN_BYTES);
  });
});

/** Our warp against theirs, greatest and mean difference in bytes. */
function differences({ width, height, image, columns, rows, warped }: Warp, toPhoto: Homography) {
  const rgba = new Uint8Array(4 * width * height).fill(255);
  for (let k = 0; k < width * height; k++) rgba.fill(image[k]!, 4 * k, 4 * k + 3);
  const flat = layFlat(
    { widthPx: width, heightPx: height, rgba },
    columns,
    rows,
    (column, row, out) => out.set(project(toPhoto, column, row)),
    1,
  );
  const planes = [flat.red, flat.green, flat.blue];
  const off = planes.flatMap((plane) => Array.from(plane, (value, k) => Math.abs(value - warped[k]!)));
  return { worst: Math.max(...off), mean: off.reduce((a, b) => a + b, 0) / off.length };
}
