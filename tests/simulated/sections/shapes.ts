/**
 * What every table of simulated sections is drawn with: the stem, the types of a family, and a few helpers.
 */
import type { Random } from '../../../packages/engine/src/random.ts';
import { cambiumRing } from '../../../packages/engine/src/section/cambium.ts';
import { outlineRadius } from '../../../packages/engine/src/section/outline.ts';
import type { PointMm, RingMm } from '../../../packages/engine/src/section/types.ts';

/** A stem to be decayed; its outline is star-shaped about the origin. */
export interface Stem {
  outline: RingMm;
  barkMm: number;
  wood: RingMm;
  /** Cambium radius at an angle (radians), mm. */
  edge: (angle: number) => number;
  /** Mean cambium radius, mm. */
  size: number;
  /** Angles (radians) where the outline itself shows something, as its shape gave them. */
  signs: readonly number[];
}

/** Radius over the stem's size at an angle (radians), and where it shows something a decay may go with. */
export interface Shape {
  (angle: number): number;
  signs?: readonly number[];
}

/** Draws the regions without strength of a stem. */
export type Decay = (stem: Stem, random: Random) => RingMm[];

/** A family of sections: how its outline is drawn, then its decay. */
export interface Family {
  stem: (random: Random) => Shape;
  decay: Decay;
}

/** A full turn, radians. */
export const TURN = 2 * Math.PI;
/** Uniform between two bounds. */
export const between = (random: Random, low: number, high: number) => low + (high - low) * random.uniform();
/** A whole number from low to high, both included. */
export const whole = (random: Random, low: number, high: number) =>
  Math.floor(between(random, low, high + 1));
/** The point at an angle (radians clockwise from north) and a distance from the origin. */
export const at = (angle: number, radius: number): PointMm => [
  radius * Math.sin(angle),
  radius * Math.cos(angle),
];

/** A ring of points by angle. */
export function ring(count: number, f: (angle: number) => PointMm): RingMm {
  return Array.from({ length: count }, (_, k) => f((TURN * k) / count));
}

/** A smooth function around with mean 0 and the given standard deviation, waves falling off by `fall`. */
export function waves(random: Random, sd: number, fall: number, highest = 8): (angle: number) => number {
  const a: number[] = [];
  const b: number[] = [];
  let total = 0;
  for (let m = 1; m <= highest; m++) total += m ** (-2 * fall);
  for (let m = 1; m <= highest; m++) {
    const s = (sd * m ** -fall) / Math.sqrt(total);
    a.push(s * random.normal());
    b.push(s * random.normal());
  }
  return (angle) => {
    let s = 0;
    for (let m = 1; m <= highest; m++) s += a[m - 1]! * Math.cos(m * angle) + b[m - 1]! * Math.sin(m * angle);
    return s;
  };
}

/** A stem of 400 to 1,300 mm across over bark, of a shape. */
export function stem(random: Random, shape: Shape): Stem {
  const size = between(random, 200, 650);
  const outline = ring(240, (angle) => at(angle, size * shape(angle)));
  const barkMm = between(random, 5, Math.min(35, size / 12));
  const wood = cambiumRing(outline, barkMm);
  const radius = outlineRadius(wood);
  return {
    outline,
    barkMm,
    wood,
    edge: (angle) => radius((angle * 360) / TURN),
    size: size - barkMm,
    signs: shape.signs ?? [],
  };
}
