import { type ConditionedTrace, quantile } from './conditionTrace.ts';
import { type LevelPriors, type Levels, ONSET_MM, soundShape } from './levels.ts';
import { bestStretches } from './semiMarkov.ts';
import { runningMedian, type Texture } from './texture.ts';
import { type ModelFrame, traceModel } from './traceModel.ts';

/** Sound levels tried, percent of full scale: a geometric grid shared by all traces. */
export const SOUND_GRID = Array.from({ length: 15 }, (_, i) => 8 * 1.19 ** i);
/** Friction slopes tried, percent of full scale per mm. */
const MIDDLE_SLOPE = 0.03;
const OTHER_SLOPES = [0.005, 0.065];
/** Log probability behind the best so far from which a level is not tried further, and stretches are given up. */
const FAR_BEHIND = 12;
const GIVEN_UP = 10;
/** Sound levels are tried in full between these shares of the trace's highest level (of medians over 7 mm). */
const LEAST_OF_HIGHEST = 3.5;
const MOST_OF_HIGHEST = 1.3;
/** Uncertainty of the floor left by trying few slopes and idle levels, percent of full scale. */
export const FLOOR_SD_PCT = 2;
/** Below this share of the sound level the needle is taken to be in no wood, so that friction stands still. */
const NO_WOOD_SHARE = 0.12;

/** For each sound level of the grid, the best explanation of the trace found on a coarse grid. */
export interface LevelProfile {
  /** Log probability by SOUND_GRID entry, prior of idle level and friction included. */
  score: Float64Array;
  levels: Levels[];
  floorPct: Float64Array[];
  /** Highest level the trace keeps up over some 20 mm, floor included, percent of full scale. */
  highestKeptPct: number;
}

/** How far above everything seen a sound level may lie before it is held to be made up, on the logarithm. */
const ABOVE_SEEN = 0.1;

/**
 * Log probability of a sound level that no drilling of the tree shows: wood that is low everywhere is far more often
 * this tree's sound wood than rotten to the last needle, so a level above the highest that is kept up anywhere needs
 * strong evidence.
 */
export function logPriorOfUnseen(soundPct: number, highestKeptPct: number): number {
  return -0.5 * (Math.max(0, Math.log(soundPct / highestKeptPct)) / ABOVE_SEEN) ** 2;
}

/**
 * Profile the sound level: for each, the friction slope and idle level with which the coarse best segmentation is
 * most probable. Many starts, because a level that is told from a rotten trace alone has several explanations.
 */
export function searchLevels(
  c: ConditionedTrace,
  texture: Texture,
  frame: ModelFrame,
  priors: LevelPriors,
): LevelProfile {
  const cells = c.gridMm.length;
  const masked = maskSteps(c);
  const zeros = idleCandidates(c, texture, priors);
  const score = new Float64Array(SOUND_GRID.length).fill(-Infinity);
  const levels: Levels[] = [];
  const floors: Float64Array[] = [];
  const highest = runningMedian(c.levelPct, Math.round(3 / c.cellMm)).reduce((a, b) => Math.max(a, b), 0);
  let best = -Infinity;
  SOUND_GRID.forEach((soundPct, g) => {
    const plain: Levels = {
      zeroPct: 0,
      onsetPct: priors.onsetPct.mean,
      slopePctPerMm: 0,
      soundPct,
      tilt: 0,
      bend: 0,
      pivotMm: 0,
    };
    levels.push(plain);
    floors.push(new Float64Array(cells));
    // Well above everything in the trace no stretch is sound, and friction is of no account: one trial is enough, for
    // when the tree's other drillings speak for such a level. Far below it, all would be knots.
    if (soundPct < highest / LEAST_OF_HIGHEST) return;
    const beyond = soundPct > MOST_OF_HIGHEST * highest;
    const shape = soundShape(plain, c);
    const trial = (zero: { pct: number; logPrior: number }, slopePctPerMm: number) => {
      const tried = { ...plain, zeroPct: zero.pct, slopePctPerMm };
      const { floor, below } = causalFloor(c, texture, tried);
      if (below > 0.1) return -Infinity;
      const model = traceModel(c, texture, frame, tried, floor, shape, FLOOR_SD_PCT, [], masked);
      const z = (slopePctPerMm - priors.slopePctPerMm.mean) / priors.slopePctPerMm.sd;
      const value = bestStretches(model, GIVEN_UP).logProbability - 0.5 * z * z + zero.logPrior;
      if (value > score[g]!) {
        score[g] = value;
        levels[g] = tried;
        floors[g] = floor;
      }
      return value;
    };
    // The middle slope first; the others only for what is not already far behind.
    for (const zero of beyond ? zeros.slice(0, 1) : zeros) {
      const value = trial(zero, MIDDLE_SLOPE);
      if (value > best) best = value;
      // A slope whose floor lies above the trace was no trial at all: a lesser one may fit.
      const failed = value === -Infinity;
      if (beyond || (!failed && value < best - FAR_BEHIND)) continue;
      for (const slope of OTHER_SLOPES) best = Math.max(best, trial(zero, slope));
    }
  });
  const kept = runningMedian(c.levelPct, Math.round(10 / c.cellMm)).reduce((a, b) => Math.max(a, b), 0);
  return { score, levels, floorPct: floors, highestKeptPct: kept };
}

/** Cells within a step say little on a coarse grid, whose boundaries lie at or near steps but not on both sides of each. */
function maskSteps(c: ConditionedTrace): Uint8Array {
  const y = runningMedian(c.levelPct, Math.round(2 / c.cellMm));
  const n = y.length;
  const reach = Math.max(1, Math.round(1 / c.cellMm));
  const strong = 0.12 * quantile(y, 0.9);
  return Uint8Array.from(y, (_, i) =>
    c.unread[i] || Math.abs(y[Math.min(n - 1, i + reach)]! - y[Math.max(0, i - reach)]!) > strong ? 1 : 0,
  );
}

/** Idle levels worth trying: none but the expected, and the lowest the trace comes down to, at its start and anywhere. */
function idleCandidates(
  c: ConditionedTrace,
  texture: Texture,
  priors: LevelPriors,
): { pct: number; logPrior: number }[] {
  const { mean, sd } = priors.zeroPct;
  const lowest = quantile(texture.smoothPct, 0.01);
  const early = quantile(c.levelPct.slice(0, Math.max(4, Math.round(6 / c.cellMm))), 0.2);
  const out: { pct: number; logPrior: number }[] = [];
  for (const pct of [Math.min(mean, lowest), Math.min(lowest, mean + 3 * sd), Math.min(early, mean + 3 * sd)])
    if (pct < lowest + 2 && !out.some((o) => Math.abs(o.pct - pct) < 0.8))
      out.push({ pct, logPrior: -0.5 * ((pct - mean) / sd) ** 2 });
  return out;
}

/** Floor found going down the trace: friction grows where the level stands out of the floor. */
function causalFloor(
  c: ConditionedTrace,
  texture: Texture,
  levels: Levels,
): { floor: Float64Array; below: number } {
  const cells = c.gridMm.length;
  const floor = new Float64Array(cells);
  let passed = 0;
  let below = 0;
  // Bark does not rub: friction starts where the level first comes up to half of sound, if it does.
  let start = 0;
  while (start < cells && texture.smoothPct[start]! - levels.zeroPct < 0.5 * levels.soundPct) start++;
  if (start === cells) start = 0;
  const early = levels.onsetPct;
  for (let i = 0; i < cells; i++) {
    const f = early * (1 - Math.exp(-passed / ONSET_MM)) + levels.slopePctPerMm * passed;
    floor[i] = levels.zeroPct + f;
    const over = texture.smoothPct[i]! - floor[i]!;
    if (over < -0.1 * levels.soundPct - 1) below++;
    if (i >= start && over > NO_WOOD_SHARE * levels.soundPct) passed += c.cellMm;
  }
  return { floor, below: below / cells };
}
