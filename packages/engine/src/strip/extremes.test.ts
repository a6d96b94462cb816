import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { greatestAround, leastAround } from './extremes.ts';

const mirrored = (i: number, n: number) => {
  const k = i < 0 ? -i : i >= n ? 2 * (n - 1) - i : i;
  return Math.min(n - 1, Math.max(0, k));
};

/** The plain way: every place of the window looked at. */
function plainly(plane: Uint8Array, length: number, half: number, beyond: string, choose: typeof Math.max) {
  const lines = plane.length / length;
  return Uint8Array.from(plane, (_, k) => {
    const values: number[] = [];
    for (let j = -half; j <= half; j++) {
      for (let i = -half; i <= half; i++) {
        const x = (k % length) + i;
        const y = Math.floor(k / length) + j;
        if (beyond === 'nothing' && (x < 0 || y < 0 || x >= length || y >= lines)) continue;
        values.push(plane[mirrored(y, lines) * length + mirrored(x, length)]!);
      }
    }
    return choose(...values);
  });
}

describe('extremes over a square', () => {
  const planes = fc
    .tuple(fc.integer({ min: 1, max: 14 }), fc.integer({ min: 1, max: 14 }), fc.integer({ min: 1, max: 5 }))
    .chain(([length, lines, half]) =>
      fc.record({
        length: fc.constant(length),
        lines: fc.constant(lines),
        half: fc.constant(half),
        beyond: fc.constantFrom('mirrored' as const, 'nothing' as const),
        plane: fc.uint8Array({ minLength: length * lines, maxLength: length * lines }),
      }),
    );

  it('are those of every place looked at', () => {
    fc.assert(
      fc.property(planes, ({ length, lines, half, beyond, plane }) => {
        expect(greatestAround({ bytes: plane, length, lines }, half, beyond)).toEqual(
          plainly(plane, length, half, beyond, Math.max),
        );
        expect(leastAround({ bytes: plane, length, lines }, half, beyond)).toEqual(
          plainly(plane, length, half, beyond, Math.min),
        );
      }),
      { numRuns: 300, seed: 5 },
    );
  });
});
