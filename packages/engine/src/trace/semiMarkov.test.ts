import { describe, expect, it } from 'vitest';
import { randomFrom } from '../random.ts';
import {
  bestStretches,
  FIELDS,
  type SemiMarkov,
  type Stretch,
  type StretchState,
  stretchPosterior,
  stretchScore,
} from './semiMarkov.ts';

/** Rounding of sums of logarithms over a dozen stretches. */
const TOLERANCE = 1e-9;

const PARTS = ['outside', 'whole', 'whole', 'other'] as const;

function tinyModel(seed: number, cells: number): SemiMarkov {
  const random = randomFrom(seed);
  const K = PARTS.length;
  const values = Array.from({ length: cells }, () => random.uniform() * 1.4);
  const weights = Array.from({ length: cells }, () => 3 + 10 * random.uniform());
  const states = PARTS.map((_, k): StretchState => {
    const sums = new Float64Array((cells + 1) * FIELDS);
    const extra = new Float64Array(cells + 1);
    for (let i = 0; i < cells; i++) {
      extra[i + 1] = extra[i]! + 0.1 * random.normal();
      const w = weights[i]!;
      const r = values[i]!;
      const terms = [w, w * r, w * r * r, w * i, w * i * i, w * i * r];
      for (let f = 0; f < FIELDS; f++) sums[(i + 1) * FIELDS + f] = sums[i * FIELDS + f]! + terms[f]!;
    }
    const logMass = new Float64Array(cells + 2).fill(-Infinity);
    const logBeyond = new Float64Array(cells + 2);
    for (let d = 1; d <= cells + 1; d++) {
      logMass[d] = Math.log(0.3) + (d - 1) * Math.log(0.7);
      logBeyond[d] = (d - 1) * Math.log(0.7);
    }
    return {
      sums,
      extra,
      mean: [0.1, 1, 1.3, 0.4][k]!,
      spread: 0.2,
      slopeSpread: k === 1 ? 0.05 : 0,
      length: { logMass, logBeyond },
      least: k === 3 ? 2 : 1,
      most: k === 0 ? 4 : cells,
    };
  });
  const transition = new Float64Array(K * K).fill(-Infinity);
  const allow = [
    [0, 1],
    [0, 3],
    [1, 2],
    [2, 1],
    [1, 3],
    [2, 3],
    [3, 1],
  ];
  for (const [a, b] of allow) transition[a! * K + b!] = Math.log(0.2 + 0.6 * random.uniform());
  return {
    cells,
    states,
    initial: Float64Array.of(Math.log(0.6), Math.log(0.3), -Infinity, Math.log(0.1)),
    transition,
    last: Float64Array.of(-1, 0, -0.5, 0),
    part: [...PARTS],
  };
}

/** Every allowed sequence of stretches with its log probability. */
function enumerate(model: SemiMarkov): { path: Stretch[]; log: number }[] {
  const K = model.states.length;
  const out: { path: Stretch[]; log: number }[] = [];
  const walk = (at: number, path: Stretch[], log: number) => {
    for (let k = 0; k < K; k++) {
      const before = path.at(-1);
      const into = before ? model.transition[before.state * K + k]! : model.initial[k]!;
      if (into === -Infinity || before?.state === k) continue;
      const state = model.states[k]!;
      for (let to = at + 1; to <= Math.min(model.cells, at + state.most); to++) {
        const score = log + into + stretchScore(state, at, to);
        const stretch = { state: k, from: at, to };
        if (to === model.cells)
          out.push({
            path: [...path, stretch],
            log: score + state.length.logBeyond[to - at]! + model.last[k]!,
          });
        else if (to - at >= state.least) walk(to, [...path, stretch], score + state.length.logMass[to - at]!);
      }
    }
  };
  walk(0, [], 0);
  return out;
}

describe('semi-Markov segmentation against every possible sequence', () => {
  for (const seed of [1, 2, 3, 4, 5, 6]) {
    const model = tinyModel(seed, 8);
    const all = enumerate(model);
    const top = all.reduce((a, b) => (b.log > a.log ? b : a));
    const total = all.reduce((sum, p) => sum + Math.exp(p.log), 0);

    it(`finds the best sequence (seed ${seed})`, () => {
      const found = bestStretches(model);
      expect(found.logProbability).toBeCloseTo(top.log, 9);
      expect(found.stretches).toEqual(top.path);
    });

    it(`sums over all sequences (seed ${seed})`, () => {
      const posterior = stretchPosterior(model);
      const K = model.states.length;
      expect(posterior.logEvidence).toBeCloseTo(Math.log(total), 9);
      const expected = new Float64Array(model.cells * K);
      const begins = new Float64Array(model.cells + 1);
      const ends = new Float64Array(model.cells + 1);
      let broken = 0;
      for (const { path, log } of all) {
        const p = Math.exp(log) / total;
        for (const s of path) for (let i = s.from; i < s.to; i++) expected[i * K + s.state]! += p;
        const first = path.findIndex((s) => model.part[s.state] !== 'outside');
        if (first < 0) continue;
        begins[path[first]!.from]! += p;
        if (model.part[path[first]!.state] === 'other') {
          broken += p;
          continue;
        }
        let last = first;
        while (last + 1 < path.length && model.part[path[last + 1]!.state] === 'whole') last++;
        ends[path[last]!.to]! += p;
      }
      for (let i = 0; i < expected.length; i++)
        expect(Math.abs(posterior.probability[i]! - expected[i]!)).toBeLessThan(1e3 * TOLERANCE);
      for (let i = 0; i <= model.cells; i++) {
        expect(Math.abs(posterior.woodBegins[i]! - begins[i]!)).toBeLessThan(1e3 * TOLERANCE);
        expect(Math.abs(posterior.wholeEnds[i]! - ends[i]!)).toBeLessThan(1e3 * TOLERANCE);
      }
      expect(Math.abs(posterior.brokenAtOnce - broken)).toBeLessThan(1e3 * TOLERANCE);
    });
  }
});

describe('stretchScore', () => {
  it('is the marginal density of a Gaussian with a shared level and slope, up to what is common to all states', () => {
    // Two cells, level variance v, slope variance q about their middle: a bivariate normal, written out.
    const w = [4, 4, 4];
    const r = [0.9, 1.2, 0.8];
    const sums = new Float64Array(4 * FIELDS);
    for (let i = 0; i < 3; i++) {
      const t = [w[i]!, w[i]! * r[i]!, w[i]! * r[i]! ** 2, w[i]! * i, w[i]! * i * i, w[i]! * i * r[i]!];
      for (let f = 0; f < FIELDS; f++) sums[(i + 1) * FIELDS + f] = sums[i * FIELDS + f]! + t[f]!;
    }
    const law = { logMass: new Float64Array(5), logBeyond: new Float64Array(5) };
    const v = 0.09;
    const q = 0.04;
    const state = {
      sums,
      extra: new Float64Array(4),
      mean: 1,
      spread: 0.3,
      slopeSpread: 0.2,
      length: law,
      least: 1,
      most: 3,
    };
    // Covariance: v + q x_i x_j + noise on the diagonal, x = -1, 0, 1; determinant and inverse by hand (3 x 3).
    const x = [-1, 0, 1];
    const C = x.map((a, i) => x.map((b, j) => v + q * a * b + (i === j ? 0.25 : 0)));
    const det =
      C[0]![0]! * (C[1]![1]! * C[2]![2]! - C[1]![2]! * C[2]![1]!) -
      C[0]![1]! * (C[1]![0]! * C[2]![2]! - C[1]![2]! * C[2]![0]!) +
      C[0]![2]! * (C[1]![0]! * C[2]![1]! - C[1]![1]! * C[2]![0]!);
    const cofactor = (i: number, j: number) => {
      const rows = [0, 1, 2].filter((a) => a !== i);
      const cols = [0, 1, 2].filter((a) => a !== j);
      const m =
        C[rows[0]!]![cols[0]!]! * C[rows[1]!]![cols[1]!]! - C[rows[0]!]![cols[1]!]! * C[rows[1]!]![cols[0]!]!;
      return (i + j) % 2 ? -m : m;
    };
    let quadratic = 0;
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++) quadratic += ((r[i]! - 1) * (r[j]! - 1) * cofactor(i, j)) / det;
    // The score leaves out the noise's own determinant (0.25 cubed), which all states share.
    const expected = -0.5 * (quadratic + Math.log(det / 0.25 ** 3));
    expect(stretchScore(state, 0, 3)).toBeCloseTo(expected, 10);
  });
});
