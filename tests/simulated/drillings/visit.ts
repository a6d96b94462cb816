/**
 * A visit to one simulated tree: a section that is drilled hole by hole, what the tree must carry, and which decision is
 * right. Strategies that drill at the same place read the same there.
 */
import { type Random, randomFrom } from '../../../packages/engine/src/random.ts';
import { ringModulusByDirection } from '../../../packages/engine/src/section/capacity.ts';
import type { FieldDrilling, FieldInput } from '../../../packages/engine/src/section/field/index.ts';
import { outlineRing } from '../../../packages/engine/src/section/outline.ts';
import type { NeedlePose } from '../../../packages/engine/src/section/types.ts';
import { measured, readingFromZones, readThroughTraces, stretchesMet } from '../sections/drillSection.ts';
import { lookAround } from '../sections/lookAround.ts';
import { type TrueSection, trueSection } from '../sections/trueSection.ts';
import type { TraceStretch } from '../traces/simulateTrace.ts';

export type Readings = 'zones' | 'traces';

export interface Visit {
  family: string;
  seed: number;
  section: TrueSection;
  /** Share of the whole strength that must remain for the tree to be kept, toward each of 36 directions. */
  needed: Float64Array;
  /** Least of what truly remains over what is needed; below 1 it is right to act. */
  truth: number;
  /** Direction in which most is needed, degrees. */
  governingDeg: number;
  needleMm: number;
  /** What the field is given once needles stand at these poses. */
  drilled(poses: readonly NeedlePose[]): FieldInput;
}

/** Strength that a tree must keep, share of the whole: outside this no section leaves doubt. */
const LEAST_NEEDED = 0.25;
const MOST_NEEDED = 0.9;
/** Greatest share by which lean adds to the load on one side and takes from it on the other: about 12 degrees of lean. */
const MOST_LEAN = 0.25;
/** Edges are read to this, mm (standard deviation; in one of twenty, the second). */
const EDGE_SD_MM = 1;
const POOR_EDGE_SD_MM = 8;
/** Chance that a stretch that is not sound is not seen, and that sound wood is read with a stretch of decay. */
const UNSEEN = 0.03;
const FALSE_DECAY = 0.04;

/**
 * @param families sections of these are what the needed strength is drawn from, so it does not depend on the truth
 * @param lookedAround whether what is seen of the surface is handed to the field
 */
export function visit(
  family: string,
  seed: number,
  families: readonly string[],
  readings: Readings,
  lookedAround: boolean,
): Visit {
  const random = randomFrom(seed).fork(`visit ${family}`);
  const section = trueSection(family, seed);
  const load = loadRose(section, random.fork('load'));
  const needs = neededShare(families, random.fork('needed'));
  const greatest = Math.max(...load);
  const needed = load.map((l) => (needs * l) / greatest);
  const outline = outlineRing(measured(section, random.fork('outline')));
  const barkMm = section.barkMm * (1 + 0.15 * random.normal());
  const surface = lookedAround ? lookAround(section, random.fork('surface')) : [];
  const needleMm = [300, 400, 400, 500][Math.floor(4 * random.uniform())]!;

  const drilled = (poses: readonly NeedlePose[]): FieldInput => {
    const met = poses.map((pose) => {
      const own = random.fork(`needle ${pose.azimuthDeg.toFixed(1)} ${pose.offRadialDeg.toFixed(1)}`);
      const length = (own.uniform() < 0.1 ? 0.5 + 0.5 * own.uniform() : 1) * needleMm;
      const held = {
        ...pose,
        azimuthDeg: pose.azimuthDeg + own.normal(),
        offRadialDeg: pose.offRadialDeg + 2 * own.normal(),
      };
      const stretches = stretchesMet(section, held, length, own);
      return readings === 'zones' ? misread(stretches, own) : stretches;
    });
    const read =
      readings === 'traces'
        ? readThroughTraces(met, section.barkMm, random.fork('traces'))
        : met.map(readingFromZones);
    const drillings = poses.map((pose, k): FieldDrilling => ({ id: `d${k + 1}`, pose, reading: read[k]! }));
    return { outline, barkMm, drillings, surface };
  };
  return {
    family,
    seed,
    section,
    needed,
    truth: leastRatio(section.remaining, 0, needed),
    governingDeg: 10 * load.indexOf(greatest),
    needleMm,
    drilled,
  };
}

/** Least over the directions of remaining over needed. */
export function leastRatio(remaining: Float64Array, from: number, needed: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let d = 0; d < needed.length; d++) least = Math.min(least, remaining[from + d]! / needed[d]!);
  return least;
}

/** Load over the strength of the wood all sound, by direction, in units of its own: lean, and the outline's shape. */
function loadRose(section: TrueSection, random: Random): Float64Array {
  const lean = MOST_LEAN * random.uniform();
  const toward = 2 * Math.PI * random.uniform();
  return ringModulusByDirection(section.wood).map(
    (modulus, d) => (1 + lean * Math.cos((d * Math.PI) / 18 - toward)) / modulus,
  );
}

/** What another section of the same mixture truly keeps: so neither decision is right beforehand. */
function neededShare(families: readonly string[], random: Random): number {
  for (;;) {
    const family = families[Math.floor(families.length * random.uniform())]!;
    const { remaining } = trueSection(family, Math.floor(1e9 * random.uniform()));
    const least = Math.min(...remaining);
    if (least >= LEAST_NEEDED && least <= MOST_NEEDED) return least;
  }
}

/** What a trace reader makes of the stretches: edges a little off, now and then a stretch unseen or imagined. */
function misread(stretches: readonly TraceStretch[], random: Random): TraceStretch[] {
  const out: TraceStretch[] = [];
  for (const { kind, lengthMm } of stretches) {
    const unseen = (kind === 'decayed' || kind === 'void') && random.uniform() < UNSEEN;
    const now = unseen ? 'sound' : kind;
    const last = out.at(-1);
    if (last && last.kind === now) last.lengthMm += lengthMm;
    else out.push({ kind: now, lengthMm });
  }
  for (let i = 1; i < out.length; i++) {
    const sd = random.uniform() < 0.05 ? POOR_EDGE_SD_MM : EDGE_SD_MM;
    const moved = Math.max(1 - out[i - 1]!.lengthMm, Math.min(out[i]!.lengthMm - 1, sd * random.normal()));
    out[i - 1]!.lengthMm += moved;
    out[i]!.lengthMm -= moved;
  }
  const longest = out.reduce(
    (a, b) => (b.kind === 'sound' && b.lengthMm > (a?.lengthMm ?? 0) ? b : a),
    out[0]!,
  );
  if (random.uniform() < FALSE_DECAY && longest.kind === 'sound' && longest.lengthMm > 80) {
    const length = 10 + 20 * random.uniform();
    const before = 20 + (longest.lengthMm - 40 - length) * random.uniform();
    const after = longest.lengthMm - length - before;
    const at = out.indexOf(longest);
    out.splice(
      at,
      1,
      { kind: 'sound', lengthMm: before },
      { kind: 'decayed', lengthMm: length },
      { kind: 'sound', lengthMm: after },
    );
  }
  return out;
}
