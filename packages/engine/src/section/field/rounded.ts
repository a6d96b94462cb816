/**
 * The rounded frame: radii measured against an outline without its lobes. A column of heart rot follows the growth
 * rings, and rings grow rounder towards the pith; so beneath a lobed outline a hollow may be lobed or round. Some
 * scenarios are held against the outline and, for a share of their weight, against its rounded form.
 */

import { RADIAL_NODES } from './basis.ts';
import { type FieldFrame, frameRadius, RAYS } from './frame.ts';

/** Waves around that the rounded outline keeps: its size, shift and ovalness. */
const WAVES_KEPT = 2;
/** Lobes shallower than this, share of the radius, make no difference. */
const LEAST_LOBE = 0.015;

export interface RoundedFrame {
  /** The outline's radius over the rounded one's on each ray. */
  overRounded: Float64Array;
  /** The same at any angle, radians clockwise from north. */
  at: (angleRad: number) => number;
}

/** The rounded frame, or null where the outline has no lobes to speak of. */
export function roundedFrame(frame: FieldFrame): RoundedFrame | null {
  const parts = Array.from({ length: WAVES_KEPT + 1 }, (_, m) => {
    let cos = 0;
    let sin = 0;
    for (let k = 0; k < RAYS; k++) {
      const angle = (2 * Math.PI * k * m) / RAYS;
      cos += frame.rays[k]! * Math.cos(angle);
      sin += frame.rays[k]! * Math.sin(angle);
    }
    const twice = m === 0 ? 1 : 2;
    return { cos: (twice * cos) / RAYS, sin: (twice * sin) / RAYS };
  });
  const rounded = (angle: number) =>
    parts.reduce((r, { cos, sin }, m) => r + cos * Math.cos(m * angle) + sin * Math.sin(m * angle), 0);
  const at = (angle: number) => frameRadius(frame, angle) / rounded(angle);
  const overRounded = Float64Array.from({ length: RAYS }, (_, k) => at((2 * Math.PI * k) / RAYS));
  const deepest = overRounded.reduce((most, x) => Math.max(most, Math.abs(x - 1)), 0);
  return deepest < LEAST_LOBE ? null : { overRounded, at };
}

/**
 * Takes a field given on the nodes of the rounded frame to the nodes of the outline's, in place. Beyond the rounded
 * outline, in a lobe, the field is what it is at its edge.
 */
export function ontoOutline({ overRounded }: RoundedFrame, field: Float64Array): void {
  const n = RADIAL_NODES;
  const ray = new Float64Array(n);
  for (let k = 0; k < RAYS; k++) {
    const from = k * n;
    ray.set(field.subarray(from, from + n));
    for (let i = 0; i < n; i++) {
      const x = Math.min(n - 1, i * overRounded[k]!);
      const j = Math.min(n - 2, Math.floor(x));
      field[from + i] = ray[j]! + (ray[j + 1]! - ray[j]!) * (x - j);
    }
  }
}
