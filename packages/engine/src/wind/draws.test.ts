import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SiteInput, TreeInput } from '../case.ts';
import { randomFrom } from '../random.ts';
import { windAssessment } from './assessment.ts';
import { windDemand } from './demand.ts';
import { demandDraws, resultants, windLogSd } from './draws.ts';
import { directionalIntervals, interval } from './interval.ts';

const tree: TreeInput = {
  label: 'T',
  species: 'Fagus grandifolia',
  stemDiameterMm: 800,
  heightM: 22,
  leanDeg: 8,
  leanTowardDeg: 90,
  crown: { baseHeightM: 5, widthM: 14, shape: 'ellipse', inLeaf: true },
};
const site: SiteInput = { windCode: 'ASCE 7-22', basicWindSpeedMs: 45, exposure: 'B' };
const input = { tree, site, sectionHeightsM: [0.4, 1.2] };
const DRAWS = 2000;

describe('demandDraws', () => {
  const demand = windDemand(input);
  const draws = demandDraws(input, randomFrom(3), DRAWS);

  it('has the middle estimate in the middle, and the scatter it says', () => {
    const ground = interval(draws.windMomentNm[0]!.slice());
    expect(ground.p50 / demand.windMomentNm[0]!).toBeCloseTo(1, 2);
    const sd = Math.log(ground.p95 / ground.p05) / (2 * 1.6449);
    expect(Math.abs(sd / windLogSd(tree.species, true) - 1)).toBeLessThan(0.02);
  });

  it('is one crown in one gust: the same factor at every level of a draw', () => {
    for (let i = 0; i < DRAWS; i += 97) {
      const factor = draws.windMomentNm[0]![i]! / demand.windMomentNm[0]!;
      expect(draws.windMomentNm[2]![i]! / demand.windMomentNm[2]!).toBeCloseTo(factor, 12);
    }
  });

  it('gives the same bytes for the same seed and others for another', () => {
    expect(demandDraws(input, randomFrom(3), DRAWS).momentNm[1]).toEqual(draws.momentNm[1]);
    expect(demandDraws(input, randomFrom(4), DRAWS).momentNm[1]).not.toEqual(draws.momentNm[1]);
  });

  it('is written down with the worst direction where the tree leans to', () => {
    const written = windAssessment(demand, draws, ['s1', 's2']);
    const worst = written.byDirection.reduce((a, b) => (b.p50 > a.p50 ? b : a));
    expect(worst.directionDeg).toBe(90);
    expect(written.momentNm).toBe(worst.p50);
    expect(written.momentIntervalNm.p05).toBeLessThan(written.momentNm);
    expect(written.atSections.map((each) => [each.sectionId, each.heightM])).toEqual([
      ['s1', 0.4],
      ['s2', 1.2],
    ]);
    expect(written.atSections[1]!.byDirection).toHaveLength(36);
    const shown = written.strips.reduce((sum, strip) => sum + strip.momentNm, 0);
    expect(shown / demand.windMomentNm[0]!).toBeCloseTo(1, 9);
    expect(written.strips[0]!.fromM).toBe(0);
    for (let i = 1; i < written.strips.length; i++) {
      expect(written.strips[i]!.fromM).toBeCloseTo(written.strips[i - 1]!.toM, 9);
    }
  });
});

describe('resultants', () => {
  it('add wind and lean as vectors, and never less than self-weight alone', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        fc.integer({ min: 0, max: 35 }),
        (wind, weight, toward) => {
          const out = resultants(Float64Array.of(wind), Float64Array.of(weight), toward * 10);
          const along = out[toward]!;
          expect(along / (wind + weight)).toBeCloseTo(1, 9);
          for (const value of out) {
            expect(value).toBeLessThanOrEqual(along * (1 + 1e-12));
            expect(value).toBeGreaterThanOrEqual(weight);
          }
          expect(out[(toward + 9) % 36]! / Math.hypot(wind, weight)).toBeCloseTo(1, 9);
          expect(out[(toward + 18) % 36]! / Math.max(weight, Math.abs(wind - weight))).toBeCloseTo(1, 6);
        },
      ),
    );
  });

  it('are the wind alone without lean', () => {
    expect([...resultants(Float64Array.of(5), Float64Array.of(0), 0)]).toEqual(new Array(36).fill(5));
  });
});

describe('intervals', () => {
  it('are the order statistics, between them linear, as sorting gives', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ noNaN: true, min: -1e9, max: 1e9 }), { minLength: 1, maxLength: 200 }),
        (values) => {
          const sorted = [...values].sort((a, b) => a - b);
          const at = (p: number) => {
            const place = p * (sorted.length - 1);
            const low = sorted[Math.floor(place)]!;
            const high = sorted[Math.ceil(place)]!;
            return low + (place - Math.floor(place)) * (high - low);
          };
          const got = interval(Float64Array.from(values));
          expect(got.p05).toBeCloseTo(at(0.05), 6);
          expect(got.p50).toBeCloseTo(at(0.5), 6);
          expect(got.p95).toBeCloseTo(at(0.95), 6);
        },
      ),
    );
  });

  it('bear draws without bound', () => {
    expect(interval(new Float64Array(20).fill(Number.POSITIVE_INFINITY)).p50).toBe(Number.POSITIVE_INFINITY);
  });

  it('by direction leave the draws as they are', () => {
    const values = Float64Array.from({ length: 72 }, (_, i) => (i * 37) % 11);
    const before = values.slice();
    const out = directionalIntervals(values, 2);
    expect(values).toEqual(before);
    expect(out).toHaveLength(36);
    expect(out[1]).toMatchObject({ directionDeg: 10, p50: (values[1]! + values[37]!) / 2 });
  });
});
