/** The wind of the site's code over height. */
import type { SiteInput } from '../case.ts';
import { InputFault } from '../faults.ts';
import { asceProfile } from './asce.ts';
import { eurocodeProfile } from './eurocode.ts';
import type { WindProfile } from './types.ts';

/** Basic wind speeds outside these are surely in the wrong unit or a slip, m/s. */
const LEAST_MS = 5;
const GREATEST_MS = 120;

/**
 * Gust and pressure over height for the site.
 * @throws InputFault for a wind code, terrain, exposure or basic wind speed that cannot be.
 */
export function windProfile(site: SiteInput): WindProfile {
  const speed = site.basicWindSpeedMs;
  if (!(speed >= LEAST_MS && speed <= GREATEST_MS)) {
    throw new InputFault(
      `A basic wind speed of ${speed} m/s cannot be; give metres a second, from ${LEAST_MS} to ${GREATEST_MS}.`,
      'site.basicWindSpeedMs',
    );
  }
  switch (site.windCode) {
    case 'EN 1991-1-4':
      return eurocodeProfile(speed, site.terrain);
    case 'ASCE 7-16':
    case 'ASCE 7-22':
      return {
        ...asceProfile(site.windCode, speed, site.exposure),
        // The reminder of the mapped return period is for a speed whose own was not stated.
        ...(site.basicWindReturnYears === undefined ? {} : { notices: [] }),
      };
    default:
      throw new InputFault(
        `"${String((site as { windCode: unknown }).windCode)}" is no wind code known here; use EN 1991-1-4, ASCE 7-16 or ASCE 7-22.`,
        'site.windCode',
      );
  }
}
