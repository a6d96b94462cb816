/**
 * Drilling a simulated section: where the needles go, what they truly meet, what the outline is measured as, and the
 * reading of each needle, either through a simulated trace and the trace reader or straight from the truth.
 */
import { type Random, randomFrom } from '../../../packages/engine/src/random.ts';
import type { FieldDrilling, FieldInput } from '../../../packages/engine/src/section/field/index.ts';
import { needleLine } from '../../../packages/engine/src/section/needle.ts';
import { outlineRadius, outlineRing } from '../../../packages/engine/src/section/outline.ts';
import { contains } from '../../../packages/engine/src/section/ring.ts';
import type { NeedlePose, Outline, PointMm } from '../../../packages/engine/src/section/types.ts';
import { readTraces } from '../../../packages/engine/src/trace/index.ts';
import { type TraceReading, ZONE_KINDS, type ZoneKind } from '../../../packages/engine/src/trace/types.ts';
import {
  type RingPattern,
  simulateTrace,
  type TraceFeature,
  type TraceStretch,
} from '../traces/simulateTrace.ts';
import { lookAround } from './lookAround.ts';
import type { TrueSection } from './trueSection.ts';

export interface DrillingPlan {
  drillings: number;
  seed: number;
  /** `traces` goes through simulated traces and the trace reader; `zones` reads the truth with blurred edges. */
  readings: 'traces' | 'zones';
  /** Azimuths to drill at, degrees; equally spaced with some disorder when left out. */
  azimuthsDeg?: number[];
  /** Whether the surface was looked at and noted; not, when left out. */
  lookedAround?: boolean;
}

export interface DrilledSection {
  input: FieldInput;
  poses: NeedlePose[];
}

const STEP_MM = 0.5;

/** Drills a section by a plan. The outline handed on is the measured one, with errors of a few percent. */
export function drillSection(section: TrueSection, plan: DrillingPlan): DrilledSection {
  const random = randomFrom(plan.seed).fork(`drill ${section.family}`);
  const start = 360 * random.uniform();
  const disorder = [0, 5, 15, 30][Math.floor(4 * random.uniform())]!;
  const skew = random.uniform() < 0.5 ? 0 : 12;
  const tilted = random.uniform() < 0.25;
  const azimuths =
    plan.azimuthsDeg ??
    Array.from(
      { length: plan.drillings },
      (_, k) => start + (360 * k) / plan.drillings + disorder * random.normal() * 0.6,
    );
  const needleMm = [300, 400, 400, 500][Math.floor(4 * random.uniform())]!;
  const poses = azimuths.map(
    (a): NeedlePose => ({
      azimuthDeg: ((a % 360) + 360) % 360,
      offRadialDeg: skew * (2 * random.uniform() - 1),
      downDeg: tilted ? 25 * random.uniform() : 0,
    }),
  );
  const lengths = poses.map(() => (random.uniform() < 0.1 ? 0.5 + 0.5 * random.uniform() : 1) * needleMm);
  const met = poses.map((pose, k) => stretchesMet(section, pose, lengths[k]!, random));
  const readings =
    plan.readings === 'traces'
      ? readThroughTraces(met, section.barkMm, random)
      : met.map((stretches) => readingFromZones(stretches));
  const outline = outlineRing(measured(section, random));
  const drillings = poses.map((pose, k): FieldDrilling => ({ id: `d${k + 1}`, pose, reading: readings[k]! }));
  const barkMm = section.barkMm * (1 + 0.15 * random.normal());
  const surface = plan.lookedAround ? lookAround(section, random.fork('surface')) : [];
  return { input: { outline, barkMm, drillings, surface }, poses };
}

/** The outline as measured: radii at 12 to 36 azimuths, each with its error, part of it common. */
export function measured(section: TrueSection, random: Random): Outline {
  const radius = outlineRadius(section.outline);
  const count = [12, 16, 24, 36][Math.floor(4 * random.uniform())]!;
  const common = 1 + 0.01 * random.normal();
  const single = 0.025 * random.uniform();
  return {
    kind: 'radii',
    radii: Array.from({ length: count }, (_, k) => {
      const azimuthDeg = (360 * k) / count;
      return { azimuthDeg, radiusMm: radius(azimuthDeg) * common * (1 + single * random.normal()) };
    }),
  };
}

/** What a needle meets, as stretches. The needle wanders off its line by up to a degree or so. */
export function stretchesMet(
  section: TrueSection,
  pose: NeedlePose,
  lengthMm: number,
  random: Random,
): TraceStretch[] {
  const line = needleLine(section.outline, { ...pose, offRadialDeg: pose.offRadialDeg + random.normal() });
  const kinds: ZoneKind[] = [];
  const end = Math.min(lengthMm, line.exitDepthMm + 10);
  for (let depth = STEP_MM / 2; depth < end; depth += STEP_MM) {
    const p: PointMm = [
      line.entryMm[0] + line.headingUnit[0] * line.horizontalPerDepth * depth,
      line.entryMm[1] + line.headingUnit[1] * line.horizontalPerDepth * depth,
    ];
    kinds.push(kindAt(section, p, depth > line.exitDepthMm));
  }
  const standOff = random.uniform() < 0.5 ? 0 : 8 * random.uniform();
  const stretches: TraceStretch[] = standOff > 1 ? [{ kind: 'air', lengthMm: standOff }] : [];
  const edgeMm = random.uniform() < 0.5 ? 0 : 20 * random.uniform();
  for (const kind of kinds) {
    const last = stretches.at(-1);
    if (last?.kind === kind) last.lengthMm += STEP_MM;
    else {
      const gradual =
        last &&
        ((last.kind === 'sound' && kind === 'decayed') || (last.kind === 'decayed' && kind === 'sound'));
      stretches.push({ kind, lengthMm: STEP_MM, ...(gradual ? { edgeMm } : {}) });
    }
  }
  return stretches;
}

function kindAt(section: TrueSection, [x, y]: PointMm, past: boolean): ZoneKind {
  if (past || !contains(section.outline, x, y)) return 'air';
  let kind: ZoneKind | undefined;
  section.voids.forEach((v, i) => {
    if (contains(v, x, y)) kind = section.filled[i] && kind !== 'void' ? 'decayed' : 'void';
  });
  if (kind) return kind;
  return contains(section.wood, x, y) ? 'sound' : 'bark';
}

export function readThroughTraces(met: TraceStretch[][], barkMm: number, random: Random): TraceReading[] {
  const pattern = (['none', 'diffuse', 'ring-porous', 'conifer'] as RingPattern[])[
    Math.floor(4 * random.uniform())
  ]!;
  const soundLevelPct = 20 + 40 * random.uniform();
  const frictionPctPerMm = 0.05 * random.uniform();
  const decayShare = 0.05 + 0.35 * random.uniform();
  const ringMm = 1 + 4 * random.uniform();
  const noiseSdPct = 0.3 + 1.5 * random.uniform();
  const trendShare = 0.15 * random.normal();
  const spacingMm = [0.04, 0.1, 0.5][Math.floor(3 * random.uniform())]!;
  const traces = met.map((stretches, k) => {
    const features: TraceFeature[] = [];
    if (random.uniform() < 0.15)
      features.push({
        atMm: 300 * random.uniform(),
        widthMm: 10 + 20 * random.uniform(),
        rise: 0.2 + 0.5 * random.uniform(),
      });
    const withShares = stretches.map((s) =>
      s.kind === 'decayed' ? { ...s, share: decayShare * (0.7 + 0.6 * random.uniform()) } : s,
    );
    return {
      id: `d${k + 1}`,
      barkMm,
      trace: simulateTrace({
        stretches: withShares,
        seed: Math.floor(1e9 * random.uniform()),
        soundLevelPct,
        frictionPctPerMm,
        frictionOnsetPct: 3 * random.uniform(),
        rings: pattern,
        ringMm,
        noiseSdPct,
        trendShare,
        zeroPct: 2 * random.uniform(),
        spacingMm,
        features,
        spikesPerMetre: random.uniform() < 0.2 ? 5 : 0,
      }).trace,
    };
  });
  return readTraces(traces);
}

/** A reading straight from the truth, edges blurred by a millimetre or two. */
export function readingFromZones(stretches: readonly TraceStretch[]): TraceReading {
  const total = stretches.reduce((sum, s) => sum + s.lengthMm, 0);
  const n = Math.max(2, Math.floor(total) + 1);
  const gridMm = Float64Array.from({ length: n }, (_, i) => i);
  const kinds = ZONE_KINDS.length;
  const probability = new Float64Array(n * kinds);
  let from = 0;
  let barkFromMm = 0;
  let woodFromMm = 0;
  let entered = false;
  const zones = stretches.map((s) => {
    const zone = { kind: s.kind, fromMm: from, toMm: from + s.lengthMm, confidence: 1 };
    for (let i = 0; i < n; i++) {
      const inside =
        1 / (1 + Math.exp(-(i - zone.fromMm) / 0.7)) - 1 / (1 + Math.exp(-(i - zone.toMm) / 0.7));
      const k = i * kinds + ZONE_KINDS.indexOf(s.kind);
      probability[k] = probability[k]! + inside;
    }
    if (!entered) {
      if (s.kind === 'air') barkFromMm = zone.toMm;
      if (s.kind === 'air' || s.kind === 'bark') woodFromMm = zone.toMm;
      else entered = true;
    }
    from = zone.toMm;
    return zone;
  });
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let k = 0; k < kinds; k++) sum += probability[i * kinds + k]!;
    for (let k = 0; k < kinds; k++) probability[i * kinds + k] = probability[i * kinds + k]! / sum;
  }
  const firstUnsound = zones.find((z) => z.fromMm >= woodFromMm && z.kind !== 'sound');
  const wall = (firstUnsound ? firstUnsound.fromMm : total) - woodFromMm;
  return {
    zones,
    residualWallMm: Math.max(0, wall),
    residualWallInterval: { p05: Math.max(0, wall - 3), p50: Math.max(0, wall), p95: Math.max(0, wall + 3) },
    residualWallAtLeast: !firstUnsound || firstUnsound.kind === 'air' || firstUnsound.kind === 'bark',
    barkFromMm,
    woodFromMm,
    gridMm,
    probability,
    levelPct: new Float64Array(n),
    frictionPct: new Float64Array(n),
    reference: { levelPct: 45, sdPct: 3, restsOn: 'this trace' },
    warnings: [],
  };
}
