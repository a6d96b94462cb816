import { describe, expect, it } from 'vitest';
import { type FieldPosterior, WOOD_STATE } from '../section/field/index.ts';
import { ageing } from './futureStrength.ts';

const RAYS = 72;
const SHELLS = 33;
const RADIUS_MM = 320;
/** The mesh has a node every 10 mm; half a cell at the hollow's edge is what the closed form may differ by. */
const MESH_TOLERANCE = 0.015;

/** One draw: a round stem, hollow about its centre out to a shell. */
function hollow(unsoundShells: number): FieldPosterior {
  const states = new Uint8Array(RAYS * SHELLS);
  for (let k = 0; k < RAYS; k++)
    for (let i = 0; i < SHELLS; i++)
      states[k * SHELLS + i] = i < unsoundShells ? WOOD_STATE.none : WOOD_STATE.sound;
  return {
    draws: 1,
    states,
    stateAzimuthsDeg: Array.from({ length: RAYS }, (_, k) => 5 * k),
    stateShells: Array.from({ length: SHELLS }, (_, i) => i / (SHELLS - 1)),
    stateCambiumMm: new Array<number>(RAYS).fill(RADIUS_MM),
  } as unknown as FieldPosterior;
}

/** Modulus of a round tube over π / 4: (R⁴ − r⁴) / R. */
const tube = (outer: number, inner: number) => (outer ** 4 - inner ** 4) / outer;

function ratioOf(field: FieldPosterior, speed: number, growth: number, years: number): Float64Array {
  const out = new Float64Array(36);
  ageing(
    field,
    (_, speeds) => speeds.fill(speed),
    () => growth,
  ).ratio(0, years, out);
  return out;
}

describe('a section aged', () => {
  it('weakens as a round tube whose hollow widens', () => {
    // 21 unsound shells: the edge lies half a cell beyond the last, at 205 mm.
    const expected = tube(RADIUS_MM, 205 + 40) / tube(RADIUS_MM, 205);
    for (const value of ratioOf(hollow(21), 4, 0, 10))
      expect(Math.abs(value - expected)).toBeLessThan(MESH_TOLERANCE);
  });
  it('strengthens by the wood laid on outside', () => {
    const expected = tube(RADIUS_MM + 20, 205) / tube(RADIUS_MM, 205);
    for (const value of ratioOf(hollow(21), 0, 2, 10))
      expect(Math.abs(value - expected)).toBeLessThan(MESH_TOLERANCE);
  });
  it('is as it was in year 0, and where nothing is unsound only grows', () => {
    expect([...ratioOf(hollow(21), 9, 3, 0)].every((value) => value === 1)).toBe(true);
    const grown = ((RADIUS_MM + 10) / RADIUS_MM) ** 3;
    for (const value of ratioOf(hollow(0), 9, 1, 10))
      expect(Math.abs(value - grown)).toBeLessThan(MESH_TOLERANCE);
  });
});
