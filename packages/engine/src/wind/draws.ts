/**
 * The demand with its scatter.
 *
 * The wind moment is the middle estimate times lognormal factors for the drag coefficient, the silhouette, the pressure
 * at the site and the structure's response; they are common to all levels and directions of a draw, since it is one
 * crown in one gust. Self-weight has its own factor. Wind and lean add as vectors: M(θ) = |M_w u(θ) + M_g u_lean|; since
 * a gust rises from calm to its peak, the demand is never less than that of self-weight alone.
 */
import type { Random } from '../random.ts';
import { constant, woodFor } from '../reference/index.ts';
import { dragLogSd, windDemand } from './demand.ts';
import { stratifiedNormals } from './sampling.ts';
import { type DemandDraws, type DemandInput, DIRECTIONS, type WindDemand } from './types.ts';

const RADIANS = Math.PI / 180;

/** Standard deviation of ln(wind moment): drag, silhouette, site pressure and response together. */
export function windLogSd(species: string, inLeaf: boolean): number {
  const own = ['crown area', 'wind profile', 'dynamic factor'].map((name) => constant(name).logSd ?? 0);
  return Math.hypot(dragLogSd(woodFor(species), inLeaf), ...own);
}

/** Size of the resultant of wind towards each direction and self-weight towards the lean, `draws` rows of 36, N·m. */
export function resultants(
  windNm: Float64Array,
  weightNm: Float64Array,
  leanTowardDeg: number,
): Float64Array {
  const draws = windNm.length;
  const out = new Float64Array(draws * DIRECTIONS);
  const cosines = new Float64Array(DIRECTIONS);
  for (let d = 0; d < DIRECTIONS; d++)
    cosines[d] = Math.cos((d * (360 / DIRECTIONS) - leanTowardDeg) * RADIANS);
  for (let i = 0; i < draws; i++) {
    const w = windNm[i]!;
    const g = weightNm[i]!;
    const row = i * DIRECTIONS;
    if (g === 0) {
      out.fill(w, row, row + DIRECTIONS);
      continue;
    }
    const base = w * w + g * g;
    const cross = 2 * w * g;
    for (let d = 0; d < DIRECTIONS; d++)
      out[row + d] = Math.max(g, Math.sqrt(Math.max(0, base + cross * cosines[d]!)));
  }
  return out;
}

/** `draws` versions of the demand. Pass `nominal` where it is at hand already. */
export function demandDraws(
  input: DemandInput,
  random: Random,
  draws: number,
  nominal: WindDemand = windDemand(input),
): DemandDraws {
  const windSd = windLogSd(input.tree.species, nominal.inLeaf);
  const weightSd = constant('self-weight').logSd ?? 0;
  const windFactor = stratifiedNormals(random.fork('wind demand'), draws).map((z) => Math.exp(windSd * z));
  const weightFactor = stratifiedNormals(random.fork('self-weight'), draws).map((z) =>
    Math.exp(weightSd * z),
  );
  const windMomentNm = nominal.windMomentNm.map((moment) => windFactor.map((factor) => factor * moment));
  const weightMomentNm = nominal.weightMomentNm.map((moment) =>
    weightFactor.map((factor) => factor * moment),
  );
  return {
    draws,
    levelsM: nominal.levelsM,
    windMomentNm,
    weightMomentNm,
    momentNm: windMomentNm.map((wind, level) =>
      resultants(wind, weightMomentNm[level]!, nominal.leanTowardDeg),
    ),
    leanTowardDeg: nominal.leanTowardDeg,
    openGustMs: nominal.openGustMs,
    streamlining: nominal.streamlining,
  };
}
