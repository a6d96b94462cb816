import { describe, expect, it } from 'vitest';
import { isDay, monthsAfter } from './dates.ts';

describe('days', () => {
  it('go on by months, to the last day where the month is shorter', () => {
    expect(monthsAfter('2026-01-31', 1)).toBe('2026-02-28');
    expect(monthsAfter('2028-01-31', 1)).toBe('2028-02-29');
    expect(monthsAfter('2026-11-25', 14)).toBe('2028-01-25');
    expect(monthsAfter('2026-12-31', 0)).toBe('2026-12-31');
    expect(monthsAfter('2026-06-18', 3.9)).toBe('2026-09-18');
  });

  it('are told from texts that only look like one', () => {
    expect(['2026-02-28', '2028-02-29', '2000-02-29'].map(isDay)).toEqual([true, true, true]);
    expect(['2026-02-29', '1900-02-29', '2026-13-01', '2026-00-10', '2026-1-1', 'soon'].map(isDay)).toEqual(
      Array(6).fill(false),
    );
  });
});
