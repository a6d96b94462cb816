import { describe, expect, it } from 'vitest';
import type { PointMm, RingMm } from '../types.ts';
import { RADIAL_NODES } from './basis.ts';
import { fieldFrame, RAYS } from './frame.ts';
import { DIRECTIONS, strengthOf } from './strength.ts';

/** The field stands on 72 rays and 33 nodes; straight lips between rays are placed by finer rays: 1 % of the whole. */
const MESH = 0.01;
const SMOOTH = 0.003;

const circle: RingMm = Array.from({ length: 720 }, (_, k): PointMm => {
  const a = (2 * Math.PI * k) / 720;
  return [400 * Math.sin(a), 400 * Math.cos(a)];
});

/** Remaining strength where wood is where `level(x, y)` is above 0, x east and y north, the stem's radius being 1. */
function remainingOf(level: (x: number, y: number) => number, incipientShare = 1, band = 1e-9): Float64Array {
  const field = new Float64Array(RAYS * RADIAL_NODES);
  for (let k = 0; k < RAYS; k++) {
    for (let i = 0; i < RADIAL_NODES; i++) {
      const a = (2 * Math.PI * k) / RAYS;
      const rho = i / (RADIAL_NODES - 1);
      field[k * RADIAL_NODES + i] = level(rho * Math.sin(a), rho * Math.cos(a));
    }
  }
  const remaining = new Float64Array(DIRECTIONS);
  const outlineError = new Float64Array(RAYS);
  strengthOf(fieldFrame(circle))({ field, band, incipientShare, outlineError }, remaining, 0);
  return remaining;
}

const hole = (r: number, e: number) => (x: number, y: number) => Math.hypot(x, y - e) - r;

describe('strength of a draw', () => {
  it('is exactly whole where all is sound', () => {
    expect(Array.from(remainingOf(() => 1))).toEqual(new Array(DIRECTIONS).fill(1));
  });

  it('is nothing where nothing carries', () => {
    expect(Array.from(remainingOf(() => -1))).toEqual(new Array(DIRECTIONS).fill(0));
  });

  it.each([0.2, 0.5, 0.7, 0.9])('agrees with 1 − k⁴ for a centred hollow, k = %f', (k) => {
    for (const value of remainingOf(hole(k, 0))) expect(Math.abs(value - (1 - k ** 4))).toBeLessThan(1e-6);
  });

  // reference closed forms: hole of radius r shifted by e towards north, unit circle.
  it.each([
    [0.5, 0.3, 0.7432, 0.9375],
    [0.7, 0.2, 0.50847, 1 - 0.7 ** 4],
    [0.5, 0.4, 0.63897, 0.9375],
    [0.6, 0.3, 0.57147, 1 - 0.6 ** 4],
  ])('agrees with the closed form of a hole of %f shifted by %f', (r, e, across, along) => {
    const remaining = remainingOf(hole(r, e));
    expect(Math.abs(remaining[0]! - across)).toBeLessThan(SMOOTH * across);
    expect(Math.abs(remaining[9]! - along)).toBeLessThan(SMOOTH * along);
  });

  it.each([
    [60, 0.44672],
    [90, 0.3378],
    [120, 0.25168],
  ])('agrees with the exact least strength of an open ring, k = 0.7, gap of %i degrees', (gap, least) => {
    const half = ((gap / 2) * Math.PI) / 180;
    const open = (x: number, y: number) => {
      const inHollow = 0.7 - Math.hypot(x, y);
      const inGap = half - Math.abs(Math.atan2(x, y));
      return -Math.max(inHollow, inGap);
    };
    // The exact least is over one-degree steps; ours is over ten-degree steps that hold 160 and 200 degrees.
    expect(Math.abs(Math.min(...remainingOf(open)) - least)).toBeLessThan(MESH);
  });

  it('agrees with the transformed section where the core keeps a share of its strength', () => {
    // Core of radius 0.7 at n = 0.3: I*/I0 = 0.83193.
    const field = (x: number, y: number) => (Math.hypot(x, y) < 0.7 - 1e-9 ? 0.5 : 1.5);
    const remaining = remainingOf((x, y) => field(x, y), 0.3, 1);
    for (const value of remaining) expect(Math.abs(value - 0.83193)).toBeLessThan(MESH);
  });

  it('keeps the share of incipient wood where all is incipient', () => {
    const remaining = remainingOf(() => 0.5, 0.4, 1);
    for (const value of remaining) expect(value).toBeCloseTo(0.4, 10);
  });

  it('carries an error of the outline: the same wall on a thicker stem is a thinner ring', () => {
    const field = new Float64Array(RAYS * RADIAL_NODES);
    for (let k = 0; k < RAYS; k++) {
      for (let i = 0; i < RADIAL_NODES; i++) field[k * RADIAL_NODES + i] = i / (RADIAL_NODES - 1) - 0.7;
    }
    const evaluate = strengthOf(fieldFrame(circle));
    const outlineError = new Float64Array(RAYS).fill(0.1);
    const remaining = new Float64Array(DIRECTIONS);
    evaluate({ field, band: 1e-9, incipientShare: 1, outlineError }, remaining, 0);
    // Wall 0.3 of the measured radius on a radius of 1.1.
    const expected = 1 - (0.8 / 1.1) ** 4;
    for (const value of remaining) expect(Math.abs(value - expected)).toBeLessThan(1e-6);
  });
});
