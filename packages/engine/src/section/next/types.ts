/**
 * What the advice on the next drilling rests on.
 */

import type { FieldPosterior } from '../field/types.ts';
import type { NeedlePose } from '../types.ts';

/** One section as the advice on the next drilling takes it. */
export interface SectionToDrill {
  id: string;
  posterior: FieldPosterior;
  /** Safety factor of this section, least over the directions of load, one for each draw of the posterior. */
  safetyByDraw: Float64Array;
  /** The same with the wind and the wood's strength at their middle values: only the section differs between draws. */
  safetyOfSection: Float64Array;
  /** Drillings made already at this section. */
  drilled: NeedlePose[];
}

export interface NextDrillingInput {
  sections: SectionToDrill[];
  /** Safety factor below which one would act; 1.5 is the usual mark. */
  limit: number;
  /** Chance that the tree must be acted on whatever the sections hold (uprooting, for example): 0 to 1. */
  chanceOtherwise?: number;
  /** How deep the next needle reaches, mm; 400 when left out. */
  needleMm?: number;
}
