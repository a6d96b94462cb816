import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { randomFrom } from '../random.ts';
import { arcShares, cutLoss, cutReach } from './cuts.ts';

const loss = (cuts: Parameters<typeof cutLoss>[0], barriers: Parameters<typeof cutLoss>[1] = []) =>
  cutLoss(cuts, barriers, 800, randomFrom(1), 200);

describe('arcShares', () => {
  it('is all of the roots all round, and the windward share for the windward half', () => {
    for (const share of arcShares(0, 360)) expect(share).toBeCloseTo(1, 3);
    // Cut to the north, the fall to the south has lost its tension half, that to the north its compression half.
    const north = arcShares(0, 180);
    expect(north[18]).toBeCloseTo(0.6, 3);
    expect(north[0]).toBeCloseTo(0.4, 3);
    expect(north[9]).toBeCloseTo(0.5, 3);
  });

  it('adds up over neighbouring arcs', () => {
    const whole = arcShares(90, 120);
    const left = arcShares(60, 60);
    const right = arcShares(120, 60);
    whole.forEach((share, d) => {
      expect(share).toBeCloseTo(left[d]! + right[d]!, 9);
    });
  });
});

describe('cutLoss', () => {
  it('is nothing from three stem diameters out', () => {
    expect(cutReach(0, 0.8)).toBe(1);
    expect(cutReach(1.2, 0.8)).toBeCloseTo(0.5, 12);
    expect(cutReach(2.4, 0.8)).toBeCloseTo(0, 12);
    expect(loss([{ azimuthDeg: 0, distanceM: 2.5 }])).toEqual({ lost: null, greatest: 0, withinReach: 0 });
  });

  it('is never less for a nearer, wider or deeper cut', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2.3, noNaN: true }),
        fc.double({ min: 10, max: 170, noNaN: true }),
        fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        (distanceM, widthDeg, depthM) => {
          const cut = { azimuthDeg: 40, distanceM, widthDeg, depthM };
          const base = loss([cut]).greatest;
          expect(loss([{ ...cut, distanceM: distanceM * 0.8 }]).greatest).toBeGreaterThanOrEqual(base);
          expect(loss([{ ...cut, widthDeg: widthDeg + 10 }]).greatest).toBeGreaterThanOrEqual(base);
          expect(loss([{ ...cut, depthM: depthM + 0.1 }]).greatest).toBeGreaterThanOrEqual(base);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('is not known better than its depth', () => {
    const column = (cut: { depthM?: number }) => {
      const { lost } = loss([{ azimuthDeg: 0, distanceM: 0, widthDeg: 180, ...cut }]);
      return Array.from({ length: 200 }, (_, i) => lost![i * 36 + 18]!);
    };
    expect(Math.min(...column({ depthM: 1 }))).toBeCloseTo(0.6, 3);
    expect(Math.max(...column({ depthM: 1 }))).toBeCloseTo(0.6, 3);
    expect(Math.min(...column({}))).toBeLessThan(0.31);
    expect(Math.max(...column({}))).toBeGreaterThan(0.59);
  });

  it('takes a barrier to cost anything up to a cut there, and all together at most all', () => {
    const { lost } = loss([], [{ azimuthDeg: 0, distanceM: 0, widthDeg: 360 }]);
    expect(Math.min(...lost!)).toBeLessThan(0.01);
    expect(Math.max(...lost!)).toBeGreaterThan(0.98);
    const twice = loss([
      { azimuthDeg: 0, distanceM: 0, widthDeg: 360, depthM: 1 },
      { azimuthDeg: 0, distanceM: 0, widthDeg: 360, depthM: 1 },
    ]);
    for (const share of twice.lost!) expect(share).toBeLessThanOrEqual(1);
  });

  it.each([
    [[{ azimuthDeg: Number.NaN, distanceM: 1 }], 'rootCuts[0].azimuthDeg'],
    [[{ azimuthDeg: 0, distanceM: -1 }], 'rootCuts[0].distanceM'],
    [[{ azimuthDeg: 0, distanceM: 1, widthDeg: 0 }], 'rootCuts[0].widthDeg'],
    [[{ azimuthDeg: 0, distanceM: 1, depthM: 99 }], 'rootCuts[0].depthM'],
  ])('refuses %j', (cuts, where) => {
    expect(() => loss(cuts)).toThrow(InputFault);
    expect(() => loss(cuts)).toThrow(where);
  });
});
