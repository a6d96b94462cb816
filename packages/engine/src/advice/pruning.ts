/**
 * What pruning takes off the wind's moment.
 *
 * Two estimates are made. By area: the moment is worked out again with the crown's new silhouette (reduction scales the
 * crown about its base, raising cuts its lowest part off). By mass: load falls in line with the foliage removed (Smiley
 * and Kane 2006; Pavlis et al. 2008), foliage going with the crown's volume as a body of revolution (BS 3998: 12 % of the
 * radius is about 30 % of the leaves), and the lever with the crown's middle height. Experiments found prediction from area
 * unreliable, so the area's figure is given ten points either way and up to the figure by mass. Thinning goes with the
 * foliage taken, down to half of it. Self-weight is left as it was, on the safe side. Regrowth is not counted.
 */
import type { SiteInput, TreeInput } from '../case.ts';
import { constant } from '../reference/index.ts';
import type { Interval } from '../trace/types.ts';
import { windDemand } from '../wind/index.ts';
import type { Strip, WindDemand } from '../wind/types.ts';

/** A way of pruning and its amount: a share of height and spread, m of the base, or a share of the foliage. */
export interface Pruning {
  kind: 'reduce' | 'raise' | 'thin';
  amount: number;
}

/** Relief at each level (the ground, then the sections), as a share of the wind's moment there. */
export interface Relief {
  byLevel: Interval[];
  /** At the ground. */
  byArea: number;
  byMass: number;
  foliageShare: number;
}

/** Whom the pruning is worked out for: the tree and its middle demand as it stands. */
export interface Standing {
  tree: TreeInput;
  site: SiteInput;
  sectionHeightsM: readonly number[];
  demand: WindDemand;
}

/** Reduction of height and spread that takes a share of the foliage: foliage goes with the crown's volume. */
export function reductionForFoliage(foliageShare: number): number {
  return 1 - (1 - foliageShare) ** (1 / 3);
}

/** The tree with its crown scaled about its base. */
export function reducedTree(tree: TreeInput, share: number): TreeInput {
  const { baseHeightM, widthM } = tree.crown;
  return {
    ...tree,
    heightM: baseHeightM + (tree.heightM - baseHeightM) * (1 - share),
    crown: { ...tree.crown, widthM: widthM * (1 - share) },
  };
}

/** Ten points either way, less where the relief itself is less, and up to the figure by mass. */
function between(byArea: number, byMass: number): Interval {
  const points = constant('pruning points').value;
  return {
    p05: Math.max(0, byArea - points),
    p50: byArea,
    p95: Math.min(0.95, Math.max(byArea + Math.min(points, byArea), byMass)),
  };
}

function reduction(standing: Standing, share: number): Relief {
  const { tree, site, sectionHeightsM, demand } = standing;
  const after = windDemand({ tree: reducedTree(tree, share), site, sectionHeightsM });
  const foliageShare = 1 - (1 - share) ** 3;
  const byMass = (level: number) => {
    const lever = (of: WindDemand) => of.centreOfPressureM - demand.levelsM[level]!;
    return 1 - (1 - foliageShare) * Math.min(1, Math.max(0, lever(after) / lever(demand)));
  };
  const byArea = demand.windMomentNm.map((before, level) => 1 - after.windMomentNm[level]! / before);
  return {
    byLevel: byArea.map((relief, level) => between(relief, byMass(level))),
    byArea: byArea[0]!,
    byMass: byMass(0),
    foliageShare,
  };
}

/** Share of a slice below a height. */
const shareBelow = ({ fromM, toM }: Strip, heightM: number) =>
  Math.min(1, Math.max(0, (heightM - fromM) / (toM - fromM)));

function raising(standing: Standing, byM: number): Relief {
  const { tree, demand } = standing;
  const newBaseM = Math.min(tree.heightM, tree.crown.baseHeightM + byM);
  const crown = demand.strips.filter((strip) => strip.part === 'crown');
  const volume = (strip: Strip) => strip.widthM ** 2 * (strip.toM - strip.fromM);
  let foliage = 0;
  let gone = 0;
  for (const strip of crown) {
    foliage += volume(strip);
    gone += shareBelow(strip, newBaseM) * volume(strip);
  }
  const byArea = demand.windMomentNm.map((before, level) => {
    const levelM = demand.levelsM[level]!;
    let relief = 0;
    for (const strip of crown) {
      const lever = Math.max(0, strip.centreM - levelM);
      relief += shareBelow(strip, newBaseM) * strip.forceN * lever;
    }
    return relief / before;
  });
  const most = constant('raising effect high').value;
  return {
    byLevel: byArea.map((relief) => ({ p05: 0, p50: relief / 2, p95: most * relief })),
    byArea: byArea[0]!,
    byMass: byArea[0]!,
    foliageShare: gone / foliage,
  };
}

function thinning({ demand }: Standing, foliageShare: number): Relief {
  const middle = constant('thinning effect').value * foliageShare;
  const least = constant('thinning effect low').value * foliageShare;
  return {
    byLevel: demand.windMomentNm.map(() => ({ p05: least, p50: middle, p95: middle })),
    byArea: 0,
    byMass: middle,
    foliageShare,
  };
}

/** Relief of the wind's moment by a pruning. More of the same kind never relieves less. */
export function reliefOf(standing: Standing, { kind, amount }: Pruning): Relief {
  switch (kind) {
    case 'reduce':
      return reduction(standing, amount);
    case 'raise':
      return raising(standing, amount);
    case 'thin':
      return thinning(standing, amount);
  }
}

/** A draw of the relief: even between least and middle in half the draws, between middle and most in the other half. */
export function drawnRelief({ p05, p50, p95 }: Interval, uniform: number): number {
  return uniform < 0.5 ? p05 + (p50 - p05) * 2 * uniform : p50 + (p95 - p50) * (2 * uniform - 1);
}
