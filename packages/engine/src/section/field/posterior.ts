/**
 * The soundness field of a section given its drillings: scenarios weighed by their evidence, whole sections drawn
 * from each, and each draw pushed through the mechanics of the section.
 */
import type { Random } from '../../random.ts';
import { cambiumRing } from '../cambium.ts';
import { basisRow, type FieldBasis, fieldBasis, meanAt, RADIAL_NODES } from './basis.ts';
import { calibrate } from './calibrate.ts';
import { expectationPropagation, type FittedGaussian, type SiteLikelihoods } from './expectation.ts';
import { fieldFrame, RAYS } from './frame.ts';
import { FIELD_PRIOR, type FieldPrior, type Scenario } from './prior.ts';
import { ontoOutline, type RoundedFrame, roundedFrame } from './rounded.ts';
import { type FieldSites, fieldSites } from './sites.ts';
import { DIRECTIONS, strengthOf } from './strength.ts';
import { synthesiser } from './synthesis.ts';
import { type FieldInput, type FieldPosterior, WOOD_STATE } from './types.ts';
import { weightDraws } from './weights.ts';

/** Width of the probit between kinds, in units of the field: how sharply a needle tells them apart. */
const PROBIT_WIDTH = 0.02;
/** The picture's mean and standard deviation rest on about this many of the draws. */
const PICTURED = 500;
/** Scenarios less likely than this after the drillings are not drawn from. */
const LEAST_LIKELY = 0.002;

export interface Fitted {
  /** The scenario's name, with the frame's where it is the rounded one. */
  name: string;
  weight: number;
  rounded: RoundedFrame | null;
  basis: FieldBasis;
  rows: Float64Array;
  priorMean: Float64Array;
  likelihood: SiteLikelihoods;
  gaussian: FittedGaussian;
}

/**
 * Posterior of a section's soundness and of its strength by direction.
 *
 * @param random stream for the draws; same stream, same bytes out
 * @param draws number of whole sections to draw
 * @throws InputFault when a needle does not meet the outline
 */
export function soundnessPosterior(input: FieldInput, random: Random, draws: number): FieldPosterior {
  const prior = input.prior ?? FIELD_PRIOR;
  const frame = fieldFrame(cambiumRing(input.outline, input.barkMm));
  const sites = fieldSites(input.outline, input.barkMm, frame, input.drillings, input.surface ?? [], prior);
  const rounded = roundedFrame(frame);
  const fitted = prior.scenarios.flatMap((s) => {
    const share = rounded ? s.roundedShare : 0;
    const frames: { weight: number; rounded: RoundedFrame | null }[] = [
      { weight: s.weight * (1 - share), rounded: null },
      { weight: s.weight * share, rounded },
    ];
    return frames
      .filter(({ weight }) => weight > 0)
      .map((way) => fit(s, way.weight, way.rounded, sites, prior));
  });
  const chances = normalised(
    fitted.map((f) => Math.log(f.weight) + prior.trustInEvidence * f.gaussian.logEvidence),
  );
  const kept = chances.map((c) => (c < LEAST_LIKELY ? 0 : c));
  const order = permutation(draws, random.fork('order'));
  const counts = shared(kept, draws);

  const nodes = RAYS * RADIAL_NODES;
  const remaining = new Float64Array(draws * DIRECTIONS);
  const soundShare = new Float64Array(draws);
  const states = new Uint8Array(draws * nodes);
  const field = new Float64Array(nodes);
  const sum = new Float64Array(nodes);
  const sumSquares = new Float64Array(nodes);
  const evaluate = strengthOf(frame);
  const outlineError = new Float64Array(RAYS);
  const band = prior.incipientBand;
  const pictured = Math.max(1, Math.floor(draws / PICTURED));
  const seen = Math.ceil(draws / pictured);
  const drawOutlineError = outlineErrors(prior, random.fork('outline'));
  const strengthRandom = random.fork('incipient');

  let next = 0;
  fitted.forEach((f, index) => {
    if (!counts[index]) return;
    const weights = weightDraws(f, counts[index]!, random.fork(`weights ${f.name}`));
    const synthesise = synthesiser(f.basis);
    for (let c = 0; c < counts[index]!; c++) {
      const row = order[next++]!;
      synthesise(weights.subarray(c * f.basis.size, (c + 1) * f.basis.size), field);
      if (f.rounded) ontoOutline(f.rounded, field);
      drawOutlineError(outlineError);
      const { mean, sd } = prior.incipientStrength;
      const incipientShare = Math.min(1, Math.max(0, mean + sd * strengthRandom.normal()));
      soundShare[row] = evaluate({ field, band, incipientShare, outlineError }, remaining, row * DIRECTIONS);
      const at = row * nodes;
      for (let i = 0; i < nodes; i++) {
        const g = field[i]!;
        if (g > 0) states[at + i] = g > band ? WOOD_STATE.sound : WOOD_STATE.incipient;
      }
      if (row % pictured !== 0) continue;
      for (let i = 0; i < nodes; i++) {
        const state = states[at + i]!;
        const soundness =
          state === WOOD_STATE.sound ? 1 : state === WOOD_STATE.incipient ? incipientShare : 0;
        sum[i] = sum[i]! + soundness;
        sumSquares[i] = sumSquares[i]! + soundness * soundness;
      }
    }
  });

  calibrate(remaining, draws);

  const azimuths = Array.from({ length: RAYS }, (_, k) => (360 * k) / RAYS);
  const mean = Array.from(sum, (s) => s / seen);
  return {
    draws,
    picture: {
      centreMm: frame.centreMm,
      azimuthsDeg: azimuths,
      shells: Array.from({ length: RADIAL_NODES }, (_, i) => i / (RADIAL_NODES - 1)),
      cambiumMm: Array.from(frame.rays),
      mean,
      sd: mean.map((m, i) => Math.sqrt(Math.max(0, sumSquares[i]! / seen - m * m))),
    },
    directionsDeg: Array.from({ length: DIRECTIONS }, (_, d) => (360 * d) / DIRECTIONS),
    remaining,
    soundShare,
    states,
    stateAzimuthsDeg: azimuths,
    stateShells: Array.from({ length: RADIAL_NODES }, (_, i) => i / (RADIAL_NODES - 1)),
    stateCambiumMm: Array.from(frame.rays),
    centreMm: frame.centreMm,
    scenarios: fitted.map((f, i) => ({ name: f.name, probability: chances[i]! })),
  };
}

const BASES = new WeakMap<Scenario, FieldBasis>();

function basisOf(scenario: Scenario): FieldBasis {
  let basis = BASES.get(scenario);
  if (!basis) {
    basis = fieldBasis(scenario);
    BASES.set(scenario, basis);
  }
  return basis;
}

function fit(
  scenario: Scenario,
  weight: number,
  rounded: RoundedFrame | null,
  sites: FieldSites,
  prior: FieldPrior,
): Fitted {
  const basis = basisOf(scenario);
  const count = sites.rho.length;
  const rows = new Float64Array(count * basis.size);
  const priorMean = new Float64Array(count);
  for (let s = 0; s < count; s++) {
    const angle = sites.angleRad[s]!;
    const rho = rounded ? Math.min(1, sites.rho[s]! * rounded.at(angle)) : sites.rho[s]!;
    basisRow(basis, rho, angle, rows, s * basis.size);
    priorMean[s] = meanAt(basis, rho);
  }
  const likelihood = { ...sites, width: PROBIT_WIDTH, band: prior.incipientBand };
  const gaussian = expectationPropagation(rows, basis.size, priorMean, likelihood);
  const name = rounded ? `${scenario.name}, rounded` : scenario.name;
  return { name, weight, rounded, basis, rows, priorMean, likelihood, gaussian };
}

const OUTLINE_WAVES = 5;

/** A function that draws a smooth error of the outline, share of the radius: a common part and the first waves around. */
function outlineErrors(prior: FieldPrior, random: Random): (out: Float64Array) => void {
  const reach = (prior.outlineReachDeg * Math.PI) / 180;
  const power = Array.from(
    { length: OUTLINE_WAVES + 1 },
    (_, m) => (m ? 2 : 1) * Math.exp(-0.5 * (m * reach) ** 2),
  );
  const total = power.reduce((a, b) => a + b, 0);
  const waves = power.flatMap((p, m) => {
    const sd = prior.outlineSd * Math.sqrt(p / total);
    const wave = (f: (x: number) => number) =>
      Float64Array.from({ length: RAYS }, (_, k) => sd * f((2 * Math.PI * m * k) / RAYS));
    return m === 0 ? [wave(Math.cos)] : [wave(Math.cos), wave(Math.sin)];
  });
  return (out) => {
    out.fill(0);
    for (const wave of waves) {
      const a = random.normal();
      for (let k = 0; k < RAYS; k++) out[k] = out[k]! + a * wave[k]!;
    }
  };
}

function normalised(logs: number[]): number[] {
  const greatest = Math.max(...logs);
  const weights = logs.map((l) => Math.exp(l - greatest));
  const total = weights.reduce((a, b) => a + b, 0);
  return weights.map((w) => w / total);
}

/** Whole numbers in proportion to the chances, summing to `total` (largest remainders). */
function shared(chances: number[], total: number): number[] {
  const sum = chances.reduce((a, b) => a + b, 0);
  const exact = chances.map((c) => (c / sum) * total);
  const counts = exact.map(Math.floor);
  const rest = total - counts.reduce((a, b) => a + b, 0);
  const byRemainder = exact
    .map((e, i) => ({ i, remainder: e - Math.floor(e) }))
    .sort((a, b) => b.remainder - a.remainder || a.i - b.i);
  for (let k = 0; k < rest; k++) counts[byRemainder[k]!.i]!++;
  return counts;
}

function permutation(n: number, random: Random): Uint32Array {
  const order = Uint32Array.from({ length: n }, (_, i) => i);
  for (let i = n - 1; i > 0; i--) {
    const j = Math.floor(random.uniform() * (i + 1));
    const keep = order[i]!;
    order[i] = order[j]!;
    order[j] = keep;
  }
  return order;
}
