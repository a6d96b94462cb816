/**
 * When the breaking safety passes below a mark: the safety of every draw, year by year, with the section's capacity aged.
 * The load stays as it is. At each year the direction counts in which the lower 5 % point is lowest, as for the safety
 * itself, so that the forecast begins at the figure printed there; a crossing is where a curve of the fan meets the mark.
 */
import type { SectionAssessment } from '../assessment.ts';
import type { FieldPosterior } from '../section/field/index.ts';
import { DIRECTIONS_DEG } from '../section/index.ts';
import { interval } from '../wind/interval.ts';
import { ageing } from './futureStrength.ts';
import { apartDeg } from './matchDrillings.ts';
import type { RateDraws } from './rates.ts';
import type { Crossing, Forecast } from './types.ts';

const DIRECTIONS = DIRECTIONS_DEG.length;
/** A measured speed is believed of the stem within about this of the drilling, degrees round. */
const REACH_DEG = 25;
/** Weight of what is believed of any place, beside a drilling's own 1 at its place. */
const ELSEWHERE_WEIGHT = 0.15;

export interface SectionToAge {
  id: string;
  field: FieldPosterior;
  /** `draws` rows of 36: breaking safety of this section now. */
  safety: Float64Array;
  azimuthsDeg: number[];
  rates: RateDraws;
  growthMmYear: Float64Array;
}

/** Years at which the fan is worked out. */
export function forecastYears(longest: number): number[] {
  return [0, 1, 2, 3, 5, 7, 10, 13, 16, 20, 25, 30].filter((year) => year <= longest);
}

/** Draws of the field that are aged; each stands for those next to it, which are in no order. */
const AGED_DRAWS = 500;

/**
 * Capacity after each of `years` over that at first, by draw: rows of `draws` × 36.
 *
 * @param field the section at first
 */
export function agedCapacity(
  field: FieldPosterior,
  section: Pick<SectionToAge, 'azimuthsDeg' | 'rates' | 'growthMmYear'>,
  years: readonly number[],
): Float64Array[] {
  const { draws } = field;
  const aged = ageing(field, speedAlong(field, section), (draw) => section.growthMmYear[draw]!);
  const rows = years.map(() => new Float64Array(draws * DIRECTIONS));
  const ratio = new Float64Array(DIRECTIONS);
  const stride = Math.max(1, Math.floor(draws / AGED_DRAWS));
  for (let draw = 0; draw < draws; draw += stride) {
    years.forEach((year, y) => {
      aged.ratio(draw, year, ratio);
      for (let i = draw; i < Math.min(draws, draw + stride); i++) rows[y]!.set(ratio, i * DIRECTIONS);
    });
  }
  return rows;
}

/** Speed towards a ray in a draw: of the drillings near it, else as believed of any place. */
function speedAlong(
  field: FieldPosterior,
  { azimuthsDeg, rates }: Pick<SectionToAge, 'azimuthsDeg' | 'rates'>,
): (draw: number, out: Float64Array) => void {
  const weights = field.stateAzimuthsDeg.map((azimuth) =>
    azimuthsDeg.map((at) => Math.exp(-0.5 * (apartDeg(azimuth, at) / REACH_DEG) ** 2)),
  );
  return (draw, out) => {
    weights.forEach((row, k) => {
      let sum = ELSEWHERE_WEIGHT * rates.elsewhere[draw]!;
      let total = ELSEWHERE_WEIGHT;
      row.forEach((weight, d) => {
        sum += weight * rates.atDrillings[d]![draw]!;
        total += weight;
      });
      out[k] = sum / total;
    });
  };
}

/** Breaking safety by year, least over the sections: rows of `draws` × 36 for each year. */
export function futureSafety(sections: readonly SectionToAge[], years: readonly number[]): Float64Array[] {
  const rows = years.map(() => new Float64Array(sections[0]!.safety.length).fill(Number.POSITIVE_INFINITY));
  for (const section of sections) {
    agedCapacity(section.field, section, years).forEach((ratio, y) => {
      const row = rows[y]!;
      for (let i = 0; i < row.length; i++) {
        const value = section.safety[i]! * ratio[i]!;
        if (value < row[i]!) row[i] = value;
      }
    });
  }
  return rows;
}

/** Fan and, by year, the chance of being below each mark in the direction that counts. */
export function fanOf(
  rows: readonly Float64Array[],
  years: readonly number[],
  limits: readonly number[],
): { safety: Forecast['safety']; below: number[][] } {
  const draws = rows[0]!.length / DIRECTIONS;
  const column = new Float64Array(draws);
  const below: number[][] = limits.map(() => []);
  const safety = rows.map((row, y) => {
    let worst: Forecast['safety'][number] | undefined;
    for (let d = 0; d < DIRECTIONS; d++) {
      for (let i = 0; i < draws; i++) column[i] = row[i * DIRECTIONS + d]!;
      const points = interval(column);
      if (!worst || points.p05 < worst.p05)
        worst = { year: years[y]!, directionDeg: DIRECTIONS_DEG[d]!, ...points };
    }
    const at = DIRECTIONS_DEG.indexOf(worst!.directionDeg);
    limits.forEach((limit, l) => {
      let count = 0;
      for (let i = 0; i < draws; i++) if (row[i * DIRECTIONS + at]! < limit) count++;
      below[l]!.push(count / draws);
    });
    return worst!;
  });
  return { safety, below };
}

/** The year at which a rising curve reaches a level, linear between its points; null when it never does. */
export function yearReached(
  years: readonly number[],
  values: readonly number[],
  level: number,
): number | null {
  for (let i = 0; i < years.length; i++) {
    if (values[i]! < level) continue;
    if (i === 0) return years[0]!;
    const share = (level - values[i - 1]!) / (values[i]! - values[i - 1]!);
    return years[i - 1]! + share * (years[i]! - years[i - 1]!);
  }
  return null;
}

/** Value of a curve at a year, linear between its points. */
export function valueAt(years: readonly number[], values: readonly number[], year: number): number {
  for (let i = 1; i < years.length; i++) {
    if (year > years[i]!) continue;
    const share = (year - years[i - 1]!) / (years[i]! - years[i - 1]!);
    return values[i - 1]! + share * (values[i]! - values[i - 1]!);
  }
  return values.at(-1)!;
}

export function crossingOf(
  limit: number,
  years: readonly number[],
  below: readonly number[],
  nextVisitYears: number,
): Crossing {
  // Chances can dip where growth outdoes decay for a while: once below counts.
  const reached = below.map((_, i) => Math.max(...below.slice(0, i + 1)));
  return {
    limit,
    earlyYears: yearReached(years, reached, 0.05),
    middleYears: yearReached(years, reached, 0.5),
    lateYears: yearReached(years, reached, 0.95),
    chanceNow: below[0]!,
    chanceByNextVisit: valueAt(years, reached, nextVisitYears),
    chanceAtEnd: reached.at(-1)!,
  };
}

/** Mean radius of an outline, mm: of the circle of the same area. */
export function meanRadiusMm(ring: SectionAssessment['outlineMm']): number {
  let twice = 0;
  ring.forEach(([x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    twice += x * nextY - nextX * y;
  });
  return Math.sqrt(Math.abs(twice) / 2 / Math.PI);
}
