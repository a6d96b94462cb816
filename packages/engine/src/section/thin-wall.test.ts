import { describe, expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { type HollowStem, thinWallModes } from './thin-wall.ts';

/** Wood for which the crossings were worked by hand: t/r 0.10 and 0.0506. */
const wood = {
  axialModulusPa: 8e9,
  transverseModulusPa: 0.4e9,
  bendingStrengthPa: 40e6,
  transverseTensionPa: 3e6,
};
const stem = (wallMm: number, more: Partial<HollowStem> = {}): HollowStem => ({
  outerRadiusMm: 500,
  wallMm,
  ...wood,
  ...more,
});

describe('failing of hollow stems', () => {
  it('has the crossings worked by hand', () => {
    const modes = thinWallModes(stem(50));
    expect(modes.crackingToBending).toBeCloseTo(0.1, 12);
    expect(modes.ovalisingToCracking).toBeCloseTo(0.050625, 12);
  });

  it('ovalises, cracks and breaks in bending in that order of wall, as Huang et al. 2017 found', () => {
    expect(thinWallModes(stem(15)).governs).toBe('ovalising');
    expect(thinWallModes(stem(35)).governs).toBe('cracking');
    expect(thinWallModes(stem(150)).governs).toBe('bending');
  });

  it('crosses where it says: moments equal at those walls of the mid-wall radius', () => {
    // t/r = q with r = R − t/2 is t = R q / (1 + q/2).
    const wallAt = (q: number) => (500 * q) / (1 + q / 2);
    const thin = thinWallModes(stem(wallAt(0.050625)));
    expect(thin.ovalisingNm / thin.crackingNm).toBeCloseTo(1, 9);
    // Bending is given for a wall of any thickness, so it meets the thin-wall crossing only nearly.
    const thick = thinWallModes(stem(wallAt(0.1)));
    expect(Math.abs(thick.crackingNm / thick.bendingNm - 1)).toBeLessThan(0.06);
  });

  it('gives the solid stem its bending strength and keeps 76 % of it at t/R 0.30', () => {
    const solid = thinWallModes(stem(500)).bendingNm;
    expect(solid).toBeCloseTo((40e6 * Math.PI * 0.5 ** 3) / 4, 3);
    expect(thinWallModes(stem(150)).bendingNm / solid).toBeCloseTo(0.7599, 10);
  });

  it('grows with the cube of size', () => {
    const small = thinWallModes(stem(40));
    const large = thinWallModes({ ...stem(80), outerRadiusMm: 1000 });
    for (const mode of ['bendingNm', 'crackingNm', 'ovalisingNm'] as const) {
      expect(large[mode] / small[mode]).toBeCloseTo(8, 9);
    }
  });

  it.each<[Partial<HollowStem>, string]>([
    [{ wallMm: 0 }, 'wallMm'],
    [{ wallMm: 501 }, 'wallMm'],
    [{ axialModulusPa: Number.NaN }, 'axialModulusPa'],
    [{ poissonProduct: 1 }, 'poissonProduct'],
    [{ poissonProduct: -0.1 }, 'poissonProduct'],
  ])('refuses %j', (wrong, field) => {
    expect(() => thinWallModes(stem(50, wrong))).toThrow(InputFault);
    expect(() => thinWallModes(stem(50, wrong))).toThrow(`stem.${field}`);
  });
});
