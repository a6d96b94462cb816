import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../random.ts';
import { calibrate } from './calibrate.ts';

const DRAWS = 1001;

function column(remaining: Float64Array, d: number): Float64Array {
  return Float64Array.from({ length: DRAWS }, (_, i) => remaining[i * 36 + d]!).sort();
}

describe('calibrate', () => {
  const random = randomFrom(3);
  const before = new Float64Array(DRAWS * 36);
  for (let i = 0; i < DRAWS; i++) {
    for (let d = 0; d < 18; d++) {
      const value = i % 10 === 0 ? 1 : 0.7 + 0.02 * random.normal();
      before[i * 36 + d] = value;
      before[i * 36 + d + 18] = value;
    }
  }
  const after = Float64Array.from(before);
  calibrate(after, DRAWS);

  it('keeps the median and the order of the draws', () => {
    for (let d = 0; d < 18; d++) {
      expect(column(after, d)[500]).toBeCloseTo(column(before, d)[500]!, 6);
      for (let i = 1; i < DRAWS; i++) {
        const rose = before[i * 36 + d]! > before[(i - 1) * 36 + d]!;
        if (rose) expect(after[i * 36 + d]!).toBeGreaterThanOrEqual(after[(i - 1) * 36 + d]!);
      }
    }
  });

  it('moves the 5 % point out by what is left out', () => {
    expect(column(before, 0)[50]! - column(after, 0)[50]!).toBeCloseTo(0.007, 4);
  });

  it('leaves draws in which all is sound at exactly 1, and treats opposite directions alike', () => {
    for (let i = 0; i < DRAWS; i += 10) expect(after[i * 36]).toBe(1);
    for (let i = 0; i < DRAWS; i++) expect(after[i * 36 + 7]).toBe(after[i * 36 + 25]);
  });
});
