/**
 * Likelihood that a failed part strikes a target.
 *
 * The word comes from how often the target is there and what shields it (impact-likelihood.csv). What is out of reach is
 * not struck; what only thrown pieces can reach goes down by one word; so does a target that next to no failure falls
 * toward. A target that is often used and lies under the crown, where any fall strikes it, goes up by one. The steps are
 * proposals of this project beside the definitions of the ISA best management practices.
 */
import type { TargetRisk } from '../assessment.ts';
import type { PartOfTree, SignInput, TargetInput, TreeInput } from '../case.ts';
import { constant } from '../reference/index.ts';
import { impactLikelihood } from '../reference/tables.generated.ts';
import { DIRECTIONS } from '../wind/types.ts';
import {
  IMPACT_LIKELIHOODS,
  type ImpactLikelihood,
  OCCUPANCIES,
  type Occupancy,
  type Protection,
  stepped,
} from './words.ts';

const RADIANS = Math.PI / 180;

export interface Impact {
  occupancy: Occupancy;
  occupancyStated: boolean;
  protection: Protection;
  reach: TargetRisk['reach'];
  shareOfFalls: number | null;
  suggested: ImpactLikelihood;
  basis: string[];
}

/** Taken when the assessor states no occupancy: on the safe side of what most targets are. */
const OCCUPANCY_NOT_STATED: Occupancy = 'frequent';

function occupancyOf(target: TargetInput): { occupancy: Occupancy; stated: boolean } {
  const found = OCCUPANCIES.find((word) => word === target.occupancy?.trim().toLowerCase());
  return found ? { occupancy: found, stated: true } : { occupancy: OCCUPANCY_NOT_STATED, stated: false };
}

function baseWord(occupancy: Occupancy, protection: Protection): ImpactLikelihood {
  const row = impactLikelihood.find((each) => each.occupancy === occupancy && each.protection === protection);
  const found = IMPACT_LIKELIHOODS.find((word) => word === row?.result);
  if (!found) throw new Error(`impact-likelihood.csv: nothing for ${occupancy} and ${protection}`);
  return found;
}

const apartDeg = (a: number, b: number) => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

/**
 * Share of the failures, weighted by their chance, that fall toward a target: within the angle that the fallen crown
 * covers at its distance.
 */
export function shareTowards(
  chanceByDirection: readonly number[],
  directionDeg: number,
  distanceM: number,
  crownWidthM: number,
): number {
  const halfDeg = Math.max(180 / DIRECTIONS, Math.atan2(crownWidthM / 2, distanceM) / RADIANS);
  let toward = 0;
  let all = 0;
  chanceByDirection.forEach((chance, d) => {
    all += chance;
    if (apartDeg((d * 360) / DIRECTIONS, directionDeg) <= halfDeg) toward += chance;
  });
  return all > 0 ? toward / all : 0;
}

/** Where the whole tree's fall reaches, and what of it goes toward the target. */
function wholeTree(
  tree: TreeInput,
  target: TargetInput,
  chanceByDirection: readonly number[],
): { reach: TargetRisk['reach']; share: number | null; under: boolean; basis: string[] } {
  const { distanceM, directionDeg } = target;
  if (distanceM === undefined) {
    return {
      reach: 'distance not stated',
      share: null,
      under: false,
      basis: ['Its distance was not stated: it is taken as within reach of every fall.'],
    };
  }
  const own = constant('target reach full').value * tree.heightM;
  const thrown = constant('target reach debris').value * tree.heightM;
  const at = `It is ${distanceM} m from the stem; the tree is ${tree.heightM} m high`;
  if (distanceM > thrown) {
    return {
      reach: 'out of reach',
      share: null,
      under: false,
      basis: [`${at}: beyond one and a half tree heights nothing reaches it.`],
    };
  }
  const under = distanceM <= tree.crown.widthM / 2;
  if (under || directionDeg === undefined) {
    return {
      reach: distanceM > own ? 'thrown pieces only' : 'within reach',
      share: null,
      under,
      basis: [
        under
          ? `${at}: it lies under the crown, and a fall to any side may strike it.`
          : `${at}: it is within reach; its direction was not stated, so every fall counts.`,
      ],
    };
  }
  const share = shareTowards(chanceByDirection, directionDeg, distanceM, tree.crown.widthM);
  return {
    reach: distanceM > own ? 'thrown pieces only' : 'within reach',
    share,
    under: false,
    basis: [
      distanceM > own
        ? `${at}: only thrown pieces reach it.`
        : `${at}: it is within reach; of the failures worked out, ${Math.round(share * 100)} of 100 fall that way.`,
    ],
  };
}

/** Whether a limb over one side can fall on the target. */
function limb(
  tree: TreeInput,
  target: TargetInput,
  sign: SignInput | undefined,
): { reach: TargetRisk['reach']; basis: string[] } {
  const { distanceM, directionDeg } = target;
  const reachM = tree.crown.widthM / 2 + constant('limb reach').value;
  if (distanceM === undefined) {
    return {
      reach: 'distance not stated',
      basis: ['Its distance was not stated: it is taken as under the limb.'],
    };
  }
  if (distanceM > reachM) {
    return {
      reach: 'out of reach',
      basis: [`It is ${distanceM} m from the stem, beyond the crown's edge: no limb falls on it.`],
    };
  }
  const spread = constant('limb spread').value;
  if (
    sign?.azimuthDeg !== undefined &&
    directionDeg !== undefined &&
    apartDeg(sign.azimuthDeg, directionDeg) > spread
  ) {
    return {
      reach: 'out of reach',
      basis: [`The limb is on another side of the crown (${sign.azimuthDeg} degrees).`],
    };
  }
  return { reach: 'within reach', basis: ['It lies below the crown on the side of the limb.'] };
}

/** The suggested likelihood of impact. `limbSign` is the sign that speaks of the limb. */
export function impactOf(
  tree: TreeInput,
  target: TargetInput,
  part: PartOfTree,
  chanceByDirection: readonly number[],
  limbSign: SignInput | undefined,
): Impact {
  const { occupancy, stated } = occupancyOf(target);
  const protection = target.protection ?? 'none';
  const shield = protection === 'none' ? 'nothing shields it' : `its protection is ${protection}`;
  const use = stated
    ? `It is used ${occupancy === 'rare' ? 'rarely' : occupancy === 'constant' ? 'constantly' : `${occupancy}ly`}`
    : `How often it is used was not stated: taken as ${occupancy}`;
  const basis = [`${use}; ${shield}.`];
  const base = baseWord(occupancy, protection);
  const common = { occupancy, occupancyStated: stated, protection };
  if (part === 'limb') {
    const found = limb(tree, target, limbSign);
    basis.push(...found.basis);
    return {
      ...common,
      reach: found.reach,
      shareOfFalls: null,
      suggested: found.reach === 'out of reach' ? 'very low' : base,
      basis,
    };
  }
  const found = wholeTree(tree, target, chanceByDirection);
  basis.push(...found.basis);
  let suggested = base;
  if (found.reach === 'out of reach') suggested = 'very low';
  else if (found.reach === 'thrown pieces only') suggested = stepped(IMPACT_LIKELIHOODS, base, -1);
  else if (found.share !== null && found.share < constant('small share of falls').value) {
    suggested = stepped(IMPACT_LIKELIHOODS, base, -1);
    basis.push('Next to none of the failures fall that way: one word lower.');
  } else if (found.under && occupancy === 'frequent' && protection === 'none') {
    suggested = stepped(IMPACT_LIKELIHOODS, base, 1);
    basis.push('Often used, under the crown and open to every fall: one word higher.');
  }
  return { ...common, reach: found.reach, shareOfFalls: found.share, suggested, basis };
}
