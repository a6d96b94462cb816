import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SiteInput } from '../case.ts';
import { InputFault } from '../faults.ts';
import { chanceWithin, gustClimate } from './gustClimate.ts';
import { windProfile } from './profile.ts';
import { gustOfReturnPeriod } from './returnPeriod.ts';

const EN: SiteInput = { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'III' };
const ASCE: SiteInput = { windCode: 'ASCE 7-22', basicWindSpeedMs: 47, exposure: 'B' };

describe('gustClimate', () => {
  it('gives the basic speed the chance its code gives it', () => {
    const { openGustMs } = windProfile(EN);
    expect(chanceWithin(gustClimate(EN).rate(openGustMs), 1)).toBeCloseTo(0.02, 12);
    expect(1 / gustClimate(ASCE).rate(47)).toBeCloseTo(700, 9);
  });

  it('turns back into the gust of a return period', () => {
    for (const site of [
      EN,
      ASCE,
      { ...EN, basicWindReturnYears: 10 },
      { ...ASCE, basicWindReturnYears: 50 },
    ]) {
      for (const years of [2, 10, 50, 700]) {
        const rate = gustClimate(site).rate(gustOfReturnPeriod(site, years));
        expect(1 / rate / years).toBeCloseTo(1, 6);
      }
    }
  });

  it('falls with the gust, and is worse where the speed given comes oftener', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 70, noNaN: true }), fc.constantFrom(EN, ASCE), (gustMs, site) => {
        const { rate } = gustClimate(site);
        expect(rate(gustMs + 1)).toBeLessThan(rate(gustMs));
        const oftener = gustClimate({ ...site, basicWindReturnYears: 10 });
        expect(oftener.rate(gustMs)).toBeGreaterThan(rate(gustMs));
      }),
    );
  });

  it('says what it rests on, and refuses a return period that cannot be', () => {
    expect(gustClimate(EN).basis).toContain("the code's own map");
    expect(gustClimate({ ...EN, basicWindReturnYears: 50 }).basis).toContain('as stated');
    expect(() => gustClimate({ ...EN, basicWindReturnYears: 1 })).toThrow(InputFault);
  });

  it('reminds of the mapped return period of ASCE 7 only where none was stated', () => {
    expect(windProfile(ASCE).notices).toHaveLength(1);
    expect(windProfile({ ...ASCE, basicWindReturnYears: 50 }).notices).toEqual([]);
  });
});

describe('chanceWithin', () => {
  it('is 1 - exp(-rate years), near 0 and near 1 too', () => {
    expect(chanceWithin(1e-12, 5)).toBeCloseTo(5e-12, 20);
    expect(chanceWithin(0.1, 5)).toBeCloseTo(1 - Math.exp(-0.5), 15);
    expect(chanceWithin(1e300, 1)).toBe(1);
  });
});
