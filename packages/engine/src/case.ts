/**
 * What was recorded of one tree on one visit, as the engine takes it: the case file's fields with the traces
 * read in. The case file package checks and fills these; the engine trusts their shape, not their sense.
 */
import type { Consequences, FailureLikelihood, ImpactLikelihood, Protection } from './decision/words.ts';
import type { NeedlePose, Outline, RingMm, SurfaceArc } from './section/types.ts';
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

/** `poor`: shallow, gleyed or wet. `unknown` carries the whole range between the other two. */
export type Soil = 'unknown' | 'free-draining' | 'poor';

/** What a site has whatever its wind code. */
interface SiteCommon {
  /** Taken as unknown when left out. */
  soil?: Soil;
  /**
   * Return period that the basic wind speed given stands for, years. Left out: that of the code's own map, 50 for
   * EN 1991-1-4 and 700 for ASCE 7 (risk category II).
   */
  basicWindReturnYears?: number;
}

export type SiteInput = SiteCommon &
  (
    | /** `basicWindSpeedMs`: 10-minute mean at 10 m over terrain II (the code's basic wind velocity). */
    { windCode: 'EN 1991-1-4'; basicWindSpeedMs: number; terrain: EurocodeTerrain }
    /** `basicWindSpeedMs`: 3-second gust at 10 m over exposure C. */
    | { windCode: 'ASCE 7-22' | 'ASCE 7-16'; basicWindSpeedMs: number; exposure: AsceExposure }
  );

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
  /** Where a cavity opens to the outside at this section: azimuth of its middle, and its width along the bark, mm. */
  opening?: { azimuthDeg: number; widthMm: number };
  /** What the surface was found to be by eye, mallet and probe, where it was looked at. */
  surface?: SurfaceArc[];
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

/** A static load test: the moment at the ground, N·m, that tilted the root plate by `tiltDeg`. */
export interface StaticTestInput {
  /** Where the tree was pulled to. */
  directionDeg: number;
  momentNm: number;
  /** Tilt reached, degrees; the published relation holds at 0.25, and 0.1 to 0.5 is brought to it. */
  tiltDeg: number;
}

/** A cut through the roots on one side. */
export interface RootCutInput {
  /** From the stem to the middle of the cut. */
  azimuthDeg: number;
  /** From the stem's bark to the nearest point of the cut, m. */
  distanceM: number;
  /** How far round the stem the roots were cut, degrees seen from its middle; 90 when left out. */
  widthDeg?: number;
  /** Depth of the cut, m; when left out it is not known whether the deep roots were spared. */
  depthM?: number;
  /** Year of the cut, where known. No credit is taken for roots grown since. */
  year?: number;
}

/** A side on which roots cannot spread: a wall, a kerb, a building, a ditch. */
export interface RootBarrierInput {
  azimuthDeg: number;
  /** From the stem's bark, m. */
  distanceM: number;
  /** 90 when left out. */
  widthDeg?: number;
  what?: string;
}

export interface TargetInput {
  what: string;
  /** How often it is there: `OCCUPANCIES`. Another word is told of and taken as not stated. */
  occupancy?: string;
  distanceM?: number;
  directionDeg?: number;
  /** What stands between tree and target; none when left out. */
  protection?: Protection;
  /** Harm to be expected if it is struck; worked out from what it is when left out. */
  consequence?: Consequences;
  /** The part of the tree that would strike it; all parts that can reach it when left out. */
  partOfTree?: PartOfTree;
}

export type PartOfTree = 'whole tree' | 'limb';

/** What the assessor says in place of, or in agreement with, what is suggested. */
export interface JudgementInput<Word extends string> {
  value: Word;
  /** Needed where the value differs from the suggestion. */
  reason?: string;
}

/** The assessor's confirmation of the decision, or an override of it. */
export interface DecisionInput {
  /** Of the whole tree: stem or roots. */
  likelihoodOfFailure?: JudgementInput<FailureLikelihood>;
  /** For one target by its name, and for one part of the tree where it is named. */
  byTarget?: TargetJudgementInput[];
  by?: string;
  /** Day, as 2026-05-14. */
  on?: string;
  note?: string;
}

export interface TargetJudgementInput {
  /** `what` of the target. */
  target: string;
  partOfTree?: PartOfTree;
  likelihoodOfFailure?: JudgementInput<FailureLikelihood>;
  likelihoodOfImpact?: JudgementInput<ImpactLikelihood>;
  consequences?: JudgementInput<Consequences>;
}

/** What the client and the assessor make of one option of the advice. */
export interface AdviceChoiceInput {
  /** Id of the option, for example `reduce-10`. */
  option: string;
  chosen?: boolean;
  /** In the user's own words and currency. */
  cost?: string;
  /** Day by which it is to be done, as 2026-05-14, where it is not the one worked out. */
  dueOn?: string;
  note?: string;
}

export interface CaseInput {
  tree: TreeInput;
  site: SiteInput;
  sections: SectionInput[];
  flares: FlareInput[];
  signs: SignInput[];
  targets: TargetInput[];
  staticTests?: StaticTestInput[];
  rootCuts?: RootCutInput[];
  rootSpace?: RootBarrierInput[];
  /** Years that the decision speaks for; 5 when left out. */
  timeFrameYears?: number;
  decision?: DecisionInput;
  advice?: AdviceChoiceInput[];
  /** Day of the visit, as 2026-05-14. */
  visitedOn?: string;
  /** What was recorded on an earlier visit to the same tree; what it names as earlier in turn is not looked at. */
  earlier?: CaseInput;
}
