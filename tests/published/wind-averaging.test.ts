/** Gusts against longer means (Durst 1960 and texts quoting it) and Beaufort's scale (World Meteorological Organization). */
import { describe, expect, it } from 'vitest';
import { averagingRatio, beaufortMs, convertAveraging } from '../../packages/engine/src/wind/averaging.ts';
import { asceReturnRatio, gustOfReturnPeriod } from '../../packages/engine/src/wind/returnPeriod.ts';

/** Worked examples are printed to one digit after the point. */
const ONE_DIGIT = 0.05 + 1e-9;

describe('Durst curve', () => {
  it('80 mph over the hour is a 3-second gust of 122.4 mph (worked example, read)', () => {
    expect(Math.abs(convertAveraging(80, 3600, 3) - 122.4)).toBeLessThanOrEqual(ONE_DIGIT);
  });

  it('80 mph fastest mile (45 s) is a 3-second gust of 95.6 mph (worked example, read)', () => {
    expect(Math.abs(convertAveraging(80, 45, 3) - 95.6)).toBeLessThanOrEqual(ONE_DIGIT);
  });

  it.each([
    [1, 1.57],
    [3, 1.53],
    [45, 1.28],
  ])('%d s: %d (read)', (seconds, ratio) => {
    expect(averagingRatio(seconds)).toBe(ratio);
  });

  it('falls all the way, and refuses times outside the table', () => {
    let last = Number.POSITIVE_INFINITY;
    for (let seconds = 1; seconds <= 3600; seconds *= 1.3) {
      expect(averagingRatio(seconds)).toBeLessThan(last);
      last = averagingRatio(seconds);
    }
    expect(() => averagingRatio(0.5)).toThrow(/averaging time/);
  });
});

describe('Beaufort (formula from memory)', () => {
  it('force 12 is 34.75 m/s and begins at 32.7 m/s', () => {
    expect(Math.abs(beaufortMs(12) - 34.75)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(beaufortMs(11.5) - 32.7)).toBeLessThanOrEqual(0.15);
  });
});

describe('return periods', () => {
  it('ASCE 7: V_50 is the reference and V_700 1.26 times it (formula from memory)', () => {
    expect(asceReturnRatio(50)).toBeCloseTo(1, 3);
    expect(asceReturnRatio(700)).toBeCloseTo(1.2636, 3);
    const site = { windCode: 'ASCE 7-22', basicWindSpeedMs: 47, exposure: 'B' } as const;
    expect(gustOfReturnPeriod(site, 700)).toBeCloseTo(47, 9);
  });

  it('EN 1991-1-4: the basic wind is the 50-year one', () => {
    const site = { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'III' } as const;
    // A yearly chance of 1 - exp(-1/50) = 0.0198 against the code's 0.02.
    expect(gustOfReturnPeriod(site, 50)).toBeCloseTo(38.34, 1);
    expect(gustOfReturnPeriod(site, 1)).toBeCloseTo(38.34 * 0.7495, 1);
  });
});
