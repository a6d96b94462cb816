/**
 * What an assessment says. Everything a figure, a report or a screen prints comes from here.
 * The JSON of `standfast assess --json` is this document, with numbers rounded.
 */
import type { PartOfTree } from './case.ts';
import type { ChangeAssessment } from './change/types.ts';
import type {
  Consequences,
  EventLikelihood,
  FailureLikelihood,
  ImpactLikelihood,
  Occupancy,
  Protection,
  Risk,
} from './decision/words.ts';
import type { DirectionalInterval, SoundnessPicture, SurfaceArc } from './section/types.ts';
import type { Interval, ReferenceLevel, Zone } from './trace/types.ts';

/** Something the reader must know, where it is, and what to do about it. */
export interface Notice {
  severity: 'note' | 'caution' | 'serious';
  /** What it concerns, for example `sections.s1.drillings.d3` or `tree.species`. */
  where: string;
  text: string;
}

/** One of the trade's published rules, evaluated. `met` is null where the rule does not apply. */
export interface Criterion {
  name: string;
  source: string;
  value: number | null;
  limit: number;
  /** What value and limit are: for example `t/R` (a least) or `strength loss` (a most). */
  quantity: string;
  met: boolean | null;
  /** What the rule ignores or why it does not apply, one sentence. */
  note: string;
}

export interface DrillingAssessment {
  id: string;
  azimuthDeg: number;
  offRadialDeg: number;
  downDeg: number;
  zones: Zone[];
  residualWallMm: number;
  residualWallIntervalMm: Interval;
  residualWallAtLeast: boolean;
  barkFromMm: number;
  woodFromMm: number;
  reference: ReferenceLevel;
  /**
   * The trace as drawn: at most a few hundred columns, each with the least and greatest reading in it,
   * so that no spike is lost; and the modelled friction there.
   */
  drawn: { depthMm: number[]; lowPct: number[]; highPct: number[]; frictionPct: number[] };
  warnings: string[];
}

export interface SectionAssessment {
  id: string;
  heightM: number;
  /** The outline over bark and the cambium, as rings of [x east, y north], mm. */
  outlineMm: [number, number][];
  cambiumMm: [number, number][];
  drillings: DrillingAssessment[];
  /** Least section modulus over all directions of the wood outline if it were all sound, m³. */
  intactModulusM3: number;
  /** The same by direction, every 10 degrees, m³. */
  intactModulusByDirectionM3: { directionDeg: number; value: number }[];
  /** Capacity of the section as it is over the capacity of the same wood outline all sound. */
  remaining: DirectionalInterval[];
  criteria: Criterion[];
  soundness: SoundnessPicture;
  /** What the surface was found to be where it was looked at, a recorded opening among it; left out when nothing was noted. */
  surface?: SurfaceArc[];
  /** Share of the wood's area that is sound. */
  soundShare: Interval;
  /** The prediction held against the felled section, where that was recorded. */
  felled?: FelledAssessment;
}

/** An interval and the truth it was to hold. */
export interface JudgedInterval extends Interval {
  truth: number;
  /** Whether the truth lies from p05 to p95. */
  inside: boolean;
  /** Middle estimate less truth: above 0 the prediction was too good. */
  error: number;
}

export interface JudgedDirection extends JudgedInterval {
  directionDeg: number;
}

/** One drilling's residual wall against the traced edge along its needle, mm. */
export interface JudgedWall {
  drillingId: string;
  azimuthDeg: number;
  /** As read from the trace, and whether the needle met no end of it. */
  readMm: number;
  readAtLeast: boolean;
  /** Along the needle from the cambium to the traced edge; where none was met, the wood that the needle passed. */
  trueMm: number;
  trueAtLeast: boolean;
  /** Read less true where either met an edge; null where neither did. */
  errorMm: number | null;
  /** `edge`: both met one; `none`: neither; `missed`: the trace shows none; `false alarm`: the truth has none. */
  finding: 'edge' | 'none' | 'missed' | 'false alarm';
}

/** A prediction against the felled section. */
export interface FelledAssessment {
  source: string;
  note: string;
  /** The felled outline over bark and its cambium, and what was traced, as rings of [x east, y north], mm. */
  outlineMm: [number, number][];
  cambiumMm: [number, number][];
  unsoundMm: [number, number][][];
  incipientMm: [number, number][][];
  /** Share of its strength that incipient wood is taken to keep; null where none was traced. */
  incipientStrength: number | null;
  /** Capacity over that of the same wood all sound, every 10 degrees. */
  remaining: JudgedDirection[];
  /** Where the prediction was lowest: the figure a reader went by. */
  weakest: JudgedDirection;
  /** Where the section was in truth weakest. */
  weakestInTruth: JudgedDirection;
  /** Share of the directions whose truth lies inside. */
  insideShare: number;
  soundShare: JudgedInterval;
  /** Which edge the walls are measured to: of wood less than sound where incipient wood was traced, else without strength. */
  wallsTo: 'first loss' | 'no strength';
  walls: JudgedWall[];
  warnings: string[];
}

export interface FlareAssessment {
  id: string;
  azimuthDeg: number;
  widthMm: number;
  heightMm: number;
  drillings: DrillingAssessment[];
  /** Share of the drilled wood that is sound; null where the flare was not drilled. */
  soundShare: Interval | null;
}

/** A value used, with its source, so that every number can be opened. */
export interface SourcedValue {
  name: string;
  value: number;
  unit: string;
  /** Standard deviation as a share of the value, where there is one. */
  cov?: number;
  source: string;
}

export interface WindAssessment {
  /** Bending moment at the ground, middle estimate in the worst direction, N·m (wind and own weight). */
  momentNm: number;
  momentIntervalNm: Interval;
  /** The wind's part of it, N·m, and the part of self-weight through lean, N·m. */
  windMomentNm: number;
  selfWeightMomentNm: number;
  /** Peak gust at the crown's centre of pressure, m/s. */
  gustMs: number;
  centreOfPressureM: number;
  crownAreaM2: number;
  windCode: string;
  /** Middle estimate by direction at the ground, N·m. */
  byDirection: DirectionalInterval[];
  /** Moment at each section by direction, N·m. */
  atSections: { sectionId: string; heightM: number; byDirection: DirectionalInterval[] }[];
  /** Strips of the crown from bottom to top: height, width, gust pressure, share of the moment. */
  strips: { fromM: number; toM: number; widthM: number; pressurePa: number; momentNm: number }[];
  values: SourcedValue[];
}

export interface WoodAssessment {
  /** Name as given and the row of the table used; null when wide defaults were taken. */
  species: string;
  matched: string | null;
  values: SourcedValue[];
}

export interface SafetyGoverning extends Interval {
  mode: 'breakage' | 'uprooting';
  directionDeg: number;
  /** The section that governs when the mode is breakage. */
  sectionId: string | null;
}

export interface SafetyAssessment {
  /** Least over the sections, by direction: capacity over demand. */
  breakage: DirectionalInterval[];
  uprooting: DirectionalInterval[];
  governing: SafetyGoverning;
  /** Chance that the safety factor of the governing mode is below 1, and below the usual mark of 1.5. */
  chanceBelow1: number;
  chanceBelow1_5: number;
  /** Gust at 10 m over open ground at which demand meets capacity, m/s, by mode. */
  criticalGustMs: { breakage: Interval; uprooting: Interval };
  /** What anchorage rests on, in one sentence, and whether the evidence is too thin to decide on it. */
  anchorageBasis: string;
  anchorageTooThin: boolean;
  values: SourcedValue[];
}

/** A place looked at for the next drilling, level, with the better of the headings looked at from there. */
export interface DrillingCandidate {
  sectionId: string;
  azimuthDeg: number;
  /** Heading clockwise from the line to the pith, seen from above. */
  offRadialDeg: number;
  /** Expected drop in the chance of a wrong keep-or-act decision, as a share of the present chance. */
  worth: number;
  /** Expected drop in p (1 − p), p being the chance that the tree must be acted on, as a share of it now. */
  doubtWorth: number;
}

export type NextDrilling =
  | (DrillingCandidate & {
      stop?: false;
      why: string;
      /** Every place looked at, best first. */
      candidates: DrillingCandidate[];
    })
  | {
      stop: true;
      why: string;
      /** Every place looked at, best first. */
      candidates?: DrillingCandidate[];
    };

/** A drilling advised before any was made. The needle heads for the centre of the stem (off-radial 0). */
export interface PlannedDrilling {
  /** Place in the order of work, from 1. */
  order: number;
  at: 'section' | 'flare';
  /** Id of the section or flare. */
  placeId: string;
  azimuthDeg: number;
  /** Height above ground at which the needle enters, m. */
  heightM: number;
  offRadialDeg: 0;
  downDeg: number;
  why: string;
}

/** Where to begin: how many drillings, where, in which order and why. */
export interface FirstDrillings {
  sectionId: string;
  drillings: PlannedDrilling[];
  /** Why so many, and why there. */
  why: string;
  /** The least depth along a level needle that is worth a hole, mm. */
  leastDepthMm: number;
  /** The rules followed, each with where it is from. */
  rules: { text: string; source: string }[];
  /** What could not be taken into account, and what would mend it. */
  notes: string[];
}

/** A chance from the draws: all of them together (`mean`), and how far they lie apart for not knowing the tree. */
export interface Chance extends Interval {
  mean: number;
}

/** Chance of failure by one mode. A year's strongest gust is taken to blow toward the direction named. */
export interface ModeChance {
  mode: 'breakage' | 'uprooting';
  /** Direction of the wind in which failure is likeliest. */
  directionDeg: number;
  /** With each year's strongest gust from the side that is worst for the tree (differs by draw). */
  perYear: Chance;
  inTimeFrame: Chance;
  /** With gusts from all sides alike. */
  evenPerYear: number;
  evenInTimeFrame: number;
  /** With each year's strongest gust toward this direction. */
  byDirection: { directionDeg: number; perYear: number; inTimeFrame: number }[];
}

/** A word suggested, what the assessor said of it, and which holds. Both are kept and printed. */
export interface Judged<Word extends string> {
  suggested: Word;
  /** The assessor's word; null when nothing was said. */
  assessor: Word | null;
  reason: string | null;
  /** What counts from here on. */
  taken: Word;
  /** `override refused`: another word without a reason, so the suggestion holds and a notice says so. */
  standing: 'suggested' | 'confirmed' | 'overridden' | 'override refused';
}

/** What one recorded sign means for the decision. */
export interface SignReading {
  /** Place in the case's list of signs. */
  index: number;
  /** As recorded: what, and where. */
  sign: string;
  bearsOn: 'breakage' | 'uprooting' | 'limb' | 'decay' | 'failure begun';
  text: string;
  /** Least likelihood of failure once it is there; null when it sets none. */
  floor: FailureLikelihood | null;
  source: string;
}

/** Risk of one target and one part of the tree. */
export interface TargetRisk {
  /** Place in the case's list of targets, and its name. */
  index: number;
  target: string;
  part: PartOfTree;
  occupancy: Occupancy;
  occupancyStated: boolean;
  protection: Protection;
  distanceM: number | null;
  directionDeg: number | null;
  /** Whether the part can strike it: itself, by thrown pieces only, or not at all. */
  reach: 'within reach' | 'thrown pieces only' | 'out of reach' | 'distance not stated';
  /** Share of the failures that fall toward it, of all directions; null when its direction was not stated or any fall strikes it. */
  shareOfFalls: number | null;
  likelihoodOfFailure: Judged<FailureLikelihood>;
  likelihoodOfImpact: Judged<ImpactLikelihood>;
  /** Likelihood that it fails and strikes the target (first matrix). */
  event: EventLikelihood;
  consequences: Judged<Consequences>;
  /** Second matrix. */
  risk: Risk;
  /** The same by the suggestions alone. */
  suggestedRisk: Risk;
  /** How each word came about, one sentence each. */
  basis: string[];
}

export interface DecisionAssessment {
  timeFrameYears: number;
  timeFrameBasis: string;
  /** Mode and direction whose safety governs, as in `safety.governing`. */
  governing: SafetyGoverning;
  /** Chance of failure, either mode, as for `ModeChance`. */
  chance: {
    perYear: Chance;
    inTimeFrame: Chance;
    evenPerYear: number;
    evenInTimeFrame: number;
    /** Within the time frame from the worst side, given that the tree has stood `stoodYears` much as it is now. */
    inTimeFrameHavingStood: number;
    stoodYears: number;
    breakage: ModeChance;
    uprooting: ModeChance;
    /** What it rests on and how far to trust it. */
    basis: string[];
  };
  /** Of the whole tree, stem or roots. */
  likelihoodOfFailure: Judged<FailureLikelihood>;
  /** Why it is suggested, one sentence each. */
  likelihoodReasons: string[];
  /** Said wherever the suggested likelihood is shown. */
  standing: string;
  /** Gusts at 10 m over open ground that return every year and every 50 years, m/s. */
  yearlyGustMs: number;
  fiftyYearGustMs: number;
  signs: SignReading[];
  targets: TargetRisk[];
  /** The highest of the targets' risks, never averaged; `risk` null without a target. */
  overall: { risk: Risk | null; suggestedRisk: Risk | null; target: string | null; part: PartOfTree | null };
  /** Who confirmed or overrode, when, and what they add; null when nobody did. */
  assessor: { by: string | null; on: string | null; note: string | null } | null;
  /** The decision in plain words, for the owner. */
  reasons: string[];
  values: SourcedValue[];
}

/** What an option would change, at the mode and direction that govern before and after. */
export interface AdviceEffect {
  /** Relief of the wind's moment at the ground, as a share, least to most. */
  relief: Interval;
  /** By the silhouette's area alone, and by the foliage's mass; the published evidence goes with the mass. */
  reliefByArea: number;
  reliefByMass: number;
  /** Share of the foliage taken off. */
  foliageShare: number;
  safetyBefore: SafetyGoverning;
  safetyAfter: SafetyGoverning;
  /** Share of the draws whose least safety reaches the wanted one. */
  confidenceBefore: number;
  confidenceAfter: number;
  chanceInTimeFrameBefore: number;
  chanceInTimeFrameAfter: number;
}

export interface AdviceOption {
  /** Id of the option's row in advice-options.csv. */
  id: string;
  what: string;
  /** Why it is (or is not) for this tree, one sentence each. */
  why: string[];
  effect: AdviceEffect | null;
  /** Highest risk that is left once it is done, by the same matrices; null where it cannot be told or without a target. */
  residualRisk: Risk | null;
  residualLikelihood: FailureLikelihood | null;
  limits: string;
  /** False when it goes beyond what pruning standards allow in one season. */
  permissible: boolean;
  priority: 'first' | 'advised' | 'possible' | 'not advised';
  /** By when, months from the visit; null for an option that is not advised. */
  byMonths: number | null;
  source: string;
  /** From the case: chosen or not, cost and note in the user's words. */
  chosen: boolean | null;
  cost: string | null;
  /** Day set by the user in place of `byMonths`. */
  dueOn: string | null;
  note: string | null;
}

/** The least crown reduction that reaches the wanted safety with the wanted confidence. */
export interface LeastPruning {
  wantedSafety: number;
  wantedConfidence: number;
  /** Share of the draws that reach it as the tree stands. */
  confidenceNow: number;
  /** Reduction of the crown's height and spread, 0 to 1; null when none that is permissible reaches it. */
  share: number | null;
  topM: number | null;
  foliageShare: number | null;
  /** The most that is permissible, and the confidence it gives. */
  mostShare: number;
  confidenceAtMost: number;
  /** Safety after the least, or after the most permissible when that does not reach. */
  safetyAfter: SafetyGoverning;
  /** From no reduction to the most permissible, in even steps: what each would reach. */
  curve: { share: number; confidence: number; safety: Interval }[];
  text: string;
}

export interface Reinspection {
  months: number;
  why: string[];
  /** Events after which to look sooner. */
  sooner: string[];
  /** Years until the wall at the weakest drilling thins to the wall limit, by scenario; null when it never does. */
  wallYears: { drillingId: string; slow: number | null; middle: number | null; fast: number | null } | null;
  values: SourcedValue[];
}

export interface AdviceAssessment {
  /** Best first. */
  options: AdviceOption[];
  leastPruning: LeastPruning;
  reinspection: Reinspection;
}

export interface Assessment {
  format: 'standfast-assessment';
  version: 1;
  engineVersion: string;
  seed: number;
  draws: number;
  sections: SectionAssessment[];
  flares: FlareAssessment[];
  wind: WindAssessment;
  wood: WoodAssessment;
  safety: SafetyAssessment;
  decision: DecisionAssessment;
  advice: AdviceAssessment;
  nextDrilling: NextDrilling;
  /** Where to begin, for each section that has no drilling yet; left out when all have. */
  firstDrillings?: FirstDrillings[];
  /** What has changed since the earlier visit, where the case names one. */
  change?: ChangeAssessment;
  notices: Notice[];
  /** Every source cited by a value, a criterion or a method, once. */
  sources: string[];
}
