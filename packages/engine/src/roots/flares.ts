/**
 * What unsound root flares leave of the anchorage, by direction of fall.
 *
 * When a tree falls towards d, the flares on the far side (windward) are in tension and those on the near side in
 * compression. Each flare counts by its cross-section and by the cosine of its angle from d. Anchorage falls with the
 * share of root cross-section lost, with a slope between 0.6 (half the buttress roots cut: 30 %, Smiley 2008) and 1
 * (nearly linear up to half, Smiley, Holmes and Fraedrich 2014); the windward half carries the greater part.
 */
import type { Random } from '../random.ts';
import { constant } from '../reference/index.ts';
import { normalQuantile, stratifiedUniforms } from '../wind/sampling.ts';
import { DIRECTIONS } from '../wind/types.ts';
import type { FlareSoundness } from './types.ts';

const RADIANS = Math.PI / 180;
const Z95 = 1.6448536269514722;

/** A share drawn by its 5 %, 50 % and 95 % points: two half-normals joined at the middle, kept within 0 to 1. */
function drawShare(share: { p05: number; p50: number; p95: number }, uniform: number): number {
  const z = normalQuantile(uniform);
  const spread = z < 0 ? share.p50 - share.p05 : share.p95 - share.p50;
  return Math.min(1, Math.max(0, share.p50 + (z * spread) / Z95));
}

/** How much of the anchorage is left by direction of fall, and the middle share of root cross-section lost. */
export interface FlareEffect {
  /** `draws` rows of 36. */
  remaining: Float64Array;
  /** Greatest middle share of the roots lost over the directions, tension and compression halves together. */
  greatestLoss: number;
}

/**
 * Weight of each flare's loss in the loss of each direction, 36 rows of one weight a flare, each row summing to 1. A half
 * without a recorded flare is taken as the flares are on the whole.
 */
export function flareWeights(flares: readonly { azimuthDeg: number; areaMm2: number }[]): Float64Array {
  const tensionShare = constant('anchorage tension share').value;
  const count = flares.length;
  const weights = new Float64Array(DIRECTIONS * count);
  const areaAll = flares.reduce((sum, flare) => sum + flare.areaMm2, 0);
  for (let d = 0; d < DIRECTIONS; d++) {
    const pulls = flares.map(
      ({ azimuthDeg, areaMm2 }) => areaMm2 * Math.cos((azimuthDeg - (d * 360) / DIRECTIONS) * RADIANS),
    );
    const tension = pulls.reduce((sum, pull) => (pull < 0 ? sum - pull : sum), 0);
    const compression = pulls.reduce((sum, pull) => (pull > 0 ? sum + pull : sum), 0);
    pulls.forEach((pull, f) => {
      const overall = flares[f]!.areaMm2 / areaAll;
      const inTension = tension > 0 ? Math.max(0, -pull) / tension : overall;
      const inCompression = compression > 0 ? Math.max(0, pull) / compression : overall;
      weights[d * count + f] = tensionShare * inTension + (1 - tensionShare) * inCompression;
    });
  }
  return weights;
}

/**
 * Draws of what unsound flares and cut roots leave. Flares that were not drilled are taken as the drilled ones are on
 * average. What is cut is taken from what the flares leave: lost = 1 - (1 - flares) (1 - cuts).
 */
export function flareEffect(
  flares: readonly FlareSoundness[],
  random: Random,
  draws: number,
  cuts: { lost: Float64Array | null; greatest: number } = { lost: null, greatest: 0 },
): FlareEffect {
  const remaining = new Float64Array(draws * DIRECTIONS).fill(1);
  const drilled = flares.filter((flare) => flare.soundShare !== null);
  if (drilled.length === 0) {
    if (!cuts.lost) return { remaining, greatestLoss: 0 };
    return { remaining: cutsAlone(cuts.lost, random, draws), greatestLoss: cuts.greatest };
  }
  const sized = flares.map(({ azimuthDeg, widthMm, heightMm }) => ({
    azimuthDeg,
    areaMm2: widthMm * heightMm,
  }));
  const uniforms = flares.map((flare) =>
    flare.soundShare === null ? null : stratifiedUniforms(random.fork(`flare ${flare.id}`), draws),
  );
  const slopes = stratifiedUniforms(random.fork('root loss slope'), draws);
  const mild = constant('root loss slope mild').value;
  const full = constant('root loss slope').value;
  const lost = new Float64Array(flares.length);
  const weights = flareWeights(sized);
  const byDirection = new Float64Array(DIRECTIONS);
  const fill = (shareOf: (f: number) => number) => {
    let sum = 0;
    flares.forEach((flare, f) => {
      if (flare.soundShare === null) return;
      lost[f] = 1 - shareOf(f);
      sum += lost[f]!;
    });
    const mean = sum / drilled.length;
    flares.forEach((flare, f) => {
      if (flare.soundShare === null) lost[f] = mean;
    });
    for (let d = 0; d < DIRECTIONS; d++) {
      let loss = 0;
      for (let f = 0; f < lost.length; f++) loss += weights[d * lost.length + f]! * lost[f]!;
      byDirection[d] = loss;
    }
  };
  for (let i = 0; i < draws; i++) {
    fill((f) => drawShare(flares[f]!.soundShare!, uniforms[f]![i]!));
    const slope = mild + (full - mild) * slopes[i]!;
    for (let d = 0; d < DIRECTIONS; d++) {
      const cut = cuts.lost ? cuts.lost[i * DIRECTIONS + d]! : 0;
      const loss = 1 - (1 - byDirection[d]!) * (1 - cut);
      remaining[i * DIRECTIONS + d] = Math.max(0, 1 - slope * loss);
    }
  }
  fill((f) => flares[f]!.soundShare!.p50);
  const ofFlares = byDirection.reduce((a, b) => Math.max(a, b), 0);
  return { remaining, greatestLoss: 1 - (1 - ofFlares) * (1 - cuts.greatest) };
}

/** What cuts leave where no flare was drilled. */
function cutsAlone(lost: Float64Array, random: Random, draws: number): Float64Array {
  const slopes = stratifiedUniforms(random.fork('root loss slope'), draws);
  const mild = constant('root loss slope mild').value;
  const full = constant('root loss slope').value;
  return lost.map((loss, k) => 1 - (mild + (full - mild) * slopes[Math.floor(k / DIRECTIONS)]!) * loss);
}
