/**
 * The ring pattern of a trace, freed of the drill: its level over that of sound wood, with all that is slower than rings
 * taken off. Gain, zero and friction of the drill leave it much as it is, so patterns of two visits can be compared.
 */
import { conditionTrace } from '../trace/conditionTrace.ts';
import { type Trace, type TraceReading, ZONE_KINDS } from '../trace/types.ts';

/** Step of the pattern, mm: below the tip's averaging. */
export const PATTERN_STEP_MM = 0.5;
/** Half width of the running mean taken off, mm: several rings. */
const SLOW_HALF_MM = 10;
/** Departures beyond this many standard deviations are brought back to it: knots and spikes are no rings. */
const CLIP_SDS = 3;
/** A cell is wood whose pattern counts when it is sound with at least this chance. */
const LEAST_CHANCE = 0.8;
/**
 * Wood left out next to the cambium and next to wood that is not sound, mm. The rise at the one and the fall at the other
 * are the strongest marks of a trace, and they are the two that move against the rings.
 */
const CAMBIUM_CLEAR_MM = 6;
const FRONT_CLEAR_MM = 12;

/** Pattern from the cambium on: `value[i]` at `i · PATTERN_STEP_MM` past where the wood begins; `counts` where it can be trusted. */
export interface RingTexture {
  value: Float64Array;
  counts: Uint8Array;
}

/** The ring pattern of one trace. */
export function ringTexture(trace: Trace, reading: TraceReading): RingTexture {
  const { finePct, fineMm } = conditionTrace(trace);
  const fineStep = fineMm.length > 1 ? fineMm[1]! - fineMm[0]! : 1;
  const n = Math.max(0, Math.floor((fineMm.at(-1)! - reading.woodFromMm) / PATTERN_STEP_MM));
  const level = new Float64Array(n);
  const counts = new Uint8Array(n);
  const per = Math.max(1, Math.round(PATTERN_STEP_MM / fineStep));
  const kinds = ZONE_KINDS.length;
  const sound = ZONE_KINDS.indexOf('sound');
  const { gridMm, probability } = reading;
  const cell = gridMm.length > 1 ? gridMm[1]! - gridMm[0]! : 1;
  for (let i = 0; i < n; i++) {
    const depth = reading.woodFromMm + i * PATTERN_STEP_MM;
    const first = Math.round((depth - fineMm[0]!) / fineStep);
    let sum = 0;
    let taken = 0;
    for (let k = first; k < first + per; k++) {
      if (k < 0 || k >= finePct.length) continue;
      sum += finePct[k]!;
      taken++;
    }
    level[i] = taken > 0 ? sum / taken : 0;
    const row = Math.round((depth - gridMm[0]!) / cell);
    if (taken === 0 || row < 0 || row >= gridMm.length) continue;
    if (probability[row * kinds + sound]! > LEAST_CHANCE) counts[i] = 1;
  }
  keepClear(counts);
  const value = withoutSlow(level, counts);
  clip(value, counts);
  return { value, counts };
}

/** Takes out what lies near the cambium and near wood that is not sound. */
function keepClear(counts: Uint8Array): void {
  const whole = counts.slice();
  const clear = Math.round(FRONT_CLEAR_MM / PATTERN_STEP_MM);
  counts.fill(0, 0, Math.min(counts.length, Math.round(CAMBIUM_CLEAR_MM / PATTERN_STEP_MM)));
  const start = whole.indexOf(1);
  for (let i = Math.max(0, start); i < whole.length; i++) {
    if (whole[i]) continue;
    counts.fill(0, Math.max(0, i - clear), Math.min(counts.length, i + clear + 1));
  }
}

/** Level less its running mean over the wood that counts. */
function withoutSlow(level: Float64Array, counts: Uint8Array): Float64Array {
  const n = level.length;
  const half = Math.round(SLOW_HALF_MM / PATTERN_STEP_MM);
  const sums = new Float64Array(n + 1);
  const many = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    sums[i + 1] = sums[i]! + (counts[i] ? level[i]! : 0);
    many[i + 1] = many[i]! + counts[i]!;
  }
  const out = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    if (!counts[i]) continue;
    const from = Math.max(0, i - half);
    const to = Math.min(n, i + half + 1);
    out[i] = level[i]! - (sums[to]! - sums[from]!) / (many[to]! - many[from]!);
  }
  return out;
}

function clip(value: Float64Array, counts: Uint8Array): void {
  let squares = 0;
  let many = 0;
  for (let i = 0; i < value.length; i++) {
    if (!counts[i]) continue;
    squares += value[i]! ** 2;
    many++;
  }
  const most = CLIP_SDS * Math.sqrt(squares / Math.max(1, many));
  for (let i = 0; i < value.length; i++) value[i] = Math.max(-most, Math.min(most, value[i]!));
}
