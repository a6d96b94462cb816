/**
 * What the wind (and the tree's own weight) asks of a tree.
 *
 * Directions: `directionDeg` is where the stem bends to, so where the wind blows to, clockwise from north. There are
 * `DIRECTIONS` of them, every ten degrees from 0. Levels: the ground first, then each section in the order given.
 */
import type { Notice, SourcedValue } from '../assessment.ts';
import type { SiteInput, TreeInput } from '../case.ts';

/** Number of directions looked at, every ten degrees from north. */
export const DIRECTIONS = 36;

/** The gust over height at one site, from a wind code. */
export interface WindProfile {
  /** The code and its edition. */
  windCode: string;
  /** Peak velocity pressure at a height above ground, Pa. The gust is in it: apply no gust factor again. */
  pressurePa(heightM: number): number;
  /** Peak gust speed at a height above ground, m/s. */
  gustMs(heightM: number): number;
  /** The peak gust 10 m above open ground that the basic wind speed stands for, m/s: what a forecast speaks of. */
  openGustMs: number;
  /** Constants and choices used, each with its source. */
  values: SourcedValue[];
  notices: Notice[];
}

/** Whose demand to work out. `dynamicFactor` replaces the default of the constants table. */
export interface DemandInput {
  tree: TreeInput;
  site: SiteInput;
  /** Heights of the sections above ground, m. */
  sectionHeightsM: readonly number[];
  dynamicFactor?: number;
}

/** A slice of the sail: the crown and, below it, the bare stem. */
export interface Strip {
  fromM: number;
  toM: number;
  /** Mean width over the slice, m. */
  widthM: number;
  part: 'crown' | 'stem';
  /** Peak pressure, Pa, drag coefficient there, and force, N, at the slice's centre. */
  pressurePa: number;
  dragCoefficient: number;
  forceN: number;
  centreM: number;
  /** Its share of the wind moment at the ground, N·m. */
  momentNm: number;
}

/** How the crown's drag changes with the gust: as speed to `exponent` from `leastMs` to `topMs`, constant outside. */
export interface Streamlining {
  /** Gust at the centre of pressure for the basic wind speed, m/s. */
  gustMs: number;
  exponent: number;
  leastMs: number;
  topMs: number;
}

/** Middle estimate of the demand. */
export interface WindDemand {
  /** 0 (the ground), then the sections' heights, m. */
  levelsM: number[];
  /** Wind moment at each level, N·m, the same for every direction the wind blows to. */
  windMomentNm: number[];
  /** Moment of the leaning tree's own weight above each level, N·m, towards `leanTowardDeg`. */
  weightMomentNm: number[];
  leanTowardDeg: number;
  /** Horizontal wind force on the whole tree, N. */
  forceN: number;
  /** Peak gust at the centre of pressure, m/s, and the height of that centre, m. */
  gustMs: number;
  centreOfPressureM: number;
  crownAreaM2: number;
  openGustMs: number;
  windCode: string;
  inLeaf: boolean;
  streamlining: Streamlining;
  strips: Strip[];
  values: SourcedValue[];
  notices: Notice[];
}

/** The demand with its scatter: `draws` equally likely versions of it. */
export interface DemandDraws {
  draws: number;
  levelsM: number[];
  /** Per level, one wind moment per draw, N·m. */
  windMomentNm: Float64Array[];
  /** Per level, one self-weight moment per draw, N·m. */
  weightMomentNm: Float64Array[];
  /** Per level, `draws` rows of `DIRECTIONS` resultant moments, N·m. */
  momentNm: Float64Array[];
  leanTowardDeg: number;
  openGustMs: number;
  streamlining: Streamlining;
}
