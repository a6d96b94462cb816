/** Capacity against demand. */
import type { Notice, SafetyAssessment } from '../assessment.ts';
import type { Wood } from '../reference/index.ts';
import type { AnchorageDraws } from '../roots/index.ts';
import type { DemandDraws } from '../wind/index.ts';

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
  /** Per section, the least breakage safety over the directions, one per draw: what the next drilling is sought by. */
  sectionLeastSafety: { sectionId: string; leastSafety: Float64Array }[];
  /** Per draw, the least uprooting safety over the directions. */
  uprootingLeastSafety: Float64Array;
  notices: Notice[];
}
