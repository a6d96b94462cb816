import type { ConditionedTrace } from './conditionTrace.ts';
import { CORRELATED_CELLS, type Levels } from './levels.ts';
import type { Notch } from './notches.ts';
import { type Rings, SEEN } from './rings.ts';
import { FIELDS, type LengthLaw, type SemiMarkov, type StretchState } from './semiMarkov.ts';
import type { Texture } from './texture.ts';
import {
  geometricLaw,
  LEVELS,
  lognormalLaw,
  STATE_KIND,
  STATES,
  type StateName,
  transitionTable,
} from './zoneModel.ts';

/** Share of the depth at which the outline puts the exit before which none is believed: outlines are measured roughly. */
const EARLIEST_EXIT = 0.75;
/** Log odds added to leaving on the far side when the outline says the needle is long enough. */
const EXPECTED_EXIT = 2;

/** What is known of where the drilling starts and where it would come out. */
export interface PlaceKnown {
  /** Bark thickness measured or guessed, mm; undefined when nothing is known. */
  barkMm: number | undefined;
  /** Where the outline says the needle comes out again, mm from where it went in; undefined when not known. */
  exitMm?: number | undefined;
}

/** Everything that does not change with the levels, made once a trace and stride. */
export interface ModelFrame {
  stride: number;
  /** Cell at each boundary of the strided grid. */
  boundary: Int32Array;
  lengths: LengthLaw[];
  least: number[];
  most: number[];
  initial: Float64Array;
  transition: Float64Array;
  last: Float64Array;
  /** By state, sums before each boundary of the log likelihood terms that do not depend on the levels. */
  extras: Float64Array[];
  farBark?: BarkSeen | undefined;
}

const INITIAL: Record<StateName, number> = {
  airIn: 0.3,
  barkIn: 0.55,
  sound: 0.056,
  beforeOddity: 0.004,
  knot: 0,
  dip: 0,
  fading: 0,
  incipient: 0.004,
  decayed: 0.01,
  void: 0.006,
  crack: 0,
  barkOut: 0,
  airOut: 0,
};
const TABLE = transitionTable();
/** Part each state plays for the residual wall. */
const PART = STATES.map((s) =>
  s === 'airIn' || s === 'barkIn' ? 'outside' : STATE_KIND[s] === 'sound' ? 'whole' : 'other',
);
/** What a cell in a notch counts for, as a share of a full cell. */
const MASKED_SHARE = 0.05;
/** What a cell without a reading says: as good as nothing, but a level there must be. */
const UNREAD_SHARE = 1e-4;
/**
 * Most a cell may scatter about its stretch, share of sound: against too low a sound level any trace is all scatter, and
 * a shell of sound wood twice as high as the decay behind it would pass.
 */
const MOST_NOISE = 0.2;
/** But up to this multiple of the scatter that is usual in the trace: wood with strong rings scatters throughout. */
const RINGED = 1.3;
/** Least sound wood before a knot or a dip, mm: what stands high sooner is the sound wood itself. */
const ODDITY_FROM_MM = 25;
/** Longest stretch of the kinds that have a longest, mm. */
const MOST_MM: Partial<Record<StateName, number>> = {
  barkIn: 90,
  barkOut: 90,
  knot: 60,
  dip: 24,
  fading: 16,
  crack: 7,
};

/** Length laws, boundaries and entry probabilities on a grid of every `stride`-th cell. */
export function modelFrame(
  c: ConditionedTrace,
  texture: Texture,
  rings: Rings,
  known: PlaceKnown,
  stride: number,
): ModelFrame {
  const cells = c.gridMm.length;
  const n = Math.max(2, Math.round(cells / stride));
  const boundary = boundariesAtSteps(c.levelPct, n, stride);
  const mm = c.cellMm * stride;
  const bark = known.barkMm;
  const barkLaw =
    bark && bark > 0
      ? mix(lognormalLaw(bark, 0.28, 1, n, mm), lognormalLaw(15, 0.8, 1, n, mm), 0.95)
      : lognormalLaw(15, 0.7, 1, n, mm);
  const laws: Record<StateName, LengthLaw> = {
    airIn: geometricLaw(1, 12, n, mm),
    barkIn: barkLaw,
    sound: geometricLaw(4, 120, n, mm),
    beforeOddity: geometricLaw(ODDITY_FROM_MM, 120, n, mm),
    knot: lognormalLaw(18, 0.6, 5, n, mm),
    dip: lognormalLaw(12, 0.6, 4, n, mm),
    fading: lognormalLaw(8, 0.5, 3, n, mm),
    incipient: geometricLaw(12, 35, n, mm),
    decayed: geometricLaw(6, 40, n, mm),
    void: geometricLaw(5, 40, n, mm),
    crack: geometricLaw(1, 2, n, mm),
    barkOut: barkLaw,
    airOut: geometricLaw(1, 25, n, mm),
  };
  const leastMm: Record<StateName, number> = {
    airIn: 1,
    barkIn: 1,
    sound: 4,
    beforeOddity: ODDITY_FROM_MM,
    knot: 5,
    dip: 4,
    fading: 3,
    incipient: 12,
    decayed: 6,
    void: 5,
    crack: 1,
    barkOut: 3,
    airOut: 1,
  };
  const transition = TABLE.slice();
  if (known.exitMm !== undefined && cells * c.cellMm > EARLIEST_EXIT * known.exitMm)
    for (let k = 0; k < STATES.length; k++)
      transition[k * STATES.length + STATES.indexOf('barkOut')]! += EXPECTED_EXIT;
  const initial = new Float64Array(STATES.length);
  STATES.forEach((s, k) => {
    initial[k] = Math.log(INITIAL[s]);
    if (s === 'barkIn' && bark === 0) initial[k] = -7;
    if (s === 'sound' && bark === 0) initial[k] = Math.log(0.66);
    if (s === 'beforeOddity' && bark === 0) initial[k] = Math.log(0.04);
  });
  return {
    stride,
    boundary,
    lengths: STATES.map((s) => laws[s]),
    least: STATES.map((s) => Math.max(1, Math.round(leastMm[s] / mm))),
    most: STATES.map((s) => Math.min(n, Math.max(1, Math.round((MOST_MM[s] ?? Infinity) / mm)))),
    initial,
    transition,
    extras: extraTerms(c, texture, rings, boundary, known.exitMm),
    last: Float64Array.from(STATES, (s) => (s === 'barkOut' ? -3 : s === 'crack' || s === 'fading' ? -2 : 0)),
  };
}

/**
 * Boundaries about every `stride` cells, each moved to the steepest step near it, so that an edge and a stretch of a few
 * millimetres are not lost to a coarse grid.
 */
function boundariesAtSteps(levelPct: Float64Array, n: number, stride: number): Int32Array {
  const cells = levelPct.length;
  const out = Int32Array.from({ length: n + 1 }, (_, i) => (i === n ? cells : i * stride));
  if (stride === 1) return out;
  const back = stride >> 1;
  for (let b = 1; b < n; b++) {
    let most = -1;
    const middle = b * stride;
    for (let i = middle - back; i < middle - back + stride; i++) {
      if (i < 1 || i >= cells) continue;
      const before = levelPct[i - 1]! + levelPct[Math.max(0, i - 2)]!;
      const step = Math.abs(levelPct[i]! + levelPct[Math.min(cells - 1, i + 1)]! - before);
      if (step > most) {
        most = step;
        out[b] = i;
      }
    }
  }
  return out;
}

/** Cells that lie in notches told apart as possible cracks: they say little of the wood's level. */
export function maskNotches(c: ConditionedTrace, notches: readonly Notch[]): Uint8Array {
  const masked = c.unread.slice();
  const from = c.gridMm[0]! - c.cellMm / 2;
  for (const notch of notches) {
    const a = Math.max(0, Math.floor((notch.fromMm - from) / c.cellMm - 0.6));
    const b = Math.min(masked.length, Math.ceil((notch.toMm - from) / c.cellMm + 0.6));
    for (let i = a; i < b; i++) masked[i] = 1;
  }
  return masked;
}

/** Level above which a peak is pressed down, and to what share of its height. */
const PEAK = 2.5;
const PRESSED = 0.5;

/** Level over the floor as a share of the sound level there, high peaks (knots) pressed down. */
export function relativeLevel(y: number, floor: number, sound: number): number {
  const r = (y - floor) / sound;
  return r > PEAK ? PEAK + PRESSED * (r - PEAK) : Math.max(-0.3, r);
}

/** What the bark on the way in looked like: the bark on the far side is expected to be like it. */
export interface BarkSeen {
  lengthMm: number;
  /** What was read as air before it, mm. */
  airMm: number;
  /** Its raggedness from cell to cell beyond noise, and its level over the floor, percent of full scale. */
  roughPct: number;
  levelPct: number;
  /** Its level, share of sound, and how well that tells the far bark's, standard deviation. */
  level: number;
  levelSd: number;
}

/** The frame with the far side's bark made like the bark on the way in; without any, with no way out but a rare one. */
export function withFarBark(
  frame: ModelFrame,
  c: ConditionedTrace,
  texture: Texture,
  seen: BarkSeen | undefined,
): ModelFrame {
  const n = frame.boundary.length - 1;
  const mm = c.cellMm * frame.stride;
  const out = STATES.indexOf('barkOut');
  const transition = frame.transition.slice();
  const lengths = frame.lengths.slice();
  const extras = frame.extras.slice();
  if (seen) {
    const like = (lengthMm: number) =>
      lognormalLaw(Math.max(4, lengthMm), 0.3, Math.max(3, 0.5 * seen.lengthMm), n, mm);
    const calm = Math.hypot(texture.quietRoughPct, DECAY_ROUGHNESS * seen.levelPct);
    const ragged = Math.hypot(calm, seen.roughPct);
    const alikeTerms = sumsAt(frame.boundary, (i) => {
      const z = texture.roughPct[i]!;
      const odds = Math.log(calm / ragged) + 0.5 * ((z / calm) ** 2 - (z / ragged) ** 2);
      return Math.max(-MOST_UNLIKE, Math.min(MOST_ALIKE, odds / CORRELATED_CELLS));
    });
    extras[out] = alikeTerms.map((v, i) => v + extras[out]![i]!);
    // Quiet outer bark is easily taken for air on the way in.
    const alike = mix(like(seen.lengthMm), like(seen.lengthMm + seen.airMm), seen.airMm < 15 ? 0.7 : 1);
    lengths[out] = mix(alike, frame.lengths[out]!, 0.75);
  } else for (let k = 0; k < STATES.length; k++) transition[k * STATES.length + out]! -= 3;
  const most = frame.most.slice();
  if (seen)
    most[out] = Math.min(
      most[out]!,
      Math.ceil((MOST_OF_NEAR * (seen.lengthMm + (seen.airMm < 15 ? seen.airMm : 0)) + 8) / mm),
    );
  return { ...frame, transition, lengths, most, extras, farBark: seen };
}

/**
 * What a millimetre of seen (or, where rings show elsewhere, missing) ring pattern counts for, natural logarithm per
 * unit of clarity: rings speak for sound wood, and a little for incipient decay.
 */
const RING_WEIGHT: Partial<Record<StateName, number>> = {
  sound: 0.2,
  beforeOddity: 0.2,
  knot: 0.1,
  dip: 0.2,
  incipient: 0.1,
};
/**
 * Most a cell of far bark gains when it is as ragged as the near bark, or loses when it is as smooth as decay, natural
 * logarithm; and how rough decay is from cell to cell, share of its level.
 */
const MOST_ALIKE = 0.25;
const MOST_UNLIKE = 0.35;
const DECAY_ROUGHNESS = 0.03;
/**
 * Plates and fissures make the level of bark heave: standard deviation, share of sound, and how many cells heave as one.
 */
const BARK_HEAVING = 0.06;
const HEAVING_CELLS = 3;
const BARK_IN = STATES.indexOf('barkIn');
const KNOT = STATES.indexOf('knot');
/** The same for a knot, which rises and falls. */
const KNOT_HEAVING = 0.15;
const BARK_OUT = STATES.indexOf('barkOut');
/** Log odds against air or void in a restless cell, per unit of unrest. */
const UNREST = 0.15;
/** Reach of an edge's blur in the running median, mm. */
const NEAR_EDGE_MM = 5;
/** How far a floor may seem to fall on the way in by drift of the drill and noise, percent of full scale. */
const ABOVE_LATER_PCT = 2;
/** Log odds against each cell of far bark or air before any exit is possible. */
const BEFORE_EXIT = 20;
/**
 * Where no outline is known, an exit before this depth is held for unlikely, the less so the nearer to it: stems that
 * are drilled are thicker. Log odds against each millimetre of far bark or air there, at its start.
 */
const THIN_STEM_MM = 110;
const THIN_STEM = 0.25;
/** How well an outline tells the exit: standard deviation as a share of its depth, and mm (air and bark at the entry). */
const EXIT_SD_SHARE = 0.08;
const EXIT_SD_MM = 8;
/** Most log probability that a millimetre of wood or void costs beyond the exit that the outline tells. */
const MOST_BEYOND = 0.3;
const INSIDE: readonly StateName[] = [
  'sound',
  'beforeOddity',
  'knot',
  'dip',
  'fading',
  'incipient',
  'decayed',
  'void',
  'crack',
];
/** Log odds of a crack where no notch was found. */
const NOT_A_NOTCH = -1000;
/** Most of the far bark's thickness over that of the near bark. */
const MOST_OF_NEAR = 1.9;
/** How alike the bark of the two sides is in level, share of sound. */
const FAR_BARK_SPREAD = 0.08;

/**
 * The semi-Markov model of a trace at given levels.
 *
 * @param floorSdPct how uncertain the floor is where the trace comes nearest to it.
 */
export function traceModel(
  c: ConditionedTrace,
  texture: Texture,
  frame: ModelFrame,
  levels: Levels,
  floorPct: Float64Array,
  shape: Float64Array,
  floorSdPct: number,
  notches: readonly Notch[],
  masked: Uint8Array,
): SemiMarkov {
  const cells = c.gridMm.length;
  const n = frame.boundary.length - 1;
  const odds = new Float64Array(cells).fill(NOT_A_NOTCH);
  const from = c.gridMm[0]! - c.cellMm / 2;
  for (const notch of notches) {
    const a = Math.max(0, Math.round((notch.fromMm - from) / c.cellMm));
    const b = Math.min(cells, Math.max(a + 1, Math.round((notch.toMm - from) / c.cellMm)));
    for (let i = a; i < b; i++) odds[i] = notch.logOdds / (b - a);
  }
  const crackOdds = sumsAt(frame.boundary, (i) => odds[i]!);
  // Level over the floor as a share of the sound level there. One scatter for all kinds, so one table of sums.
  const sums = new Float64Array((n + 1) * FIELDS);
  const noSums = new Float64Array((n + 1) * FIELDS);
  const barkSums = new Float64Array((n + 1) * FIELDS);
  const barkExtra = new Float64Array(n + 1);
  const barkOutExtra = new Float64Array(n + 1);
  const { scatterPct } = texture;
  let A = 0;
  let B = 0;
  let C = 0;
  let X = 0;
  let XX = 0;
  let XR = 0;
  const bark = new Float64Array(FIELDS);
  const knotSums = new Float64Array((n + 1) * FIELDS);
  const knotExtra = new Float64Array(n + 1);
  const knot = new Float64Array(FIELDS);
  let knotLooseness = 0;
  let looseness = 0;
  let next = 1;
  for (let i = 0; i < cells; i++) {
    const sound = levels.soundPct * shape[i]!;
    const noise = Math.min(
      Math.max(MOST_NOISE, (RINGED * texture.typicalPct) / sound),
      scatterPct[i]! / sound,
    );
    const p =
      (c.unread[i] ? UNREAD_SHARE : masked[i] ? MASKED_SHARE : 1) / (CORRELATED_CELLS * noise * noise);
    const r = relativeLevel(c.levelPct[i]!, floorPct[i]!, sound);
    const x = (i + 0.5) * c.cellMm;
    A += p;
    B += p * r;
    C += p * r * r;
    X += p * x;
    XX += p * x * x;
    XR += p * x * r;
    // The same for bark, whose level heaves over many cells.
    const q = p / (1 + p * HEAVING_CELLS * BARK_HEAVING * BARK_HEAVING);
    bark[0]! += q;
    bark[1]! += q * r;
    bark[2]! += q * r * r;
    bark[3]! += q * x;
    bark[4]! += q * x * x;
    bark[5]! += q * x * r;
    looseness += (0.5 * Math.log(q / p)) / HEAVING_CELLS;
    const k = p / (1 + p * HEAVING_CELLS * KNOT_HEAVING * KNOT_HEAVING);
    knot[0]! += k;
    knot[1]! += k * r;
    knot[2]! += k * r * r;
    knot[3]! += k * x;
    knot[4]! += k * x * x;
    knot[5]! += k * x * r;
    knotLooseness += (0.5 * Math.log(k / p)) / HEAVING_CELLS;
    if (i + 1 !== frame.boundary[next]) continue;
    const f = next * FIELDS;
    sums[f] = A;
    sums[f + 1] = B;
    sums[f + 2] = C;
    sums[f + 3] = X;
    sums[f + 4] = XX;
    sums[f + 5] = XR;
    barkSums.set(bark, f);
    knotSums.set(knot, f);
    knotExtra[next] = knotLooseness + frame.extras[KNOT]![next]!;
    barkExtra[next] = looseness + frame.extras[BARK_IN]![next]!;
    barkOutExtra[next] = looseness + frame.extras[BARK_OUT]![next]!;
    next++;
  }
  const outer = farBarkLevel(frame.farBark, floorSdPct / levels.soundPct);
  const ownSums: Partial<Record<StateName, Float64Array>> = {
    crack: noSums,
    barkIn: barkSums,
    barkOut: barkSums,
    knot: knotSums,
  };
  const ownExtra: Partial<Record<StateName, Float64Array>> = {
    crack: crackOdds,
    barkIn: barkExtra,
    barkOut: barkOutExtra,
    knot: knotExtra,
  };
  const states = STATES.map((name, k): StretchState => {
    const law = LEVELS[name];
    return {
      sums: ownSums[name] ?? sums,
      extra: ownExtra[name] ?? frame.extras[k]!,
      mean: name === 'barkOut' ? outer.mean : law.mean,
      spread:
        name === 'void' || name === 'airOut'
          ? Math.hypot(law.spread, floorSdPct / levels.soundPct)
          : name === 'barkOut'
            ? outer.spread
            : law.spread,
      slopeSpread: law.slopePerMm,
      length: frame.lengths[k]!,
      least: frame.least[k]!,
      most: frame.most[k]!,
    };
  });
  return {
    cells: n,
    states,
    initial: frame.initial,
    transition: frame.transition,
    last: frame.last,
    part: PART,
  };
}

/** Level of the far bark: what bark is like, and what the near bark was like as far as it tells. */
function farBarkLevel(seen: BarkSeen | undefined, floorSd: number): { mean: number; spread: number } {
  const law = LEVELS.barkOut;
  if (!seen) return { mean: law.mean, spread: Math.hypot(law.spread, floorSd) };
  const own = 1 / (law.spread * law.spread);
  const near = 1 / (FAR_BARK_SPREAD ** 2 + seen.levelSd ** 2);
  return {
    mean: (own * law.mean + near * seen.level) / (own + near),
    spread: Math.hypot(1 / Math.sqrt(own + near), floorSd),
  };
}

/** Sums of a term over the cells before each boundary. */
function sumsAt(boundary: Int32Array, term: (cell: number) => number): Float64Array {
  const out = new Float64Array(boundary.length);
  let sum = 0;
  for (let b = 1; b < boundary.length; b++) {
    for (let i = boundary[b - 1]!; i < boundary[b]!; i++) sum += term(i);
    out[b] = sum;
  }
  return out;
}

/** By state, the terms that do not depend on the levels: rings, unrest in air and voids, the exit neither too early nor too late. */
function extraTerms(
  c: ConditionedTrace,
  texture: Texture,
  rings: Rings,
  boundary: Int32Array,
  exitMm: number | undefined,
): Float64Array[] {
  const clarity = sumsAt(boundary, (i) => (rings.visible && !c.unread[i] ? rings.clarity[i]! - SEEN : 0));
  const unrest = sumsAt(boundary, (i) => (c.unread[i] ? 0 : texture.unrest[i]!));
  const earliestMm = EARLIEST_EXIT * (exitMm ?? 0);
  const early = sumsAt(boundary, (i) => {
    const mm = (i + 0.5) * c.cellMm;
    if (exitMm !== undefined) return mm < earliestMm ? BEFORE_EXIT : 0;
    return mm < THIN_STEM_MM ? THIN_STEM * (1 - mm / THIN_STEM_MM) * c.cellMm : 0;
  });
  const beyond = sumsAt(boundary, (i) => beyondExit((i + 0.5) * c.cellMm, exitMm) * c.cellMm);
  const above = aboveLater(c, texture);
  const aboveSums = sumsAt(boundary, (i) => (c.unread[i] ? 0 : above[i]!));
  return STATES.map((name) => {
    const ring = RING_WEIGHT[name] ?? 0;
    const quiet = name === 'airIn' || name === 'airOut' || name === 'void' ? UNREST : 0;
    const low = quiet > 0 ? 1 : 0;
    const exit = name === 'barkOut' || name === 'airOut' ? 1 : 0;
    const outside = INSIDE.includes(name) ? 1 : 0;
    return clarity.map(
      (v, i) => ring * v - quiet * unrest[i]! - low * aboveSums[i]! - exit * early[i]! - outside * beyond[i]!,
    );
  });
}

/**
 * Log probability that a millimetre of wood or void costs at a depth where the outline says that the needle has come
 * out: the hazard of a normal law about the exit it tells.
 */
function beyondExit(depthMm: number, exitMm: number | undefined): number {
  if (exitMm === undefined) return 0;
  const sd = Math.hypot(EXIT_SD_SHARE * exitMm, EXIT_SD_MM);
  const z = (depthMm - exitMm - EXIT_SD_MM) / sd;
  if (z < -4) return 0;
  const density = Math.exp(-0.5 * z * z) / (sd * Math.sqrt(2 * Math.PI));
  const left = 1 / (1 + Math.exp(z * (1.5976 + 0.07056 * z * z)));
  return Math.min(MOST_BEYOND, density / Math.max(left, 1e-9));
}

/**
 * Log odds against air or void in a cell by how far it stands above the lowest level kept up anywhere deeper: friction
 * never falls on the way in, so what stands above a later level stands above the floor.
 */
function aboveLater(c: ConditionedTrace, texture: Texture): Float64Array {
  const cells = c.gridMm.length;
  const out = new Float64Array(cells);
  const sd = Math.hypot(ABOVE_LATER_PCT, c.cellNoisePct);
  const reach = Math.round(NEAR_EDGE_MM / c.cellMm);
  let lowest = Infinity;
  for (let i = cells - 1; i >= 0; i--) {
    lowest = Math.min(lowest, texture.smoothPct[i]!);
    // Near an edge the median still stands at the other side's level.
    let here = Infinity;
    for (let j = Math.max(0, i - reach); j <= Math.min(cells - 1, i + reach); j++)
      here = Math.min(here, texture.smoothPct[j]!);
    const z = Math.min(3, Math.max(0, (here - lowest) / sd - 1));
    out[i] = (0.5 * z * z) / CORRELATED_CELLS;
  }
  return out;
}

function mix(a: LengthLaw, b: LengthLaw, share: number): LengthLaw {
  const join = (x: Float64Array, y: Float64Array) =>
    Float64Array.from(x, (v, i) => Math.log(share * Math.exp(v) + (1 - share) * Math.exp(y[i]!)));
  return { logMass: join(a.logMass, b.logMass), logBeyond: join(a.logBeyond, b.logBeyond) };
}
