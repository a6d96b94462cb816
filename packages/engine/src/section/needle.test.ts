import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { needleLine } from './needle.ts';
import { outlineRadius, outlineRing } from './outline.ts';
import { radialWall } from './radial-wall.ts';
import { RAD } from './ring.ts';
import type { PointMm } from './types.ts';

const R = 300;
const circle = outlineRing({ kind: 'circle', diameterMm: 2 * R });
/** The ring's radius is right to 1e-5. */
const NEAR = 5e-3;

describe('needle lines', () => {
  it('a radial needle runs through the origin and out on the far side', () => {
    const line = needleLine(circle, { azimuthDeg: 90, offRadialDeg: 0, downDeg: 0 });
    expect(line.entryMm[0]).toBeCloseTo(R, 1);
    expect(line.headingUnit[0]).toBeCloseTo(-1, 12);
    expect(line.horizontalPerDepth).toBe(1);
    expect(Math.abs(line.exitDepthMm - 2 * R)).toBeLessThan(2 * NEAR);
  });

  it('turned clockwise seen from above: from the north side, heading west of south', () => {
    const line = needleLine(circle, { azimuthDeg: 0, offRadialDeg: 30, downDeg: 0 });
    expect(line.headingUnit[0]).toBeCloseTo(-0.5, 12);
    expect(line.headingUnit[1]).toBeCloseTo(-Math.cos(30 * RAD), 12);
  });

  it('leaves a circle after the chord, further along when tilted down', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: -80, max: 80, noNaN: true }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        (azimuthDeg, offRadialDeg, downDeg) => {
          const line = needleLine(circle, { azimuthDeg, offRadialDeg, downDeg });
          const chord = (2 * R * Math.cos(offRadialDeg * RAD)) / Math.cos(downDeg * RAD);
          expect(Math.abs(line.exitDepthMm - chord) / chord).toBeLessThan(1e-3);
        },
      ),
    );
  });

  it('stops at the first way out of a lobed outline', () => {
    const cross: PointMm[] = [
      [-100, -300],
      [100, -300],
      [100, -100],
      [300, -100],
      [300, 100],
      [100, 100],
      [100, 300],
      [-100, 300],
      [-100, 100],
      [-300, 100],
      [-300, -100],
      [-100, -100],
    ];
    // From the middle of the north arm's end, turned so that it leaves through the arm's side.
    const line = needleLine(cross, { azimuthDeg: 0, offRadialDeg: -40, downDeg: 0 });
    expect(line.exitDepthMm).toBeCloseTo(100 / Math.sin(40 * RAD), 6);
  });

  it.each([
    [{ azimuthDeg: 0, offRadialDeg: 120, downDeg: 0 }, 'offRadialDeg'],
    [{ azimuthDeg: Number.NaN, offRadialDeg: 0, downDeg: 0 }, 'azimuthDeg'],
    [{ azimuthDeg: 0, offRadialDeg: 0, downDeg: 90 }, 'downDeg'],
  ])('refuses %j, naming %s', (pose, field) => {
    const attempt = () => needleLine(circle, pose, 'sections[0].drillings[2]');
    expect(attempt).toThrow(InputFault);
    expect(attempt).toThrow(`sections[0].drillings[2].${field}`);
  });
});

describe('walls along the needle as walls towards the pith', () => {
  const cambiumRadius = outlineRadius(circle);
  const wall = (offRadialDeg: number, downDeg: number, residualWallMm: number, atLeast = false) =>
    radialWall(circle, 0, cambiumRadius, {
      id: 'd1',
      azimuthDeg: 0,
      offRadialDeg,
      downDeg,
      residualWallMm,
      atLeast,
    });

  it.each([
    [0, 90],
    [10, 92.0064],
    [20, 98.6812],
    [40, 146.6619],
  ])('R 300, cavity of 210: %i° off the radial the path is %f mm, the wall 90', (off, path) => {
    expect(Math.abs(wall(off, 0, path).wallMm - 90)).toBeLessThan(NEAR);
    expect(Math.abs(wall(-off, 0, path).wallMm - 90)).toBeLessThan(NEAR);
  });

  it('takes the slope down out', () => {
    expect(Math.abs(wall(0, 40, 90 / Math.cos(40 * RAD)).wallMm - 90)).toBeLessThan(NEAR);
  });

  it('puts the inner end where it is', () => {
    const { azimuthDeg } = wall(40, 0, 146.6619);
    // Clockwise off the radial from the north: the end lies to the west of it.
    expect(azimuthDeg).toBeGreaterThan(315);
    expect(azimuthDeg).toBeLessThan(345);
  });

  it('past the pith the whole radius is wall, and no more is known', () => {
    const through = wall(0, 0, 450);
    expect(Math.abs(through.wallMm - R)).toBeLessThan(NEAR);
    expect(through.atLeast).toBe(true);
    const skimming = wall(50, 0, 300);
    expect(Math.abs(skimming.wallMm - (R - R * Math.sin(50 * RAD)))).toBeLessThan(NEAR);
    expect(skimming.atLeast).toBe(true);
  });

  it('starts at the cambium, aslant through the bark too', () => {
    const over = outlineRing({ kind: 'circle', diameterMm: 2 * (R + 20) });
    const measured = {
      id: 'd1',
      azimuthDeg: 0,
      offRadialDeg: 0,
      downDeg: 0,
      residualWallMm: 90,
      atLeast: false,
    };
    expect(Math.abs(radialWall(over, 20, cambiumRadius, measured).wallMm - 90)).toBeLessThan(NEAR);
    // Tilted down 60° the bark is twice as long and so is the wall.
    const steep = { ...measured, downDeg: 60, residualWallMm: 180 };
    expect(Math.abs(radialWall(over, 20, cambiumRadius, steep).wallMm - 90)).toBeLessThan(NEAR);
  });

  it('refuses a wall that is no number', () => {
    expect(() => wall(0, 0, Number.NaN)).toThrow(InputFault);
    expect(() => wall(0, 0, -1)).toThrow('d1.residualWallMm');
  });
});
