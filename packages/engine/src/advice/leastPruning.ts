/**
 * The least crown reduction that reaches a wanted safety with a wanted confidence, by bisection over the reduction: the
 * draws stay, only the demand is scaled. Says so when none that pruning standards permit reaches it.
 */
import type { LeastPruning } from '../assessment.ts';
import { constant } from '../reference/index.ts';
import { confidence, type Loads, loadLeft, safetyAfter } from './loads.ts';
import { reductionForFoliage, reliefOf, type Standing } from './pruning.ts';

/** Reductions closer together than this are one, as a share of height and spread. */
const FINE = 0.002;

/** Steps of the curve from no reduction to the most permissible. */
const CURVE_STEPS = 8;

/** What is wanted; the defaults of the constants table unless given. */
export interface Wanted {
  safety: number;
  confidence: number;
}

export const defaultWanted = (): Wanted => ({
  safety: constant('wanted safety').value,
  confidence: constant('wanted confidence').value,
});

const percent = (share: number) => `${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`;

/** The least crown reduction that reaches what is wanted. */
export function leastPruning(standing: Standing, loads: Loads, wanted: Wanted): LeastPruning {
  const at = (share: number) => loadLeft(loads, reliefOf(standing, { kind: 'reduce', amount: share }));
  const reaches = (share: number) => confidence(loads, at(share), wanted.safety);
  const mostShare = reductionForFoliage(constant('pruning outer limit').value);
  const untouched = at(0);
  const confidenceNow = confidence(loads, untouched, wanted.safety);
  const most = at(mostShare);
  const confidenceAtMost = confidence(loads, most, wanted.safety);
  const goal = `a safety of ${wanted.safety} in ${Math.round(wanted.confidence * 100)} of 100 draws`;
  const curve = Array.from({ length: CURVE_STEPS + 1 }, (_, i) => {
    const share = (mostShare * i) / CURVE_STEPS;
    const left = at(share);
    const { p05, p50, p95 } = safetyAfter(loads, left).governing;
    return { share, confidence: confidence(loads, left, wanted.safety), safety: { p05, p50, p95 } };
  });
  const common = {
    wantedSafety: wanted.safety,
    wantedConfidence: wanted.confidence,
    confidenceNow,
    mostShare,
    confidenceAtMost,
    curve,
  };
  if (confidenceNow >= wanted.confidence) {
    return {
      ...common,
      share: 0,
      topM: 0,
      foliageShare: 0,
      safetyAfter: safetyAfter(loads, untouched).governing,
      text: `The tree reaches ${goal} as it stands (${Math.round(confidenceNow * 100)} of 100): no pruning is needed for its stability.`,
    };
  }
  if (confidenceAtMost < wanted.confidence) {
    return {
      ...common,
      share: null,
      topM: null,
      foliageShare: null,
      safetyAfter: safetyAfter(loads, most).governing,
      text: `No permissible crown reduction reaches ${goal}: the most in keeping with pruning standards, ${percent(mostShare)} of height and spread (${percent(constant('pruning outer limit').value)} of the foliage), brings it from ${Math.round(confidenceNow * 100)} to ${Math.round(confidenceAtMost * 100)} of 100.`,
    };
  }
  let low = 0;
  let high = mostShare;
  while (high - low > FINE) {
    const middle = (low + high) / 2;
    if (reaches(middle) >= wanted.confidence) high = middle;
    else low = middle;
  }
  const { tree } = standing;
  const foliageShare = 1 - (1 - high) ** 3;
  const topM = high * (tree.heightM - tree.crown.baseHeightM);
  const overSeason = foliageShare > constant('pruning season limit').value;
  return {
    ...common,
    share: high,
    topM,
    foliageShare,
    safetyAfter: safetyAfter(loads, at(high)).governing,
    text: `The least crown reduction that reaches ${goal} is ${percent(high)} of height and spread: ${topM.toFixed(1)} m off the top and ${((high * tree.crown.widthM) / 2).toFixed(1)} m on each side, ${percent(foliageShare)} of the foliage${overSeason ? '; more than one season allows in a mature tree (25 %), so in two' : ''}.`,
  };
}
