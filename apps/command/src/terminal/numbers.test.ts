import { expect, it } from 'vitest';
import { direction, fixed, percent, withInterval } from './numbers.ts';

it('prints an estimate with its interval', () => {
  expect(withInterval({ p05: 1.212, p50: 1.617, p95: 2.14 }, 2)).toBe('1.62 (1.21 to 2.14)');
});

it('never lets a small chance read as none, nor a large one as certain', () => {
  expect([0, 0.0004, 0.034, 0.31, 0.997, 0.9995, 1].map(percent)).toEqual([
    '0 %',
    'under 0.1 %',
    '3.4 %',
    '31 %',
    '99.7 %',
    'over 99.9 %',
    '100 %',
  ]);
});

it('names compass directions', () => {
  expect([0, 40, 337.5, 350, -90, 359.9].map(direction)).toEqual([
    '0° (N)',
    '40° (NE)',
    '338° (N)',
    '350° (N)',
    '270° (W)',
    '0° (N)',
  ]);
});

it('shows a dash for what is not known', () => {
  expect(fixed(null, 1)).toBe('–');
  expect(fixed(Number.NaN, 1)).toBe('–');
});
