import { describe, expect, it } from 'vitest';
import { dateText } from './dates.ts';

describe('a day in words', () => {
  it('is day, month, year, and what is no day is left as it is', () => {
    expect(dateText('2026-05-04')).toBe('4 May 2026');
    expect(dateText('2026-13-04')).toBe('2026-13-04');
    expect(dateText('next spring')).toBe('next spring');
  });
});
