/**
 * The wind of ASCE 7-16 and 7-22, chapter 26.
 *
 * K_z = c (z / z_g)^(2/alpha) with z not below 15 ft, q_z = 0.613 K_z K_zt K_d K_e V² (26.10-1, SI). V is a 3-second gust
 * at 33 ft over exposure C, so q_z is a gust pressure already and no gust factor is applied. In 7-22 K_d has moved from
 * q_z to the force; the product is the same. K_d is 1 here, since each direction is rated on its own and 0.85 would
 * count the odds of the wind's direction twice; K_zt is 1 (level ground) and K_e 1 (sea level, the safe side).
 */
import type { AsceExposure } from '../case.ts';
import { InputFault } from '../faults.ts';
import { constant, sourced } from '../reference/index.ts';
import { asceExposure } from '../reference/tables.generated.ts';
import type { WindProfile } from './types.ts';

export type AsceEdition = 'ASCE 7-16' | 'ASCE 7-22';

const METRES_PER_FOOT = 0.3048;

function exposureRow(edition: AsceEdition, exposure: AsceExposure) {
  const row = asceExposure.find((each) => each.edition === edition && each.exposure === exposure);
  if (!row)
    throw new InputFault(`"${String(exposure)}" is no exposure category; use B, C or D.`, 'site.exposure');
  return row;
}

/** Velocity pressure exposure coefficient K_z at a height, m. */
export function exposureCoefficient(edition: AsceEdition, exposure: AsceExposure, heightM: number): number {
  const row = exposureRow(edition, exposure);
  const feet = Math.max(heightM / METRES_PER_FOOT, constant('asce least height').value);
  if (feet > row.zgFt) {
    throw new InputFault(
      `${edition} covers heights up to ${row.zgFt} ft, not ${Math.round(feet)} ft.`,
      'tree.heightM',
    );
  }
  return row.coefficient * (feet / row.zgFt) ** (2 / row.alpha);
}

/** Ground elevation factor K_e at an elevation above sea level, m. */
export function elevationFactor(elevationM: number): number {
  return Math.exp(-constant('asce elevation decay').value * elevationM);
}

/** Factors of the velocity pressure that a site may set. */
export interface AsceFactors {
  directionality?: number;
  topography?: number;
  elevationM?: number;
}

/** Velocity pressure at a height, Pa, for a 3-second gust V, m/s. */
export function velocityPressure(
  edition: AsceEdition,
  exposure: AsceExposure,
  basicMs: number,
  heightM: number,
  factors: AsceFactors = {},
): number {
  return (
    constant('asce pressure factor').value *
    exposureCoefficient(edition, exposure, heightM) *
    (factors.topography ?? constant('asce topography').value) *
    (factors.directionality ?? constant('asce directionality').value) *
    elevationFactor(factors.elevationM ?? constant('asce ground elevation').value) *
    basicMs *
    basicMs
  );
}

/** ASCE 7 over height, for a site's basic wind speed (3-second gust, 10 m, exposure C) and exposure. */
export function asceProfile(edition: AsceEdition, basicMs: number, exposure: AsceExposure): WindProfile {
  const row = exposureRow(edition, exposure);
  return {
    windCode: edition,
    pressurePa: (heightM) => velocityPressure(edition, exposure, basicMs, heightM),
    gustMs: (heightM) => basicMs * Math.sqrt(exposureCoefficient(edition, exposure, heightM)),
    openGustMs: basicMs,
    values: [
      {
        name: 'basic wind speed (3-second gust, 10 m, exposure C)',
        value: basicMs,
        unit: 'm/s',
        source: 'given for the site',
      },
      {
        name: `power law exponent alpha of exposure ${exposure}: ${row.meaning}`,
        value: row.alpha,
        unit: '1',
        source: row.source,
      },
      {
        name: `gradient height of exposure ${exposure}`,
        value: row.zgFt * METRES_PER_FOOT,
        unit: 'm',
        source: row.source,
      },
      sourced('asce pressure factor'),
      sourced('asce directionality'),
      sourced('asce topography'),
      sourced('asce ground elevation'),
    ],
    notices: [
      {
        severity: 'note',
        where: 'site.basicWindSpeedMs',
        text: `A mapped wind speed of ${edition} returns about every 700 years (risk category II), while the usual mark of 1.5 is meant for a storm of the next decades: against the mapped speed it is a stricter test. Give the 50-year gust where that is what the client means.`,
      },
    ],
  };
}
