/** Capacity against demand. */
import type { Notice, SafetyAssessment } from '../assessment.ts';
import type { Wood } from '../reference/index.ts';
import type { AnchorageDraws } from '../roots/index.ts';
import type { DemandDraws, Streamlining } from '../wind/index.ts';
import type { Meeting } from './compare.ts';

/** What the section part knows of one section, by draw. */
export interface SectionStrength {
  id: string;
  /** `draws` rows of 36: capacity as it is over capacity all sound, by direction. */
  remaining: Float64Array;
  /** Section modulus of the wood outline all sound, mm³, by direction. */
  intactModulusMm3: Float64Array;
}

/** `sections` in the order of the demand's levels after the ground. */
export interface SafetyInput {
  sections: readonly SectionStrength[];
  demand: DemandDraws;
  anchorage: AnchorageDraws;
  wood: Wood;
}

export interface SafetyResult {
  assessment: SafetyAssessment;
  /**
   * Per section, the least breakage safety over the directions, one per draw, and the same with wind, weight and wood strength
   * at their middle values, so that only what is left of the section differs: what the next drilling is sought by.
   */
  sectionLeastSafety: { sectionId: string; leastSafety: Float64Array; leastSafetyOfSection: Float64Array }[];
  /** Per draw, the least uprooting safety over the directions. */
  uprootingLeastSafety: Float64Array;
  /** The draws behind the figures, for the chance of failure and for what pruning would change. */
  drawn: SafetyDraws;
  notices: Notice[];
}

/** One mode of failure by draw. `places`: the sections, or the ground alone for uprooting. */
export interface ModeDraws {
  places: Meeting[];
  /** `draws` rows of 36, least over the places: multiple of the wind's moment at which the capacity is reached. */
  loadRatio: Float64Array;
  leastLoadRatio: Float64Array;
  leastSafety: Float64Array;
  /** Per draw, the direction (0 to 35) of the least safety. */
  leastDirection: Uint8Array;
}

export interface SafetyDraws {
  draws: number;
  breakage: ModeDraws;
  uprooting: ModeDraws;
  openGustMs: number;
  streamlining: Streamlining;
  /** Signs and findings by which the anchorage cannot be decided on, and where a static load test carries it. */
  anchorageDoubts: readonly string[];
  anchorageTested: readonly boolean[];
}
