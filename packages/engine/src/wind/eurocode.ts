/**
 * The wind of EN 1991-1-4:2005 section 4, on level ground.
 *
 * k_r = 0.19 (z0 / 0.05)^0.07 (4.5); c_r = k_r ln(z / z0) from z_min to 200 m, c_r(z_min) below (4.4);
 * v_m = c_r c_o v_b (4.3); I_v = k_I / (c_o ln(z / z0)) (4.7); q_p = (1 + 7 I_v) rho v_m² / 2 (4.8). The peak gust is
 * v_p = v_m sqrt(1 + 7 I_v). National annexes may change the constants; the recommended ones are used.
 */
import type { EurocodeTerrain } from '../case.ts';
import { InputFault } from '../faults.ts';
import { constant, sourced } from '../reference/index.ts';
import { eurocodeTerrain } from '../reference/tables.generated.ts';
import type { WindProfile } from './types.ts';

/** Everything the standard computes on the way to the peak pressure at one height. */
export interface EurocodeWind {
  kr: number;
  cr: number;
  meanMs: number;
  turbulence: number;
  peakPressurePa: number;
  gustMs: number;
}

function terrainRow(terrain: EurocodeTerrain) {
  const row = eurocodeTerrain.find((each) => each.terrain === terrain);
  if (!row) {
    throw new InputFault(
      `"${String(terrain)}" is no terrain category; use one of ${eurocodeTerrain.map((each) => each.terrain).join(', ')}.`,
      'site.terrain',
    );
  }
  return row;
}

/**
 * The wind at a height, m, for a basic wind velocity, m/s (10-minute mean at 10 m over terrain II).
 * @throws InputFault for an unknown terrain or a height above 200 m.
 */
export function eurocodeWind(basicMs: number, terrain: EurocodeTerrain, heightM: number): EurocodeWind {
  const row = terrainRow(terrain);
  const limit = constant('en greatest height').value;
  if (!(heightM <= limit)) {
    throw new InputFault(`EN 1991-1-4 covers heights up to ${limit} m, not ${heightM} m.`, 'tree.heightM');
  }
  const kr =
    constant('en terrain factor base').value *
    (row.z0M / constant('en reference roughness').value) ** constant('en terrain factor exponent').value;
  const logarithm = Math.log(Math.max(heightM, row.zMinM) / row.z0M);
  const orography = constant('en orography factor').value;
  const cr = kr * logarithm;
  const meanMs = cr * orography * basicMs;
  const turbulence = constant('en turbulence factor').value / (orography * logarithm);
  const gustSquared = (1 + constant('en gust factor').value * turbulence) * meanMs * meanMs;
  return {
    kr,
    cr,
    meanMs,
    turbulence,
    peakPressurePa: 0.5 * constant('en air density').value * gustSquared,
    gustMs: Math.sqrt(gustSquared),
  };
}

/**
 * The factor by which the basic wind velocity changes for a yearly chance of exceedance other than 0.02
 * (EN 1991-1-4 eq. 4.2): 0.75 for once a year (chance 1 - 1/e).
 */
export function probabilityFactor(yearlyChance: number): number {
  const shape = constant('en probability shape').value;
  const reduced = (chance: number) => 1 - shape * Math.log(-Math.log(1 - chance));
  return (reduced(yearlyChance) / reduced(0.02)) ** constant('en probability exponent').value;
}

/** EN 1991-1-4 over height, for a site's basic wind velocity and terrain. */
export function eurocodeProfile(basicMs: number, terrain: EurocodeTerrain): WindProfile {
  const row = terrainRow(terrain);
  const open = eurocodeWind(basicMs, 'II', 10);
  return {
    windCode: 'EN 1991-1-4',
    pressurePa: (heightM) => eurocodeWind(basicMs, terrain, heightM).peakPressurePa,
    gustMs: (heightM) => eurocodeWind(basicMs, terrain, heightM).gustMs,
    openGustMs: open.gustMs,
    values: [
      {
        name: 'basic wind velocity (10-minute mean, 10 m, open country)',
        value: basicMs,
        unit: 'm/s',
        source: 'given for the site',
      },
      {
        name: `roughness length of terrain ${row.terrain}: ${row.meaning}`,
        value: row.z0M,
        unit: 'm',
        source: row.source,
      },
      { name: `least height of terrain ${row.terrain}`, value: row.zMinM, unit: 'm', source: row.source },
      sourced('en air density'),
      sourced('en turbulence factor'),
      sourced('en orography factor'),
    ],
    notices: [],
  };
}
