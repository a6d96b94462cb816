/**
 * What was recorded of one tree on one visit, as the engine takes it: the case file's fields with the traces
 * read in. The case file package checks and fills these; the engine trusts their shape, not their sense.
 */
import type { NeedlePose, Outline, RingMm } from './section/types.ts';
import type { Trace } from './trace/types.ts';

/** Crown outlines seen from the side, each with its own width by height. */
export type CrownShape =
  | 'ellipse'
  | 'dome'
  | 'cone'
  | 'paraboloid'
  | 'rectangle'
  | 'rhombus'
  | 'inverted-cone';

export interface CrownInput {
  /** Height of the crown's base above ground, m. */
  baseHeightM: number;
  /** Greatest width, m. */
  widthM: number;
  shape: CrownShape;
  inLeaf: boolean;
}

export interface TreeInput {
  label: string;
  /** Botanical name; an unknown one is allowed and taken with wide defaults and a warning. */
  species: string;
  /** Stem diameter over bark at breast height, mm. */
  stemDiameterMm: number;
  heightM: number;
  /** Lean from the vertical, degrees, and the compass direction it leans towards. */
  leanDeg: number;
  leanTowardDeg: number;
  crown: CrownInput;
}

export type EurocodeTerrain = '0' | 'I' | 'II' | 'III' | 'IV';
export type AsceExposure = 'B' | 'C' | 'D';

export type SiteInput =
  /** `basicWindSpeedMs`: 10-minute mean at 10 m over terrain II (the code's basic wind velocity). */
  | { windCode: 'EN 1991-1-4'; basicWindSpeedMs: number; terrain: EurocodeTerrain }
  /** `basicWindSpeedMs`: 3-second gust at 10 m over exposure C. */
  | { windCode: 'ASCE 7-22' | 'ASCE 7-16'; basicWindSpeedMs: number; exposure: AsceExposure };

export interface DrillingInput extends NeedlePose {
  id: string;
  trace: Trace;
}

export interface SectionInput {
  id: string;
  /** Height of the section above ground, m. */
  heightM: number;
  outline: Outline;
  /** Bark thickness where it was measured or guessed, mm. */
  barkMm: number;
  drillings: DrillingInput[];
  /** What the section was seen to be once the tree was felled. Never used for the prediction, only to judge it. */
  felled?: FelledSection;
}

/** A cross-section seen after felling and traced, in the section plane (x east, y north, mm). */
export interface FelledSection {
  /** The outline over bark as it was then measured, where it differs from the one recorded standing. */
  outline?: Outline;
  /** Rings of wood without strength: hollow or decayed. They may overlap and open to the outside. */
  unsound: RingMm[];
  /** Rings of wood that has begun to decay, where it was traced. */
  incipient?: RingMm[];
  note?: string;
  /** How it was made, for example `traced from a photo`. */
  source?: string;
}

export interface FlareInput {
  id: string;
  azimuthDeg: number;
  widthMm: number;
  heightMm: number;
  drillings: DrillingInput[];
}

export interface SignInput {
  kind: string;
  where?: string;
  note?: string;
  photo?: string;
  /** Where round the stem, degrees clockwise from north, and how high above ground, m. */
  azimuthDeg?: number;
  heightM?: number;
}

export interface TargetInput {
  what: string;
  occupancy: string;
  distanceM?: number;
  directionDeg?: number;
}

export interface CaseInput {
  tree: TreeInput;
  site: SiteInput;
  sections: SectionInput[];
  flares: FlareInput[];
  signs: SignInput[];
  targets: TargetInput[];
}
