/**
 * Five examples worked by hand from the formulas (docs/theory/load.md), apart from this code: wind to moment to stress to
 * safety to critical gust.
 */
import { describe, expect, it } from 'vitest';
import { compare } from '../../packages/engine/src/decision/compare.ts';
import { gustRatio } from '../../packages/engine/src/decision/criticalGust.ts';
import { windDemand } from '../../packages/engine/src/wind/index.ts';
import { leanMomentNm } from '../../packages/engine/src/wind/stem.ts';

/** Worked values carry four figures. */
const FOUR_FIGURES = 0.0005;
const near = (value: number, expected: number, tolerance = FOUR_FIGURES) =>
  expect(Math.abs(value / expected - 1)).toBeLessThanOrEqual(tolerance);

/** One draw, the same capacity in every direction. */
function single(capacityNm: number, windNm: number, weightNm = 0) {
  return compare({
    draws: 1,
    capacityNm: new Float64Array(36).fill(capacityNm),
    windNm: Float64Array.of(windNm),
    weightNm: Float64Array.of(weightNm),
    leanTowardDeg: 0,
  });
}

/** Constant drag: what the examples assume. */
const constantDrag = { gustMs: 33, exponent: -0.36, leastMs: 4, topMs: 20 };

const FORCE = 0.5 * 1.2 * 33 ** 2 * 0.25 * 100;
const GROUND_MOMENT = FORCE * 10;
const MODULUS = (Math.PI * 0.6 ** 3) / 32;
const MOR = 53e6;
const COMPRESSION = 22.6e6;

describe('A: 33 m/s, Cd 0.25, 100 m² at 10 m, stem 0.6 m', () => {
  it('force 16 335 N, moment 163.35 kN m, stress 7.703 MPa', () => {
    near(FORCE, 16335);
    near(GROUND_MOMENT, 163_350);
    near(GROUND_MOMENT / MODULUS, 7.703e6);
  });

  it('safety 6.88 on bending and 2.934 on compression; critical gust 86.6 and 56.5 m/s', () => {
    const bending = single(MOR * MODULUS, GROUND_MOMENT);
    const crushing = single(COMPRESSION * MODULUS, GROUND_MOMENT);
    near(bending.leastSafety[0]!, 6.88);
    near(crushing.leastSafety[0]!, 2.934);
    near(33 * gustRatio(constantDrag, bending.leastLoadRatio[0]!), 86.6);
    near(33 * gustRatio(constantDrag, crushing.leastLoadRatio[0]!), 56.5, 0.001);
  });
});

describe('B: the same, hollow to 0.7 of the radius', () => {
  const remaining = 1 - 0.7 ** 4;

  it('0.7599 of the modulus, stress 10.14 MPa, safety 5.23 and 2.23, critical gust 49.3 m/s', () => {
    near(remaining, 0.7599);
    near(GROUND_MOMENT / (MODULUS * remaining), 10.14e6);
    near(single(remaining * MOR * MODULUS, GROUND_MOMENT).leastSafety[0]!, 5.23, 0.001);
    const crushing = single(remaining * COMPRESSION * MODULUS, GROUND_MOMENT);
    near(crushing.leastSafety[0]!, 2.23, 0.001);
    near(33 * gustRatio(constantDrag, crushing.leastLoadRatio[0]!), 49.3, 0.001);
  });
});

describe('C: A leaning, 2000 kg hanging 2.5 m out', () => {
  const weight = leanMomentNm([{ massKg: 2000, heightM: 2.5 }], 45, 0);

  it('49.05 kN m of self-weight, 212.4 in all, stress 10.02 MPa, safety 2.256, critical gust 53.55 m/s', () => {
    near(weight, 49_050);
    near(GROUND_MOMENT + weight, 212_400);
    near((GROUND_MOMENT + weight) / MODULUS, 10.02e6);
    const crushing = single(COMPRESSION * MODULUS, GROUND_MOMENT, weight);
    near(COMPRESSION * MODULUS, 479_250);
    near(crushing.safety[0]!, 2.256);
    near(crushing.leastSafety[0]!, 2.256);
    near(33 * gustRatio(constantDrag, crushing.leastLoadRatio[0]!), 53.55);
  });
});

describe('D: anchorage 259.2 kN m against A', () => {
  it('safety 1.587, at the 5 % point 0.918; critical gust 41.6 m/s: the roots govern although the stem does not', () => {
    const roots = single(259_200, GROUND_MOMENT);
    near(roots.leastSafety[0]!, 1.587);
    near(single(150_000, GROUND_MOMENT).leastSafety[0]!, 0.918, 0.001);
    near(33 * gustRatio(constantDrag, roots.leastLoadRatio[0]!), 41.6, 0.001);
  });
});

describe('E: EN 1991-1-4, v_b 25 m/s, ellipse 12 m wide from 5 to 18 m, Cd 0.25', () => {
  const crownOnly = (terrain: 'II' | 'III' | 'IV', aboutM = 0) => {
    const demand = windDemand({
      tree: {
        label: 'E',
        species: 'Acer rubrum',
        stemDiameterMm: 620,
        heightM: 18,
        leanDeg: 0,
        leanTowardDeg: 0,
        crown: { baseHeightM: 5, widthM: 12, shape: 'ellipse', inLeaf: true },
      },
      site: { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain },
      sectionHeightsM: [],
    });
    const crown = demand.strips.filter((strip) => strip.part === 'crown');
    const forceN = crown.reduce((sum, strip) => sum + strip.forceN, 0);
    const momentNm = crown.reduce((sum, strip) => sum + strip.momentNm - strip.forceN * aboutM, 0);
    return { demand, forceN, momentNm };
  };

  it('area 122.52 m², force 21.254 kN, moment 252.06 kN m at 11.859 m', () => {
    const { demand, forceN, momentNm } = crownOnly('III');
    near(demand.crownAreaM2, 122.52);
    near(forceN, 21_254);
    near(momentNm, 252_060);
    near(momentNm / forceN, 11.859);
  });

  it('340.02 kN m over terrain II and 183.08 over IV', () => {
    near(crownOnly('II').momentNm, 340_020);
    near(crownOnly('IV').momentNm, 183_080);
  });

  it('241.43 kN m at a section at 0.5 m; with 0.62 m of stem 10.319 MPa, safety 5.136 and 2.190', () => {
    const { momentNm } = crownOnly('III', 0.5);
    const modulus = (Math.PI * 0.62 ** 3) / 32;
    near(momentNm, 241_430);
    near(momentNm / modulus, 10.319e6);
    near(single(MOR * modulus, momentNm).leastSafety[0]!, 5.136);
    near(single(COMPRESSION * modulus, momentNm).leastSafety[0]!, 2.19);
  });

  it('critical gust 48.4 m/s at 10 m over the same ground', () => {
    const { momentNm } = crownOnly('III', 0.5);
    const crushing = single((COMPRESSION * Math.PI * 0.62 ** 3) / 32, momentNm);
    near(32.68 * gustRatio(constantDrag, crushing.leastLoadRatio[0]!), 48.4, 0.001);
  });
});
