/** Predictions against many felled sections, summed up. */

import type { SectionVerdict } from './verdict.ts';
import { type CountedShare, countedShare } from './wilson.ts';

/** What the intervals say they do. */
export const PROMISED = 0.9;
/** With fewer sections than this the summary says plainly that they mean little (judgement). */
const FEW = 30;

export interface Spread {
  mean: number;
  median: number;
}

export interface AccuracySummary {
  sections: number;
  cases: number;
  /** Sections of cases that say they are invented: no evidence of trees. */
  invented: number;
  /** Truth inside the 90 % interval of strength left, where the prediction was lowest and where the truth is. */
  weakest: CountedShare;
  weakestInTruth: CountedShare;
  soundShare: CountedShare;
  /** Mean share of all 36 directions inside. They are not independent, so no bounds are given. */
  directionsInside: number;
  /** Strength left where the prediction was lowest: middle estimate less truth, the same without sign, and width. */
  error: Spread;
  absoluteError: Spread;
  width: Spread;
  walls: WallSummary;
  /** What the numbers do and do not show, in words. */
  means: string[];
}

export interface WallSummary {
  /** Walls where both trace and truth met an edge. */
  compared: number;
  errorMm: Spread;
  absoluteErrorMm: Spread;
  /** Neither met an edge. */
  bothSound: number;
  /** Edges that the trace shows none of, and edges read that are not there. */
  missed: number;
  falseAlarms: number;
}

/** Sums up verdicts; without any, shares and spreads are not numbers. */
export function summedUp(verdicts: readonly SectionVerdict[]): AccuracySummary {
  const counted = (inside: (one: SectionVerdict) => boolean) =>
    countedShare(verdicts.filter(inside).length, verdicts.length);
  const errors = verdicts.map(({ weakest }) => weakest.error);
  const weakest = counted((one) => one.weakest.inside);
  const cases = new Set(verdicts.map((one) => one.case)).size;
  const invented = verdicts.filter((one) => one.invented).length;
  return {
    sections: verdicts.length,
    cases,
    invented,
    weakest,
    weakestInTruth: counted((one) => one.weakestInTruth.inside),
    soundShare: counted((one) => one.soundShare.inside),
    directionsInside: mean(verdicts.map(({ insideShare }) => insideShare)),
    error: spread(errors),
    absoluteError: spread(errors.map(Math.abs)),
    width: spread(verdicts.map(({ weakest: { p05, p95 } }) => p95 - p05)),
    walls: wallsOf(verdicts),
    means: inWords(weakest, cases, invented),
  };
}

function wallsOf(verdicts: readonly SectionVerdict[]): WallSummary {
  const walls = verdicts.flatMap((one) => one.walls);
  const found = (finding: string) => walls.filter((wall) => wall.finding === finding);
  const errors = found('edge').map(({ errorMm }) => errorMm!);
  return {
    compared: errors.length,
    errorMm: spread(errors),
    absoluteErrorMm: spread(errors.map(Math.abs)),
    bothSound: found('none').length,
    missed: found('missed').length,
    falseAlarms: found('false alarm').length,
  };
}

function inWords(weakest: CountedShare, cases: number, invented: number): string[] {
  const { of, low, high } = weakest;
  const whole = (share: number) => `${Math.round(100 * share)} %`;
  const said: string[] = [];
  if (of < FEW) {
    said.push(
      `${of === 1 ? 'One section means' : `${of} sections mean`} little: by ${of === 1 ? 'it' : 'them'} alone the intervals may hold the truth in anything from ${whole(low)} to ${whole(high)} of sections. Gather ${FEW} at least; to tell 90 % from 80 % takes about a hundred.`,
    );
  }
  if (low > PROMISED) {
    said.push(
      'The intervals hold the truth more often than the nine times in ten they promise: they are wider than they need be.',
    );
  } else if (high < PROMISED) {
    said.push(
      'The intervals hold the truth less often than the nine times in ten they promise: do not rely on them for such trees, and look at the misses one by one.',
    );
  } else if (of >= FEW) {
    said.push('This agrees with the nine times in ten that the intervals promise.');
  }
  if (of > cases) {
    said.push('Sections of one tree are not independent: the bounds are a little too narrow.');
  }
  if (invented > 0) {
    said.push(
      `${invented === of ? 'All' : invented} of the sections ${invented === 1 && of > 1 ? 'is' : 'are'} from cases marked as invented: ${invented === 1 && of > 1 ? 'it is' : 'they are'} no evidence of real trees.`,
    );
  }
  said.push(
    'Trees that are felled are not trees at large: they were felled for a reason, often for what the drilling had shown.',
  );
  return said;
}

function spread(values: readonly number[]): Spread {
  return { mean: mean(values), median: median(values) };
}

function mean(values: readonly number[]): number {
  return values.length ? values.reduce((sum, value) => sum + value, 0) / values.length : Number.NaN;
}

function median(values: readonly number[]): number {
  if (!values.length) return Number.NaN;
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
