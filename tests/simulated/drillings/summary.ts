/**
 * How many holes each way of drilling needed, and how often it was wrong, over the sections of a study. The certainty that
 * is asked for is free, and the same freedom is given to every way: so ways can be compared where they are truly wrong
 * equally often, not only where they believe themselves equally sure.
 */
import { randomFrom } from '../../../packages/engine/src/random.ts';
import { chanceWrong, isSure, MOST_HOLES, STRICTEST, type Stand } from './strategies.ts';

export const WAYS = ['equal spacing, set anew', 'equal spacing, gaps halved', 'as advised'] as const;
export type Way = (typeof WAYS)[number];

/** One section, drilled in every way. */
export interface Drilled {
  family: string;
  seed: number;
  /** Least over the directions of what truly remains over what is needed; below 1 it is right to act. */
  truth: number;
  undrilled: Stand;
  /** Stand after each hole, until as sure as anyone asks or with the most holes. */
  stands: Record<Way, Stand[]>;
  /** Where the advice said to stop; null when it did not within the most holes. */
  stopped: Stand | null;
}

/** Certainties asked for, from lax to the strictest that every way was drilled to: chance of a wrong decision. */
const LAXEST = 0.2;
const STEPS = 36;
export const CERTAINTIES = Array.from(
  { length: STEPS + 1 },
  (_, k) => LAXEST * (STRICTEST / LAXEST) ** (k / STEPS),
);

/** Where a way stood when it was first as sure as asked, or with the most holes when it never was. */
export function atCertainty(d: Drilled, way: Way, certainty: number): Stand {
  const all = [d.undrilled, ...d.stands[way]];
  return all.find((s) => isSure(s, certainty)) ?? { holes: MOST_HOLES, mustAct: all.at(-1)!.mustAct };
}

/** Where a way stands after so many holes; one that was as sure as anyone asks before has drilled no more. */
export function after(d: Drilled, way: Way, holes: number): Stand {
  return d.stands[way].findLast((s) => s.holes <= holes) ?? d.undrilled;
}

/** Where the advice, followed to its own stop, ended. */
export function atStop(d: Drilled): Stand {
  return d.stopped ?? after(d, 'as advised', MOST_HOLES);
}

export const holesNeeded = (d: Drilled, way: Way, certainty: number) => atCertainty(d, way, certainty).holes;

/** Within this share of what is needed, either decision is nearly as good. */
const NEARLY_AS_GOOD = 0.05;

export const isWrong = (d: Drilled, stand: Stand) => stand.mustAct > 0.5 !== d.truth < 1;
export const isFarWrong = (d: Drilled, stand: Stand) =>
  isWrong(d, stand) && Math.abs(Math.log(d.truth)) > NEARLY_AS_GOOD;

/** Squared distance of the chance from what is right: 0 when sure and right, 1 when sure and wrong (Brier 1950). */
export const brier = (d: Drilled, stand: Stand) => (stand.mustAct - (d.truth < 1 ? 1 : 0)) ** 2;

/** No chance counts as surer than this: a thousand draws tell no less. */
const LEAST_CHANCE = 0.001;

/** Minus the logarithm of the chance given to what is right: 0 when sure and right, and no bound on sure and wrong. */
export function logScore(d: Drilled, { mustAct }: Stand): number {
  const right = d.truth < 1 ? mustAct : 1 - mustAct;
  return -Math.log(Math.min(1 - LEAST_CHANCE, Math.max(LEAST_CHANCE, right)));
}

export const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;

/** What a way of stopping costs and leaves, over the sections. */
export interface Leaves {
  holes: number;
  chanceWrong: number;
  wrong: number;
  farWrong: number;
  brier: number;
}

export function leaves(rows: readonly Drilled[], stand: (d: Drilled) => Stand): Leaves {
  const over = (figure: (d: Drilled, stand: Stand) => number | boolean) =>
    mean(rows.map((d) => Number(figure(d, stand(d)))));
  return {
    holes: over((_, s) => s.holes),
    chanceWrong: over((_, s) => chanceWrong(s)),
    wrong: over(isWrong),
    farWrong: over(isFarWrong),
    brier: over(brier),
  };
}

const FIGURES = ['holes', 'chanceWrong', 'wrong', 'farWrong', 'brier'] as const;
const CURVES = new WeakMap<Drilled, Map<Way, Float64Array>>();

/**
 * What a way costs and leaves in one section at each of `CERTAINTIES`, a row of `FIGURES` each; kept, for sections are drawn
 * again and again.
 */
function curve(d: Drilled, way: Way): Float64Array {
  const ofWays = CURVES.get(d) ?? new Map<Way, Float64Array>();
  CURVES.set(d, ofWays);
  let made = ofWays.get(way);
  if (!made) {
    made = Float64Array.from(
      CERTAINTIES.flatMap((certainty) => {
        const left = leaves([d], () => atCertainty(d, way, certainty));
        return FIGURES.map((figure) => left[figure]);
      }),
    );
    ofWays.set(way, made);
  }
  return made;
}

/** What a way costs and leaves at each of `CERTAINTIES`. */
export function frontier(rows: readonly Drilled[], way: Way): Leaves[] {
  const sums = new Float64Array(CERTAINTIES.length * FIGURES.length);
  for (const d of rows) {
    const own = curve(d, way);
    for (let i = 0; i < sums.length; i++) sums[i] = sums[i]! + own[i]!;
  }
  return CERTAINTIES.map((_, k) => {
    const at = (figure: number) => sums[k * FIGURES.length + figure]! / rows.length;
    return { holes: at(0), chanceWrong: at(1), wrong: at(2), farWrong: at(3), brier: at(4) };
  });
}

/** Figures of what is left that ways can be made equal in. */
export type Realised = 'wrong' | 'farWrong' | 'brier';

/**
 * Least mean number of holes with which a way leaves no more than `level`, whatever certainty it asks for, between
 * certainties in proportion; null when it leaves more at every certainty.
 */
export function holesAt(line: readonly Leaves[], of: Realised, level: number): number | null {
  const k = line.findIndex((l) => l[of] <= level);
  if (k < 0) return null;
  const here = line[k]!;
  const before = line[k - 1];
  if (!before || before[of] <= here[of]) return here.holes;
  const share = (before[of] - level) / (before[of] - here[of]);
  return before.holes + share * (here.holes - before.holes);
}

export interface WithInterval {
  value: number;
  low: number;
  high: number;
}

const RESAMPLED = 1000;

/** A figure of the sections, and where 90 % of it lies when sections are drawn again with replacement. */
export function resampled(
  rows: readonly Drilled[],
  figure: (rows: readonly Drilled[]) => number,
  times = RESAMPLED,
): WithInterval {
  const random = randomFrom(1);
  const again = Array.from({ length: times }, () =>
    figure(Array.from(rows, () => rows[Math.floor(rows.length * random.uniform())]!)),
  ).sort((a, b) => a - b);
  return {
    value: figure(rows),
    low: again[Math.floor(0.05 * times)]!,
    high: again[Math.floor(0.95 * times)]!,
  };
}

/** Mean number of holes as advised over that of another way, both until as sure as asked. */
export const ratioAtCertainty = (way: Way, certainty: number) => (rows: readonly Drilled[]) =>
  mean(rows.map((d) => holesNeeded(d, 'as advised', certainty))) /
  mean(rows.map((d) => holesNeeded(d, way, certainty)));

/**
 * Mean number of holes as advised over that of another way, each at the certainty at which it leaves no more than `level`.
 * A level out of reach counts against the advice: the advice as the most holes everywhere, the other way only as the
 * holes of its strictest certainty.
 */
export const ratioAtRealised = (way: Way, of: Realised, level: number) => (rows: readonly Drilled[]) => {
  const other = frontier(rows, way);
  const own = holesAt(frontier(rows, 'as advised'), of, level) ?? MOST_HOLES;
  return own / (holesAt(other, of, level) ?? other.at(-1)!.holes);
};

/** Mean over several levels of `ratioAtRealised`. */
export const meanRatioAtRealised =
  (way: Way, of: Realised, levels: readonly number[]) => (rows: readonly Drilled[]) => {
    const other = frontier(rows, way);
    const own = frontier(rows, 'as advised');
    return mean(
      levels.map(
        (level) =>
          (holesAt(own, of, level) ?? MOST_HOLES) / (holesAt(other, of, level) ?? other.at(-1)!.holes),
      ),
    );
  };

/**
 * Mean number of holes as advised, at the certainty asked for, over that with which another way is truly wrong no more often
 * than the advice then is, whatever certainty that way asks for; the holes of its strictest certainty when it never is.
 */
export const ratioAtOwnWrong = (way: Way, certainty: number) => (rows: readonly Drilled[]) => {
  const own = leaves(rows, (d) => atCertainty(d, 'as advised', certainty));
  const other = frontier(rows, way);
  return own.holes / (holesAt(other, 'wrong', own.wrong) ?? other.at(-1)!.holes);
};

/** By how much more often another way is truly wrong than the advice, at the same certainty asked for: a share. */
export const moreOftenWrong = (way: Way, certainty: number) => (rows: readonly Drilled[]) => {
  const wrong = (of: Way) => leaves(rows, (d) => atCertainty(d, of, certainty)).wrong;
  return wrong(way) - wrong('as advised');
};
