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
 * a species without a row of its own, not knowing the species' mean. Two scatters are kept apart: first crushing is a
 * property of the outer fibres and is taken to scatter little more than clear wood does; breaking scatters as whole stems
 * did when they were pulled over (Kane and Clouston 2008), about twice as much.
 */
import type { Random } from '../random.ts';
import { constant, type Wood } from '../reference/index.ts';
import { stratifiedNormals } from '../wind/sampling.ts';

/** Middle strength of stem wood, Pa: first crushing, and breaking on the bending strength. */
export function stemStrength(wood: Wood): { crushingPa: number; bendingPa: number } {
  const factor = constant('stem over clear wood').value;
  return { crushingPa: factor * wood.compressionPa, bendingPa: factor * wood.bendingPa };
}

/** Standard deviations of ln(strength) of one section, all parts together: at first crushing, and at breaking. */
export function strengthLogSd(wood: Wood): { crushing: number; breaking: number } {
  return {
    crushing: Math.hypot(treeLogSd(wood), scatterOf('section strength scatter')),
    breaking: Math.hypot(wood.unknownSpeciesLogSd, scatterOf('tree breaking scatter')),
  };
}

function scatterOf(name: string): number {
  return constant(name).logSd ?? 0;
}

function treeLogSd(wood: Wood): number {
  return Math.hypot(scatterOf('tree strength scatter'), wood.unknownSpeciesLogSd);
}

/** Strengths of one section, Pa, one per draw. */
export interface StrengthDraws {
  crushingPa: Float64Array;
  bendingPa: Float64Array;
}

/** Per section, the strength at first crushing and at breaking. The tree's part is common to both and to all sections. */
export function strengthDraws(
  wood: Wood,
  sectionIds: readonly string[],
  random: Random,
  draws: number,
): StrengthDraws[] {
  const middle = stemStrength(wood);
  const treeSd = treeLogSd(wood);
  const total = strengthLogSd(wood);
  const tree = stratifiedNormals(random.fork('tree strength'), draws);
  return sectionIds.map((id) => {
    const own = stratifiedNormals(random.fork(`section strength ${id}`), draws);
    const strength = (middlePa: number, totalSd: number) => {
      const ownSd = Math.sqrt(Math.max(0, totalSd * totalSd - treeSd * treeSd));
      return own.map((z, i) => middlePa * Math.exp(treeSd * tree[i]! + ownSd * z));
    };
    return {
      crushingPa: strength(middle.crushingPa, total.crushing),
      bendingPa: strength(middle.bendingPa, total.breaking),
    };
  });
}
