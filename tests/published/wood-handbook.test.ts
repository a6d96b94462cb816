/**
 * Green strength of clear wood: rows of the Wood Handbook (Forest Products Laboratory 2010, FPL-GTR-190, Table 5-3a), its
 * coefficients of variation (Table 5-6) and green moisture (Table 4-1). Rows given here were read in stored pages of it.
 */
import { describe, expect, it } from 'vitest';
import { woodFor } from '../../packages/engine/src/reference/index.ts';
import { woodCov, woodGreen, woodMoisture } from '../../packages/engine/src/reference/tables.generated.ts';

/** The Handbook prints strengths to 100 or 1000 kPa; the table must hold just those numbers. */
const EXACT = 0;

describe('Table 5-3a, green (read)', () => {
  it.each([
    ['Acer saccharum', 0.56, 65000, 10700, 27700, 10100],
    ['Quercus laurifolia', 0.56, 54000, 9600, 21900, 8100],
    ['Quercus macrocarpa', 0.58, 50000, 6100, 22700, 9300],
    ['Pinus ponderosa', 0.38, 35000, 6900, 16900, 4800],
    ['Pinus resinosa', 0.41, 40000, 8800, 18800, 4800],
    ['Pinus echinata', 0.47, 51000, 9600, 24300, 6300],
    ['Pinus elliottii', 0.54, 60000, 10500, 26300, 6600],
    ['Pinus lambertiana', 0.34, 34000, 7100, 17000, 5000],
    ['Pinus virginiana', 0.45, 50000, 8400, 23600, 6100],
    ['Pinus monticola', 0.35, 32000, 8200, 16800, 4700],
    ['Pinus serotina', 0.51, 51000, 8800, 25200, 6500],
  ])('%s', (scientific, gravity, mor, moe, compression, shear) => {
    const row = woodGreen.find((each) => each.scientific === scientific);
    expect(row?.status).toBe('read');
    expect(row && [row.sgGreen, row.morKpa, row.moeMpa, row.compParKpa, row.shearKpa]).toEqual([
      gravity,
      mor,
      moe,
      compression,
      shear,
    ]);
    const wood = woodFor(scientific);
    expect(Math.abs(wood.bendingPa - mor * 1e3)).toBeLessThanOrEqual(EXACT + mor * 1e-9);
    expect(Math.abs(wood.compressionPa - compression * 1e3)).toBeLessThanOrEqual(EXACT + compression * 1e-9);
  });

  it('redwood: old growth 52000 and 29000, young growth 41000 and 21400 kPa; the weaker one is used', () => {
    const rows = woodGreen.filter((row) => row.scientific === 'Sequoia sempervirens');
    expect(rows.map((row) => [row.morKpa, row.compParKpa])).toEqual([
      [52000, 29000],
      [41000, 21400],
    ]);
    expect(woodFor('Sequoia sempervirens').compressionPa).toBeCloseTo(21.4e6, 0);
  });
});

describe('rows cross-checked against an independent clear-wood table that was read (psi)', () => {
  const PA_PER_PSI = 6894.757;
  /** The two tables differ in sampling and rounding. */
  const TWO_TABLES = 0.025;

  it.each([
    ['Abies concolor', 5854, 2902],
    ['Abies grandis', 5839, 2939],
    ['Tsuga heterophylla', 6637, 3364],
    ['Populus trichocarpa', 4890, 2200],
    ['Taxodium distichum', 6640, 3580],
    ['Chamaecyparis lawsoniana', 6598, 3145],
    ['Tsuga canadensis', 6420, 3080],
    ['Pinus contorta', 5490, 2610],
  ])('%s', (scientific, mor, compression) => {
    const wood = woodFor(scientific);
    expect(Math.abs(wood.bendingPa / (mor * PA_PER_PSI) - 1)).toBeLessThanOrEqual(TWO_TABLES);
    expect(Math.abs(wood.compressionPa / (compression * PA_PER_PSI) - 1)).toBeLessThanOrEqual(TWO_TABLES);
  });
});

describe('Table 5-6 and the 5 % exclusion values (computed)', () => {
  it.each([
    ['mor', 0.16, 0.737],
    ['compression', 0.18, 0.704],
    ['shear', 0.14, 0.77],
  ])('%s: %d leaves %d', (property, cov, factor) => {
    const row = woodCov.find((each) => each.property === property);
    expect(row?.cov).toBe(cov);
    expect(Math.abs(1 - 1.645 * row!.cov - factor)).toBeLessThanOrEqual(0.0005);
  });

  it('agrees with means and standard deviations of green baldcypress that were read (psi)', () => {
    const pairs = {
      mor: [6640, 1062],
      moe: [1184, 260],
      compression: [3580, 644],
      shear: [812, 114],
    } as const;
    for (const [property, [mean, sd]] of Object.entries(pairs)) {
      const row = woodCov.find((each) => each.property === property);
      expect(Math.abs(sd / mean - row!.cov)).toBeLessThanOrEqual(0.005);
    }
  });
});

describe('Table 4-1, green moisture (read)', () => {
  it.each([
    ['Fagus grandifolia', 55, 72],
    ['Fraxinus americana', 46, 44],
    ['Tilia americana', 81, 133],
    ['Betula papyrifera', 89, 72],
    ['Taxodium distichum', 121, 171],
    ['Pseudotsuga menziesii', 37, 115],
    ['Thuja plicata', 58, 249],
  ])('%s: heartwood %d, sapwood %d', (scientific, heart, sap) => {
    const row = woodMoisture.find((each) => each.scientific === scientific);
    expect(row && [row.heartPct, row.sapPct, row.status]).toEqual([heart, sap, 'read']);
  });

  it('gives green beech 1000 × 0.56 × (1 + 0.635) = 916 kg/m³ (computed)', () => {
    expect(woodFor('Fagus grandifolia').greenDensityKgM3).toBe(916);
  });
});
