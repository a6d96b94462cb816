/** Draws of the two ends of a residual wall, the cambium and the front, from a reading. */
import type { Random } from '../random.ts';
import { type TraceReading, ZONE_KINDS } from '../trace/types.ts';
import { normalQuantile, stratifiedUniforms } from '../wind/sampling.ts';

const Z95 = 1.6448536269514722;
/** What an edge's place is uncertain by beyond the reader's own doubt, mm: the tip's averaging. The bark's is the sharper. */
const LEAST_EDGE_SD_MM = 0.9;
const LEAST_CAMBIUM_SD_MM = 0.4;
/** Depths either side of the wood's beginning where doubt about it is looked for, mm. */
const CAMBIUM_REACH_MM = 12;

/** Standard deviation of where the wood begins, mm: from how the chance of bark or air falls off with depth. */
export function cambiumSd({ gridMm, probability, woodFromMm }: TraceReading): number {
  const kinds = ZONE_KINDS.length;
  const outside = [ZONE_KINDS.indexOf('air'), ZONE_KINDS.indexOf('bark')];
  let sum = 0;
  let squares = 0;
  let mass = 0;
  let before = 1;
  gridMm.forEach((depth, i) => {
    if (Math.abs(depth - woodFromMm) > CAMBIUM_REACH_MM) return;
    const chance = outside.reduce((c, column) => c + probability[i * kinds + column]!, 0);
    const fall = Math.max(0, before - chance);
    before = Math.min(before, chance);
    mass += fall;
    sum += fall * (depth - woodFromMm);
    squares += fall * (depth - woodFromMm) ** 2;
  });
  const spread = mass > 0 ? Math.max(0, squares / mass - (sum / mass) ** 2) : 0;
  return Math.hypot(LEAST_CAMBIUM_SD_MM, Math.sqrt(spread));
}

/**
 * Draws of the front's depth below the cambium as read, mm: a normal on each side of the middle that meets the wall's 5
 * and 95 % points, with the cambium's own error taken out of both.
 */
export function frontDraws(reading: TraceReading, random: Random, draws: number): Float64Array {
  const { p05, p50, p95 } = reading.residualWallInterval;
  const cambium = cambiumSd(reading);
  const side = (width: number) =>
    Math.sqrt(Math.max(LEAST_EDGE_SD_MM ** 2, (width / Z95) ** 2 - cambium ** 2));
  const below = side(p50 - p05);
  const above = side(p95 - p50);
  return stratifiedUniforms(random, draws).map((u) => {
    const z = normalQuantile(u);
    return p50 + z * (z < 0 ? below : above);
  });
}
