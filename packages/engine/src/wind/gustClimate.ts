/**
 * How often a gust is exceeded: the distribution of the year's strongest gust over open ground.
 *
 * EN 1991-1-4 eq. 4.2 read backwards, with K and n of its note and p the yearly chance of the basic velocity v_b: the
 * chance F that a year stays below v obeys (v / v_b)^(1/n) [1 - K ln(-ln(1 - p))] = 1 - K ln(-ln F), so
 * -ln F(v) = exp((1 - A (v / v_b)^(1/n)) / K): a Gumbel distribution of the square of the speed. ASCE 7 (commentary
 * C26.5): V_T / V_50 = 0.36 + 0.1 ln(12 T), so -ln F(v) = 12 exp(-(v / V_50 - 0.36) / 0.1): a Gumbel distribution of the
 * speed. -ln F is the rate: the yearly chance is 1 - exp(-rate), over n years of the same climate 1 - exp(-n rate).
 */
import type { SiteInput } from '../case.ts';
import { InputFault } from '../faults.ts';
import { constant } from '../reference/index.ts';
import { windProfile } from './profile.ts';

/** The year's strongest gust, 10 m above open ground. */
export interface GustClimate {
  /** Rate a year, -ln F, at which a gust, m/s, is exceeded. */
  rate(gustMs: number): number;
  /** Return period the basic wind speed is taken to stand for, years. */
  returnYears: number;
  /** What it rests on, one sentence with its source. */
  basis: string;
}

/**
 * Return period that the site's basic wind speed stands for, years.
 * @throws InputFault when it cannot be.
 */
export function basicReturnYears(site: SiteInput): number {
  const own = constant(site.windCode === 'EN 1991-1-4' ? 'en return period' : 'asce return period').value;
  const years = site.basicWindReturnYears ?? own;
  if (!(years >= 2 && years <= 10000)) {
    throw new InputFault(
      `A basic wind speed that returns every ${years} years cannot be used; give 2 to 10000 years.`,
      'site.basicWindReturnYears',
    );
  }
  return years;
}

/** Distribution of the year's strongest gust at a site. */
export function gustClimate(site: SiteInput): GustClimate {
  const { openGustMs } = windProfile(site);
  const returnYears = basicReturnYears(site);
  const stated = site.basicWindReturnYears === undefined ? "the code's own map" : 'as stated for the site';
  const given = `the basic wind speed is taken to return every ${returnYears} years (${stated})`;
  if (site.windCode === 'EN 1991-1-4') {
    const shape = constant('en probability shape').value;
    const power = 1 / constant('en probability exponent').value;
    const scale = 1 - shape * Math.log(-Math.log(1 - 1 / returnYears));
    return {
      returnYears,
      rate: (gustMs) => Math.exp((1 - scale * (gustMs / openGustMs) ** power) / shape),
      basis: `Yearly strongest gust by EN 1991-1-4 eq. 4.2 (Gumbel distribution of the squared speed, K 0.2, n 0.5); ${given}.`,
    };
  }
  const base = constant('asce return period base').value;
  const slope = constant('asce return period slope').value;
  const fiftyYearMs = openGustMs / (base + slope * Math.log(12 * returnYears));
  return {
    returnYears,
    rate: (gustMs) => 12 * Math.exp(-(gustMs / fiftyYearMs - base) / slope),
    basis: `Yearly strongest gust by ASCE 7 commentary C26.5 (V_T / V_50 = 0.36 + 0.1 ln 12T, away from hurricanes; from memory); ${given}.`,
  };
}

/** Chance that a rate a year, -ln F, comes true at least once within so many years. */
export function chanceWithin(ratePerYear: number, years: number): number {
  const expected = ratePerYear * years;
  // So rare that the chance is the rate, to the last digit shown; most draws of a sound tree are.
  return expected < 1e-7 ? expected : -Math.expm1(-expected);
}
