/** What is known of the roots, and what they are taken to hold. */
import type { Notice, SourcedValue } from '../assessment.ts';
import type { SignInput, TreeInput } from '../case.ts';
import type { Interval } from '../trace/types.ts';

export const SOILS = ['unknown', 'free-draining', 'poor'] as const;

/** `poor`: shallow, gleyed or wet. `unknown` carries the whole range between the other two. */
export type Soil = (typeof SOILS)[number];

/** A root flare as drilled. */
export interface FlareSoundness {
  id: string;
  azimuthDeg: number;
  widthMm: number;
  heightMm: number;
  /** Share of the drilled wood that is sound, 0 to 1; null where the flare was not drilled. */
  soundShare: Interval | null;
}

/** A static load test: the moment at the ground that tilted the root plate by `tiltDeg`, N·m. */
export interface StaticLoadTest {
  /** Where the tree was pulled to. */
  directionDeg: number;
  momentNm: number;
  /** Tilt reached, degrees; the relation holds at 0.25. */
  tiltDeg: number;
}

export interface AnchorageInput {
  tree: TreeInput;
  flares: readonly FlareSoundness[];
  signs: readonly SignInput[];
  soil?: Soil;
  staticTests?: readonly StaticLoadTest[];
}

/** Anchorage with its scatter: `draws` rows of 36 moments that would uproot, N·m, by direction of fall. */
export interface AnchorageDraws {
  draws: number;
  momentNm: Float64Array;
  /** Draws of the share of the anchorage that is left after unsound flares, same shape; all 1 when none was drilled. */
  remaining: Float64Array;
  restsOn: 'size' | 'size and flares' | 'static load test';
  /** Per direction, whether a static load test carries the estimate there. */
  tested: boolean[];
  /** What it rests on, one sentence. */
  basis: string;
  /** Evidence that by itself makes the estimate too thin to decide on (heave, cut roots, deep loss of flares). */
  doubts: string[];
  values: SourcedValue[];
  notices: Notice[];
}
