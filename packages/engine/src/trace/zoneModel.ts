/**
 * What the kinds of stretch look like in a trace, how long they are and what follows what: the states of the
 * semi-Markov model. Levels are shares of the tree's own sound wood. Every number here is a judgement from the
 * trade's descriptions (docs/theory/trace.md lists them with their grounds), set on simulated traces.
 */
import type { LengthLaw } from './semiMarkov.ts';
import { ZONE_KINDS, type ZoneKind } from './types.ts';

/**
 * States of the model: the kinds, with bark and air on the way in kept apart from those on the way out, and other
 * looks of sound wood kept apart from it: knots (high broad peaks), which must not pass for the level of sound wood, and
 * short dips (pith, a band of juvenile wood). `beforeOddity` is sound wood thick enough for a knot or a dip to follow: a high level
 * right behind the bark, or behind decay, is the sound wood, and what lies lower behind it is not sound.
 */
export const STATES = [
  'airIn',
  'barkIn',
  'sound',
  'beforeOddity',
  'knot',
  'dip',
  'fading',
  'incipient',
  'decayed',
  'void',
  'crack',
  'barkOut',
  'airOut',
] as const;
export type StateName = (typeof STATES)[number];

export const STATE_KIND: Record<StateName, ZoneKind> = {
  airIn: 'air',
  barkIn: 'bark',
  sound: 'sound',
  beforeOddity: 'sound',
  knot: 'sound',
  dip: 'sound',
  fading: 'decayed',
  incipient: 'incipient',
  decayed: 'decayed',
  void: 'void',
  crack: 'crack',
  barkOut: 'bark',
  airOut: 'air',
};

/** Column of each state's kind in a probability table. */
export const STATE_COLUMN = STATES.map((s) => ZONE_KINDS.indexOf(STATE_KIND[s]));

export interface LevelLaw {
  /** Mean and standard deviation of a stretch's level, shares of sound. */
  mean: number;
  spread: number;
  /** Standard deviation of its slope, shares of sound per mm. */
  slopePerMm: number;
}

const SOUND_LEVEL: LevelLaw = { mean: 1, spread: 0.08, slopePerMm: 0.0012 };

export const LEVELS: Record<StateName, LevelLaw> = {
  airIn: { mean: 0, spread: 0.02, slopePerMm: 0 },
  barkIn: { mean: 0.2, spread: 0.12, slopePerMm: 0.004 },
  sound: SOUND_LEVEL,
  beforeOddity: SOUND_LEVEL,
  knot: { mean: 1.35, spread: 0.15, slopePerMm: 0.01 },
  dip: { mean: 0.74, spread: 0.08, slopePerMm: 0.004 },
  fading: { mean: 0.62, spread: 0.12, slopePerMm: 0.06 },
  incipient: { mean: 0.68, spread: 0.09, slopePerMm: 0.002 },
  decayed: { mean: 0.3, spread: 0.13, slopePerMm: 0.002 },
  void: { mean: 0, spread: 0.025, slopePerMm: 0 },
  crack: { mean: 0, spread: 1, slopePerMm: 0 },
  barkOut: { mean: 0.2, spread: 0.12, slopePerMm: 0.004 },
  airOut: { mean: 0, spread: 0.025, slopePerMm: 0 },
};

/** Rates of going from one kind of wood to another, before rows are made to sum to one. */
const FOLLOWS: Record<StateName, Partial<Record<StateName, number>>> = {
  airIn: { barkIn: 0.8, sound: 0.19, decayed: 0.01 },
  barkIn: { sound: 0.96, incipient: 0.003, decayed: 0.03, void: 0.003 },
  sound: { fading: 0.05, incipient: 0.1, decayed: 0.2, void: 0.5, crack: 0.13, barkOut: 0.3 },
  beforeOddity: { knot: 0.45, dip: 0.55 },
  knot: { sound: 0.95, decayed: 0.02, void: 0.02, barkOut: 0.01 },
  dip: { sound: 1 },
  fading: { decayed: 1 },
  incipient: { sound: 0.45, decayed: 0.43, void: 0.1, crack: 0.01, barkOut: 0.003 },
  decayed: { sound: 0.45, incipient: 0.17, void: 0.42, barkOut: 0.003 },
  void: { sound: 0.5, incipient: 0.1, decayed: 0.39, barkOut: 0.003 },
  crack: { sound: 0.8, incipient: 0.08, decayed: 0.1, barkOut: 0.02 },
  barkOut: { airOut: 1 },
  airOut: {},
};

/** Share of the ways into sound wood that lead to a knot or a dip. */
const ODDITY_SHARE = 0.12;

/** Log transition table, rows and columns in the order of STATES. */
export function transitionTable(): Float64Array {
  const K = STATES.length;
  const out = new Float64Array(K * K).fill(-Infinity);
  STATES.forEach((from, k) => {
    const row = FOLLOWS[from];
    const total = Object.values(row).reduce((a, b) => a + b, 0);
    for (const [to, rate] of Object.entries(row))
      if (to === 'sound') {
        out[k * K + STATES.indexOf('sound')] = Math.log(((1 - ODDITY_SHARE) * rate) / total);
        out[k * K + STATES.indexOf('beforeOddity')] = Math.log((ODDITY_SHARE * rate) / total);
      } else out[k * K + STATES.indexOf(to as StateName)] = Math.log(rate / total);
  });
  return out;
}

/** Shifted geometric law: at least `leastMm`, `meanMm` on average beyond that. */
export function geometricLaw(leastMm: number, meanMm: number, cells: number, cellMm: number): LengthLaw {
  const least = Math.max(1, Math.round(leastMm / cellMm));
  const stay = 1 - 1 / Math.max(1.5, meanMm / cellMm);
  const logMass = new Float64Array(cells + 2).fill(-Infinity);
  const logBeyond = new Float64Array(cells + 2);
  for (let d = 0; d <= cells + 1; d++) {
    if (d >= least) logMass[d] = Math.log(1 - stay) + (d - least) * Math.log(stay);
    logBeyond[d] = Math.max(0, d - least) * Math.log(stay);
  }
  return { logMass, logBeyond };
}

/** Lognormal law with a given median and standard deviation of the logarithm, cut to `leastMm` and over. */
export function lognormalLaw(
  medianMm: number,
  logSd: number,
  leastMm: number,
  cells: number,
  cellMm: number,
): LengthLaw {
  const mass = new Float64Array(cells + 2);
  let total = 0;
  for (let d = 1; d <= cells + 1; d++) {
    const u = Math.log((d * cellMm) / medianMm) / logSd;
    mass[d] = d * cellMm >= leastMm - 1e-9 ? Math.exp(-0.5 * u * u) / d : 0;
    total += mass[d]!;
  }
  const logMass = new Float64Array(cells + 2).fill(-Infinity);
  const logBeyond = new Float64Array(cells + 2).fill(-Infinity);
  let beyond = 1;
  for (let d = 0; d <= cells + 1; d++) {
    logBeyond[d] = Math.log(Math.max(1e-12, beyond));
    const p = total > 0 ? mass[d]! / total : 0;
    if (p > 0) logMass[d] = Math.log(p);
    beyond -= p;
  }
  return { logMass, logBeyond };
}
