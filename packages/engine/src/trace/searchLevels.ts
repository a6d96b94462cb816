import { type ConditionedTrace, quantile } from './conditionTrace.ts';
import { type LevelPriors, type Levels, ONSET_MM, soundShape } from './levels.ts';
import { bestStretches } from './semiMarkov.ts';
import type { Texture } from './texture.ts';
import { type ModelFrame, traceModel } from './traceModel.ts';

/** Sound levels tried, percent of full scale: a geometric grid shared by all traces. */
export const SOUND_GRID = Array.from({ length: 15 }, (_, i) => 8 * 1.19 ** i);
const SLOPES_PCT_PER_MM = [0, 0.02, 0.045, 0.075];
/** Below this share of the sound level the needle is taken to be in no wood, so that friction stands still. */
const NO_WOOD_SHARE = 0.12;

/** For each sound level of the grid, the best explanation of the trace found on a coarse grid. */
export interface LevelProfile {
  /** Log probability by SOUND_GRID entry, prior of idle level and friction included. */
  score: Float64Array;
  levels: Levels[];
  floorPct: Float64Array[];
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
  const masked = new Uint8Array(cells);
  const zeros = idleCandidates(c, texture, priors);
  const score = new Float64Array(SOUND_GRID.length).fill(-Infinity);
  const levels: Levels[] = [];
  const floors: Float64Array[] = [];
  const highest = quantile(texture.smoothPct, 0.98);
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
    // Far above everything in the trace no stretch could be sound: no use, unless the tree says so.
    if (soundPct > 4 * highest + 10) return;
    const shape = soundShape(plain, c);
    for (const zero of zeros)
      for (const slopePctPerMm of SLOPES_PCT_PER_MM) {
        const tried = { ...plain, zeroPct: zero.pct, slopePctPerMm };
        const { floor, below } = causalFloor(c, texture, tried);
        if (below > 0.1) continue;
        const model = traceModel(c, texture.scatterPct, frame, tried, floor, shape, [], masked);
        const z = (slopePctPerMm - priors.slopePctPerMm.mean) / priors.slopePctPerMm.sd;
        const value = bestStretches(model).logProbability - 0.5 * z * z + zero.logPrior;
        if (value > score[g]!) {
          score[g] = value;
          levels[g] = { ...tried, pivotMm: tried.pivotMm };
          floors[g] = floor;
        }
      }
  });
  return { score, levels, floorPct: floors };
}

/** Idle levels worth trying: from leading air if there is some, else none, and the lowest the trace comes down to. */
function idleCandidates(
  c: ConditionedTrace,
  texture: Texture,
  priors: LevelPriors,
): { pct: number; logPrior: number }[] {
  const { levelPct } = c;
  const lowest = quantile(texture.smoothPct, 0.01);
  const tolerance = 3 * c.cellNoisePct + 0.5;
  let run = 0;
  while (run < levelPct.length && levelPct[run]! < lowest + tolerance) run++;
  if (run >= 3 && run < 0.5 * levelPct.length) {
    const pct = quantile(levelPct.slice(0, run), 0.5);
    return [{ pct, logPrior: 0 }];
  }
  const { mean, sd } = priors.zeroPct;
  const prior = (pct: number) => -0.5 * ((pct - mean) / sd) ** 2;
  const low = Math.min(lowest, mean + 3 * sd);
  const first = Math.min(mean, lowest);
  const out = [{ pct: first, logPrior: prior(first) }];
  if (Math.abs(low - first) > 1) out.push({ pct: low, logPrior: prior(low) });
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
