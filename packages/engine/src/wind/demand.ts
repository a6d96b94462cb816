/**
 * Middle estimate of what the wind and the tree's own weight ask of the ground and of each section.
 *
 * F = ∫ q(z) C_d(v(z)) w(z) dz and M(z_s) = ∫ q(z) C_d w(z) (z - z_s) dz over what lies above z_s: the crown's
 * silhouette with a drag coefficient that falls with speed, and the bare stem below it as a rough cylinder. q is a
 * peak (gust) pressure in both codes, so no gust factor comes on top; the dynamic factor is 1 unless it is replaced.
 */
import type { Notice, SourcedValue } from '../assessment.ts';
import type { TreeInput } from '../case.ts';
import { InputFault } from '../faults.ts';
import { constant, dragCoefficient, sourced, statusNote, type Wood, woodFor } from '../reference/index.ts';
import { type CrownProfile, crownProfile } from './crown.ts';
import { windProfile } from './profile.ts';
import { leanMomentNm, massSlices, stemDiameterM } from './stem.ts';
import type { DemandInput, Strip, WindDemand, WindProfile } from './types.ts';

/** Slices of the crown and of the bare stem: moments are within 0.01 % of the limit. */
const CROWN_SLICES = 48;
const STEM_SLICES = 8;

/** Gauss-Legendre nodes and weights on [-1, 1], five points (Abramowitz and Stegun Table 25.4). */
const NODES = [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664];
const WEIGHTS = [
  0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891,
];

/** Force on a slice and the height it acts at, from the line load f(z), N/m. */
function slice(
  fromM: number,
  toM: number,
  load: (z: number) => number,
): { forceN: number; firstMomentNm: number } {
  const half = (toM - fromM) / 2;
  const middle = (toM + fromM) / 2;
  let forceN = 0;
  let firstMomentNm = 0;
  for (let k = 0; k < NODES.length; k++) {
    const z = middle + half * NODES[k]!;
    const part = half * WEIGHTS[k]! * load(z);
    forceN += part;
    firstMomentNm += part * z;
  }
  return { forceN, firstMomentNm };
}

interface Sail {
  profile: WindProfile;
  crown: CrownProfile;
  tree: TreeInput;
  wood: Wood;
  inLeaf: boolean;
  dynamicFactor: number;
}

/** Slices of crown or stem between two heights. */
function sliced(sail: Sail, part: Strip['part'], fromM: number, toM: number, count: number): Strip[] {
  const { profile, crown, tree, wood, inLeaf, dynamicFactor } = sail;
  const stemDrag = constant('stem drag').value;
  const width = part === 'crown' ? (z: number) => crown.widthM(z) : (z: number) => stemDiameterM(tree, z);
  const drag =
    part === 'crown' ? (z: number) => dragCoefficient(wood.drag, inLeaf, profile.gustMs(z)) : () => stemDrag;
  const load = (z: number) => dynamicFactor * profile.pressurePa(z) * drag(z) * width(z);
  const strips: Strip[] = [];
  for (let i = 0; i < count; i++) {
    const low = fromM + ((toM - fromM) * i) / count;
    const high = fromM + ((toM - fromM) * (i + 1)) / count;
    const { forceN, firstMomentNm } = slice(low, high, load);
    const area = slice(low, high, width).forceN;
    const centreM = (low + high) / 2;
    strips.push({
      fromM: low,
      toM: high,
      widthM: area / (high - low),
      part,
      pressurePa: profile.pressurePa(centreM),
      dragCoefficient: drag(centreM),
      forceN,
      centreM: forceN > 0 ? firstMomentNm / forceN : centreM,
      momentNm: firstMomentNm,
    });
  }
  return strips;
}

/** Wind moment about a level from what lies above it; slices that the level cuts are cut there. */
function momentAbove(sail: Sail, levelM: number): number {
  const bareFrom = Math.min(levelM, sail.crown.baseM);
  const strips = [
    ...(sail.crown.baseM > bareFrom ? sliced(sail, 'stem', bareFrom, sail.crown.baseM, STEM_SLICES) : []),
    ...sliced(sail, 'crown', Math.max(levelM, sail.crown.baseM), sail.crown.topM, CROWN_SLICES),
  ];
  let moment = 0;
  for (const { forceN, momentNm } of strips) moment += momentNm - forceN * levelM;
  return moment;
}

function checkTree(tree: TreeInput): void {
  const within = (value: number, least: number, most: number, what: string, where: string) => {
    if (!(value >= least && value <= most)) {
      throw new InputFault(`${what} of ${value} cannot be; give a number from ${least} to ${most}.`, where);
    }
  };
  within(tree.heightM, 1, 130, 'A tree height (m)', 'tree.heightM');
  within(tree.stemDiameterMm, 20, 12000, 'A stem diameter (mm)', 'tree.stemDiameterMm');
  within(tree.leanDeg, 0, 75, 'A lean (degrees from the vertical)', 'tree.leanDeg');
  if (!Number.isFinite(tree.leanTowardDeg)) {
    throw new InputFault(
      `The lean's direction is ${tree.leanTowardDeg}; give degrees clockwise from north.`,
      'tree.leanTowardDeg',
    );
  }
}

/** Whether the crown bears leaves in the sense of the drag table, with a notice where the input cannot be so. */
function leaves(tree: TreeInput, wood: Wood): { inLeaf: boolean; notices: Notice[] } {
  if (tree.crown.inLeaf || wood.drag.kind !== 'conifer' || !wood.drag.evergreen) {
    return { inLeaf: tree.crown.inLeaf, notices: [] };
  }
  return {
    inLeaf: true,
    notices: [
      {
        severity: 'note',
        where: 'tree.crown.inLeaf',
        text: 'The species keeps its leaves, so the crown is taken in leaf although it was recorded as bare.',
      },
    ],
  };
}

function valuesUsed(sail: Sail): SourcedValue[] {
  const { profile, wood, inLeaf, crown } = sail;
  const group = wood.drag;
  const centroidGust = profile.gustMs(crown.centroidM);
  return [
    ...profile.values,
    {
      name: `drag coefficient of the crown (${group.name}, ${inLeaf ? 'in leaf' : 'bare'}) at ${centroidGust.toFixed(1)} m/s, on the still-air silhouette`,
      value: dragCoefficient(group, inLeaf, centroidGust),
      unit: '1',
      cov: Math.round(dragLogSd(wood, inLeaf) * 1000) / 1000,
      source: group.source + statusNote(group.status),
    },
    ...(inLeaf ? [] : [sourced('leaf-off drag factor'), sourced('leaf-off drag exponent')]),
    sourced('stem drag'),
    sourced('dynamic factor', sail.dynamicFactor),
    sourced('crown area'),
    sourced('wind profile'),
    ...(sail.tree.leanDeg > 0
      ? [
          sourced(wood.drag.kind === 'conifer' ? 'branch mass conifer' : 'branch mass broadleaf'),
          sourced('stem taper exponent'),
          sourced('self-weight'),
        ]
      : []),
  ];
}

/** Standard deviation of ln(drag coefficient), with that of the leaf-off factor where it applies. */
export function dragLogSd(wood: Wood, inLeaf: boolean): number {
  return inLeaf ? wood.drag.logSd : Math.hypot(wood.drag.logSd, constant('leaf-off drag factor').logSd ?? 0);
}

/**
 * Middle estimate of the demand at the ground and at each section.
 * @throws InputFault for a tree, site or section height that cannot be.
 */
export function windDemand(input: DemandInput): WindDemand {
  const { tree, site } = input;
  checkTree(tree);
  const profile = windProfile(site);
  const crown = crownProfile(tree.crown, tree.heightM);
  const wood = woodFor(tree.species);
  const { inLeaf, notices } = leaves(tree, wood);
  const dynamicFactor = input.dynamicFactor ?? constant('dynamic factor').value;
  if (!(dynamicFactor >= 0.5 && dynamicFactor <= 3)) {
    throw new InputFault(
      `A dynamic factor of ${dynamicFactor} cannot be; give a number from 0.5 to 3.`,
      'dynamicFactor',
    );
  }
  for (const [i, heightM] of input.sectionHeightsM.entries()) {
    if (!(heightM >= 0 && heightM < tree.heightM)) {
      throw new InputFault(
        `A section at ${heightM} m must lie between the ground and the tree's top at ${tree.heightM} m.`,
        `sections[${i}].heightM`,
      );
    }
  }
  const sail: Sail = { profile, crown, tree, wood, inLeaf, dynamicFactor };
  const strips = [
    ...(crown.baseM > 0 ? sliced(sail, 'stem', 0, crown.baseM, STEM_SLICES) : []),
    ...sliced(sail, 'crown', crown.baseM, crown.topM, CROWN_SLICES),
  ];
  let forceN = 0;
  let groundMoment = 0;
  for (const strip of strips) {
    forceN += strip.forceN;
    groundMoment += strip.momentNm;
  }
  const levelsM = [0, ...input.sectionHeightsM];
  const masses = massSlices(tree, crown, wood);
  const centreOfPressureM = groundMoment / forceN;
  return {
    levelsM,
    windMomentNm: levelsM.map((levelM) => (levelM === 0 ? groundMoment : momentAbove(sail, levelM))),
    weightMomentNm: levelsM.map((levelM) => leanMomentNm(masses, tree.leanDeg, levelM)),
    leanTowardDeg: tree.leanTowardDeg,
    forceN,
    gustMs: profile.gustMs(centreOfPressureM),
    centreOfPressureM,
    crownAreaM2: crown.areaM2,
    openGustMs: profile.openGustMs,
    windCode: profile.windCode,
    inLeaf,
    streamlining: {
      gustMs: profile.gustMs(centreOfPressureM),
      exponent: inLeaf ? wood.drag.exponent : constant('leaf-off drag exponent').value,
      leastMs: constant('least drag speed').value,
      topMs: wood.drag.topTestedMs,
    },
    strips,
    values: valuesUsed(sail),
    notices: [...profile.notices, ...notices],
  };
}
