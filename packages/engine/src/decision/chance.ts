/**
 * Chance of failure within a time frame, from the safety draws and the distribution of the year's strongest gust.
 *
 * Each draw is one version of the tree with the gust at which its demand meets its capacity, by direction; the gust of
 * that strength comes at a rate r a year (wind/gustClimate.ts). A version of the tree stays the same from year to year, so
 * over n years its chance is 1 - exp(-n r), and the mean over the draws is taken last: a doubtful tree does not grow more
 * doubtful by waiting. The year's strongest gust may blow from the side that is worst for the tree (on the safe side, the
 * figure used), or from all sides alike (each direction with a 36th of the rate). The tree is taken to stay as it is: no
 * decay, growth or wear in the time frame, and no credit for storms it has stood.
 */
import type { Chance, ModeChance } from '../assessment.ts';
import { constant } from '../reference/index.ts';
import { chanceWithin, type GustClimate } from '../wind/gustClimate.ts';
import { interval } from '../wind/interval.ts';
import { DIRECTIONS } from '../wind/types.ts';
import { gustRatio } from './criticalGust.ts';
import type { ModeDraws, SafetyDraws } from './types.ts';

export interface ChanceOfFailure {
  perYear: Chance;
  inTimeFrame: Chance;
  evenPerYear: number;
  evenInTimeFrame: number;
  inTimeFrameHavingStood: number;
  breakage: ModeChance;
  uprooting: ModeChance;
  /** For each of the 36 directions, the chance of either failure within the time frame by gusts toward it. */
  eitherByDirection: number[];
}

/** Rate a year at which a draw's critical load is exceeded, from its multiple of the wind's moment. */
export function rateOf(drawn: SafetyDraws, climate: GustClimate): (loadRatio: number) => number {
  const { openGustMs, streamlining } = drawn;
  return (loadRatio) => climate.rate(openGustMs * gustRatio(streamlining, loadRatio));
}

function chanceOf(rates: Float64Array, years: number): Chance {
  const chances = rates.map((rate) => chanceWithin(rate, years));
  const mean = chances.reduce((sum, chance) => sum + chance, 0) / chances.length;
  return { mean, ...interval(chances) };
}

const meanWithin = (rates: Float64Array, years: number) =>
  rates.reduce((sum, rate) => sum + chanceWithin(rate, years), 0) / rates.length;

/** Rates of one mode, `draws` rows of 36. */
function ratesOf(mode: ModeDraws, rate: (loadRatio: number) => number): Float64Array {
  return mode.loadRatio.map(rate);
}

/** Per draw, the greatest and the mean of a row of 36. */
function overDirections(rates: Float64Array, draws: number): { worst: Float64Array; even: Float64Array } {
  const worst = new Float64Array(draws);
  const even = new Float64Array(draws);
  for (let i = 0; i < draws; i++) {
    let most = 0;
    let sum = 0;
    for (let k = i * DIRECTIONS; k < (i + 1) * DIRECTIONS; k++) {
      const rate = rates[k]!;
      sum += rate;
      if (rate > most) most = rate;
    }
    worst[i] = most;
    even[i] = sum / DIRECTIONS;
  }
  return { worst, even };
}

/** Means over the draws of a column's chances. */
function byDirection(rates: Float64Array, draws: number, years: number): number[] {
  const sums = new Float64Array(DIRECTIONS);
  for (let k = 0; k < rates.length; k++) sums[k % DIRECTIONS]! += chanceWithin(rates[k]!, years);
  return Array.from(sums, (sum) => sum / draws);
}

/**
 * Chance within the time frame given that the tree has stood some years: a version of the tree that would hardly have
 * stood them counts for as much less (Bayes' rule, the weight of a draw its chance to have stood gusts from all sides).
 */
export function chanceHavingStood(
  worst: Float64Array,
  even: Float64Array,
  years: number,
  stoodYears: number,
): number {
  let weights = 0;
  let sum = 0;
  for (let i = 0; i < worst.length; i++) {
    const weight = Math.exp(-stoodYears * even[i]!);
    weights += weight;
    sum += weight * chanceWithin(worst[i]!, years);
  }
  // Every version would have fallen: nothing is known of one that did not.
  return weights > 0 ? sum / weights : 1;
}

/** Chance of failure by mode and direction, a year and within the time frame. */
export function chanceOfFailure(drawn: SafetyDraws, climate: GustClimate, years: number): ChanceOfFailure {
  const { draws } = drawn;
  const rate = rateOf(drawn, climate);
  const modeChance = (mode: 'breakage' | 'uprooting', rates: Float64Array): ModeChance => {
    const { worst, even } = overDirections(rates, draws);
    const perYear = byDirection(rates, draws, 1);
    const inTimeFrame = byDirection(rates, draws, years);
    const likeliest = inTimeFrame.indexOf(Math.max(...inTimeFrame));
    return {
      mode,
      directionDeg: (likeliest * 360) / DIRECTIONS,
      perYear: chanceOf(worst, 1),
      inTimeFrame: chanceOf(worst, years),
      evenPerYear: meanWithin(even, 1),
      evenInTimeFrame: meanWithin(even, years),
      byDirection: perYear.map((chance, d) => ({
        directionDeg: (d * 360) / DIRECTIONS,
        perYear: chance,
        inTimeFrame: inTimeFrame[d]!,
      })),
    };
  };
  const breaking = ratesOf(drawn.breakage, rate);
  const uprooting = ratesOf(drawn.uprooting, rate);
  // One gust: the tree fails by whichever mode it reaches first.
  const either = breaking.map((each, k) => Math.max(each, uprooting[k]!));
  const { worst, even } = overDirections(either, draws);
  return {
    perYear: chanceOf(worst, 1),
    inTimeFrame: chanceOf(worst, years),
    evenPerYear: meanWithin(even, 1),
    evenInTimeFrame: meanWithin(even, years),
    inTimeFrameHavingStood: chanceHavingStood(worst, even, years, constant('years stood').value),
    breakage: modeChance('breakage', breaking),
    uprooting: modeChance('uprooting', uprooting),
    eitherByDirection: byDirection(either, draws, years),
  };
}

/** Mean chance within the time frame with each draw's load multiplied by a factor: what pruning leaves. */
export function chanceWithLoad(
  drawn: SafetyDraws,
  climate: GustClimate,
  years: number,
  loadFactor: Float64Array,
): number {
  const rate = rateOf(drawn, climate);
  let sum = 0;
  for (let i = 0; i < drawn.draws; i++) {
    const least = Math.min(drawn.breakage.leastLoadRatio[i]!, drawn.uprooting.leastLoadRatio[i]!);
    sum += chanceWithin(rate(least / loadFactor[i]!), years);
  }
  return sum / drawn.draws;
}

const percent = (chance: number) =>
  chance < 0.0005 ? 'below 0.1 %' : `${(chance * 100).toFixed(chance < 0.1 ? 1 : 0)} %`;

/** A chance in words: percent, not finer than it is worth. */
export function chanceInWords(chance: number): string {
  return percent(chance);
}
