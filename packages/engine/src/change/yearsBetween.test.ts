import { describe, expect, it } from 'vitest';
import { yearsBetween } from './yearsBetween.ts';

const DAY = 1 / 365.2425;

describe('years between two days', () => {
  it('counts days of the calendar, leap days included', () => {
    expect(yearsBetween('2024-02-28', '2024-03-01')).toBeCloseTo(2 * DAY, 9);
    expect(yearsBetween('2023-02-28', '2023-03-01')).toBeCloseTo(DAY, 9);
    expect(yearsBetween('1900-02-28', '1900-03-01')).toBeCloseTo(DAY, 9);
    expect(yearsBetween('2026-06-18', '2030-06-20')).toBeCloseTo(1463 * DAY, 9);
  });
  it('is negative backwards and null where a day is missing or none', () => {
    expect(yearsBetween('2030-01-01', '2026-01-01')).toBeLessThan(-3.9);
    expect(yearsBetween(undefined, '2026-01-01')).toBeNull();
    expect(yearsBetween('2026-01-01', 'May 2026')).toBeNull();
  });
});
