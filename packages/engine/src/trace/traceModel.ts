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
  airIn: 0.25,
  barkIn: 0.6,
  sound: 0.056,
  beforeOddity: 0.004,
  knot: 0,
  dip: 0,
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
/**
 * Most a cell may scatter about its stretch, share of sound: against too low a sound level any trace is all scatter, and
 * a shell of sound wood twice as high as the decay behind it would pass.
 */
const MOST_NOISE = 0.2;
/** Least sound wood before a knot or a dip, mm: what stands high sooner is the sound wood itself. */
const ODDITY_FROM_MM = 25;
/** Longest stretch of the kinds that have a longest, mm. */
const MOST_MM: Partial<Record<StateName, number>> = { barkIn: 90, barkOut: 90, knot: 60, dip: 24, crack: 7 };

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
    last: Float64Array.from(STATES, (s) => (s === 'barkOut' ? -3 : s === 'crack' ? -2 : 0)),
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
  const masked = new Uint8Array(c.gridMm.length);
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
  /** Its local scatter, percent of full scale. */
  scatterPct: number;
  level: number;
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
    const alikeTerms = sumsAt(frame.boundary, (i) => {
      const off = Math.log(texture.seenPct[i]! / seen.scatterPct);
      return ALIKE - UNLIKE * Math.min(2.5, off * off);
    });
    extras[out] = alikeTerms.map((v, i) => v + extras[out]![i]!);
    // Quiet outer bark is easily taken for air on the way in.
    const alike = mix(like(seen.lengthMm), like(seen.lengthMm + seen.airMm), seen.airMm < 15 ? 0.7 : 1);
    lengths[out] = mix(alike, frame.lengths[out]!, 0.75);
  } else for (let k = 0; k < STATES.length; k++) transition[k * STATES.length + out]! -= 3;
  return { ...frame, transition, lengths, extras, farBark: seen };
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
 * What a cell of far bark gains when its raggedness is that of the near bark, and loses with the squared logarithm of
 * their ratio: decay is smoother than bark.
 */
const ALIKE = 0.08;
const UNLIKE = 0.15;
/**
 * Plates and fissures make the level of bark heave: standard deviation, share of sound, and how many cells heave as one.
 */
const BARK_HEAVING = 0.06;
const HEAVING_CELLS = 3;
const BARK_IN = STATES.indexOf('barkIn');
/** Log odds against air or void in a restless cell, per unit of unrest. */
const UNREST = 0.15;
/** Log odds against each cell of far bark or air before any exit is possible. */
const BEFORE_EXIT = 20;
/**
 * Log probability a millimetre of wood or void costs where the outline says that the needle has left the stem: beyond
 * this share of the expected exit, and a lead of air before the bark. Mild, since outlines are measured with errors.
 */
const BEYOND_EXIT = 0.3;
const LATEST_EXIT = 1.15;
const LEAD_MM = 20;
const INSIDE: readonly StateName[] = [
  'sound',
  'beforeOddity',
  'knot',
  'dip',
  'incipient',
  'decayed',
  'void',
  'crack',
];
/** Log odds of a crack where no notch was found. */
const NOT_A_NOTCH = -1000;
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
  const { scatterPct } = texture;
  let A = 0;
  let B = 0;
  let C = 0;
  let X = 0;
  let XX = 0;
  let XR = 0;
  const bark = new Float64Array(FIELDS);
  let looseness = 0;
  let next = 1;
  for (let i = 0; i < cells; i++) {
    const sound = levels.soundPct * shape[i]!;
    const noise = Math.min(MOST_NOISE, scatterPct[i]! / sound);
    const p = (masked[i] ? MASKED_SHARE : 1) / (CORRELATED_CELLS * noise * noise);
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
    if (i + 1 !== frame.boundary[next]) continue;
    const f = next * FIELDS;
    sums[f] = A;
    sums[f + 1] = B;
    sums[f + 2] = C;
    sums[f + 3] = X;
    sums[f + 4] = XX;
    sums[f + 5] = XR;
    barkSums.set(bark, f);
    barkExtra[next] = looseness + frame.extras[BARK_IN]![next]!;
    next++;
  }
  const states = STATES.map((name, k): StretchState => {
    const law = LEVELS[name];
    return {
      sums: name === 'crack' ? noSums : name === 'barkIn' ? barkSums : sums,
      extra: name === 'crack' ? crackOdds : name === 'barkIn' ? barkExtra : frame.extras[k]!,
      mean: name === 'barkOut' && frame.farBark ? frame.farBark.level : law.mean,
      spread:
        name === 'void' || name === 'airOut'
          ? Math.hypot(law.spread, floorSdPct / levels.soundPct)
          : name === 'barkOut' && frame.farBark
            ? FAR_BARK_SPREAD
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
  const clarity = sumsAt(boundary, (i) => (rings.visible ? rings.clarity[i]! - SEEN : 0));
  const unrest = sumsAt(boundary, (i) => texture.unrest[i]!);
  const earliestMm = EARLIEST_EXIT * (exitMm ?? 0);
  const latestMm = exitMm === undefined ? Infinity : LATEST_EXIT * exitMm + LEAD_MM;
  const early = sumsAt(boundary, (i) => ((i + 0.5) * c.cellMm < earliestMm ? 1 : 0));
  const beyond = sumsAt(boundary, (i) => ((i + 0.5) * c.cellMm > latestMm ? c.cellMm : 0));
  return STATES.map((name) => {
    const ring = RING_WEIGHT[name] ?? 0;
    const quiet = name === 'airIn' || name === 'airOut' || name === 'void' ? UNREST : 0;
    const exit = name === 'barkOut' || name === 'airOut' ? BEFORE_EXIT : 0;
    const outside = INSIDE.includes(name) ? BEYOND_EXIT : 0;
    return clarity.map((v, i) => ring * v - quiet * unrest[i]! - exit * early[i]! - outside * beyond[i]!);
  });
}

function mix(a: LengthLaw, b: LengthLaw, share: number): LengthLaw {
  const join = (x: Float64Array, y: Float64Array) =>
    Float64Array.from(x, (v, i) => Math.log(share * Math.exp(v) + (1 - share) * Math.exp(y[i]!)));
  return { logMass: join(a.logMass, b.logMass), logBeyond: join(a.logBeyond, b.logBeyond) };
}
