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
 * cell ~ N(line, 1/weight).
 */
export interface StretchState {
  /**
   * Sums over the cells before each boundary, FIELDS numbers a boundary, `cells + 1` boundaries: of weight, and of
   * weight times value, value², place, place² and place times value. States may share them.
   */
  sums: Float64Array;
  /** Sums of every other log likelihood term of the cells before each boundary. */
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

/** Numbers kept for each boundary in StretchState.sums. */
export const FIELDS = 6;

/** Log likelihood of the cells from..to-1 as one stretch of the state, its length not counted. */
export function stretchScore(state: StretchState, from: number, to: number): number {
  const { sums, extra, mean, spread, slopeSpread } = state;
  const part = (field: number) => sums[to * FIELDS + field]! - sums[from * FIELDS + field]!;
  const a = part(0);
  const b = part(1);
  const v = spread * spread;
  const d = b - mean * a;
  // Sum of weighted squares about the mean, less what a free level explains.
  let misfit = part(2) - 2 * mean * b + mean * mean * a - (v * d * d) / (1 + v * a);
  let volume = 1 + v * a;
  if (slopeSpread > 0 && to - from > 2 && a > 0) {
    // About the weighted middle the slope is independent of the level.
    const q = slopeSpread * slopeSpread;
    const x = part(3);
    const xx = 1 + q * (part(4) - (x * x) / a);
    const g = part(5) - (x * b) / a;
    misfit -= (q * g * g) / xx;
    volume *= xx;
  }
  return extra[to]! - extra[from]! - 0.5 * (misfit + Math.log(volume));
}

/**
 * How far (natural logarithms) the best explanation of the cells so far may lie above a stretch still open before that
 * stretch is given up. The dropped share is about one in a million: a path can always begin a stretch of the same state anew at a
 * cost well below this, so nothing that could win is lost (the argument of PELT: Killick, Fearnhead & Eckley 2012). The best
 * explanation counts the chance of its stretch being that long: one far longer than its kind ever is must not rule out others.
 */
const GIVEN_UP = 14;

/**
 * Stretches still open, by state: their first cells, and log probability with everything before them. All tables of
 * this file are flat, state after state, because a trace is read hundreds of times over while its levels are sought.
 */
interface OpenStretches {
  /** Places kept for each state. */
  room: number;
  from: Int32Array;
  value: Float64Array;
  count: Int32Array;
}

/**
 * Bring the open stretches of state `k` up to boundary `to`: value = entry + score, length not counted. Stretches that
 * have grown too long or fallen below `cut` are dropped; ones too short to end keep a value of -Infinity.
 * The hot loop of the whole reading: stretchScore written out, the logarithm left for those that need it.
 *
 * @param entry log probability of each state beginning at each boundary, `room` numbers a state.
 */
function bringUp(
  state: StretchState,
  k: number,
  entry: Float64Array,
  open: OpenStretches,
  to: number,
  least: number,
  cut: number,
): void {
  const { sums, extra, mean, most } = state;
  const { from, value } = open;
  const v = state.spread * state.spread;
  const q = state.slopeSpread * state.slopeSpread;
  const t = to * FIELDS;
  const A = sums[t]!;
  const B = sums[t + 1]!;
  const C = sums[t + 2]!;
  const X = sums[t + 3]!;
  const XX = sums[t + 4]!;
  const XR = sums[t + 5]!;
  const D = extra[to]!;
  const first = k * open.room;
  const end = first + open.count[k]!;
  let kept = first;
  for (let j = first; j < end; j++) {
    const s = from[j]!;
    const length = to - s;
    if (length > most) continue;
    if (length < least) {
      from[kept] = s;
      value[kept++] = -Infinity;
      continue;
    }
    const f = s * FIELDS;
    const a = A - sums[f]!;
    const b = B - sums[f + 1]!;
    const d = b - mean * a;
    let volume = 1 + v * a;
    let misfit = C - sums[f + 2]! - mean * (b + d) - (v * d * d) / volume;
    if (q > 0 && length > 2 && a > 0) {
      const x = X - sums[f + 3]!;
      const middle = x / a;
      const xx = 1 + q * (XX - sums[f + 4]! - x * middle);
      const g = XR - sums[f + 5]! - middle * b;
      misfit -= (q * g * g) / xx;
      volume *= xx;
    }
    const bound = entry[first + s]! + D - extra[s]! - 0.5 * misfit;
    if (bound < cut) continue;
    from[kept] = s;
    value[kept++] = bound - 0.5 * Math.log(volume);
  }
  open.count[k] = kept - first;
}

function noneOpen(states: number, room: number): OpenStretches {
  return {
    room,
    from: new Int32Array(states * room),
    value: new Float64Array(states * room),
    count: new Int32Array(states),
  };
}

/**
 * The most probable sequence of stretches, and its log probability.
 *
 * @param givenUp smaller than the default is faster and may miss the best where a later part of the trace turns the
 *   odds of an earlier part: for searches that are refined afterwards.
 */
export function bestStretches(
  model: SemiMarkov,
  givenUp = GIVEN_UP,
): { stretches: Stretch[]; logProbability: number } {
  const { cells, states, initial, transition, last } = model;
  const K = states.length;
  const N = cells + 1;
  const entry = new Float64Array(K * N).fill(-Infinity);
  const entryFrom = new Int8Array(K * N).fill(-1);
  const end = new Float64Array(K);
  const endFrom = new Int32Array(K * N).fill(-1);
  const open = noneOpen(K, N);
  const { from, value } = open;
  for (let k = 0; k < K; k++) begin(open, k, entry, 0, initial[k]!);
  let bestLast = -Infinity;
  let lastState = 0;
  let lastFrom = 0;
  for (let e = 1; e <= cells; e++) {
    const isLast = e === cells;
    let top = -Infinity;
    for (let k = 0; k < K; k++) {
      end[k] = -Infinity;
      if (open.count[k] === 0) continue;
      const state = states[k]!;
      bringUp(state, k, entry, open, e, isLast ? 1 : state.least, top - givenUp);
      const { logBeyond } = state.length;
      const law = isLast ? logBeyond : state.length.logMass;
      const stop = k * N + open.count[k]!;
      let best = -Infinity;
      let at = -1;
      for (let j = k * N; j < stop; j++) {
        const v = value[j]!;
        const length = e - from[j]!;
        const reach = v + logBeyond[length]!;
        if (reach > top) top = reach;
        const total = v + law[length]!;
        if (total > best) {
          best = total;
          at = from[j]!;
        }
      }
      end[k] = best;
      endFrom[k * N + e] = at;
      if (isLast && best + last[k]! > bestLast) {
        bestLast = best + last[k]!;
        lastState = k;
        lastFrom = at;
      }
    }
    if (isLast) break;
    for (let j = 0; j < K; j++) {
      let best = -Infinity;
      let before = -1;
      for (let k = 0; k < K; k++) {
        if (k === j) continue;
        const v = end[k]! + transition[k * K + j]!;
        if (v > best) {
          best = v;
          before = k;
        }
      }
      entryFrom[j * N + e] = before;
      if (best > top - givenUp) begin(open, j, entry, e, best);
    }
  }
  const stretches: Stretch[] = [];
  let to = cells;
  let state = lastState;
  let begun = lastFrom;
  for (;;) {
    stretches.push({ state, from: begun, to });
    if (begun === 0) break;
    const before = entryFrom[state * N + begun]!;
    to = begun;
    state = before;
    begun = endFrom[before * N + to]!;
  }
  return { stretches: stretches.reverse(), logProbability: bestLast };
}

function begin(
  open: OpenStretches,
  k: number,
  entry: Float64Array,
  at: number,
  logProbability: number,
): void {
  const first = k * open.room;
  entry[first + at] = logProbability;
  if (logProbability === -Infinity) return;
  const j = first + open.count[k]!;
  open.count[k]!++;
  open.from[j] = at;
  open.value[j] = -Infinity;
}

/** Terms this far below the largest (in natural logarithms) are left out of sums. */
const NEGLIGIBLE = 14;

/** Forward-backward: the probability of every state in every cell and of every stretch, and the evidence. */
export function stretchPosterior(model: SemiMarkov): StretchPosterior {
  const { cells, states, initial, transition, last, part } = model;
  const K = states.length;
  const N = cells + 1;
  const entry = new Float64Array(K * N).fill(-Infinity);
  const end = new Float64Array(K * N).fill(-Infinity);
  // The same sums over paths that have met outside and whole states only.
  const wholeEntry = new Float64Array(K * N).fill(-Infinity);
  const wholeEnd = new Float64Array(K * N).fill(-Infinity);
  const open = noneOpen(K, N);
  const { from, value } = open;
  // Every stretch that counts, in order of its end: what it adds (score and length law), for the way back.
  const kept = new KeptStretches();
  const terms = new Float64Array(Math.max(N, K));
  for (let k = 0; k < K; k++) {
    begin(open, k, entry, 0, initial[k]!);
    if (part[k] !== 'other') wholeEntry[k * N] = initial[k]!;
  }

  for (let e = 1; e <= cells; e++) {
    const isLast = e === cells;
    let top = -Infinity;
    for (let k = 0; k < K; k++) {
      if (open.count[k] === 0) continue;
      const state = states[k]!;
      bringUp(state, k, entry, open, e, isLast ? 1 : state.least, top - GIVEN_UP);
      const first = k * N;
      const count = open.count[k]!;
      const { logBeyond } = state.length;
      const law = isLast ? logBeyond : state.length.logMass;
      const bonus = isLast ? last[k]! : 0;
      let most = -Infinity;
      for (let j = 0; j < count; j++) {
        const v = value[first + j]!;
        const length = e - from[first + j]!;
        const reach = v + logBeyond[length]! + bonus;
        if (reach > top) top = reach;
        const total = v + law[length]! + bonus;
        terms[j] = total;
        if (total > most) most = total;
      }
      if (most === -Infinity) continue;
      end[k * N + e] = logSum(terms, count, most);
      const whole = part[k] !== 'other';
      let wholeMost = -Infinity;
      for (let j = 0; j < count; j++) {
        const v = terms[j]!;
        if (v < top - GIVEN_UP) {
          terms[j] = -Infinity;
          continue;
        }
        const s = from[first + j]!;
        const adds = v - entry[first + s]!;
        kept.push(k, s, e, adds);
        if (whole) {
          terms[j] = wholeEntry[k * N + s]! + adds;
          if (terms[j]! > wholeMost) wholeMost = terms[j]!;
        }
      }
      if (whole) wholeEnd[k * N + e] = logSum(terms, count, wholeMost);
    }
    if (isLast) break;
    for (let j = 0; j < K; j++) {
      let most = -Infinity;
      for (let k = 0; k < K; k++) {
        const v = k === j ? -Infinity : end[k * N + e]! + transition[k * K + j]!;
        terms[k] = v;
        if (v > most) most = v;
      }
      const sum = logSum(terms, K, most);
      if (sum > top - GIVEN_UP) begin(open, j, entry, e, sum);
      if (part[j] === 'other') continue;
      most = -Infinity;
      for (let k = 0; k < K; k++) {
        const v = k === j || part[k] === 'other' ? -Infinity : wholeEnd[k * N + e]! + transition[k * K + j]!;
        terms[k] = v;
        if (v > most) most = v;
      }
      wholeEntry[j * N + e] = logSum(terms, K, most);
    }
  }
  let most = -Infinity;
  for (let k = 0; k < K; k++) {
    terms[k] = end[k * N + cells]!;
    if (terms[k]! > most) most = terms[k]!;
  }
  const logEvidence = logSum(terms, K, most);

  // Backward. tails[k][e]: log probability of what follows a stretch of k that ends at e; begins[k][s]: probability
  // that one of k begins at s. Stretches are taken in falling order of their end, so that a boundary's beginnings are
  // complete when it is reached, and what lies beyond it (onset) follows from them by the entry.
  const tails = new Float64Array(K * N).fill(-Infinity);
  const begins = new Float64Array(K * N);
  const onset = (k: number, s: number) => Math.log(begins[k * N + s]!) + logEvidence - entry[k * N + s]!;
  const beyond = new Float64Array(K);
  const woodBegins = new Float64Array(N);
  const wholeEnds = new Float64Array(N);
  let brokenAtOnce = 0;
  const change = new Float64Array(K * (N + 1));
  let next = kept.count - 1;
  for (let e = cells; e >= 1; e--) {
    for (let k = 0; k < K; k++) beyond[k] = begins[k * N + e]! > 0 ? onset(k, e) : -Infinity;
    for (let k = 0; k < K; k++) {
      if (e === cells) {
        tails[k * N + e] = 0;
        continue;
      }
      let top = -Infinity;
      for (let j = 0; j < K; j++) {
        const v = j === k ? -Infinity : transition[k * K + j]! + beyond[j]!;
        terms[j] = v;
        if (v > top) top = v;
        // Into the wood; and out of the first whole run.
        const enters = part[k] === 'outside' && part[j] !== 'outside';
        const breaks = part[k] === 'whole' && part[j] === 'other';
        if (v === -Infinity || !(enters || breaks)) continue;
        if (enters) {
          const p = Math.exp(end[k * N + e]! + v - logEvidence);
          woodBegins[e]! += p;
          if (part[j] === 'other') brokenAtOnce += p;
        } else wholeEnds[e]! += Math.exp(wholeEnd[k * N + e]! + v - logEvidence);
      }
      tails[k * N + e] = logSum(terms, K, top);
    }
    for (; next >= 0 && kept.to[next] === e; next--) {
      const k = kept.state[next]!;
      const s = kept.from[next]!;
      const v = kept.adds[next]! + tails[k * N + e]!;
      if (v === -Infinity) continue;
      const share = entry[k * N + s]! + v - logEvidence;
      if (share < -GIVEN_UP) continue;
      const probability = Math.exp(share);
      begins[k * N + s]! += probability;
      change[k * (N + 1) + s]! += probability;
      change[k * (N + 1) + e]! -= probability;
    }
  }
  for (let k = 0; k < K; k++) {
    if (part[k] === 'whole') wholeEnds[cells]! += Math.exp(wholeEnd[k * N + cells]! - logEvidence);
    if (part[k] === 'outside') continue;
    const p = begins[k * N]!;
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

/** A growing flat table of stretches. */
class KeptStretches {
  count = 0;
  state = new Uint8Array(16384);
  from = new Int32Array(16384);
  to = new Int32Array(16384);
  adds = new Float64Array(16384);

  push(state: number, from: number, to: number, adds: number): void {
    const i = this.count++;
    if (i === this.state.length) {
      this.state = grown(this.state, new Uint8Array(2 * i));
      this.from = grown(this.from, new Int32Array(2 * i));
      this.to = grown(this.to, new Int32Array(2 * i));
      this.adds = grown(this.adds, new Float64Array(2 * i));
    }
    this.state[i] = state;
    this.from[i] = from;
    this.to[i] = to;
    this.adds[i] = adds;
  }
}

function grown<T extends Uint8Array | Int32Array | Float64Array>(old: T, room: T): T {
  room.set(old as never);
  return room;
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
