/**
 * What two visits to one tree say together. Depths are mm along the needle; movement of a front is positive towards the
 * bark, which is the bad way; every interval is the 5, 50 and 95 % points.
 */
import type { DrillingAssessment, SafetyAssessment, SectionAssessment, SourcedValue } from '../assessment.ts';
import type { DirectionalInterval } from '../section/types.ts';
import type { Interval } from '../trace/types.ts';

/**
 * `moved`: towards the bark, beyond what both readings and a second hole could feign. `not moved`: within error.
 * `cannot tell`: the error is too wide, or one needle met no front. `no front`: neither needle met one.
 */
export type FrontVerdict = 'moved' | 'not moved' | 'cannot tell' | 'no front';

/** How the two traces were laid over each other. */
export interface Alignment {
  /** Chance that the ring pattern of the two answers to each other, 0 to 1. */
  matchedChance: number;
  /** Correlation of the ring patterns at the best fit, and the wood over which they were compared, mm. */
  correlation: number;
  overlapMm: number;
  /** A depth of the earlier trace, less its cambium, times `stretch`, plus `shiftMm`, is the later depth less its cambium. */
  shiftMm: Interval;
  stretch: number;
  /** `ring pattern` where the match carries it, else `cambium entry` with the growth that is usual. */
  restsOn: 'ring pattern' | 'cambium entry';
}

/** One drilling and its repeat. */
export interface DrillingChange {
  /** `sections.s1` or `flares.f1`, as in the later visit, and the ids in both. */
  place: string;
  placeId: string;
  inSection: boolean;
  earlierId: string;
  laterId: string;
  /** The two readings, the earlier with its trace as drawn. */
  earlier: DrillingAssessment;
  later: DrillingAssessment;
  alignment: Alignment;
  /** Wood laid on at the cambium between the visits, mm along the needle. */
  growthMm: Interval;
  /** Which of the two needles met a front. */
  front: 'both' | 'only now' | 'only then' | 'neither';
  /** Movement of the front towards the bark, mm; null where no two fronts can be compared. */
  frontMm: Interval | null;
  /** For a front met only now: it has moved at least about this far, mm (5 % point). */
  frontAtLeastMm: number | null;
  verdict: FrontVerdict;
  /** Chances that the front moved towards the bark, stood (within `tellingMm` either way), or lies deeper; null without two fronts. */
  chance: { outward: number; stood: number; deeper: number } | null;
  wallThenMm: Interval;
  wallNowMm: Interval;
  /** Residual wall now less then at the same place, mm; null where either needle met no end of the wall. */
  wallDifferenceMm: Interval | null;
  /** Speed of the front, mm a year, measured and with what is known of such fronts; null without dates. */
  rateMmYear: Interval | null;
  /** One sentence for the reader. */
  text: string;
}

export interface UnmatchedDrilling {
  visit: 'earlier' | 'later';
  place: string;
  id: string;
  text: string;
}

/** A section that was drilled on both visits. */
export interface SectionChange {
  earlierId: string;
  laterId: string;
  /** Strength by direction over that of the wood all sound: now less then, draw by draw. */
  remainingDifference: DirectionalInterval[];
  /** Capacity now over capacity then, growth counted in, by direction. */
  capacityRatio: DirectionalInterval[];
  /** Mean soundness now less then, on the mesh of the later section's picture; null where the wood is new. */
  soundnessDifference: (number | null)[];
  /** Mean radius over bark, mm, from the outlines as recorded. */
  meanRadiusThenMm: number;
  meanRadiusNowMm: number;
}

/** Safety of one mode: then, now, and the difference draw by draw, in the direction that is now worst. */
export interface ModeSafetyChange {
  directionDeg: number;
  before: Interval;
  now: Interval;
  difference: Interval;
  /** Chance that it is lower now. */
  chanceLower: number;
}

export interface SafetyChange {
  before: SafetyAssessment;
  breakage: ModeSafetyChange;
  uprooting: ModeSafetyChange;
  breakageDifference: DirectionalInterval[];
  uprootingDifference: DirectionalInterval[];
  /**
   * The same with the crown, the site and the tree's measures of the earlier visit held: what the drilled wood alone has
   * changed. Null where nothing of them was recorded otherwise.
   */
  breakageWithLoadHeld: ModeSafetyChange | null;
}

/** Something recorded otherwise than on the earlier visit. */
export interface RecordedChange {
  /** `tree`: may have changed or may have been measured anew; `input`: a choice of the assessor; the rest as named. */
  kind: 'tree' | 'input' | 'sign' | 'target' | 'roots';
  where: string;
  what: string;
  before: string | null;
  now: string | null;
}

/** When breaking safety passes below a mark. */
export interface Crossing {
  limit: number;
  /**
   * Years from the later visit by which the chance of being below has reached 5, 50 and 95 %: `null` when not within the
   * forecast, 0 when it already has.
   */
  earlyYears: number | null;
  middleYears: number | null;
  lateYears: number | null;
  chanceNow: number;
  /** Chance of being below by the next inspection advised, and at the end of the forecast. */
  chanceByNextVisit: number;
  chanceAtEnd: number;
}

export interface Forecast {
  years: number;
  /** Breaking safety in the direction that is weakest at that time, by years from the later visit. */
  safety: ({ year: number; directionDeg: number } & Interval)[];
  crossings: Crossing[];
  /** Months to the next inspection as advised. */
  nextVisitMonths: number;
  /** Speed of the fronts and growth that it rests on, mm a year, per section. */
  rates: { sectionId: string; frontMmYear: Interval; growthMmYear: Interval; measured: number }[];
  basis: string[];
}

export interface ChangeAssessment {
  earlierOn: string | null;
  laterOn: string | null;
  /** Years between the visits; null where a date is missing. */
  years: number | null;
  tellingMm: number;
  drillings: DrillingChange[];
  unmatched: UnmatchedDrilling[];
  sections: SectionChange[];
  /** Sections as they were assessed then, for drawing beside the present ones. */
  sectionsThen: SectionAssessment[];
  safety: SafetyChange;
  /** Null where a date is missing or no section was drilled on both visits. */
  forecast: Forecast | null;
  recorded: RecordedChange[];
  /** What changed, in plain sentences, most important first. */
  summary: string[];
  values: SourcedValue[];
}
