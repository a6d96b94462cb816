import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countedShare } from './wilson.ts';

/** The printed digits of the source. */
const PRINTED = 4;

describe('score interval of a share', () => {
  // Newcombe 1998, Statistics in Medicine 17:857, table I, method 3 (score, not corrected), from memory.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%d of %d lies between %f and %f', (held, of, low, high) => {
    const counted = countedShare(held, of);
    expect(counted.low).toBeCloseTo(low, PRINTED);
    expect(counted.high).toBeCloseTo(high, PRINTED);
  });

  it('holds the share, keeps within 0 and 1, and narrows with more', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (of, part) => {
          const held = Math.round(part * of);
          const { low, share, high } = countedShare(held, of);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeLessThanOrEqual(1);
          expect(low <= share && share <= high).toBe(true);
          const more = countedShare(10 * held, 10 * of);
          expect(more.high - more.low).toBeLessThan(high - low);
        },
      ),
    );
  });

  it('knows nothing of none', () => {
    expect(countedShare(0, 0)).toMatchObject({ low: 0, high: 1 });
  });
});
