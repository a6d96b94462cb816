import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare } from './compare.ts';
import { gustRatio } from './criticalGust.ts';

const one = (capacityNm: Float64Array, wind: number, weight: number, leanTowardDeg: number) =>
  compare({
    draws: 1,
    capacityNm,
    windNm: Float64Array.of(wind),
    weightNm: Float64Array.of(weight),
    leanTowardDeg,
  });
const round = (capacity: number) => new Float64Array(36).fill(capacity);
const size = fc.double({ min: 1, max: 1e3, noNaN: true });
const direction = fc.integer({ min: 0, max: 35 });

describe('compare', () => {
  it('goes as capacity over demand: twice the load, half the safety', () => {
    fc.assert(
      fc.property(
        size,
        size,
        fc.double({ min: 0, max: 1e3, noNaN: true }),
        direction,
        (capacity, wind, weight, toward) => {
          const base = one(round(capacity), wind, weight, toward * 10);
          const double = one(round(capacity), 2 * wind, 2 * weight, toward * 10);
          for (let d = 0; d < 36; d++) expect((double.safety[d]! * 2) / base.safety[d]!).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('never gains by more lean, and is worst towards the lean when the section is the same all round', () => {
    fc.assert(
      fc.property(size, size, size, direction, (capacity, wind, weight, toward) => {
        const upright = one(round(capacity), wind, 0, 0);
        const leaning = one(round(capacity), wind, weight, toward * 10);
        expect(leaning.leastSafety[0]!).toBeLessThan(upright.leastSafety[0]!);
        expect(leaning.safety[toward]!).toBeCloseTo(leaning.leastSafety[0]!, 9);
        expect(leaning.leastLoadRatio[0]!).toBeLessThanOrEqual(upright.leastLoadRatio[0]!);
      }),
    );
  });

  it('meets the capacity at the critical load: λ wind with the weight makes a safety of 1', () => {
    fc.assert(
      fc.property(size, size, size, direction, (capacity, wind, weight, toward) => {
        fc.pre(capacity > weight * 1.001);
        const ratio = one(round(capacity), wind, weight, toward * 10).leastLoadRatio[0]!;
        expect(one(round(capacity), ratio * wind, weight, toward * 10).leastSafety[0]!).toBeCloseTo(1, 6);
      }),
    );
  });

  it('gives a critical load of 0 when the weight alone is too much', () => {
    const over = one(round(10), 5, 12, 0);
    expect(over.leastLoadRatio[0]).toBe(0);
    expect(over.leastSafety[0]!).toBeLessThan(1);
    // Even a wind against the lean leaves the calm before it.
    expect(over.safety[18]!).toBeCloseTo(10 / 12, 9);
  });

  it('finds the calm overload in the one weak direction, on a round bearing or between two', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 359, noNaN: true }), size, (lean, wind) => {
        const capacity = round(100);
        const low = Math.floor(lean / 10);
        capacity[low] = 9;
        capacity[(low + 1) % 36] = 9;
        expect(one(capacity, wind, 10, lean).leastLoadRatio[0]).toBe(0);
      }),
    );
  });

  it('takes the capacity where the resultant points, between north and the lean to the east', () => {
    const capacity = round(100);
    for (let d = 4; d <= 5; d++) capacity[d] = 50;
    // Equal moments to north and east point to 45 degrees, midway between the two weak directions.
    expect(one(capacity, 10, 10, 90).safety[0]!).toBeCloseTo(50 / Math.hypot(10, 10), 9);
  });

  it('wraps around north', () => {
    const capacity = round(100);
    capacity[35] = 20;
    capacity[0] = 40;
    expect(one(capacity, 1e-9, 10, 355).safety[35]!).toBeCloseTo(30 / 10, 6);
  });
});

describe('gustRatio', () => {
  const streamlining = { gustMs: 33, exponent: -0.36, leastMs: 4, topMs: 20 };
  const load = (v: number) => v * v * (Math.min(Math.max(v, 4), 20) / 20) ** -0.36;

  it('is the square root above the top tested speed', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.4, max: 9, noNaN: true }), (ratio) => {
        expect(gustRatio(streamlining, ratio)).toBeCloseTo(Math.sqrt(ratio), 9);
      }),
    );
  });

  it('inverts the load at every speed, and never flatters a weak tree', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 80, noNaN: true }), (v) => {
        const ratio = load(v) / load(33);
        expect(gustRatio(streamlining, ratio) * 33).toBeCloseTo(v, 6);
        expect(gustRatio(streamlining, ratio)).toBeLessThanOrEqual(Math.sqrt(ratio) * (1 + 1e-9));
      }),
    );
  });

  it('is 0 for nothing left', () => {
    expect(gustRatio(streamlining, 0)).toBe(0);
  });
});
