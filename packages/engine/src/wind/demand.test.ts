import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CrownShape, SiteInput, TreeInput } from '../case.ts';
import { InputFault } from '../faults.ts';
import { windDemand } from './demand.ts';

const tree: TreeInput = {
  label: 'T',
  species: 'Fagus grandifolia',
  stemDiameterMm: 800,
  heightM: 22,
  leanDeg: 0,
  leanTowardDeg: 0,
  crown: { baseHeightM: 5, widthM: 14, shape: 'ellipse', inLeaf: true },
};
const site: SiteInput = { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'III' };
const demandOf = (t: Partial<TreeInput> = {}, s: SiteInput = site, sectionHeightsM: number[] = []) =>
  windDemand({ tree: { ...tree, ...t }, site: s, sectionHeightsM });

const SHAPES: CrownShape[] = [
  'ellipse',
  'dome',
  'cone',
  'paraboloid',
  'rectangle',
  'rhombus',
  'inverted-cone',
];

describe('windDemand', () => {
  it('grows with the wind, with the width and with the height of the crown', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 15, max: 45, noNaN: true }),
        fc.double({ min: 1.01, max: 1.5, noNaN: true }),
        fc.constantFrom(...SHAPES),
        fc.constantFrom<SiteInput>(
          { windCode: 'EN 1991-1-4', basicWindSpeedMs: 1, terrain: 'III' },
          { windCode: 'EN 1991-1-4', basicWindSpeedMs: 1, terrain: 'II' },
          { windCode: 'ASCE 7-22', basicWindSpeedMs: 1, exposure: 'B' },
          { windCode: 'ASCE 7-16', basicWindSpeedMs: 1, exposure: 'C' },
        ),
        (speed, factor, shape, kind) => {
          const at = (wind: number, width: number, height: number) =>
            demandOf(
              { heightM: height, crown: { ...tree.crown, shape, widthM: width } },
              { ...kind, basicWindSpeedMs: wind },
              [1],
            );
          const base = at(speed, 14, 22);
          for (const more of [
            at(speed * factor, 14, 22),
            at(speed, 14 * factor, 22),
            at(speed, 14, 22 * factor),
          ]) {
            expect(more.windMomentNm[0]).toBeGreaterThan(base.windMomentNm[0]!);
            expect(more.windMomentNm[1]).toBeGreaterThan(base.windMomentNm[1]!);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('falls from the ground up and counts only what lies above a section, within the crown too', () => {
    const heights = [0.5, 2, 4.9, 5.1, 10, 20];
    const { windMomentNm, levelsM } = demandOf({}, site, heights);
    expect(levelsM).toEqual([0, ...heights]);
    for (let i = 1; i < windMomentNm.length; i++) expect(windMomentNm[i]!).toBeLessThan(windMomentNm[i - 1]!);
    // Crossing the crown's base loses nothing at a jump.
    const [, low, high] = demandOf({}, site, [4.999999, 5.000001]).windMomentNm;
    expect(Math.abs(low! / high! - 1)).toBeLessThan(1e-5);
  });

  it('takes the lever from the section: M(z) is M(0) less z times the force, but for the stem below it', () => {
    const level = 2;
    const demand = demandOf({}, site, [level]);
    const stemForce = demand.strips
      .filter((strip) => strip.part === 'stem')
      .reduce((sum, strip) => sum + strip.forceN, 0);
    const excess = demand.windMomentNm[1]! - (demand.windMomentNm[0]! - level * demand.forceN);
    expect(excess).toBeGreaterThan(0);
    expect(excess).toBeLessThan(level * stemForce);
    expect(level * stemForce).toBeLessThan(0.05 * demand.windMomentNm[0]!);
  });

  it('is the slices added up', () => {
    const demand = demandOf();
    const force = demand.strips.reduce((sum, strip) => sum + strip.forceN, 0);
    const moment = demand.strips.reduce((sum, strip) => sum + strip.forceN * strip.centreM, 0);
    expect(demand.forceN).toBeCloseTo(force, 6);
    expect(demand.windMomentNm[0]! / moment).toBeCloseTo(1, 12);
    expect(demand.centreOfPressureM).toBeCloseTo(moment / force, 9);
    const area = demand.strips
      .filter((strip) => strip.part === 'crown')
      .reduce((sum, strip) => sum + strip.widthM * (strip.toM - strip.fromM), 0);
    // Slices against the outline's exact area: the ellipse's round ends.
    expect(Math.abs(area / demand.crownAreaM2 - 1)).toBeLessThan(1e-4);
  });

  it('lies above the area centroid, since the wind grows with height', () => {
    expect(demandOf({ crown: { ...tree.crown, baseHeightM: 0 } }).centreOfPressureM).toBeGreaterThan(11);
  });

  it('is less without leaves, and not for a tree that keeps them', () => {
    const bare = { ...tree.crown, inLeaf: false };
    expect(demandOf({ crown: bare }).windMomentNm[0]! / demandOf().windMomentNm[0]!).toBeCloseTo(0.55, 1);
    const spruce = demandOf({ species: 'Picea abies', crown: bare });
    expect(spruce.inLeaf).toBe(true);
    expect(spruce.notices[0]?.where).toBe('tree.crown.inLeaf');
    expect(demandOf({ species: 'Larix laricina', crown: bare }).inLeaf).toBe(false);
  });

  it('scales with the dynamic factor', () => {
    const swayed = windDemand({ tree, site, sectionHeightsM: [], dynamicFactor: 1.3 });
    expect(swayed.windMomentNm[0]! / demandOf().windMomentNm[0]!).toBeCloseTo(1.3, 9);
  });

  it('gives self-weight a moment only when the tree leans, growing with the lean', () => {
    expect(demandOf().weightMomentNm[0]).toBe(0);
    const five = demandOf({ leanDeg: 5 }, site, [1]).weightMomentNm;
    const ten = demandOf({ leanDeg: 10 }, site, [1]).weightMomentNm;
    expect(ten[0]!).toBeGreaterThan(five[0]!);
    expect(five[1]!).toBeLessThan(five[0]!);
    expect(ten[0]! / five[0]!).toBeCloseTo(Math.tan(Math.PI / 18) / Math.tan(Math.PI / 36), 6);
  });

  it('keeps a source with every value used', () => {
    for (const value of demandOf({ leanDeg: 5, crown: { ...tree.crown, inLeaf: false } }).values) {
      expect(value.source, value.name).not.toBe('');
      expect(Number.isFinite(value.value), value.name).toBe(true);
    }
  });

  it.each([
    [{ heightM: Number.NaN }, site, 'tree.heightM'],
    [{ heightM: 500 }, site, 'tree.heightM'],
    [{ stemDiameterMm: 0 }, site, 'tree.stemDiameterMm'],
    [{ leanDeg: 90 }, site, 'tree.leanDeg'],
    [{ leanTowardDeg: Number.NaN }, site, 'tree.leanTowardDeg'],
    [{ crown: { ...tree.crown, baseHeightM: 30 } }, site, 'tree.crown.baseHeightM'],
    [{ crown: { ...tree.crown, widthM: -1 } }, site, 'tree.crown.widthM'],
    [{ crown: { ...tree.crown, shape: 'cloud' as CrownShape } }, site, 'tree.crown.shape'],
    [{}, { ...site, basicWindSpeedMs: 0 }, 'site.basicWindSpeedMs'],
    [{}, { ...site, terrain: 'V' } as unknown as SiteInput, 'site.terrain'],
    [{}, { ...site, windCode: 'none' } as unknown as SiteInput, 'site.windCode'],
    [
      {},
      { windCode: 'ASCE 7-22', basicWindSpeedMs: 40, exposure: 'A' } as unknown as SiteInput,
      'site.exposure',
    ],
  ])('refuses %j at %j, naming %s', (treePart, siteInput, where) => {
    try {
      demandOf(treePart as Partial<TreeInput>, siteInput as SiteInput);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InputFault);
      expect((error as InputFault).where).toBe(where);
    }
  });

  it('refuses a section above the tree', () => {
    expect(() => demandOf({}, site, [1, 22])).toThrow(/sections\[1\]/);
  });
});
