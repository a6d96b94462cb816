/**
 * Simulated resistance-drilling traces with known zones. No open table of raw traces with felled truth is known,
 * so this stands in for one: the physics (resistance of the wood at the tip, blurred by the tip; friction of the
 * shaft that grows only in wood; zero error, noise, clipping) with every parameter free. Pure and seeded.
 */
import { randomFrom } from '../../../packages/engine/src/random.ts';
import type { Trace, Zone, ZoneKind } from '../../../packages/engine/src/trace/types.ts';

/** A stretch along the needle. `share` is its level over that of sound wood; left out, it is drawn for the kind. */
export interface TraceStretch {
  kind: ZoneKind;
  lengthMm: number;
  share?: number;
  /** Millimetres over which the level goes over from the stretch before (the true edge is the middle). */
  edgeMm?: number;
}

/** Wood anatomy, as it shows in a trace. */
export type RingPattern = 'none' | 'diffuse' | 'ring-porous' | 'conifer' | 'saw-tooth';

/** A place in sound wood that reads unlike it without being decay: a knot (`rise` > 0), pith or wetwood (< 0). */
export interface TraceFeature {
  atMm: number;
  widthMm: number;
  /** Change of level over that of sound wood at its middle. */
  rise: number;
}

export interface SimulateTraceOptions {
  stretches: readonly TraceStretch[];
  seed: number;
  /** Level of sound wood over the idle level, percent of full scale. Default 45. */
  soundLevelPct?: number;
  /** Zero error of the drill, percent of full scale. Default 0. */
  zeroPct?: number;
  /** Growth of shaft friction while passing wood, percent of full scale per mm. Default 0.02. */
  frictionPctPerMm?: number;
  /** Friction that comes on within the first centimetres of wood, percent of full scale. Default 1. */
  frictionOnsetPct?: number;
  rings?: RingPattern;
  /** Ring width, mm, and how much rings vary in width (share). Defaults 3 and 0.25. */
  ringMm?: number;
  ringScatter?: number;
  /** Depth of the ring pattern as a share of the sound level. Default by pattern. */
  ringContrast?: number;
  /** Level of sound wood at 200 mm depth over that at the cambium, minus 1; linear in depth. Default 0. */
  trendShare?: number;
  /** Slow wave of the sound level along the radius: size as a share, length of one wave, mm. Defaults 0 and 150. */
  waveShare?: number;
  waveMm?: number;
  /** Bark level over that of sound wood, when a bark stretch has no share. Default 0.15. */
  barkShare?: number;
  /**
   * Depth of fissures and plates in the bark as a share of its level (1: down to nothing, up to twice), and the mean
   * distance from one to the next, mm. Defaults 0 and 14.
   */
  fissureShare?: number;
  fissureMm?: number;
  /** Friction on the shaft in decayed wood over that in sound. Default 0.3 and 0.7 of its level's share. */
  decayRubs?: number;
  /** White noise of one reading, percent of full scale. Default 1. */
  noiseSdPct?: number;
  /** Slowly varying part of the wood's density: standard deviation as a share, and its correlation length, mm. */
  wanderShare?: number;
  wanderMm?: number;
  /** Length over which the tip averages, mm. Default 1.2. */
  tipMm?: number;
  /** Single readings that jump, per metre. Default 0. */
  spikesPerMetre?: number;
  features?: readonly TraceFeature[];
  /**
   * Texture of sound wood at a depth, as a departure from its level in shares, in place of the rings and the slow part drawn
   * here: for two needles through one wood. The other parts stay as they are.
   */
  woodTexture?: (depthMm: number) => number;
  /** Mean distance between readings, mm, and how uneven it is (share, below 1). Defaults 0.1 and 0. */
  spacingMm?: number;
  unevenness?: number;
}

export interface SimulatedTrace {
  trace: Trace;
  /** True zones with confidence 1; neighbours of one kind are merged. */
  truth: Zone[];
  /** Sound wood between the cambium and the first wood that is not sound, mm, and whether that was all there was. */
  residualWallMm: number;
  residualWallAtLeast: boolean;
  /** Texture of the sound wood met, as taken by the option of that name: to drill the same wood again. */
  woodTexture: (depthMm: number) => number;
}

const FINE_MM = 0.1;
const FRICTION_ONSET_MM = 12;
const CONTRAST: Record<RingPattern, number> = {
  none: 0,
  diffuse: 0.06,
  'ring-porous': 0.45,
  conifer: 0.5,
  'saw-tooth': 0.3,
};

/** Simulate one needle pass. Depth starts at 0 at the first stretch's beginning. */
export function simulateTrace(options: SimulateTraceOptions): SimulatedTrace {
  const {
    stretches,
    soundLevelPct = 45,
    zeroPct = 0,
    frictionPctPerMm = 0.02,
    frictionOnsetPct = 1,
    rings = 'diffuse',
    ringMm = 3,
    ringScatter = 0.25,
    ringContrast = CONTRAST[rings],
    trendShare = 0,
    waveShare = 0,
    waveMm = 150,
    barkShare = 0.15,
    fissureShare = 0,
    fissureMm = 14,
    noiseSdPct = 1,
    wanderShare = 0.04,
    wanderMm = 6,
    tipMm = 1.2,
    spikesPerMetre = 0,
    features = [],
    woodTexture,
    spacingMm = 0.1,
    unevenness = 0,
  } = options;
  const random = randomFrom(options.seed);
  const lengthMm = stretches.reduce((sum, s) => sum + s.lengthMm, 0);
  const n = Math.ceil(lengthMm / FINE_MM) + 1;

  // Share of the sound level at each fine step, texture weight and whether the shaft rubs there.
  const share = new Float64Array(n);
  const texture = new Float64Array(n);
  const rubs = new Float64Array(n);
  const kinds: ZoneKind[] = stretches.map((s) => s.kind);
  const shares = stretches.map((s) => s.share ?? drawShare(s.kind, barkShare, random.uniform()));
  const textures = stretches.map((s, j) => textureOf(s.kind, shares[j]!));
  const ends: number[] = [];
  for (const s of stretches) ends.push((ends.at(-1) ?? 0) + s.lengthMm);
  let woodFrom = 0;
  let at = 0;
  for (const s of stretches) {
    if (s.kind !== 'air' && s.kind !== 'bark') break;
    at += s.lengthMm;
    woodFrom = at;
  }
  let j = 0;
  for (let i = 0; i < n; i++) {
    const x = i * FINE_MM;
    while (j < stretches.length - 1 && x >= ends[j]!) j++;
    share[i] = shares[j]!;
    texture[i] = textures[j]!;
    const kind = kinds[j]!;
    if (kind === 'sound' || kind === 'incipient') rubs[i] = 1;
    else if (kind === 'decayed') rubs[i] = options.decayRubs ?? 0.3 + 0.7 * shares[j]!;
    // Gradual edges: the nearer edge that is gradual bends the share.
    for (const edge of [j - 1, j]) {
      const next = stretches[edge + 1];
      if (edge < 0 || !next?.edgeMm) continue;
      const u = (x - ends[edge]!) / next.edgeMm;
      if (Math.abs(u) < 0.5) {
        const s = 0.5 + u;
        share[i] = shares[edge]! * (1 - s) + shares[edge + 1]! * s;
        texture[i] = textures[edge]! * (1 - s) + textures[edge + 1]! * s;
      }
    }
  }

  // Resistance of the wood at the point of the tip.
  const ring = ringPattern(n, rings, ringMm, ringScatter, random);
  const bark = wander(n, FINE_MM, 1.2, random);
  const slow = wander(n, FINE_MM, wanderMm, random);
  const fissures = fissureShare > 0 ? fissured(n, fissureMm, random.fork('fissures')) : undefined;
  const phase = waveShare > 0 ? 2 * Math.PI * random.fork('wave').uniform() : 0;
  const wood = new Float64Array(n);
  j = 0;
  for (let i = 0; i < n; i++) {
    const x = i * FINE_MM;
    while (j < stretches.length - 1 && x >= ends[j]!) j++;
    let level =
      1 +
      (trendShare * (x - woodFrom)) / 200 +
      waveShare * Math.sin(phase + (2 * Math.PI * (x - woodFrom)) / waveMm);
    for (const f of features) {
      const u = (x - f.atMm) / (f.widthMm / 2);
      if (Math.abs(u) < 1.5) level += f.rise * Math.exp(-2 * u * u);
    }
    const rough =
      kinds[j] === 'bark'
        ? (1 + 0.7 * bark[i]!) * (1 + fissureShare * (fissures?.[i] ?? 0))
        : 1 + texture[i]! * (woodTexture?.(x) ?? ringContrast * ring[i]! + wanderShare * slow[i]!);
    wood[i] = Math.max(0, soundLevelPct * share[i]! * level * rough);
  }

  // The tip blurs, the shaft rubs.
  const blurred = boxBlur(wood, Math.max(1, Math.round(tipMm / FINE_MM)));
  let passed = 0;
  const signal = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    passed += rubs[i]! * FINE_MM;
    signal[i] =
      zeroPct +
      blurred[i]! +
      frictionOnsetPct * (1 - Math.exp(-passed / FRICTION_ONSET_MM)) +
      frictionPctPerMm * passed;
  }

  // Readings.
  const depth: number[] = [];
  for (let x = 0; x <= lengthMm; ) {
    depth.push(x);
    x += spacingMm * (1 + unevenness * (2 * random.uniform() - 1));
  }
  const resistance = new Float64Array(depth.length);
  for (let k = 0; k < depth.length; k++) {
    const u = depth[k]! / FINE_MM;
    const i = Math.min(n - 2, Math.floor(u));
    let y = signal[i]! + (u - i) * (signal[i + 1]! - signal[i]!) + noiseSdPct * random.normal();
    if (random.uniform() < (spikesPerMetre * spacingMm) / 1000) y += (random.uniform() < 0.6 ? 1 : -1) * 40;
    resistance[k] = Math.min(100, Math.max(0, y));
  }

  // Truth.
  const truth: Zone[] = [];
  let from = 0;
  for (let s = 0; s < stretches.length; s++) {
    const last = truth.at(-1);
    if (last && last.kind === kinds[s]) last.toMm = ends[s]!;
    else truth.push({ kind: kinds[s]!, fromMm: from, toMm: ends[s]!, confidence: 1 });
    from = ends[s]!;
  }
  const wall = trueWall(truth);
  const texturedAt = (depthMm: number) => {
    const i = Math.min(n - 1, Math.max(0, Math.round(depthMm / FINE_MM)));
    return woodTexture?.(depthMm) ?? ringContrast * ring[i]! + wanderShare * slow[i]!;
  };
  return {
    trace: { depthMm: Float64Array.from(depth), resistancePct: resistance },
    truth,
    ...wall,
    woodTexture: texturedAt,
  };
}

function trueWall(truth: readonly Zone[]): { residualWallMm: number; residualWallAtLeast: boolean } {
  const first = truth.findIndex((z) => z.kind !== 'air' && z.kind !== 'bark');
  if (first < 0) return { residualWallMm: 0, residualWallAtLeast: false };
  const zone = truth[first]!;
  if (zone.kind !== 'sound') return { residualWallMm: 0, residualWallAtLeast: false };
  const next = truth[first + 1];
  return {
    residualWallMm: zone.toMm - zone.fromMm,
    residualWallAtLeast: !next || next.kind === 'bark' || next.kind === 'air',
  };
}

function drawShare(kind: ZoneKind, barkShare: number, u: number): number {
  if (kind === 'sound') return 1;
  if (kind === 'incipient') return 0.58 + 0.24 * u;
  if (kind === 'decayed') return 0.08 + 0.38 * u;
  if (kind === 'bark') return barkShare;
  return 0;
}

/** How much of the ring pattern is left. */
function textureOf(kind: ZoneKind, share: number): number {
  if (kind === 'sound') return 1;
  if (kind === 'incipient') return 0.6;
  if (kind === 'decayed') return 0.3 * share + 0.1;
  return 0;
}

/** Ring pattern of mean near 0 and range near -0.7 to 0.4 (ring-porous) or -0.4 to 0.6 (conifer), by fine step. */
function ringPattern(
  n: number,
  pattern: RingPattern,
  ringMm: number,
  scatter: number,
  random: ReturnType<typeof randomFrom>,
): Float64Array {
  const out = new Float64Array(n);
  if (pattern === 'none') return out;
  let x = -random.uniform() * ringMm;
  let i = 0;
  while (i < n) {
    const width = Math.max(0.5, ringMm * (1 + scatter * random.normal()));
    const strength = 1 + 0.15 * random.normal();
    for (; i < n && i * FINE_MM < x + width; i++) {
      const u = (i * FINE_MM - x) / width;
      if (pattern === 'ring-porous') out[i] = strength * (u < 0.35 ? -0.75 : 0.4);
      else if (pattern === 'conifer') out[i] = strength * (u < 0.6 ? -0.4 : -0.4 + 2.6 * (u - 0.6));
      else if (pattern === 'saw-tooth') out[i] = strength * (2 * u - 1);
      else out[i] = strength * Math.cos(2 * Math.PI * u);
    }
    x += width;
  }
  return out;
}

/** Plates and fissures of bark: a wave between -1 and 1 whose length changes from one to the next. */
function fissured(n: number, lengthMm: number, random: ReturnType<typeof randomFrom>): Float64Array {
  const out = new Float64Array(n);
  let phase = 2 * Math.PI * random.uniform();
  let length = lengthMm;
  for (let i = 0; i < n; i++) {
    const before = Math.floor(phase / (2 * Math.PI));
    phase += (2 * Math.PI * FINE_MM) / length;
    if (Math.floor(phase / (2 * Math.PI)) > before) length = lengthMm * (0.6 + 0.8 * random.uniform());
    out[i] = Math.sin(phase);
  }
  return out;
}

/** A stationary random curve of standard deviation 1, exponentially correlated over a length. */
export function wander(
  n: number,
  stepMm: number,
  lengthMm: number,
  random: ReturnType<typeof randomFrom>,
): Float64Array {
  const out = new Float64Array(n);
  const keep = Math.exp(-stepMm / lengthMm);
  const kick = Math.sqrt(1 - keep * keep);
  let v = random.normal();
  for (let i = 0; i < n; i++) {
    v = keep * v + kick * random.normal();
    out[i] = v;
  }
  return out;
}

function boxBlur(values: Float64Array, width: number): Float64Array {
  const n = values.length;
  const sum = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) sum[i + 1] = sum[i]! + values[i]!;
  const out = new Float64Array(n);
  const half = width >> 1;
  for (let i = 0; i < n; i++) {
    const a = Math.max(0, i - half);
    const b = Math.min(n, i - half + width);
    out[i] = (sum[b]! - sum[a]!) / (b - a);
  }
  return out;
}
