/**
 * EN 1991-1-4:2005 section 4 against published worked values and against its own formulas worked by hand.
 *
 * Values marked "computed" were worked from the formulas apart from this code; "read" ones come from published sheets.
 */
import { describe, expect, it } from 'vitest';
import { eurocodeProfile, eurocodeWind, probabilityFactor } from '../../packages/engine/src/wind/eurocode.ts';

/** Half a unit of the last digit printed, which is what a table of rounded values can hold. */
const printed = (digits: number) => 0.5 * 10 ** -digits + 1e-12;
/** Pressures and speeds are printed to four figures. */
const FOUR_FIGURES = 0.0005;
/** One published sheet rounds its intermediate values. */
const SHEET = 0.005;

describe('terrain factor, eq. 4.5 (computed)', () => {
  it.each([
    ['0', 0.156],
    ['I', 0.1698],
    ['II', 0.19],
    ['III', 0.2154],
    ['IV', 0.2343],
  ] as const)('terrain %s: %d', (terrain, kr) => {
    expect(Math.abs(eurocodeWind(25, terrain, 10).kr - kr)).toBeLessThanOrEqual(printed(4));
  });
});

describe('v_b = 25 m/s by terrain and height (computed)', () => {
  it.each([
    ['0', 10, 1.2657, 31.64, 0.1233, 1165.8, 43.19],
    ['I', 10, 1.1726, 29.32, 0.1448, 1081.4, 41.6],
    ['II', 5, 0.875, 21.88, 0.2171, 753.6, 34.72],
    ['II', 10, 1.0067, 25.17, 0.1887, 918.9, 38.34],
    ['II', 20, 1.1384, 28.46, 0.1669, 1097.6, 41.91],
    ['III', 3, 0.606, 15.15, 0.3554, 500.3, 28.29],
    ['III', 5, 0.606, 15.15, 0.3554, 500.3, 28.29],
    ['III', 10, 0.7553, 18.88, 0.2852, 667.7, 32.68],
    ['III', 20, 0.9046, 22.61, 0.2381, 852.4, 36.93],
    // 1 / ln(10 / 1) = 0.4343.
    ['IV', 10, 0.5396, 13.49, Math.LOG10E, 459.4, 27.11],
    ['IV', 20, 0.702, 17.55, 0.3338, 642.3, 32.06],
  ] as const)('terrain %s at %d m', (terrain, z, cr, mean, turbulence, pressure, gust) => {
    const wind = eurocodeWind(25, terrain, z);
    expect(Math.abs(wind.cr - cr)).toBeLessThanOrEqual(printed(4));
    expect(Math.abs(wind.meanMs / mean - 1)).toBeLessThanOrEqual(FOUR_FIGURES);
    expect(Math.abs(wind.turbulence - turbulence)).toBeLessThanOrEqual(printed(4));
    expect(Math.abs(wind.peakPressurePa / pressure - 1)).toBeLessThanOrEqual(FOUR_FIGURES);
    expect(Math.abs(wind.gustMs / gust - 1)).toBeLessThanOrEqual(FOUR_FIGURES);
  });
});

describe('published sheets (read)', () => {
  it('Access Steel SX016a-EN-EU: v_b 26 m/s, terrain II, 7.3 m gives 911 Pa', () => {
    expect(Math.abs(eurocodeWind(26, 'II', 7.3).peakPressurePa - 911)).toBeLessThanOrEqual(printed(0));
  });

  it('a calculation sheet: v_b 27 m/s, terrain I, 3.5 m gives 0.989 kPa', () => {
    expect(Math.abs(eurocodeWind(27, 'I', 3.5).peakPressurePa / 989 - 1)).toBeLessThanOrEqual(SHEET);
  });

  it.each([
    [25, '0', 77.36, 0.156, 1.585, 39.624, 0.098, 1658],
    [25, '0', 28, 0.156, 1.426, 35.659, 0.109, 1403],
    [22, 'III', 7.02, 0.2154, 0.68, 14.94, 0.317, 449],
  ] as const)('v_b %d m/s, terrain %s, %d m', (vb, terrain, z, kr, cr, mean, turbulence, pressure) => {
    const wind = eurocodeWind(vb, terrain, z);
    expect(Math.abs(wind.kr / kr - 1)).toBeLessThanOrEqual(SHEET);
    expect(Math.abs(wind.cr / cr - 1)).toBeLessThanOrEqual(SHEET);
    expect(Math.abs(wind.meanMs / mean - 1)).toBeLessThanOrEqual(SHEET);
    expect(Math.abs(wind.turbulence / turbulence - 1)).toBeLessThanOrEqual(SHEET);
    expect(Math.abs(wind.peakPressurePa / pressure - 1)).toBeLessThanOrEqual(SHEET);
  });
});

describe('bounds', () => {
  it('holds the wind constant below the least height and refuses heights above 200 m', () => {
    expect(eurocodeWind(25, 'IV', 0)).toEqual(eurocodeWind(25, 'IV', 10));
    expect(() => eurocodeWind(25, 'II', 200)).not.toThrow();
    expect(() => eurocodeWind(25, 'II', 200.1)).toThrow(/200 m/);
  });

  it('speaks of the gust over open ground whatever the terrain: 38.34 m/s for v_b 25 m/s (computed)', () => {
    for (const terrain of ['0', 'I', 'II', 'III', 'IV'] as const) {
      expect(Math.abs(eurocodeProfile(25, terrain).openGustMs - 38.34)).toBeLessThanOrEqual(printed(2));
    }
  });
});

describe('probability factor, eq. 4.2 (formula from memory, constants read)', () => {
  it('is 1 for the 50-year wind and sqrt(1 / 1.7804) for once a year', () => {
    expect(probabilityFactor(0.02)).toBeCloseTo(1, 12);
    expect(probabilityFactor(1 - Math.exp(-1))).toBeCloseTo(Math.sqrt(1 / 1.7804), 4);
  });
});
