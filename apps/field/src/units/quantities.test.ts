import { inUnits } from '@standfast/report';
import { describe, expect, it } from 'vitest';
import {
  chanceText,
  fieldText,
  intervalText,
  rangeText,
  shareText,
  storedOf,
  sureText,
} from './quantities.ts';
import { outsideLimits, readNumber } from './readNumber.ts';

/** A conversion there and back is a multiplication and a division, kept to 12 figures. */
const ROUND_TRIP = 1e-11;

describe('what is typed and what is stored', () => {
  it('knows the exact factors', () => {
    expect(storedOf(1, 'lengthMm', 'us')).toBe(25.4);
    expect(storedOf(10, 'heightM', 'us')).toBe(3.048);
    expect(storedOf(100, 'speedMs', 'us')).toBe(44.704);
    expect(storedOf(90, 'angleDeg', 'us')).toBe(90);
    expect(storedOf(900, 'lengthMm', 'metric')).toBe(900);
  });

  it('comes back to the same value both ways', () => {
    for (const quantity of ['lengthMm', 'heightM', 'speedMs', 'momentNm', 'modulusM3'] as const) {
      for (const units of ['metric', 'us'] as const) {
        const back = storedOf(inUnits(123.456, quantity, units), quantity, units);
        expect(Math.abs(back / 123.456 - 1)).toBeLessThan(ROUND_TRIP);
      }
    }
  });

  it('shows a field without trailing zeros', () => {
    expect(fieldText(990, 'lengthMm', 'metric')).toBe('990');
    expect(fieldText(990, 'lengthMm', 'us')).toBe('38.98');
    expect(fieldText(1.305, 'heightM', 'metric')).toBe('1.305');
    expect(fieldText(-12, 'angleDeg', 'metric')).toBe('−12');
  });
});

describe('intervals and chances in words', () => {
  it('prints no estimate without its range', () => {
    expect(intervalText({ p05: 1.2, p50: 1.6, p95: 2.1 }, 1)).toBe('1.6 (1.2 to 2.1)');
    expect(shareText({ p05: 0.71, p50: 0.8, p95: 0.86 })).toBe('80 % (71 to 86)');
    expect(rangeText({ p05: 101.6, p50: 127, p95: 152.4 }, 'lengthMm', 'us')).toBe('4.0 to 6.0\u00a0in');
  });

  it('never calls an estimated chance impossible or certain', () => {
    expect(chanceText(0)).toBe('under 0.1 %');
    expect(chanceText(1)).toBe('over 99.9 %');
    expect(chanceText(0.042)).toBe('4.2 %');
    expect(chanceText(0.42)).toBe('42 %');
    expect(sureText(0.999)).toBe('over 99\u00a0%');
    expect(sureText(0.774)).toBe('77\u00a0%');
  });
});

describe('reading what was typed', () => {
  it('takes a decimal point, a decimal comma and spaces between thousands', () => {
    expect(readNumber('0,5')).toEqual({ ok: true, value: 0.5 });
    expect(readNumber(' 12.25 ')).toEqual({ ok: true, value: 12.25 });
    expect(readNumber('−3')).toEqual({ ok: true, value: -3 });
    expect(readNumber('1 250')).toEqual({ ok: true, value: 1250 });
    expect(readNumber('0,125')).toEqual({ ok: true, value: 0.125 });
  });

  it('asks when a number can be read two ways', () => {
    const read = readNumber('1,250');
    expect(read).toMatchObject({ ok: false, message: expect.stringContaining('1250 or 1.250') });
  });

  it.each(['', 'abc', '1.2.3', '12mm', 'NaN', '1e5', '--1', '.'])('refuses %j', (text) => {
    expect(readNumber(text).ok).toBe(false);
  });

  it('says which limit was broken', () => {
    const mm = (v: number) => `${v} mm`;
    expect(outsideLimits(0, { min: 0, aboveMin: true }, mm)).toBe('Must be more than 0 mm.');
    expect(outsideLimits(-1, { min: 0 }, mm)).toBe('Must be at least 0 mm.');
    expect(outsideLimits(9, { max: 8 }, mm)).toBe('Must be at most 8 mm.');
    expect(outsideLimits(5, { min: 0, max: 8 }, mm)).toBeNull();
  });
});
