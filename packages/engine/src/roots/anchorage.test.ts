import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TreeInput } from '../case.ts';
import { InputFault } from '../faults.ts';
import { randomFrom } from '../random.ts';
import { interval } from '../wind/index.ts';
import { anchorageDraws } from './anchorage.ts';
import { flareWeights } from './flares.ts';
import type { AnchorageInput, FlareSoundness } from './types.ts';

const tree: TreeInput = {
  label: 'T',
  species: 'Quercus alba',
  stemDiameterMm: 700,
  heightM: 19,
  leanDeg: 0,
  leanTowardDeg: 0,
  crown: { baseHeightM: 4, widthM: 12, shape: 'ellipse', inLeaf: true },
};
const DRAWS = 1000;
const drawn = (change: Partial<AnchorageInput> = {}) =>
  anchorageDraws({ tree, flares: [], signs: [], ...change }, randomFrom(1), DRAWS);
const middle = (values: Float64Array, d: number) =>
  interval(Float64Array.from({ length: DRAWS }, (_, i) => values[i * 36 + d]!)).p50;
const flare = (azimuthDeg: number, sound: number | null): FlareSoundness => ({
  id: `f${azimuthDeg}`,
  azimuthDeg,
  widthMm: 300,
  heightMm: 300,
  soundShare: sound === null ? null : { p05: sound - 0.05, p50: sound, p95: sound + 0.05 },
});

describe('anchorageDraws', () => {
  it('is the same all round without flares, and says what it rests on', () => {
    const whole = drawn();
    for (let d = 1; d < 36; d++) expect(middle(whole.momentNm, d)).toBe(middle(whole.momentNm, 0));
    expect(whole.restsOn).toBe('size');
    expect(whole.basis).toContain('Size of the tree alone');
    expect(whole.notices.some((each) => each.text.includes('No root flare was drilled'))).toBe(true);
    expect(whole.doubts).toEqual([]);
  });

  it('grows with the tree', () => {
    const thicker = drawn({ tree: { ...tree, stemDiameterMm: 900 } });
    expect(middle(thicker.momentNm, 0)).toBeGreaterThan(middle(drawn().momentNm, 0));
  });

  it('is less on poor soil; unknown soil lies between', () => {
    const on = (soil: AnchorageInput['soil']) => middle(drawn({ soil }).momentNm, 0);
    expect(on('poor') / on('free-draining')).toBeCloseTo(0.8, 9);
    expect(on('unknown')).toBeLessThan(on('free-draining'));
    expect(on('unknown')).toBeGreaterThan(on('poor'));
  });

  it('falls most where an unsound flare is in tension: the fall away from it', () => {
    const weakNorth = drawn({ flares: [flare(0, 0.1), flare(90, 0.9), flare(180, 0.9), flare(270, 0.9)] });
    const left = (d: number) => middle(weakNorth.remaining, d);
    expect(left(18)).toBeLessThan(left(0));
    expect(left(0)).toBeLessThan(left(9));
    expect(left(9)).toBeCloseTo(left(27), 1);
  });

  it('never gains by decay, and loses more with more', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (a, b) => {
          const [less, more] = a < b ? [a, b] : [b, a];
          const weak = drawn({ flares: [flare(0, less), flare(120, 0.9), flare(240, 0.9)] });
          const strong = drawn({ flares: [flare(0, more), flare(120, 0.9), flare(240, 0.9)] });
          for (const d of [0, 6, 18]) {
            expect(middle(weak.remaining, d)).toBeLessThanOrEqual(middle(strong.remaining, d) + 1e-12);
            expect(middle(strong.remaining, d)).toBeLessThanOrEqual(1);
            expect(middle(weak.remaining, d)).toBeGreaterThanOrEqual(0);
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  it('takes undrilled flares as the drilled ones are, and says so', () => {
    const half = drawn({ flares: [flare(0, 0.5), flare(180, null)] });
    expect(middle(half.remaining, 0)).toBeCloseTo(middle(half.remaining, 18), 9);
    expect(half.notices.some((each) => each.text.includes('1 of 2 root flares'))).toBe(true);
    expect(half.restsOn).toBe('size and flares');
  });

  it('doubts itself where more is lost than was ever tested', () => {
    const gone = drawn({ flares: [flare(0, 0.1), flare(120, 0.1), flare(240, 0.1)] });
    expect(gone.doubts[0]).toContain('unsound');
    expect(gone.notices.some((each) => each.severity === 'serious')).toBe(true);
  });

  it('speaks of signs: heaving soil, cut roots, root-rotting fungi; and not of ants', () => {
    const signed = (kind: string, note?: string) =>
      drawn({ signs: [note === undefined ? { kind } : { kind, note }] });
    expect(signed('soil-heave').notices[0]?.severity).toBe('serious');
    expect(signed('roots-cut').doubts).toEqual(['roots-cut']);
    expect(signed('fruiting body', 'Meripilus giganteus at the foot').notices[0]?.text).toContain(
      'undersides',
    );
    expect(signed('fruiting body', 'Ganoderma').doubts).toEqual([]);
    expect(signed('ants').doubts).toEqual([]);
  });

  it('lets a static load test speak within 45 degrees of its direction and no further', () => {
    const tested = drawn({ staticTests: [{ directionDeg: 350, momentNm: 1e5, tiltDeg: 0.25 }] });
    expect(middle(tested.momentNm, 35) / 2.5e5).toBeCloseTo(1, 2);
    expect(middle(tested.momentNm, 3) / 2.5e5).toBeCloseTo(1, 2);
    expect(middle(tested.momentNm, 18)).toBe(middle(drawn().momentNm, 18));
    expect(tested.tested.filter(Boolean)).toHaveLength(9);
  });

  it.each<[Partial<AnchorageInput>, string]>([
    [{ soil: 'mud' as never }, 'site.soil'],
    [{ staticTests: [{ directionDeg: 0, momentNm: -1, tiltDeg: 0.25 }] }, 'staticTests[0]'],
    [{ staticTests: [{ directionDeg: 0, momentNm: 1e5, tiltDeg: 1 }] }, 'staticTests[0].tiltDeg'],
    [{ flares: [{ ...flare(0, 0.9), widthMm: 0 }] }, 'flares[0]'],
  ])('refuses %j, naming %s', (change, where) => {
    try {
      drawn(change);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InputFault);
      expect((error as InputFault).where).toBe(where);
    }
  });
});

describe('flareWeights', () => {
  it('add up to 1 in every direction, whatever flares there are', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            azimuthDeg: fc.double({ min: 0, max: 360, noNaN: true }),
            areaMm2: fc.double({ min: 1e3, max: 2e5, noNaN: true }),
          }),
          { minLength: 1, maxLength: 8 },
        ),
        (flares) => {
          const weights = flareWeights(flares);
          for (let d = 0; d < 36; d++) {
            let sum = 0;
            for (let f = 0; f < flares.length; f++) sum += weights[d * flares.length + f]!;
            expect(sum).toBeCloseTo(1, 9);
          }
        },
      ),
    );
  });
});
