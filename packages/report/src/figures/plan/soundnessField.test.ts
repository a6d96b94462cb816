import type { SoundnessPicture } from '@standfast/engine';
import { expect, it } from 'vitest';
import { soundnessField } from './soundnessField.ts';

/** Sound in the middle, nothing round it. */
function core(centreMm: [number, number]): SoundnessPicture {
  const azimuthsDeg = Array.from({ length: 36 }, (_, i) => i * 10);
  const shells = [0.1, 0.3, 0.5, 0.7, 0.9];
  return {
    centreMm,
    azimuthsDeg,
    shells,
    cambiumMm: azimuthsDeg.map(() => 400),
    mean: azimuthsDeg.flatMap(() => [1, 1, 0, 0, 0]),
    sd: azimuthsDeg.flatMap(() => [0, 0, 0, 0, 0]),
  };
}

/** Middle of everything filled with contours, px. */
function middle(picture: SoundnessPicture): [number, number] {
  const map = { pxPerMm: 1, centre: [500, 500] as const };
  const marks = JSON.stringify(
    soundnessField(picture, map, [
      [0, 0],
      [1000, 0],
      [1000, 1000],
      [0, 1000],
    ]),
  );
  const paths = [...marks.matchAll(/"d":"([^"]+)"/g)].map((found) => found[1]!).slice(1);
  const numbers = paths
    .join(' ')
    .match(/-?\d+(\.\d+)?/g)!
    .map(Number);
  const mid = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return [mid(numbers.filter((_, i) => i % 2 === 0)), mid(numbers.filter((_, i) => i % 2 === 1))];
}

it('draws the field about the centre of the wood, not the origin of the outline', () => {
  const [x0, y0] = middle(core([0, 0]));
  const [x1, y1] = middle(core([60, 40]));
  // Contours stand on a grid of about 8 mm.
  expect(Math.abs(x1 - x0 - 60)).toBeLessThan(8);
  expect(Math.abs(y1 - y0 + 40)).toBeLessThan(8);
});
