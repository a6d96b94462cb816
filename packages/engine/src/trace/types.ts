/**
 * What a drilling recorded, and what reading it yields.
 */

/** Kinds a stretch of a trace can be of, in the order used by every probability table. */
export const ZONE_KINDS = ['air', 'bark', 'sound', 'incipient', 'decayed', 'void', 'crack'] as const;

/**
 * `air` is before entry or past the far side; `bark` the bark on the way in or out; `sound`, `incipient`
 * and `decayed` are wood; `void` is a cavity inside the stem; `crack` a narrow opening a few millimetres wide.
 */
export type ZoneKind = (typeof ZONE_KINDS)[number];

/** One needle pass as recorded. Arrays have equal length; depth ascends strictly, at any spacing. */
export interface Trace {
  /** Depth along the needle, mm, strictly ascending, finite. */
  depthMm: Float64Array;
  /** Drilling resistance, percent of the drill's full scale. */
  resistancePct: Float64Array;
  /** Feed force or feed power, where the drill records it, in the drill's own unit. */
  feed?: Float64Array;
}

/** A stretch of a trace of one kind. Zones of one trace are in order, touch, and cover the trace. */
export interface Zone {
  kind: ZoneKind;
  fromMm: number;
  toMm: number;
  /** Posterior probability, averaged over the stretch, that the wood is of this kind: 0 to 1. */
  confidence: number;
}

/** What a number may be: the 5 %, 50 % and 95 % points of its distribution. */
export interface Interval {
  p05: number;
  p50: number;
  p95: number;
}

/** The level that sound wood has in this tree, against which the other kinds are told. */
export interface ReferenceLevel {
  /** Percent of full scale, with the shaft's friction taken off. */
  levelPct: number;
  /** Standard deviation of that level, percent of full scale. */
  sdPct: number;
  /** Whether it rests on this trace alone or was shared among the tree's drillings. */
  restsOn: 'this trace' | 'all drillings of the tree';
}

/** The trace's zones with all that the next stages and the figures need. */
export interface TraceReading {
  zones: Zone[];
  /**
   * Sound wood between the cambium (end of the bark) and the first wood that is not sound, mm along the needle.
   * When no unsound wood was met this is the sound wood that was drilled, and `residualWallAtLeast` is true.
   */
  residualWallMm: number;
  residualWallInterval: Interval;
  /** True when the needle met no unsound wood: the wall is this thick or thicker. */
  residualWallAtLeast: boolean;
  /** Depth at which the needle entered the bark, and at which it entered the wood, mm along the needle. */
  barkFromMm: number;
  woodFromMm: number;
  /** Even depth grid (mm along the needle) on which the probabilities stand. */
  gridMm: Float64Array;
  /** `gridMm.length` rows of `ZONE_KINDS.length` probabilities, row after row; each row sums to 1. */
  probability: Float64Array;
  /** Level on the grid with spikes tamed and `frictionPct` taken off, percent of full scale. */
  levelPct: Float64Array;
  /**
   * Modelled floor on the grid, percent of full scale: the drill's idle level and the friction of the shaft, which
   * grows only in wood. A void reads at this floor.
   */
  frictionPct: Float64Array;
  reference: ReferenceLevel;
  /** Anything a reader should know before relying on this reading. */
  warnings: string[];
}
