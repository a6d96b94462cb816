import { describe, expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { outlineRing } from './outline.ts';
import type { DrilledWall } from './radial-wall.ts';
import { type StrengthLossInput, strengthLossCriteria, WALL_RULES_ARE_NEARLY_ONE } from './strength-loss.ts';

const outline = outlineRing({ kind: 'circle', diameterMm: 1040 });
const wall = (azimuthDeg: number, residualWallMm: number, atLeast = false): DrilledWall => ({
  id: `d${azimuthDeg}`,
  azimuthDeg,
  offRadialDeg: 0,
  downDeg: 0,
  residualWallMm,
  atLeast,
});
const round = (walls: number[], more: Partial<StrengthLossInput> = {}) =>
  strengthLossCriteria({
    outline,
    barkMm: 20,
    walls: walls.map((mm, i) => wall((360 * i) / walls.length, mm)),
    ...more,
  });
const named = (criteria: ReturnType<typeof round>, name: string) =>
  criteria.find((c) => c.name.startsWith(name))!;

describe('the rules', () => {
  it('are there, each with source, note and limit', () => {
    const criteria = round([150, 150, 150, 150]);
    expect(criteria.map((c) => c.name)).toEqual([
      'Wagener',
      'Coder, caution',
      'Coder, hazard',
      'Smiley and Fraedrich',
      'Wall ratio',
      'One inch of sound wood for every six of stem diameter',
      'Wall thick enough for plain bending',
      'Opening of the cavity',
      'Loss of section modulus as drilled',
    ]);
    for (const { source, note, limit } of criteria) {
      expect(source.length).toBeGreaterThan(10);
      expect(note.length).toBeGreaterThan(10);
      expect(limit).toBeGreaterThan(0);
    }
    const coder = named(criteria, 'Coder, hazard');
    expect(coder.note).toContain('44 %');
    expect(coder.note).toContain('50 %');
    expect(WALL_RULES_ARE_NEARLY_ONE).toContain('one finding');
    expect(named(criteria, 'Wall ratio').note).toContain('no independent confirmation');
  });

  it('pass a thick wall and fail a thin one, all together', () => {
    for (const c of round([240, 240, 240, 240]))
      expect(c.met, c.name).toBe(c.name.startsWith('Opening') ? null : true);
    for (const c of round([40, 40, 40, 40]))
      expect(c.met, c.name).toBe(c.name.startsWith('Opening') ? null : false);
  });

  it('take the hollow from the mean wall, the ratio from the thinnest', () => {
    const criteria = round([100, 200, 150, 150]);
    expect(named(criteria, 'Wagener').value).toBeCloseTo(0.343, 4);
    expect(named(criteria, 'Wagener').note).toContain('with the thinnest wall all round it would be 51 %');
    expect(named(criteria, 'Wall ratio').value).toBeCloseTo(0.2, 4);
    expect(named(criteria, 'Wall ratio').met).toBe(false);
  });

  it('off-centre decay costs more than the formulas say', () => {
    // A hole of half the radius, 0.3 R off: walls 0.2, 0.8 and between, exact remaining 0.7432.
    const R = 500;
    const wallsAt = (azimuth: number) => {
      const a = (azimuth * Math.PI) / 180;
      return R - (150 * Math.cos(a) + Math.sqrt(250 ** 2 - (150 * Math.sin(a)) ** 2));
    };
    const criteria = round(Array.from({ length: 12 }, (_, i) => wallsAt(30 * i)));
    expect(named(criteria, 'Loss of section modulus').value).toBeCloseTo(1 - 0.7432, 2);
    expect(named(criteria, 'Coder, hazard').value!).toBeLessThan(0.1);
  });

  it('one drilling stands for all round, and it is said', () => {
    const criteria = round([150]);
    expect(named(criteria, 'Loss of section modulus').value).toBeCloseTo(0.2401, 3);
    expect(named(criteria, 'Loss of section modulus').note).toContain('1 drilling is guessed');
  });
});

describe('needles that ended in sound wood', () => {
  const withEnds = (walls: DrilledWall[]) => strengthLossCriteria({ outline, barkMm: 20, walls });

  it('pass a rule that even the wall drilled would pass', () => {
    const criteria = withEnds([wall(0, 300, true), wall(120, 320, true), wall(240, 300, true)]);
    for (const name of ['Wagener', 'Wall ratio', 'One inch']) {
      expect(named(criteria, name).met).toBe(true);
      expect(named(criteria, name).note).toMatch(/At (least|most) this/);
    }
  });

  it('leave a rule open that the wall drilled does not decide', () => {
    const criteria = withEnds([wall(0, 100, true), wall(120, 320, true), wall(240, 300, true)]);
    expect(named(criteria, 'Wall ratio').met).toBeNull();
    expect(named(criteria, 'Wall ratio').note).toContain('before the rule could be decided');
  });

  it('do not rescue a wall that was measured thin', () => {
    const criteria = withEnds([wall(0, 100), wall(120, 80, true), wall(240, 300, true)]);
    expect(named(criteria, 'Wall ratio').met).toBe(false);
  });

  it('through sound wood to the pith and beyond: no loss', () => {
    const criteria = withEnds([wall(0, 900, true), wall(120, 900, true), wall(240, 900, true)]);
    expect(named(criteria, 'Wagener').value).toBeCloseTo(0, 6);
    expect(named(criteria, 'Loss of section modulus').value).toBeCloseTo(0, 4);
    expect(named(criteria, 'Wall ratio').met).toBe(true);
  });
});

describe('openings', () => {
  it('take closed-hollow rules out, and count where they are counted', () => {
    const criteria = round([150, 150, 150, 150], { opening: { share: 0.25, azimuthDeg: 45 } });
    for (const name of ['Wagener', 'Coder, caution', 'Wall ratio', 'One inch', 'Wall thick']) {
      expect(named(criteria, name).met).toBeNull();
      expect(named(criteria, name).value).not.toBeNull();
    }
    expect(named(criteria, 'Smiley').value).toBeCloseTo(0.50725, 4);
    expect(named(criteria, 'Opening').value).toBe(90);
    expect(named(criteria, 'Opening').met).toBe(true);
    // Open ring k 0.7, gap 90°: 0.3378 left in the weakest of the ten-degree directions, which lie 20° off the gap's.
    const turned = round([150, 150, 150, 150], { opening: { share: 0.25, azimuthDeg: 50 } });
    expect(named(turned, 'Loss of section modulus').value).toBeCloseTo(1 - 0.3378, 3);
  });

  it('beyond 120° fail, and without an azimuth leave the modulus open', () => {
    const criteria = round([150, 150, 150, 150], { opening: { share: 0.35 } });
    expect(named(criteria, 'Opening').met).toBe(false);
    expect(named(criteria, 'Loss of section modulus').met).toBeNull();
    expect(named(criteria, 'Loss of section modulus').note).toContain('no azimuth');
  });

  it.each([-0.1, 1.2, Number.NaN])('refuses a share of %f', (share) => {
    expect(() => round([150], { opening: { share } })).toThrow(InputFault);
  });
});

it('with no drillings, nothing is claimed', () => {
  for (const c of round([])) {
    expect(c.value).toBeNull();
    expect(c.met).toBeNull();
  }
});
