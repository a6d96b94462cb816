import { checkTrace } from './checkTrace.ts';
import { type ConditionedTrace, conditionTrace, quantile } from './conditionTrace.ts';
import {
  fitLevels,
  floorOf,
  floorSd,
  type LevelPriors,
  type Levels,
  soundShape,
  WIDE_PRIORS,
  woodPassed,
} from './levels.ts';
import { findNotches, type Notch } from './notches.ts';
import { refineEdges } from './refineEdges.ts';
import { wallInterval } from './residualWall.ts';
import { findRings, type Rings } from './rings.ts';
import {
  FLOOR_SD_PCT,
  type LevelProfile,
  logPriorOfUnseen,
  SOUND_GRID,
  searchLevels,
} from './searchLevels.ts';
import { bestStretches, type Stretch, stretchPosterior } from './semiMarkov.ts';
import { type Texture, textureOf } from './texture.ts';
import {
  type BarkSeen,
  type ModelFrame,
  maskNotches,
  modelFrame,
  type PlaceKnown,
  traceModel,
  withFarBark,
} from './traceModel.ts';
import { type Trace, type TraceReading, ZONE_KINDS, type Zone } from './types.ts';
import { warningsOf } from './warnings.ts';
import { STATE_COLUMN, STATE_KIND, STATES } from './zoneModel.ts';

/** A drilling to read: its trace, and what is known of the place it was made in. */
export interface TraceToRead {
  id: string;
  trace: Trace;
  /** Bark thickness where it was measured or guessed, mm; 0 when the drilling starts in wood. */
  barkMm?: number;
  /**
   * Depth at which the outline puts the needle's exit on the far side, mm from where it enters the bark. Without it a
   * low end of a trace may be read as bark and air beyond the stem where it is decay and void within, or the reverse.
   */
  exitMm?: number;
  /** Botanical name, which says whether rings can be expected to show. */
  species?: string;
}

/** Scatter of the sound level among the drillings of one tree, standard deviation of the logarithm. */
const SOUND_SCATTER_IN_TREE = 0.1;
/** How far the fit may take a single trace's sound level from where the search put it, same. */
const SOUND_SCATTER_ABOUT_START = 0.15;
/** How much sound wood differs from place to place within a tree, share of its level. */
const LOCAL_SOUND_SCATTER = 0.07;
/** Coarse step of the search for levels, cells. */
const COARSE = 6;
/** Passes of fitting levels and stretches in turn, and their step, cells. */
const FIT_PASSES = 2;
const FIT_STRIDE = 2;
const FIT_GIVEN_UP = 10;

/**
 * Read all drillings of one tree together, so that they share the level that its sound wood has. Absolute levels
 * differ between drills and settings, so drillings made with different settings must be read apart.
 *
 * @returns one reading for each input, in order.
 * @throws InputFault where a trace cannot be read (see checkTrace), naming the drilling's id.
 */
export function readTraces(input: TraceToRead[]): TraceReading[] {
  const prepared = input.map(({ id, trace, barkMm, exitMm }) => {
    checkTrace(trace, `drilling ${id}`);
    const conditioned = conditionTrace(trace);
    const texture = textureOf(conditioned);
    const rings = findRings(conditioned);
    const coarse = modelFrame(conditioned, texture, rings, { barkMm, exitMm }, COARSE);
    return {
      conditioned,
      texture,
      rings,
      known: { barkMm, exitMm },
      profile: searchLevels(conditioned, texture, coarse, WIDE_PRIORS),
    };
  });
  const highestKeptPct = Math.max(...prepared.map((p) => p.profile.highestKeptPct));
  for (const { profile } of prepared)
    SOUND_GRID.forEach((soundPct, g) => {
      profile.score[g]! += logPriorOfUnseen(soundPct, highestKeptPct);
    });
  const tree = treeSoundLevel(prepared.map((p) => p.profile));
  return prepared.map(({ conditioned, texture, rings, known, profile }) => {
    const several = input.length > 1;
    const priors: LevelPriors = {
      ...WIDE_PRIORS,
      logSound: several
        ? { mean: tree.logSound, sd: Math.hypot(SOUND_SCATTER_IN_TREE, tree.sd) }
        : WIDE_PRIORS.logSound,
    };
    return readOne(conditioned, texture, rings, known, profile, priors, several);
  });
}

/** Most probable common sound level of a tree's traces, and its standard deviation, both of the logarithm. */
function treeSoundLevel(profiles: LevelProfile[]): { logSound: number; sd: number } {
  const logs = SOUND_GRID.map(Math.log);
  const total = logs.map((common) =>
    profiles.reduce((sum, { score }) => {
      let best = -Infinity;
      for (let g = 0; g < logs.length; g++) {
        const z = (logs[g]! - common) / SOUND_SCATTER_IN_TREE;
        best = Math.max(best, score[g]! - 0.5 * z * z);
      }
      return sum + best;
    }, 0),
  );
  const most = Math.max(...total);
  const weights = total.map((t) => Math.exp(t - most));
  const all = weights.reduce((a, b) => a + b, 0);
  const mean = weights.reduce((sum, w, g) => sum + w * logs[g]!, 0) / all;
  const variance = weights.reduce((sum, w, g) => sum + w * (logs[g]! - mean) ** 2, 0) / all;
  return { logSound: mean, sd: Math.sqrt(variance + (0.19 / Math.sqrt(12)) ** 2) };
}

function readOne(
  c: ConditionedTrace,
  texture: Texture,
  rings: Rings,
  known: PlaceKnown,
  profile: LevelProfile,
  priors: LevelPriors,
  several: boolean,
): TraceReading {
  const { gridMm, cellMm } = c;
  const cells = gridMm.length;
  const fitFrame = modelFrame(c, texture, rings, known, FIT_STRIDE);
  let far: BarkSeen | undefined;

  // Start at the best of the coarse search, the tree's level counted in.
  let start = 0;
  let top = -Infinity;
  SOUND_GRID.forEach((s, g) => {
    const z = (Math.log(s) - priors.logSound.mean) / priors.logSound.sd;
    const v = profile.score[g]! - 0.5 * z * z;
    if (v > top) {
      top = v;
      start = g;
    }
  });
  let levels: Levels = profile.levels[start]!;
  let floor = profile.floorPct[start]!;
  const near = several
    ? priors
    : { ...priors, logSound: { mean: Math.log(levels.soundPct), sd: SOUND_SCATTER_ABOUT_START } };
  const notches: Notch[] = findNotches(c, floor, texture.scatterPct, levels.soundPct);
  const masked = maskNotches(c, notches);
  let shape = soundShape(levels, c);
  let stretches: Stretch[] = [];
  let floorSdPct = FLOOR_SD_PCT;
  let soundSdPct = 0;
  for (let pass = 0; pass < FIT_PASSES; pass++) {
    const frame = pass === 0 ? fitFrame : withFarBark(fitFrame, c, texture, far);
    const model = traceModel(c, texture, frame, levels, floor, shape, floorSdPct, notches, masked);
    stretches = inCells(bestStretches(model, FIT_GIVEN_UP).stretches, frame);
    far = barkSeen(c, texture, stretches, levels, floor);
    const wood = stretches.find((s) => !['airIn', 'barkIn'].includes(STATES[s.state]!));
    levels = { ...levels, pivotMm: (wood?.from ?? 0) * cellMm };
    const fit = fitLevels(c, texture.scatterPct, masked, stretches, levels, near);
    levels = fit.levels;
    soundSdPct = fit.soundSdPct;
    const passed = woodPassed(stretches, cells, cellMm);
    floorSdPct = Math.min(4, floorSd(fit, passed[lowestWood(texture, stretches)]!));
    floor = floorOf(levels, passed);
    shape = soundShape(levels, c);
  }
  const frame = withFarBark(modelFrame(c, texture, rings, known, 1), c, texture, far);
  const model = traceModel(c, texture, frame, levels, floor, shape, floorSdPct, notches, masked);
  stretches = bestStretches(model).stretches;
  const posterior = stretchPosterior(model);

  // Probabilities by kind.
  const K = ZONE_KINDS.length;
  const probability = new Float64Array(cells * K);
  for (let i = 0; i < cells; i++)
    for (let k = 0; k < STATES.length; k++)
      probability[i * K + STATE_COLUMN[k]!]! += posterior.probability[i * STATES.length + k]!;

  // Zones: stretches of one kind that touch (a knot in sound wood) are one.
  const kinds = stretches.map((s) => STATE_KIND[STATES[s.state]!]);
  const joined: Stretch[] = [];
  stretches.forEach((s, j) => {
    const last = joined.at(-1);
    if (last && kinds[j - 1] === kinds[j]) last.to = s.to;
    else joined.push({ ...s });
  });
  const from = gridMm[0]! - cellMm / 2;
  const to = c.endMm;
  const edges = refineEdges(c, joined, 0.08 * levels.soundPct);
  const zones = joined.map((s, j): Zone => {
    const kind = STATE_KIND[STATES[s.state]!];
    const column = ZONE_KINDS.indexOf(kind);
    let sum = 0;
    for (let i = s.from; i < s.to; i++) sum += probability[i * K + column]!;
    return {
      kind,
      fromMm: j === 0 ? from : edges[j - 1]!,
      toMm: j === joined.length - 1 ? to : edges[j]!,
      confidence: sum / (s.to - s.from),
    };
  });

  const dips = stretches
    .filter((s) => STATES[s.state] === 'dip')
    .map((s) => ({ fromMm: from + s.from * cellMm, toMm: from + s.to * cellMm }));
  const first = zones.findIndex((z) => z.kind !== 'air' && z.kind !== 'bark');
  const wood = zones[first];
  const woodFromMm = wood ? wood.fromMm : to;
  const wallMm = wood?.kind === 'sound' ? wood.toMm - wood.fromMm : 0;
  const next = zones[first + 1];
  const atLeast = wood?.kind === 'sound' && (!next || next.kind === 'bark' || next.kind === 'air');
  const cellsWall = wood ? (joined[first]!.to - joined[first]!.from) * cellMm : 0;
  const shift = wood?.kind === 'sound' ? wallMm - cellsWall : 0;
  const bark = zones.find((z) => z.kind === 'bark');
  return {
    zones,
    residualWallMm: wallMm,
    residualWallInterval: wallInterval(posterior, cellMm, shift),
    residualWallAtLeast: atLeast,
    barkFromMm: zones[0]!.kind === 'air' ? zones[0]!.toMm : bark ? from : woodFromMm,
    woodFromMm,
    gridMm,
    probability,
    levelPct: Float64Array.from(c.levelPct, (y, i) => y - floor[i]!),
    frictionPct: floor,
    reference: {
      levelPct: levels.soundPct,
      sdPct: Math.hypot(soundSdPct, LOCAL_SOUND_SCATTER * levels.soundPct),
      restsOn: several ? 'all drillings of the tree' : 'this trace',
    },
    warnings: warningsOf(c, zones, probability, levels, floorSdPct, several, dips),
  };
}

/** Length and relative level of the bark on the way in, if there is any. */
function barkSeen(
  c: ConditionedTrace,
  texture: Texture,
  stretches: readonly Stretch[],
  levels: Levels,
  floor: Float64Array,
): BarkSeen | undefined {
  const bark = stretches.find((s) => STATES[s.state] === 'barkIn');
  if (!bark) return undefined;
  let sum = 0;
  for (let i = bark.from; i < bark.to; i++) sum += c.levelPct[i]! - floor[i]!;
  const n = bark.to - bark.from;
  return {
    lengthMm: n * c.cellMm,
    airMm: bark.from * c.cellMm,
    scatterPct: quantile(texture.seenPct.slice(bark.from, bark.to), 0.5),
    level: Math.min(0.6, Math.max(0, sum / n / levels.soundPct)),
  };
}

/** Cell inside the wood where the trace comes lowest. */
function lowestWood(texture: Texture, stretches: readonly Stretch[]): number {
  let lowest = Infinity;
  let at = 0;
  for (const { state, from, to } of stretches) {
    const name = STATES[state]!;
    if (name === 'airIn' || name === 'barkIn') continue;
    for (let i = from; i < to; i++)
      if (texture.smoothPct[i]! < lowest) {
        lowest = texture.smoothPct[i]!;
        at = i;
      }
  }
  return at;
}

/** Stretches on a strided grid, in cells. */
function inCells(stretches: readonly Stretch[], frame: ModelFrame): Stretch[] {
  return stretches.map(({ state, from, to }) => ({
    state,
    from: frame.boundary[from]!,
    to: frame.boundary[to]!,
  }));
}
