import { describe, expect, it } from 'vitest';
import { TUNING_FAMILIES } from '../sections/trueSection.ts';
import { advised, FIXED, isSure, MOST_HOLES, type Stand } from './strategies.ts';
import {
  atStop,
  type Drilled,
  fixedThatLeaves,
  holesNeeded,
  isWrong,
  leftByFixed,
  median,
  ratioTo,
  resampled,
} from './summary.ts';
import { visit } from './visit.ts';

const families = Object.keys(TUNING_FAMILIES);
const level = (azimuthDeg: number, offRadialDeg = 0) => ({ azimuthDeg, offRadialDeg, downDeg: 0 });
const stand = (holes: number, mustAct: number): Stand => ({ holes, mustAct });

/** A section that equal spacing settles with one number of holes and the advice with another. */
function drilledWith(spacedHoles: number, advisedHoles: number, truth = 1.2): Drilled {
  const until = (holes: number) =>
    Array.from({ length: MOST_HOLES }, (_, k) => stand(k + 1, k + 1 < holes ? 0.3 : 0.01));
  return {
    family: 'made up',
    seed: 1,
    truth,
    undrilled: stand(0, 0.4),
    spaced: until(spacedHoles),
    halving: until(spacedHoles + 1),
    advised: { stands: until(advisedHoles).slice(0, advisedHoles), stopped: stand(advisedHoles, 0.01) },
  };
}

describe('a visit', () => {
  const one = visit('irregular', 4, families, 'zones', true);

  it('reads the same at the same place, whatever was drilled before', () => {
    const alone = one.drilled([level(120, 30)]).drillings[0]!;
    const later = one.drilled([level(0), level(120, 30)]).drillings[1]!;
    expect(later.reading.zones).toEqual(alone.reading.zones);
    expect(one.drilled([level(120)]).drillings[0]!.reading.zones).not.toEqual(alone.reading.zones);
  });

  it('asks for no more strength than a tree may have to keep, and knows the truth of it', () => {
    const greatest = Math.max(...one.needed);
    expect(greatest).toBeGreaterThanOrEqual(0.25);
    expect(greatest).toBeLessThanOrEqual(0.9);
    const ratios = [...one.section.remaining].map((r, d) => r / one.needed[d]!);
    expect(one.truth).toBe(Math.min(...ratios));
  });

  it('is drilled as advised until it is sure', () => {
    const { stands, stopped } = advised(visit('concentric', 4, families, 'zones', true), 200);
    expect(stands.map(({ holes }) => holes)).toEqual(stands.map((_, k) => k + 1));
    expect(stands.slice(0, -1).some(isSure)).toBe(false);
    expect(stands.length === MOST_HOLES || stopped !== null).toBe(true);
  });
});

describe('the summary', () => {
  const rows = [drilledWith(6, 2), drilledWith(8, 4), drilledWith(2, 2, 0.9)];

  it('counts holes until sure, and the most where that never comes', () => {
    expect(rows.map((d) => holesNeeded(d, 'equal spacing, set anew'))).toEqual([6, 8, 2]);
    expect(rows.map((d) => holesNeeded(d, 'as advised'))).toEqual([2, 4, 2]);
    expect(holesNeeded(drilledWith(13, 2), 'equal spacing, set anew')).toBe(MOST_HOLES);
    expect(ratioTo('equal spacing, set anew')(rows)).toBe(0.5);
  });

  it('holds decisions against the truth', () => {
    // Kept with a chance of 1 % to be wrong; the third should have been acted on.
    expect(rows.map((d) => isWrong(d, atStop(d)))).toEqual([false, false, true]);
  });

  it('finds how many holes, the same everywhere, leave as little', () => {
    expect(leftByFixed(rows, 8)).toMatchObject({ holes: 8, unsure: 0 });
    expect(fixedThatLeaves(rows, 'unsure', 0)).toBe(8);
    expect(FIXED).toContain(6);
    // With 6 holes one of three is not sure, with 4 two are: half of them lies between.
    expect(fixedThatLeaves(rows, 'unsure', 0.5)).toBeCloseTo(5, 12);
    expect(fixedThatLeaves(rows, 'wrong', -1)).toBe(MOST_HOLES);
  });

  it('draws its interval about the value', () => {
    const { value, low, high } = resampled(rows, ratioTo('equal spacing, set anew'));
    expect(low).toBeLessThan(value);
    expect(high).toBeGreaterThan(value);
    expect(high).toBeLessThanOrEqual(1);
    expect(median([3, 1, 2, 9])).toBe(2.5);
  });
});
