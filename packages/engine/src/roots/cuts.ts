/**
 * Roots that are cut or cannot spread, by side: the share of the anchorage's roots lost for each direction of fall.
 *
 * Roots are taken as spread evenly round the stem. A cut at the stem takes all roots of its arc, one at three stem
 * diameters none (Smiley 2008: within three diameters the force to pull the tree by a degree fell measurably, by 35 % for
 * a cut along the stem); between, an even fall is our proposal. A cut shallower than the roots spares a share; when its
 * depth is not known, half to all of the roots in reach are taken as cut. A barrier may have turned the roots aside
 * or kept them short, so it is taken to cost anything between nothing and what a cut there would.
 */
import type { RootBarrierInput, RootCutInput } from '../case.ts';
import { InputFault } from '../faults.ts';
import type { Random } from '../random.ts';
import { constant } from '../reference/index.ts';
import { stratifiedUniforms } from '../wind/sampling.ts';
import { DIRECTIONS } from '../wind/types.ts';

const RADIANS = Math.PI / 180;
/** Sides looked at round the stem. */
const SIDES = 360;

/** Draws of the share of the roots lost, for each direction of fall. */
export interface CutLoss {
  /** `draws` rows of 36, 0 to 1; null when nothing was cut. */
  lost: Float64Array | null;
  /** Middle share over the directions: the greatest, and how many cuts and barriers lie within reach of the stem. */
  greatest: number;
  withinReach: number;
}

/** Share of the roots of a cut's arc that it takes, by its distance from the stem, 1 at the stem to 0 at three diameters. */
export function cutReach(distanceM: number, stemDiameterM: number): number {
  return Math.max(0, 1 - distanceM / (constant('root cut reach').value * stemDiameterM));
}

/** Share of the anchorage's roots within an arc, for each of the 36 directions of fall. */
export function arcShares(azimuthDeg: number, widthDeg: number): Float64Array {
  const tensionShare = constant('anchorage tension share').value;
  const shares = new Float64Array(DIRECTIONS);
  for (let d = 0; d < DIRECTIONS; d++) {
    let tension = 0;
    let compression = 0;
    for (let k = 0; k < SIDES; k++) {
      const sideDeg = ((k + 0.5) * 360) / SIDES;
      const apart = Math.abs(((((sideDeg - azimuthDeg) % 360) + 540) % 360) - 180);
      if (apart > widthDeg / 2) continue;
      const pull = Math.cos((sideDeg - (d * 360) / DIRECTIONS) * RADIANS);
      if (pull < 0) tension -= pull;
      else compression += pull;
    }
    // The cosine over half a circle, in steps of a degree, sums to 2 / (step in radians).
    const half = 2 / ((2 * Math.PI) / SIDES);
    shares[d] = (tensionShare * tension + (1 - tensionShare) * compression) / half;
  }
  return shares;
}

/** One cut or barrier: its arc's shares, and the share of the arc lost between two bounds. */
interface Loss {
  shares: Float64Array;
  least: number;
  most: number;
}

function check(list: readonly (RootCutInput | RootBarrierInput)[], name: string): void {
  list.forEach((each, i) => {
    if (!Number.isFinite(each.azimuthDeg)) {
      throw new InputFault('Give the side as degrees clockwise from north.', `${name}[${i}].azimuthDeg`);
    }
    if (!(each.distanceM >= 0 && each.distanceM <= 100)) {
      throw new InputFault(
        `A distance of ${each.distanceM} m from the stem cannot be; give 0 to 100 m.`,
        `${name}[${i}].distanceM`,
      );
    }
    if (each.widthDeg !== undefined && !(each.widthDeg > 0 && each.widthDeg <= 360)) {
      throw new InputFault(
        `A width of ${each.widthDeg} degrees cannot be; give the arc round the stem, above 0 to 360.`,
        `${name}[${i}].widthDeg`,
      );
    }
    if ('depthM' in each && each.depthM !== undefined && !(each.depthM >= 0 && each.depthM <= 20)) {
      throw new InputFault(`A cut ${each.depthM} m deep cannot be; give 0 to 20 m.`, `${name}[${i}].depthM`);
    }
  });
}

/**
 * Draws of the share of the roots lost to cuts and barriers.
 * @throws InputFault for a side, distance, width or depth that cannot be.
 */
export function cutLoss(
  cuts: readonly RootCutInput[],
  barriers: readonly RootBarrierInput[],
  stemDiameterMm: number,
  random: Random,
  draws: number,
): CutLoss {
  check(cuts, 'rootCuts');
  check(barriers, 'rootSpace');
  const stemM = stemDiameterMm / 1000;
  const width = constant('root cut width').value;
  const deep = constant('root depth').value;
  const losses: Loss[] = [
    ...cuts.map((cut) => {
      const reach = cutReach(cut.distanceM, stemM);
      const share = cut.depthM === undefined ? null : Math.min(1, cut.depthM / deep);
      return {
        shares: arcShares(cut.azimuthDeg, cut.widthDeg ?? width),
        least: reach * (share ?? 0.5),
        most: reach * (share ?? 1),
      };
    }),
    ...barriers.map((barrier) => ({
      shares: arcShares(barrier.azimuthDeg, barrier.widthDeg ?? width),
      least: 0,
      most: cutReach(barrier.distanceM, stemM),
    })),
  ].filter((loss) => loss.most > 0);
  if (losses.length === 0) return { lost: null, greatest: 0, withinReach: 0 };
  const uniforms = losses.map((_, k) => stratifiedUniforms(random.fork(`cut ${k}`), draws));
  const lost = new Float64Array(draws * DIRECTIONS);
  const add = (row: number, take: (loss: Loss, k: number) => number, into: Float64Array) => {
    losses.forEach((loss, k) => {
      const share = take(loss, k);
      for (let d = 0; d < DIRECTIONS; d++)
        into[row + d] = Math.min(1, into[row + d]! + share * loss.shares[d]!);
    });
  };
  for (let i = 0; i < draws; i++) {
    add(i * DIRECTIONS, ({ least, most }, k) => least + (most - least) * uniforms[k]![i]!, lost);
  }
  const middle = new Float64Array(DIRECTIONS);
  add(0, ({ least, most }) => (least + most) / 2, middle);
  return { lost, greatest: middle.reduce((a, b) => Math.max(a, b), 0), withinReach: losses.length };
}
