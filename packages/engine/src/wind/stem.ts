/**
 * The stem as a tapering cylinder: its width to the wind, and the weight of stem and branches.
 *
 * A(z) = A(1.3 m) ((H - z) / (H - 1.3))^p with p = 1.2, between a cone (2) and a paraboloid (1): a form factor of about
 * 0.45. Below breast height the same law is followed (no buttress). Branches and foliage weigh a share of the stem and
 * hang at the crown's silhouette. Weight and offset are judgement values of this project, with their scatter.
 */
import type { TreeInput } from '../case.ts';
import { constant, type Wood } from '../reference/index.ts';
import type { CrownProfile } from './crown.ts';

/** Stem diameter, m, at a height above ground, m. */
export function stemDiameterM(tree: TreeInput, heightM: number): number {
  if (heightM >= tree.heightM) return 0;
  const breast = constant('breast height').value;
  const breastDiameter = tree.stemDiameterMm / 1000;
  // A tree barely taller than breast height is taken as a cone on its measured diameter.
  const reference = tree.heightM > 2 * breast ? tree.heightM - breast : tree.heightM;
  return (
    breastDiameter * ((tree.heightM - heightM) / reference) ** (constant('stem taper exponent').value / 2)
  );
}

/** A slice's weight, kg, at its centre's height, m. */
export interface MassSlice {
  massKg: number;
  heightM: number;
}

/** Weight of stem, branches and foliage in slices from the ground up. */
export function massSlices(tree: TreeInput, crown: CrownProfile, wood: Wood, slices = 120): MassSlice[] {
  const step = tree.heightM / slices;
  const stem: MassSlice[] = [];
  let stemMass = 0;
  for (let i = 0; i < slices; i++) {
    const heightM = (i + 0.5) * step;
    const massKg = ((Math.PI * stemDiameterM(tree, heightM) ** 2) / 4) * step * wood.greenDensityKgM3;
    stemMass += massKg;
    stem.push({ massKg, heightM });
  }
  const share = constant(
    wood.drag.kind === 'conifer' ? 'branch mass conifer' : 'branch mass broadleaf',
  ).value;
  const widths = stem.map(({ heightM }) => crown.widthM(heightM));
  const total = widths.reduce((sum, width) => sum + width, 0);
  if (total === 0) return [...stem, { massKg: share * stemMass, heightM: crown.centroidM }];
  return stem.map(({ massKg, heightM }, i) => ({
    massKg: massKg + (share * stemMass * widths[i]!) / total,
    heightM,
  }));
}

/**
 * Moment of weights about a level, N·m, towards the lean: a straight stem leaning by `leanDeg` carries what is at
 * height z above the level out by (z - level) tan(lean).
 */
export function leanMomentNm(slices: readonly MassSlice[], leanDeg: number, levelM: number): number {
  const slope = Math.tan((leanDeg * Math.PI) / 180);
  let moment = 0;
  for (const { massKg, heightM } of slices) if (heightM > levelM) moment += massKg * (heightM - levelM);
  return constant('gravity').value * slope * moment;
}
