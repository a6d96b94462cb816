/**
 * How many holes each way of drilling needed, and how often it was wrong, over the sections of a study.
 */
import { randomFrom } from '../../../packages/engine/src/random.ts';
import { type Advised, chanceWrong, FIXED, isSure, MOST_HOLES, type Stand } from './strategies.ts';

/** One section, drilled in every way. */
export interface Drilled {
  family: string;
  seed: number;
  /** Least over the directions of what truly remains over what is needed; below 1 it is right to act. */
  truth: number;
  undrilled: Stand;
  spaced: Stand[];
  halving: Stand[];
  advised: Advised;
}

export type Way = 'equal spacing, set anew' | 'equal spacing, gaps halved' | 'as advised';
export const WAYS: readonly Way[] = ['equal spacing, set anew', 'equal spacing, gaps halved', 'as advised'];

const standsOf: Record<Way, (d: Drilled) => Stand[]> = {
  'equal spacing, set anew': (d) => d.spaced,
  'equal spacing, gaps halved': (d) => d.halving,
  'as advised': (d) => d.advised.stands,
};

/** Where a way stood when it was first sure, or with the most holes when it never was. */
export function atCertainty(d: Drilled, way: Way): Stand {
  const stands = standsOf[way](d);
  return stands.find(isSure) ?? stands.at(-1)!;
}

export const isSureBy = (d: Drilled, way: Way) => isSure(atCertainty(d, way));

/** Where the advice, followed to its own stop, ended. */
export function atStop(d: Drilled): Stand {
  return d.advised.stopped ?? d.advised.stands.at(-1)!;
}

/** Holes until sure; a way that never was counts the most holes. */
export function holesNeeded(d: Drilled, way: Way): number {
  const stand = atCertainty(d, way);
  return isSure(stand) ? stand.holes : MOST_HOLES;
}

export const isWrong = (d: Drilled, stand: Stand) => stand.mustAct > 0.5 !== d.truth < 1;

export const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

export interface WithInterval {
  value: number;
  low: number;
  high: number;
}

const RESAMPLED = 2000;

/** A figure of the sections, and where 90 % of it lies when sections are drawn again with replacement. */
export function resampled(
  rows: readonly Drilled[],
  figure: (rows: readonly Drilled[]) => number,
): WithInterval {
  const random = randomFrom(1);
  const again = Array.from({ length: RESAMPLED }, () =>
    figure(Array.from(rows, () => rows[Math.floor(rows.length * random.uniform())]!)),
  ).sort((a, b) => a - b);
  return {
    value: figure(rows),
    low: again[Math.floor(0.05 * RESAMPLED)]!,
    high: again[Math.floor(0.95 * RESAMPLED)]!,
  };
}

/** Mean number of holes as advised over that of another way, both until sure. */
export const ratioTo = (way: Way) => (rows: readonly Drilled[]) =>
  mean(rows.map((d) => holesNeeded(d, 'as advised'))) / mean(rows.map((d) => holesNeeded(d, way)));

/** What a way of stopping leaves, over the sections. */
export interface Leaves {
  holes: number;
  chanceWrong: number;
  unsure: number;
  wrong: number;
}

export function leaves(rows: readonly Drilled[], stand: (d: Drilled) => Stand): Leaves {
  return {
    holes: mean(rows.map((d) => stand(d).holes)),
    chanceWrong: mean(rows.map((d) => chanceWrong(stand(d)))),
    unsure: mean(rows.map((d) => (isSure(stand(d)) ? 0 : 1))),
    wrong: mean(rows.map((d) => (isWrong(d, stand(d)) ? 1 : 0))),
  };
}

/** What the same number of equally spaced holes at every section leaves. */
export function leftByFixed(rows: readonly Drilled[], holes: number): Leaves {
  return leaves(rows, (d) => d.spaced.find((s) => s.holes === holes)!);
}

/**
 * Number of equally spaced holes, the same at every section, that leaves as little as the given figure, between counts in
 * proportion; the most holes when not even they do.
 */
export function fixedThatLeaves(
  rows: readonly Drilled[],
  of: 'chanceWrong' | 'unsure' | 'wrong',
  least: number,
): number {
  let before = { holes: 0, left: leaves(rows, (d) => d.undrilled)[of] };
  for (const holes of FIXED) {
    const left = leftByFixed(rows, holes)[of];
    if (left <= least) {
      const share = before.left > left ? (before.left - least) / (before.left - left) : 1;
      return before.holes + Math.max(0, Math.min(1, share)) * (holes - before.holes);
    }
    before = { holes, left };
  }
  return MOST_HOLES;
}
