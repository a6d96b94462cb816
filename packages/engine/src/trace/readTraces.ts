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
import { bestStretches, type SemiMarkov, type Stretch, stretchPosterior } from './semiMarkov.ts';
import { type Texture, textureOf, withRings } from './texture.ts';
import {
  type BarkSeen,
  type ModelFrame,
  maskNotches,
  modelFrame,
  type PlaceKnown,
  relativeLevel,
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
}

/** Share of sound above which a cell of fading wood still counts as sound. */
const HALF_FADED = 0.65;
const FADING = STATES.indexOf('fading');
const SOUND_COLUMN = ZONE_KINDS.indexOf('sound');
/** What an edge's place is uncertain by beyond the model's own doubt, mm; and of one that fades, share of its length. */
const EDGE_SD_MM = 1.3;
const FADED_SD = 0.2;
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
    const rings = findRings(conditioned);
    const texture = withRings(textureOf(conditioned), conditioned, rings);
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
  const notches: Notch[] = findNotches(c, floor, texture.fineScatterPct, levels.soundPct);
  const masked = maskNotches(c, notches);
  let shape = soundShape(levels, c);
  let stretches: Stretch[] = [];
  let floorSdPct = FLOOR_SD_PCT;
  let soundSdPct = 0;
  let zeroSdPct = priors.zeroPct.sd;
  for (let pass = 0; pass < FIT_PASSES; pass++) {
    const frame = pass === 0 ? fitFrame : withFarBark(fitFrame, c, texture, far);
    const model = traceModel(c, texture, frame, levels, floor, shape, floorSdPct, notches, masked);
    stretches = inCells(bestStretches(model, FIT_GIVEN_UP).stretches, frame);
    far = barkSeen(c, texture, stretches, levels, floor, zeroSdPct);
    const wood = stretches.find((s) => !['airIn', 'barkIn'].includes(STATES[s.state]!));
    levels = { ...levels, pivotMm: (wood?.from ?? 0) * cellMm };
    const fit = fitLevels(c, texture.scatterPct, masked, stretches, levels, near);
    levels = fit.levels;
    soundSdPct = fit.soundSdPct;
    zeroSdPct = floorSd(fit, 0);
    const passed = woodPassed(stretches, cells, cellMm);
    floorSdPct = Math.min(4, floorSd(fit, passed[lowestWood(texture, stretches)]!));
    floor = floorOf(levels, passed);
    shape = soundShape(levels, c);
  }
  const frame = withFarBark(modelFrame(c, texture, rings, known, 1), c, texture, far);
  const model = traceModel(c, texture, frame, levels, floor, shape, floorSdPct, notches, masked);
  const posterior = stretchPosterior(model);
  stretches = bestStretches(endingAsLikeliest(model, posterior.probability)).stretches;

  // Probabilities by kind.
  const K = ZONE_KINDS.length;
  const probability = new Float64Array(cells * K);
  for (let i = 0; i < cells; i++) {
    const high = relativeLevel(c.levelPct[i]!, floor[i]!, levels.soundPct * shape[i]!) > HALF_FADED;
    for (let k = 0; k < STATES.length; k++) {
      const column = k === FADING && high ? SOUND_COLUMN : STATE_COLUMN[k]!;
      probability[i * K + column]! += posterior.probability[i * STATES.length + k]!;
    }
  }

  // Zones: stretches of one kind that touch (a knot in sound wood) are one.
  const kinds = stretches.map((s) => STATE_KIND[STATES[s.state]!]);
  const joined: Stretch[] = [];
  stretches.forEach((s, j) => {
    const last = joined.at(-1);
    if (last && kinds[j - 1] === kinds[j]) last.to = s.to;
    else joined.push({ ...s });
    // The edge of what fades over some millimetres is its middle.
    if (last && s.state === FADING) {
      last.to = (s.from + s.to) >> 1;
      joined.at(-1)!.from = last.to;
    }
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
  // The posterior's walls end where the wood is whole no more: where an edge that fades over some millimetres begins.
  const broken = stretches.find(
    (s) => s.from >= (joined[first]?.from ?? cells) && STATE_KIND[STATES[s.state]!] !== 'sound',
  );
  const cellsWall = wood ? ((broken?.from ?? cells) - joined[first]!.from) * cellMm : 0;
  const fadesMm = broken?.state === FADING ? (broken.to - broken.from) * cellMm : 0;
  const shift = wood?.kind === 'sound' ? wallMm - cellsWall : 0;
  const bark = zones.find((z) => z.kind === 'bark');
  return {
    zones,
    residualWallMm: wallMm,
    residualWallInterval: wallInterval(posterior, cellMm, shift, Math.hypot(EDGE_SD_MM, FADED_SD * fadesMm)),
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
    warnings: warningsOf(
      c,
      zones,
      probability,
      levels,
      floorSdPct,
      several,
      dips,
      known.exitMm !== undefined,
    ),
  };
}

/** How many cells of ragged bark are alike. */
const ALIKE_CELLS = 3;

/**
 * The model with its end decided first: beyond the far side, or within the stem, whichever all explanations together
 * make likelier. The single best explanation may be of the less likely sort when the other sort has many.
 */
function endingAsLikeliest(model: SemiMarkov, probability: Float64Array): SemiMarkov {
  const row = (model.cells - 1) * STATES.length;
  const outside = STATES.map((s) => s === 'barkOut' || s === 'airOut');
  const out = outside.reduce((sum, o, k) => sum + (o ? probability[row + k]! : 0), 0);
  const last = model.last.map((v, k) => (outside[k] === out > 0.5 ? v : -Infinity));
  return { ...model, last };
}

/** Length and relative level of the bark on the way in, if there is any. */
function barkSeen(
  c: ConditionedTrace,
  texture: Texture,
  stretches: readonly Stretch[],
  levels: Levels,
  floor: Float64Array,
  zeroSdPct: number,
): BarkSeen | undefined {
  const bark = stretches.find((s) => STATES[s.state] === 'barkIn');
  if (!bark) return undefined;
  let sum = 0;
  for (let i = bark.from; i < bark.to; i++) sum += c.levelPct[i]! - floor[i]!;
  const n = bark.to - bark.from;
  let squares = 0;
  let roughSquares = 0;
  // A step at either end, or a stone cell, is not its raggedness.
  const most = 3 * 1.4826 * quantile(texture.roughPct.slice(bark.from, bark.to), 0.5);
  for (let i = bark.from; i < bark.to; i++) {
    squares += (c.levelPct[i]! - floor[i]! - sum / n) ** 2;
    roughSquares += Math.min(most, texture.roughPct[i]!) ** 2;
  }
  // Two short ragged stretches of one bark differ in mean by chance; and the idle level shifts the near one alone.
  const chance = Math.sqrt((2 * ALIKE_CELLS * squares) / (n * n));
  return {
    lengthMm: n * c.cellMm,
    airMm: bark.from * c.cellMm,
    roughPct: Math.sqrt(Math.max(0, roughSquares / n - texture.quietRoughPct ** 2)),
    levelPct: Math.max(0, sum / n),
    level: Math.min(0.6, Math.max(0, sum / n / levels.soundPct)),
    levelSd: Math.hypot(chance, zeroSdPct) / levels.soundPct,
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
