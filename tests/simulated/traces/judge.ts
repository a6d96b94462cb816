/** Scores of readings against known zones. */
import type { TraceReading, Zone } from '../../../packages/engine/src/trace/types.ts';
import type { Specimen } from './families.ts';

/** An edge missed altogether counts as this far off, mm. */
export const MISSED_EDGE_MM = 20;
const STRONG_EDGE = 0.3;

export interface Score {
  traces: number;
  edgeErrorsMm: number[];
  edges: number;
  edgesMissed: number;
  voids: number;
  voidsFound: number;
  pockets: number;
  pocketsFound: number;
  incipients: number;
  incipientsFound: number;
  cracks: number;
  cracksFound: number;
  soundTraces: number;
  /** Sound traces read as having decayed wood or a void; and as having anything that is not sound. */
  falseDecay: number;
  falseAnything: number;
  agreedMm: number;
  totalMm: number;
  walls: number;
  wallsHeld: number;
  wallErrorsMm: number[];
  wallWidthsMm: number[];
  exits: number;
  exitsFound: number;
  falseExits: number;
}

export function emptyScore(): Score {
  return {
    traces: 0,
    edgeErrorsMm: [],
    edges: 0,
    edgesMissed: 0,
    voids: 0,
    voidsFound: 0,
    pockets: 0,
    pocketsFound: 0,
    incipients: 0,
    incipientsFound: 0,
    cracks: 0,
    cracksFound: 0,
    soundTraces: 0,
    falseDecay: 0,
    falseAnything: 0,
    agreedMm: 0,
    totalMm: 0,
    walls: 0,
    wallsHeld: 0,
    wallErrorsMm: [],
    wallWidthsMm: [],
    exits: 0,
    exitsFound: 0,
    falseExits: 0,
  };
}

const WOODEN = new Set(['incipient', 'decayed', 'void']);

function overlap(zones: readonly Zone[], kinds: ReadonlySet<string>, from: number, to: number): number {
  let sum = 0;
  for (const z of zones)
    if (kinds.has(z.kind)) sum += Math.max(0, Math.min(z.toMm, to) - Math.max(z.fromMm, from));
  return sum;
}

/** Level of each true zone as a share of sound, by the stretches it was made of. */
function shares(s: Specimen): number[] {
  return s.truth.map((z) => {
    const stretch = s.stretches.find((t) => t.kind === z.kind);
    if (z.kind === 'sound') return 1;
    if (z.kind === 'bark') return 0.2;
    if (z.kind === 'decayed' || z.kind === 'incipient') return stretch?.share ?? 0.3;
    return 0;
  });
}

/** Add one reading to a score. */
export function addToScore(score: Score, s: Specimen, reading: TraceReading): void {
  const { truth } = s;
  const { zones } = reading;
  score.traces++;
  const level = shares(s);
  const found = zones.slice(1).map((z) => z.fromMm);
  for (let i = 1; i < truth.length; i++) {
    const a = truth[i - 1]!;
    const b = truth[i]!;
    if (Math.abs(level[i]! - level[i - 1]!) < STRONG_EDGE) continue;
    // Narrow cracks are told apart below.
    if (a.kind === 'crack' || b.kind === 'crack') continue;
    const error = found.reduce((best, x) => Math.min(best, Math.abs(x - b.fromMm)), Infinity);
    score.edges++;
    if (error > MISSED_EDGE_MM) score.edgesMissed++;
    score.edgeErrorsMm.push(Math.min(MISSED_EDGE_MM, error));
  }
  for (const z of truth) {
    const length = z.toMm - z.fromMm;
    if (z.kind === 'void' && length >= 10) {
      score.voids++;
      if (overlap(zones, new Set(['void']), z.fromMm, z.toMm) >= 0.5 * length) score.voidsFound++;
    }
    if (z.kind === 'decayed' && length >= 10) {
      score.pockets++;
      if (overlap(zones, WOODEN, z.fromMm, z.toMm) >= 0.5 * length) score.pocketsFound++;
    }
    if (z.kind === 'incipient') {
      score.incipients++;
      if (overlap(zones, WOODEN, z.fromMm, z.toMm) >= 0.5 * length) score.incipientsFound++;
    }
    if (z.kind === 'crack') {
      score.cracks++;
      if (overlap(zones, new Set(['crack', 'void']), z.fromMm - 1, z.toMm + 1) > 0) score.cracksFound++;
    }
    score.totalMm += length;
    score.agreedMm += overlap(zones, new Set([z.kind]), z.fromMm, z.toMm);
  }
  const exits = truth.findIndex((z, i) => i > 1 && z.kind === 'air') >= 0;
  const firstWood = zones.findIndex((z) => z.kind !== 'air' && z.kind !== 'bark');
  const saysExit = zones.some(
    (z, i) => i > firstWood && firstWood >= 0 && (z.kind === 'air' || z.kind === 'bark'),
  );
  if (exits) {
    score.exits++;
    if (saysExit) score.exitsFound++;
  } else if (saysExit) score.falseExits++;
  if (!truth.some((z) => WOODEN.has(z.kind) || z.kind === 'crack')) {
    score.soundTraces++;
    if (zones.some((z) => z.kind === 'decayed' || z.kind === 'void')) score.falseDecay++;
    if (zones.some((z) => WOODEN.has(z.kind) || z.kind === 'crack')) score.falseAnything++;
  }
  score.walls++;
  const wall = s.residualWallMm;
  const i = reading.residualWallInterval;
  if (wall >= i.p05 && wall <= i.p95) score.wallsHeld++;
  score.wallErrorsMm.push(Math.abs(reading.residualWallMm - wall));
  score.wallWidthsMm.push(i.p95 - i.p05);
}

export const mean = (v: readonly number[]) =>
  v.length ? v.reduce((a, b) => a + b, 0) / v.length : Number.NaN;
export function point(v: readonly number[], q: number): number {
  const s = [...v].sort((a, b) => a - b);
  return s.length ? s[Math.min(s.length - 1, Math.floor(q * s.length))]! : Number.NaN;
}
