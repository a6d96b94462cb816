/**
 * Explicit-duration (semi-Markov) segmentation by exact dynamic programming: the best sequence of stretches, and by
 * forward-backward sums the probability of every state in every cell. The last stretch is right-censored: the needle
 * stopped inside it, so its length counts by its survivor function.
 *
 * Sources: Rabiner 1989, section IV-D; Guedon 2003 (right-censored last state); Yu 2010. Stretch scores come from
 * prefix sums (Mitchell, Harper & Jamieson 1995), so each is O(1) and the whole is O(cells² x states).
 */

/** Law of a stretch's length in cells, as logarithms: index is the length. -Infinity where not allowed. */
export interface LengthLaw {
  logMass: Float64Array;
  /** Log probability of this length or more. */
  logBeyond: Float64Array;
}

/**
 * What a stretch of one state looks like: cells scatter about a line whose level and slope are drawn once for the
 * stretch, level ~ N(mean, spread²) at the stretch's weighted middle, slope ~ N(0, slopeSpread²) per unit of place,
 * cell ~ N(line, 1/weight). Arrays are prefix sums over cells, length cells + 1: of weight w, w value, w value²,
 * w place, w place², w place value.
 */
export interface StretchState {
  weight: Float64Array;
  weighted: Float64Array;
  squared: Float64Array;
  placed: Float64Array;
  placedSquared: Float64Array;
  placedWeighted: Float64Array;
  /** Sum of every other log likelihood term of the cells. */
  extra: Float64Array;
  mean: number;
  spread: number;
  slopeSpread: number;
  length: LengthLaw;
  /** Shortest and longest length allowed, cells. */
  least: number;
  most: number;
}

export interface SemiMarkov {
  cells: number;
  states: StretchState[];
  /** Log probability that the first stretch is of each state. */
  initial: Float64Array;
  /** Log probability of going from row to column; the diagonal is not used. */
  transition: Float64Array;
  /** Log weight for each state to be the last. */
  last: Float64Array;
  /** `outside` states come before the needle is in wood; `whole` states make up the wall that is asked for. */
  part: ('outside' | 'whole' | 'other')[];
}

export interface Stretch {
  state: number;
  /** First cell, and the cell after the last. */
  from: number;
  to: number;
}

export interface StretchPosterior {
  logEvidence: number;
  /** `cells` rows of `states.length` probabilities. */
  probability: Float64Array;
  /**
   * Probability that wood begins at each boundary (`cells + 1`), that its first run of whole states ends at each
   * boundary (counting the trace's end), and that its first stretch is not whole.
   */
  woodBegins: Float64Array;
  wholeEnds: Float64Array;
  brokenAtOnce: number;
}

/** Log likelihood of the cells from..to-1 as one stretch of the state, its length not counted. */
export function stretchScore(state: StretchState, from: number, to: number): number {
  const a = state.weight[to]! - state.weight[from]!;
  const b = state.weighted[to]! - state.weighted[from]!;
  const c = state.squared[to]! - state.squared[from]!;
  const m = state.mean;
  const v = state.spread * state.spread;
  const d = b - m * a;
  const other = state.extra[to]! - state.extra[from]!;
  // Sum of weighted squares about the mean, less what a free level explains.
  let misfit = c - 2 * m * b + m * m * a - (v * d * d) / (1 + v * a);
  let volume = 1 + v * a;
  if (state.slopeSpread > 0 && to - from > 2 && a > 0) {
    // About the weighted middle the slope is independent of the level.
    const q = state.slopeSpread * state.slopeSpread;
    const x = state.placed[to]! - state.placed[from]!;
    const xx = state.placedSquared[to]! - state.placedSquared[from]! - (x * x) / a;
    const g = state.placedWeighted[to]! - state.placedWeighted[from]! - (x * b) / a;
    misfit -= (q * g * g) / (1 + q * xx);
    volume *= 1 + q * xx;
  }
  return other - 0.5 * (misfit + Math.log(volume));
}

/** The most probable sequence of stretches, and its log probability. */
export function bestStretches(model: SemiMarkov): { stretches: Stretch[]; logProbability: number } {
  const { cells, states, initial, transition, last } = model;
  const K = states.length;
  const entry = states.map(() => new Float64Array(cells + 1).fill(-Infinity));
  const entryFrom = states.map(() => new Int16Array(cells + 1).fill(-1));
  const end = states.map(() => new Float64Array(cells + 1).fill(-Infinity));
  const endFrom = states.map(() => new Int32Array(cells + 1).fill(-1));
  for (let k = 0; k < K; k++) entry[k]![0] = initial[k]!;
  let bestLast = -Infinity;
  let lastState = 0;
  let lastFrom = 0;
  for (let e = 1; e <= cells; e++) {
    for (let k = 0; k < K; k++) {
      const state = states[k]!;
      const into = entry[k]!;
      const isLast = e === cells;
      const law = state.length.logMass;
      const least = isLast ? 1 : state.least;
      let best = -Infinity;
      let from = -1;
      for (let s = e - least, stop = Math.max(0, e - state.most); s >= stop; s--) {
        const start = into[s]!;
        if (start === -Infinity) continue;
        const tail = start + law[e - s]!;
        const score = stretchScore(state, s, e);
        if (tail + score > best) {
          best = tail + score;
          from = s;
        }
        if (isLast) {
          const censored = start + state.length.logBeyond[e - s]! + last[k]! + score;
          if (censored > bestLast) {
            bestLast = censored;
            lastState = k;
            lastFrom = s;
          }
        }
      }
      end[k]![e] = best;
      endFrom[k]![e] = from;
    }
    for (let j = 0; j < K; j++) {
      let best = -Infinity;
      let from = -1;
      for (let k = 0; k < K; k++) {
        if (k === j) continue;
        const v = end[k]![e]! + transition[k * K + j]!;
        if (v > best) {
          best = v;
          from = k;
        }
      }
      entry[j]![e] = best;
      entryFrom[j]![e] = from;
    }
  }
  const stretches: Stretch[] = [];
  let to = cells;
  let state = lastState;
  let from = lastFrom;
  for (;;) {
    stretches.push({ state, from, to });
    if (from === 0) break;
    const before = entryFrom[state]![from]!;
    to = from;
    state = before;
    from = endFrom[before]![to]!;
  }
  return { stretches: stretches.reverse(), logProbability: bestLast };
}

/** Terms this far below the largest (in natural logarithms) are left out of sums. */
const NEGLIGIBLE = 18;

/** Forward-backward: the probability of every state in every cell and of every stretch, and the evidence. */
export function stretchPosterior(model: SemiMarkov): StretchPosterior {
  const { cells, states, initial, transition, last, part } = model;
  const K = states.length;
  const N = cells + 1;
  const entry = states.map(() => new Float64Array(N).fill(-Infinity));
  const end = states.map(() => new Float64Array(N).fill(-Infinity));
  // The same sums over paths that have met outside and whole states only.
  const wholeEntry = states.map(() => new Float64Array(N).fill(-Infinity));
  const wholeEnd = states.map(() => new Float64Array(N).fill(-Infinity));
  const scores = states.map((s) => new Float64Array(N * (Math.min(s.most, cells) + 1)));
  const tails = states.map(() => new Float64Array(N).fill(-Infinity));
  const terms = new Float64Array(N);
  for (let k = 0; k < K; k++) {
    entry[k]![0] = initial[k]!;
    if (part[k] !== 'other') wholeEntry[k]![0] = initial[k]!;
  }

  for (let e = 1; e <= cells; e++) {
    const isLast = e === cells;
    for (let k = 0; k < K; k++) {
      const state = states[k]!;
      const into = entry[k]!;
      const width = Math.min(state.most, cells) + 1;
      const table = scores[k]!;
      const law = isLast ? state.length.logBeyond : state.length.logMass;
      const least = isLast ? 1 : state.least;
      const bonus = isLast ? last[k]! : 0;
      let most = -Infinity;
      let m = 0;
      for (let s = e - least, stop = Math.max(0, e - state.most); s >= stop; s--) {
        if (into[s]! === -Infinity) continue;
        const score = stretchScore(state, s, e) + law[e - s]! + bonus;
        table[s * width + (e - s)] = score;
        const v = into[s]! + score;
        terms[m++] = v;
        if (v > most) most = v;
      }
      end[k]![e] = logSum(terms, m, most);
      if (part[k] === 'other') continue;
      const wholeInto = wholeEntry[k]!;
      most = -Infinity;
      m = 0;
      for (let s = e - least, stop = Math.max(0, e - state.most); s >= stop; s--) {
        const v = wholeInto[s]! + table[s * width + (e - s)]!;
        if (wholeInto[s]! === -Infinity) continue;
        terms[m++] = v;
        if (v > most) most = v;
      }
      wholeEnd[k]![e] = logSum(terms, m, most);
    }
    if (isLast) break;
    for (let j = 0; j < K; j++) {
      let most = -Infinity;
      for (let k = 0; k < K; k++) {
        const v = k === j ? -Infinity : end[k]![e]! + transition[k * K + j]!;
        terms[k] = v;
        if (v > most) most = v;
      }
      entry[j]![e] = logSum(terms, K, most);
      if (part[j] === 'other') continue;
      most = -Infinity;
      for (let k = 0; k < K; k++) {
        const v = k === j || part[k] === 'other' ? -Infinity : wholeEnd[k]![e]! + transition[k * K + j]!;
        terms[k] = v;
        if (v > most) most = v;
      }
      wholeEntry[j]![e] = logSum(terms, K, most);
    }
  }
  let most = -Infinity;
  for (let k = 0; k < K; k++) {
    terms[k] = end[k]![cells]!;
    if (terms[k]! > most) most = terms[k]!;
  }
  const logEvidence = logSum(terms, K, most);

  // Backward: tails[k][e] is the log probability of what follows a stretch of k that ends at e.
  const onset = new Float64Array(K);
  const woodBegins = new Float64Array(N);
  const wholeEnds = new Float64Array(N);
  let brokenAtOnce = 0;
  const change = new Float64Array(K * (N + 1));
  for (let k = 0; k < K; k++) tails[k]![cells] = 0;
  for (let s = cells - 1; s >= 0; s--) {
    for (let k = 0; k < K; k++) {
      const state = states[k]!;
      const width = Math.min(state.most, cells) + 1;
      const table = scores[k]!;
      const after = tails[k]!;
      const into = entry[k]![s]!;
      onset[k] = -Infinity;
      if (into === -Infinity) continue;
      let top = -Infinity;
      let m = 0;
      for (let e = s + 1, stop = Math.min(cells, s + state.most); e <= stop; e++) {
        if (e < cells && e - s < state.least) continue;
        const v = table[s * width + (e - s)]! + after[e]!;
        terms[m++] = v;
        if (v > top) top = v;
        const share = into + v - logEvidence;
        if (share > -NEGLIGIBLE) {
          const probability = Math.exp(share);
          change[k * (N + 1) + s]! += probability;
          change[k * (N + 1) + e]! -= probability;
        }
      }
      onset[k] = logSum(terms, m, top);
    }
    for (let k = 0; k < K; k++) {
      if (part[k] === 'other') continue;
      for (let j = 0; j < K; j++) {
        // Into the wood; and out of the first whole run.
        const enters = part[k] === 'outside' && part[j] !== 'outside';
        const breaks = part[k] === 'whole' && part[j] === 'other';
        if (j === k || !(enters || breaks) || s === 0) continue;
        const way = transition[k * K + j]! + onset[j]! - logEvidence;
        if (enters) {
          const p = Math.exp(end[k]![s]! + way);
          woodBegins[s]! += p;
          if (part[j] === 'other') brokenAtOnce += p;
        } else wholeEnds[s]! += Math.exp(wholeEnd[k]![s]! + way);
      }
    }
    for (let k = 0; k < K; k++) {
      let top = -Infinity;
      for (let j = 0; j < K; j++) {
        const v = j === k ? -Infinity : transition[k * K + j]! + onset[j]!;
        terms[j] = v;
        if (v > top) top = v;
      }
      tails[k]![s] = logSum(terms, K, top);
    }
  }

  for (let k = 0; k < K; k++) {
    if (part[k] === 'whole') wholeEnds[cells]! += Math.exp(wholeEnd[k]![cells]! - logEvidence);
    if (part[k] === 'outside') continue;
    const p = Math.exp(initial[k]! + onset[k]! - logEvidence);
    woodBegins[0]! += p;
    if (part[k] === 'other') brokenAtOnce += p;
  }

  const probability = new Float64Array(cells * K);
  for (let k = 0; k < K; k++) {
    let p = 0;
    for (let i = 0; i < cells; i++) {
      p += change[k * (N + 1) + i]!;
      probability[i * K + k] = Math.max(0, p);
    }
  }
  for (let i = 0; i < cells; i++) {
    let total = 0;
    for (let k = 0; k < K; k++) total += probability[i * K + k]!;
    for (let k = 0; k < K; k++) probability[i * K + k]! /= total;
  }
  return { logEvidence, probability, woodBegins, wholeEnds, brokenAtOnce };
}

function logSum(terms: Float64Array, n: number, most: number): number {
  if (most === -Infinity) return -Infinity;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const d = terms[i]! - most;
    if (d > -NEGLIGIBLE) sum += Math.exp(d);
  }
  return most + Math.log(sum);
}
