/**
 * The strength that the wood of a drilled section is taken to have.
 *
 * A green stem in bending first crushes its fibres on the lee side, at a stress near the compression strength, about 0.43
 * to 0.47 of the bending strength (MOR); the stem breaks later. In a drilled, perhaps decayed section the first crushing is
 * where irreversible harm begins, so the compression strength drives the rating and the figure on the bending strength
 * is reported beside it. No credit is taken for the growth stresses that put the outer wood in tension.
 *
 * Means of clear wood are lowered by the factor of a whole stem (knots, crooked grain). Scatter is lognormal in three
 * parts: between trees of a species (shared by all sections of a draw), within a tree from section to section, and, for
 * a species without a row of its own, not knowing the species' mean.
 */
import type { Random } from '../random.ts';
import { constant, type Wood } from '../reference/index.ts';
import { stratifiedNormals } from '../wind/sampling.ts';

/** Middle strength of stem wood, Pa: first crushing, and breaking on the bending strength. */
export function stemStrength(wood: Wood): { crushingPa: number; bendingPa: number } {
  const factor = constant('stem over clear wood').value;
  return { crushingPa: factor * wood.compressionPa, bendingPa: factor * wood.bendingPa };
}

/** Standard deviation of ln(strength) of one section, all parts together. */
export function strengthLogSd(wood: Wood): number {
  return Math.hypot(treeLogSd(wood), constant('section strength scatter').logSd ?? 0);
}

function treeLogSd(wood: Wood): number {
  return Math.hypot(constant('tree strength scatter').logSd ?? 0, wood.unknownSpeciesLogSd);
}

/** Per section, the strength at first crushing, Pa, one per draw. */
export function strengthDraws(
  wood: Wood,
  sectionIds: readonly string[],
  random: Random,
  draws: number,
): Float64Array[] {
  const { crushingPa } = stemStrength(wood);
  const treeSd = treeLogSd(wood);
  const sectionSd = constant('section strength scatter').logSd ?? 0;
  const tree = stratifiedNormals(random.fork('tree strength'), draws);
  return sectionIds.map((id) => {
    const own = stratifiedNormals(random.fork(`section strength ${id}`), draws);
    return own.map((z, i) => crushingPa * Math.exp(treeSd * tree[i]! + sectionSd * z));
  });
}
