/**
 * Capacity against demand, draw by draw and direction by direction.
 *
 * Wind towards θ and self-weight towards the lean add to one moment whose direction lies between them; the capacity is
 * taken in that direction, between the two nearest of the 36. A gust rises from calm, so self-weight alone must be
 * borne as well. The critical gust is where |λ M_w u(θ) + M_g u_lean| meets the capacity M_R:
 * λ = (-M_g cos α + sqrt(M_R² - M_g² sin² α)) / M_w, with α the angle from lean to wind; without lean λ is the safety
 * factor. With M_R at or below M_g the tree is over its capacity in calm air: λ towards the lean is then 0 or less, and the
 * critical gust is 0.
 */
import { DIRECTIONS } from '../wind/types.ts';

const RADIANS = Math.PI / 180;
const STEP = 360 / DIRECTIONS;

/** One place where capacity and demand meet: a section, or the ground for uprooting. */
export interface Meeting {
  draws: number;
  /** `draws` rows of 36, N·m. */
  capacityNm: Float64Array;
  windNm: Float64Array;
  weightNm: Float64Array;
  leanTowardDeg: number;
}

/** What came of it. */
export interface Comparison {
  /** `draws` rows of 36: capacity over demand. */
  safety: Float64Array;
  /** Per draw, the least over the directions. */
  leastSafety: Float64Array;
  /** `draws` rows of 36: λ, the multiple of the wind's moment at which the capacity is reached; 0 where calm is too much. */
  loadRatio: Float64Array;
  /** Per draw, the least λ over the directions. */
  leastLoadRatio: Float64Array;
  /** Per draw, the direction (0 to 35) of the least safety. */
  leastDirection: Uint8Array;
}

/** Linear between the two nearest directions of a row of 36 starting at `row`. */
function between(values: Float64Array, row: number, directionDeg: number): number {
  const turned = directionDeg - 360 * Math.floor(directionDeg / 360);
  const place = turned / STEP;
  const low = Math.floor(place);
  const share = place - low;
  const a = values[row + (low % DIRECTIONS)]!;
  return a + share * (values[row + ((low + 1) % DIRECTIONS)]! - a);
}

/** Compares capacity with demand. */
export function compare({ draws, capacityNm, windNm, weightNm, leanTowardDeg }: Meeting): Comparison {
  const safety = new Float64Array(draws * DIRECTIONS);
  const leastSafety = new Float64Array(draws).fill(Number.POSITIVE_INFINITY);
  const leastLoadRatio = new Float64Array(draws).fill(Number.POSITIVE_INFINITY);
  const leastDirection = new Uint8Array(draws);
  const upright = weightNm.every((weight) => weight === 0);
  // Without lean λ is the safety itself, so one array serves for both.
  const loadRatio = upright ? safety : new Float64Array(draws * DIRECTIONS);
  const cosines = new Float64Array(DIRECTIONS);
  const sines = new Float64Array(DIRECTIONS);
  for (let d = 0; d < DIRECTIONS; d++) {
    cosines[d] = Math.cos((d * STEP - leanTowardDeg) * RADIANS);
    sines[d] = Math.sin((d * STEP - leanTowardDeg) * RADIANS);
  }
  for (let i = 0; i < draws; i++) {
    const row = i * DIRECTIONS;
    const wind = windNm[i]!;
    const weight = weightNm[i]!;
    let least = Number.POSITIVE_INFINITY;
    let leastRatio = Number.POSITIVE_INFINITY;
    if (weight === 0) {
      for (let d = 0; d < DIRECTIONS; d++) {
        const factor = capacityNm[row + d]! / wind;
        safety[row + d] = factor;
        loadRatio[row + d] = factor;
        if (factor < least) {
          least = factor;
          leastDirection[i] = d;
        }
      }
      leastRatio = least;
    } else {
      const inLean = between(capacityNm, row, leanTowardDeg);
      const calm = inLean / weight;
      for (let d = 0; d < DIRECTIONS; d++) {
        const along = wind * cosines[d]! + weight;
        const across = wind * sines[d]!;
        const moment = Math.sqrt(along * along + across * across);
        const capacity = between(capacityNm, row, leanTowardDeg + Math.atan2(across, along) / RADIANS);
        const factor = Math.min(calm, moment > 0 ? capacity / moment : calm);
        safety[row + d] = factor;
        if (factor < least) {
          least = factor;
          leastDirection[i] = d;
        }
        const reach = capacity * capacity - (weight * sines[d]!) ** 2;
        const ratio = (Math.sqrt(Math.max(0, reach)) - weight * cosines[d]!) / wind;
        loadRatio[row + d] = Math.max(0, ratio);
        if (ratio < leastRatio) leastRatio = ratio;
      }
    }
    leastSafety[i] = least;
    leastLoadRatio[i] = Math.max(0, leastRatio);
  }
  return { safety, leastSafety, loadRatio, leastLoadRatio, leastDirection };
}

/**
 * Safety of one draw in one direction with the wind's moment multiplied by `windFactor`: what `compare` gives for that
 * draw and direction when the factor is 1.
 */
export function safetyAt(meeting: Meeting, draw: number, directionIndex: number, windFactor: number): number {
  const { capacityNm, windNm, weightNm, leanTowardDeg } = meeting;
  const row = draw * DIRECTIONS;
  const wind = windNm[draw]! * windFactor;
  const weight = weightNm[draw]!;
  if (weight === 0) return capacityNm[row + directionIndex]! / wind;
  const calm = between(capacityNm, row, leanTowardDeg) / weight;
  const angle = (directionIndex * STEP - leanTowardDeg) * RADIANS;
  const along = wind * Math.cos(angle) + weight;
  const across = wind * Math.sin(angle);
  const moment = Math.sqrt(along * along + across * across);
  if (moment === 0) return calm;
  const capacity = between(capacityNm, row, leanTowardDeg + Math.atan2(across, along) / RADIANS);
  return Math.min(calm, capacity / moment);
}
