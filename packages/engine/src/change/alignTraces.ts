/**
 * Lays the trace of a repeat drilling over the first one by the pattern of the rings.
 *
 * The wood met before is met again deeper by what has grown at the cambium, at a depth scale that differs a little (the
 * heading of a needle is never quite the same). For each shift g and scale 1 + s the two patterns are correlated over
 * the wood that counts in both. Were they one pattern with noise, the likelihood over that of two unrelated ones would be
 * (1 − r²)^(−n/2) with n independent readings (profile likelihood of a normal pair), less ½ ln n for the scale fitted; n is
 * the overlap over the correlation length of the two patterns together (Bartlett 1935), so that a pattern that repeats
 * itself ring after ring counts for little. Beside it stands the chance that the patterns do not answer to each other at
 * all, whose likelihood is 1 at every shift: then the growth that is usual is all that is known. Cross-dating of tree
 * rings rests on the same correlation (Baillie and Pilcher 1973); here it finds a shift, not a year.
 */
import { constant } from '../reference/index.ts';
import { PATTERN_STEP_MM, type RingTexture } from './ringTexture.ts';

/** Least overlap to compare, mm: half a dozen usual rings. */
const LEAST_OVERLAP_MM = 20;
/** Readings this far apart no longer say anything of each other, mm. */
const LAG_REACH_MM = 20;
/** Scales tried, in standard deviations of the scale. */
const STRETCH_POINTS = [-2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2];
/** Share of the likelihood's information that is trusted: neighbouring holes differ in ways no noise explains. */
const TRUST = 0.5;

/** What is believed of the shift before the rings are looked at: log density at a shift in mm. */
export type LogPrior = (shiftMm: number) => number;

export interface AlignedTraces {
  /** Grid of shifts, mm, and of stretches (share), with the joint probability: row of a shift, column of a stretch. */
  shiftsMm: Float64Array;
  stretches: number[];
  probability: Float64Array;
  matchedChance: number;
  /** At the most probable pair under a match. */
  correlation: number;
  overlapMm: number;
}

/**
 * Posterior of shift and stretch.
 *
 * @param logPrior of the shift: growth and the error of both cambium entries
 * @param leastMm,mostMm shifts to try
 */
export function alignTraces(
  earlier: RingTexture,
  later: RingTexture,
  logPrior: LogPrior,
  leastMm: number,
  mostMm: number,
): AlignedTraces {
  const sd = constant('needle stretch').value;
  const stretches = STRETCH_POINTS.map((z) => z * sd);
  const columns = stretches.length;
  const logStretch = normalisedLogs(STRETCH_POINTS.map((z) => -0.5 * z * z));
  const from = Math.floor(leastMm / PATTERN_STEP_MM);
  const to = Math.max(from + 2, Math.ceil(mostMm / PATTERN_STEP_MM));
  const shiftsMm = Float64Array.from({ length: to - from + 1 }, (_, k) => (from + k) * PATTERN_STEP_MM);
  const logShift = normalisedLogs(Array.from(shiftsMm, logPrior));
  const reach = sharedReach(earlier, later);
  const unmatched = constant('unmatched traces').value;

  const size = shiftsMm.length * columns;
  const logMatch = new Float64Array(size);
  let best = Number.NEGATIVE_INFINITY;
  let correlation = 0;
  let overlapMm = 0;
  for (let g = 0; g < shiftsMm.length; g++) {
    for (let s = 0; s < columns; s++) {
      const { r, n } = correlate(earlier, later, shiftsMm[g]! / PATTERN_STEP_MM, 1 + stretches[s]!);
      const overlap = n * PATTERN_STEP_MM;
      const free = n / reach;
      const likelihood =
        overlap < LEAST_OVERLAP_MM || r <= 0
          ? 0
          : -0.5 * TRUST * free * Math.log(1 - Math.min(0.999, r) ** 2) - 0.5 * Math.log(Math.max(1, free));
      const at = g * columns + s;
      logMatch[at] = logShift[g]! + logStretch[s]! + likelihood;
      if (logMatch[at]! > best) {
        best = logMatch[at]!;
        correlation = r;
        overlapMm = overlap;
      }
    }
  }
  let match = 0;
  for (let i = 0; i < size; i++) match += Math.exp(logMatch[i]! - best);
  const logEvidence = best + Math.log(match) + Math.log(1 - unmatched);
  const matchedChance = 1 / (1 + Math.exp(Math.log(unmatched) - logEvidence));
  const probability = new Float64Array(size);
  for (let g = 0; g < shiftsMm.length; g++) {
    for (let s = 0; s < columns; s++) {
      const at = g * columns + s;
      const prior = Math.exp(logShift[g]! + logStretch[s]!);
      probability[at] =
        (matchedChance * Math.exp(logMatch[at]! - best)) / match + (1 - matchedChance) * prior;
    }
  }
  return { shiftsMm, stretches, probability, matchedChance, correlation, overlapMm };
}

function normalisedLogs(logs: readonly number[]): Float64Array {
  const most = logs.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const total = logs.reduce((sum, l) => sum + Math.exp(l - most), 0);
  return Float64Array.from(logs, (l) => l - most - Math.log(total));
}

/** Correlation of the earlier pattern with the later one `shift` steps deeper at `scale`, over `n` steps. */
function correlate(
  earlier: RingTexture,
  later: RingTexture,
  shift: number,
  scale: number,
): { r: number; n: number } {
  const a = earlier.value;
  const b = later.value;
  let n = 0;
  let sa = 0;
  let sb = 0;
  let saa = 0;
  let sbb = 0;
  let sab = 0;
  const last = b.length - 1;
  for (let i = 0; i < a.length; i++) {
    if (!earlier.counts[i]) continue;
    const at = shift + i * scale;
    const k = Math.floor(at);
    if (k < 0 || k >= last || !later.counts[k] || !later.counts[k + 1]) continue;
    const f = at - k;
    const x = a[i]!;
    const y = b[k]! * (1 - f) + b[k + 1]! * f;
    n++;
    sa += x;
    sb += y;
    saa += x * x;
    sbb += y * y;
    sab += x * y;
  }
  if (n < 2) return { r: 0, n };
  const va = saa - (sa * sa) / n;
  const vb = sbb - (sb * sb) / n;
  if (!(va > 0 && vb > 0)) return { r: 0, n };
  return { r: (sab - (sa * sb) / n) / Math.sqrt(va * vb), n };
}

/** Steps to one independent reading of the two patterns together: the sum over lags of the product of their autocorrelations. */
function sharedReach(earlier: RingTexture, later: RingTexture): number {
  const lags = Math.round(LAG_REACH_MM / PATTERN_STEP_MM);
  const a = autocorrelation(earlier, lags);
  const b = autocorrelation(later, lags);
  let sum = 1;
  for (let k = 1; k <= lags; k++) sum += 2 * a[k]! * b[k]!;
  return Math.max(1, sum);
}

function autocorrelation({ value, counts }: RingTexture, lags: number): Float64Array {
  const out = new Float64Array(lags + 1);
  for (let k = 0; k <= lags; k++) {
    let sum = 0;
    let n = 0;
    for (let i = 0; i + k < value.length; i++) {
      if (!counts[i] || !counts[i + k]) continue;
      sum += value[i]! * value[i + k]!;
      n++;
    }
    out[k] = n > 0 ? sum / n : 0;
  }
  const zero = out[0]!;
  return zero > 0 ? out.map((c) => c / zero) : out.fill(0);
}
