/**
 * The gust over open ground that comes once in so many years, from a site's basic wind speed.
 *
 * EN 1991-1-4: v_b has a yearly chance of 0.02 unless the site states its return period; others by eq. 4.2. ASCE 7: the
 * mapped V returns every 700 years (risk category II) unless stated; V_T / V_50 = 0.36 + 0.1 ln(12 T) away from hurricanes
 * (commentary C26.5).
 */
import type { SiteInput } from '../case.ts';
import { InputFault } from '../faults.ts';
import { constant } from '../reference/index.ts';
import { probabilityFactor } from './eurocode.ts';
import { basicReturnYears } from './gustClimate.ts';
import { windProfile } from './profile.ts';

/** V_T / V_50 of ASCE 7 for a return period, years. */
export function asceReturnRatio(years: number): number {
  return (
    constant('asce return period base').value +
    constant('asce return period slope').value * Math.log(12 * years)
  );
}

/** Peak gust 10 m above open ground that returns every `years` years, m/s. Yearly maxima: `years` = 1 is a chance of 1 - 1/e. */
export function gustOfReturnPeriod(site: SiteInput, years: number): number {
  if (!(years >= 1 && years <= 3000)) {
    throw new InputFault(`A return period of ${years} years cannot be used; give 1 to 3000.`, 'years');
  }
  const { openGustMs } = windProfile(site);
  const basicYears = basicReturnYears(site);
  if (site.windCode === 'EN 1991-1-4') {
    return (openGustMs * probabilityFactor(1 - Math.exp(-1 / years))) / probabilityFactor(1 / basicYears);
  }
  return (openGustMs * asceReturnRatio(years)) / asceReturnRatio(basicYears);
}
