/** Time for a wall to thin to a limit: the row of the reference table, worked by hand (derived, no published formula). */
import { describe, expect, it } from 'vitest';
import { yearsToLimit } from '../../packages/engine/src/advice/reinspection.ts';

describe('t 16 cm on R 40 cm, decay 1 and growth 0.3 cm a year, limit 0.3', () => {
  it('(16 - 0.3 × 40) / (1 - 0.3 × 0.7) = 4 / 0.79 = 5.0633 years', () => {
    expect(yearsToLimit(16, 40, 0.3, 1, 0.3)).toBeCloseTo(5.0633, 4);
  });

  it('and at 2 cm a year 4 / 1.79 = 2.2346 years', () => {
    expect(yearsToLimit(16, 40, 0.3, 2, 0.3)).toBeCloseTo(2.2346, 4);
  });
});
