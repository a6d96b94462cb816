import { describe, expect, it } from 'vitest';
import type { TreeInput } from '../case.ts';
import { woodFor } from '../reference/index.ts';
import { crownProfile } from './crown.ts';
import { leanMomentNm, massSlices, stemDiameterM } from './stem.ts';

const tree: TreeInput = {
  label: 'T',
  species: 'Fagus grandifolia',
  stemDiameterMm: 800,
  heightM: 30,
  leanDeg: 0,
  leanTowardDeg: 0,
  crown: { baseHeightM: 8, widthM: 14, shape: 'ellipse', inLeaf: true },
};

describe('stem', () => {
  it('has the measured diameter at breast height and ends at the top', () => {
    expect(stemDiameterM(tree, 1.3)).toBeCloseTo(0.8, 12);
    expect(stemDiameterM(tree, 30)).toBe(0);
    expect(stemDiameterM({ ...tree, heightM: 2 }, 1.3)).toBeGreaterThan(0);
  });

  it('has a form factor near 0.45', () => {
    const wood = woodFor(tree.species);
    const crown = crownProfile(tree.crown, tree.heightM);
    const total = massSlices(tree, crown, wood, 2000).reduce((sum, slice) => sum + slice.massKg, 0);
    const cylinder = (Math.PI / 4) * 0.64 * 30 * wood.greenDensityKgM3;
    // Branches add half of the stem's mass in a broadleaf.
    expect(total / 1.5 / cylinder).toBeGreaterThan(0.42);
    expect(total / 1.5 / cylinder).toBeLessThan(0.5);
  });

  it('hangs the branches in the crown', () => {
    const wood = woodFor(tree.species);
    const slices = massSlices(tree, crownProfile(tree.crown, tree.heightM), wood);
    const bare = massSlices(tree, { ...crownProfile(tree.crown, tree.heightM), widthM: () => 0 }, wood);
    expect(bare.at(-1)).toMatchObject({ heightM: 19 });
    const below = slices.filter((slice) => slice.heightM < 8).reduce((sum, slice) => sum + slice.massKg, 0);
    const stemBelow = bare
      .slice(0, -1)
      .filter((slice) => slice.heightM < 8)
      .reduce((sum, slice) => sum + slice.massKg, 0);
    expect(below).toBeCloseTo(stemBelow, 6);
    expect(slices.reduce((sum, slice) => sum + slice.massKg, 0)).toBeCloseTo(
      bare.reduce((sum, slice) => sum + slice.massKg, 0),
      6,
    );
  });

  it('counts the weight above a level only', () => {
    const slices = [
      { massKg: 100, heightM: 1 },
      { massKg: 50, heightM: 3 },
    ];
    expect(leanMomentNm(slices, 45, 0)).toBeCloseTo(9.81 * (100 + 150), 9);
    expect(leanMomentNm(slices, 45, 2)).toBeCloseTo(9.81 * 50, 9);
    expect(leanMomentNm(slices, 0, 0)).toBe(0);
  });
});
