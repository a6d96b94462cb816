import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { homographyFrom, inverseHomography, project } from './homography.ts';

const square: [number, number][] = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];
const shift = fc.double({ min: -0.2, max: 0.2, noNaN: true });

describe('homographyFrom', () => {
  it('takes corners to corners, and its inverse takes them back', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(shift, shift), { minLength: 4, maxLength: 4 }),
        fc.double({ min: 10, max: 5000, noNaN: true }),
        (shifts, size) => {
          const to = square.map(([x, y], i): [number, number] => [
            size * (x + shifts[i]![0]),
            size * (y + shifts[i]![1]),
          ]);
          const map = homographyFrom(square, to)!;
          const back = inverseHomography(map);
          square.forEach(([x, y], i) => {
            const there = project(map, x, y);
            expect(Math.hypot(there[0] - to[i]![0], there[1] - to[i]![1])).toBeLessThan(1e-8 * size);
            const here = project(back, ...there);
            expect(Math.hypot(here[0] - x, here[1] - y)).toBeLessThan(1e-8);
          });
        },
      ),
    );
  });

  it('has no answer for too few pairs or points in a line', () => {
    expect(homographyFrom(square.slice(0, 3), square.slice(0, 3))).toBeNull();
    const line: [number, number][] = [
      [0, 0],
      [1, 1],
      [2, 2],
      [3, 3],
    ];
    expect(homographyFrom(line, square)).toBeNull();
  });
});
