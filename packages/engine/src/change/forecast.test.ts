import { describe, expect, it } from 'vitest';
import { crossingOf, valueAt, yearReached } from './forecast.ts';

const YEARS = [0, 5, 10, 20];

describe('crossing a mark', () => {
  it('is read between the years of the fan', () => {
    const below = [0, 0.1, 0.6, 0.96];
    expect(yearReached(YEARS, below, 0.05)).toBeCloseTo(2.5);
    const crossing = crossingOf(1.5, YEARS, below, 1);
    expect(crossing.earlyYears).toBeCloseTo(2.5);
    expect(crossing.middleYears).toBeCloseTo(9);
    expect(crossing.lateYears).toBeCloseTo(19.72, 1);
    expect(crossing.chanceByNextVisit).toBeCloseTo(0.02);
    expect(crossing.chanceAtEnd).toBe(0.96);
  });
  it('is null when it is not within the forecast, 0 when it is now', () => {
    const never = crossingOf(1, YEARS, [0, 0, 0.01, 0.02], 2);
    expect([never.earlyYears, never.middleYears, never.lateYears]).toEqual([null, null, null]);
    expect(crossingOf(1, YEARS, [0.7, 0.8, 0.9, 0.9], 2).middleYears).toBe(0);
  });
  it('counts a chance once reached, also where growth outdoes decay later', () => {
    expect(crossingOf(1, YEARS, [0, 0.3, 0.1, 0.1], 2).chanceAtEnd).toBe(0.3);
  });
  it('reads a curve between its years and holds it beyond', () => {
    expect(valueAt(YEARS, [0, 1, 2, 4], 15)).toBeCloseTo(3);
    expect(valueAt(YEARS, [0, 1, 2, 4], 90)).toBe(4);
  });
});
