import { expect, it } from 'vitest';
import { monthsOn } from './dueDate.ts';

it.each([
  ['2026-06-18', 3, '2026-09-18'],
  ['2026-06-18', 12, '2027-06-18'],
  ['2026-08-31', 6, '2027-02-28'],
  ['2027-08-31', 6, '2028-02-29'],
])('%s and %d months is %s', (from, months, to) => {
  expect(monthsOn(from, months)).toBe(to);
});

it('knows no day from what is no date', () => {
  expect(monthsOn('spring', 3)).toBeNull();
});
