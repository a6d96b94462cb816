/**
 * The levels a trace is read against: the drill's idle level, the shaft's friction, and the level of sound wood with
 * its slow change along the radius.
 */
import type { ConditionedTrace } from './conditionTrace.ts';
import type { Stretch } from './semiMarkov.ts';
import { STATES } from './zoneModel.ts';

/** Depth of wood over which friction comes on, mm (Gendvilas et al. 2020: not linear in the first 20 to 30 mm). */
export const ONSET_MM = 12;

export interface Levels {
  /** Idle level in air, percent of full scale. */
  zeroPct: number;
  /** Friction that comes on early, percent of full scale, and its later growth per millimetre of wood. */
  onsetPct: number;
  slopePctPerMm: number;
  /** Level of sound wood over the floor at the cambium end, percent of full scale. */
  soundPct: number;
  /** Change of the sound level along the needle: shares per 100 mm, and per (100 mm) squared. */
  tilt: number;
  bend: number;
  /** Where the tilt is counted from, mm from the trace's start. */
  pivotMm: number;
}

/** How much a millimetre of each state of the model adds to the length of wood that rubs on the shaft. */
const RUBS: Record<(typeof STATES)[number], number> = {
  airIn: 0,
  barkIn: 0,
  sound: 1,
  beforeOddity: 1,
  knot: 1,
  dip: 1,
  fading: 0.8,
  incipient: 1,
  decayed: 0.6,
  void: 0,
  crack: 0,
  barkOut: 0,
  airOut: 0,
};

/** Length of wood passed at the middle of each cell, mm, given the stretches. */
export function woodPassed(stretches: readonly Stretch[], cells: number, cellMm: number): Float64Array {
  const out = new Float64Array(cells);
  let passed = 0;
  for (const { state, from, to } of stretches) {
    const rub = RUBS[STATES[state]!] * cellMm;
    for (let i = from; i < to; i++) {
      out[i] = passed + 0.5 * rub;
      passed += rub;
    }
  }
  return out;
}

/** Friction after passing a length of wood. */
export function friction(levels: Levels, passedMm: number): number {
  return levels.onsetPct * (1 - Math.exp(-passedMm / ONSET_MM)) + levels.slopePctPerMm * passedMm;
}

/** Idle level and friction in each cell, percent of full scale. */
export function floorOf(levels: Levels, passedMm: Float64Array): Float64Array {
  return Float64Array.from(passedMm, (w) => levels.zeroPct + friction(levels, w));
}

/** Relative change of the sound level at each cell. */
export function soundShape(levels: Levels, c: ConditionedTrace): Float64Array {
  return Float64Array.from(c.gridMm, (_, i) => {
    const u = ((i + 0.5) * c.cellMm - levels.pivotMm) / 100;
    return Math.min(1.45, Math.max(0.6, 1 + levels.tilt * u + levels.bend * u * u));
  });
}

/** What is believed of the levels before a trace is looked at: means and standard deviations. */
export interface LevelPriors {
  zeroPct: { mean: number; sd: number };
  onsetPct: { mean: number; sd: number };
  slopePctPerMm: { mean: number; sd: number };
  /** Logarithm of the sound level. */
  logSound: { mean: number; sd: number };
  tilt: { mean: number; sd: number };
  bend: { mean: number; sd: number };
}

export const WIDE_PRIORS: LevelPriors = {
  zeroPct: { mean: 1, sd: 2.5 },
  onsetPct: { mean: 1.2, sd: 1.2 },
  slopePctPerMm: { mean: 0.03, sd: 0.025 },
  logSound: { mean: Math.log(45), sd: 0.6 },
  tilt: { mean: 0, sd: 0.07 },
  bend: { mean: 0, sd: 0.025 },
};

/** Fitted levels, and how well the floor is known. */
export interface LevelFit {
  levels: Levels;
  /** Covariance of idle level, onset and slope (3 x 3), in the units of Levels. */
  floorCovariance: Float64Array;
  soundSdPct: number;
}

const TERMS = 6;

/**
 * Levels that fit best the cells told to be sound, void or air, with priors as pseudo-observations: Huber's
 * reweighted least squares for idle level, friction onset and slope, sound level, tilt and bend. Cells told to be
 * decayed, incipient or bark say only that the floor lies no higher: a true drop would bias friction's slope.
 */
export function fitLevels(
  c: ConditionedTrace,
  scatterPct: Float64Array,
  masked: Uint8Array,
  stretches: readonly Stretch[],
  start: Levels,
  priors: LevelPriors,
): LevelFit {
  const cells = c.gridMm.length;
  const passed = woodPassed(stretches, cells, c.cellMm);
  const rows: { y: number; x: number[]; w: number; atMost: boolean }[] = [];
  for (const { state, from, to } of stretches) {
    const name = STATES[state]!;
    const sound = name === 'sound' || name === 'beforeOddity';
    // Nothing lies below the floor: what is neither sound nor empty bounds it from above.
    const atMost = !sound && name !== 'airIn' && name !== 'void' && name !== 'airOut';
    // Cells at an edge are part one kind, part the other.
    const margin = to - from > 8 ? 2 : to - from > 4 ? 1 : 0;
    for (let i = from + (from > 0 ? margin : 0); i < to - (to < cells ? margin : 0); i++) {
      if (masked[i]) continue;
      const s = scatterPct[i]!;
      const extra = sound ? 0.05 * start.soundPct : 0;
      const u = ((i + 0.5) * c.cellMm - start.pivotMm) / 100;
      rows.push({
        y: c.levelPct[i]!,
        x: [
          1,
          1 - Math.exp(-passed[i]! / ONSET_MM),
          passed[i]!,
          sound ? 1 : 0,
          sound ? u : 0,
          sound ? u * u : 0,
        ],
        w: 1 / (CORRELATED_CELLS * (s * s + extra * extra)),
        atMost,
      });
    }
  }
  const p = priors;
  const middle = Math.exp(p.logSound.mean);
  const meanSound = Math.abs(Math.log(start.soundPct / middle)) < 4 ? middle : start.soundPct;
  const S = start.soundPct;
  const prior = [
    [p.zeroPct.mean, p.zeroPct.sd],
    [p.onsetPct.mean, p.onsetPct.sd],
    [p.slopePctPerMm.mean, p.slopePctPerMm.sd],
    // The prior of the logarithm, as a normal about the present level.
    [S + S * Math.log(meanSound / S), S * p.logSound.sd],
    [p.tilt.mean * S, p.tilt.sd * S],
    [p.bend.mean * S, p.bend.sd * S],
  ] as const;
  let beta = [start.zeroPct, start.onsetPct, start.slopePctPerMm, S, start.tilt * S, start.bend * S];
  let normal = new Float64Array(TERMS * TERMS);
  for (let pass = 0; pass < 4; pass++) {
    normal = new Float64Array(TERMS * TERMS);
    const right = new Float64Array(TERMS);
    for (const { y, x, w, atMost } of rows) {
      let fitted = 0;
      for (let a = 0; a < TERMS; a++) fitted += x[a]! * beta[a]!;
      if (atMost && fitted <= y) continue;
      const z = Math.abs(y - fitted) * Math.sqrt(w * CORRELATED_CELLS);
      const weight = z < 1.3 ? w : (w * 1.3) / z;
      for (let a = 0; a < TERMS; a++) {
        if (x[a] === 0) continue;
        right[a]! += weight * x[a]! * y;
        for (let b = 0; b < TERMS; b++) normal[a * TERMS + b]! += weight * x[a]! * x[b]!;
      }
    }
    for (let a = 0; a < TERMS; a++) {
      const precision = 1 / (prior[a]![1] * prior[a]![1]);
      normal[a * TERMS + a]! += precision;
      right[a]! += precision * prior[a]![0];
    }
    beta = solve(normal, right);
    // Friction cannot be negative.
    beta[1] = Math.max(0, beta[1]!);
    beta[2] = Math.min(0.12, Math.max(0, beta[2]!));
  }
  const soundPct = Math.max(2, beta[3]!);
  const floorCovariance = new Float64Array(9);
  let soundVariance = 0;
  for (let a = 0; a < 4; a++) {
    const unit = new Float64Array(TERMS);
    unit[a] = 1;
    const column = solve(normal, unit);
    for (let b = 0; b < 3; b++) if (a < 3) floorCovariance[a * 3 + b] = column[b]!;
    if (a === 3) soundVariance = column[3]!;
  }
  return {
    levels: {
      ...start,
      zeroPct: beta[0]!,
      onsetPct: beta[1]!,
      slopePctPerMm: beta[2]!,
      soundPct,
      tilt: beta[4]! / soundPct,
      bend: beta[5]! / soundPct,
    },
    floorCovariance,
    soundSdPct: Math.sqrt(Math.max(0, soundVariance)),
  };
}

/** Standard deviation of the floor after passing a length of wood, percent of full scale. */
export function floorSd(fit: LevelFit, passedMm: number): number {
  const g = [1, 1 - Math.exp(-passedMm / ONSET_MM), passedMm];
  let v = 0;
  for (let a = 0; a < 3; a++)
    for (let b = 0; b < 3; b++) v += g[a]! * g[b]! * fit.floorCovariance[a * 3 + b]!;
  return Math.sqrt(Math.max(0, v));
}

/** Neighbouring cells of wood are alike; so many of them count as one. */
export const CORRELATED_CELLS = 3;

/** Gaussian elimination for a symmetric positive definite system (a handful of unknowns). */
function solve(matrix: Float64Array, right: Float64Array): number[] {
  const n = right.length;
  const a = matrix.slice();
  const b = right.slice();
  for (let k = 0; k < n; k++)
    for (let i = k + 1; i < n; i++) {
      const f = a[i * n + k]! / a[k * n + k]!;
      for (let j = k; j < n; j++) a[i * n + j]! -= f * a[k * n + j]!;
      b[i]! -= f * b[k]!;
    }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let v = b[k]!;
    for (let j = k + 1; j < n; j++) v -= a[k * n + j]! * x[j]!;
    x[k] = v / a[k * n + k]!;
  }
  return x;
}
