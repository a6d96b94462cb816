/** What is known of the roots, and what they are taken to hold. */
import type { Notice, SourcedValue } from '../assessment.ts';
import type { RootBarrierInput, RootCutInput, SignInput, Soil, StaticTestInput, TreeInput } from '../case.ts';
import type { Interval } from '../trace/types.ts';

export const SOILS: readonly Soil[] = ['unknown', 'free-draining', 'poor'];

/** A root flare as drilled. */
export interface FlareSoundness {
  id: string;
  azimuthDeg: number;
  widthMm: number;
  heightMm: number;
  /** Share of the drilled wood that is sound, 0 to 1; null where the flare was not drilled. */
  soundShare: Interval | null;
}

export interface AnchorageInput {
  tree: TreeInput;
  flares: readonly FlareSoundness[];
  signs: readonly SignInput[];
  soil?: Soil;
  staticTests?: readonly StaticTestInput[];
  rootCuts?: readonly RootCutInput[];
  rootSpace?: readonly RootBarrierInput[];
}

/** Anchorage with its scatter: `draws` rows of 36 moments that would uproot, N·m, by direction of fall. */
export interface AnchorageDraws {
  draws: number;
  momentNm: Float64Array;
  /** Draws of the share of the anchorage left after unsound flares, cuts and barriers, same shape; all 1 without any. */
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
