import { describe, expect, it } from 'vitest';
import { TUNING_FAMILIES } from '../sections/trueSection.ts';
import { advised, equallySpaced, halving, isSure, MOST_HOLES, STRICTEST, type Stand } from './strategies.ts';
import {
  after,
  atCertainty,
  atStop,
  brier,
  CERTAINTIES,
  type Drilled,
  frontier,
  holesAt,
  holesNeeded,
  isFarWrong,
  isWrong,
  logScore,
  moreOftenWrong,
  ratioAtCertainty,
  ratioAtOwnWrong,
  ratioAtRealised,
  resampled,
} from './summary.ts';
import { visit } from './visit.ts';

const families = Object.keys(TUNING_FAMILIES);
const level = (azimuthDeg: number, offRadialDeg = 0) => ({ azimuthDeg, offRadialDeg, downDeg: 0 });
const stand = (holes: number, mustAct: number): Stand => ({ holes, mustAct });

/** A section that equal spacing settles with one number of holes and the advice with another. */
function drilledWith(spacedHoles: number, advisedHoles: number, truth = 1.2): Drilled {
  const until = (holes: number) =>
    Array.from({ length: Math.min(holes, MOST_HOLES) }, (_, k) => stand(k + 1, k + 1 < holes ? 0.3 : 0.001));
  return {
    family: 'made up',
    seed: 1,
    truth,
    undrilled: stand(0, 0.4),
    stands: {
      'equal spacing, set anew': until(spacedHoles),
      'equal spacing, gaps halved': until(spacedHoles + 1),
      'as advised': until(advisedHoles),
    },
    stopped: stand(advisedHoles, 0.01),
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

  it('is drilled to the strictest certainty in every way', () => {
    const section = visit('concentric', 4, families, 'zones', true);
    const halved = halving(section, 200);
    const ways = [halved, equallySpaced(section, 200, halved), advised(section, 200).stands];
    for (const stands of ways) {
      expect(stands.slice(0, -1).some((s) => isSure(s, STRICTEST))).toBe(false);
      expect(stands.length > 0).toBe(true);
      expect(stands.at(-1)!.holes === MOST_HOLES || isSure(stands.at(-1)!, STRICTEST)).toBe(true);
    }
    // One hole, and two opposite ones, are the same in both kinds of equal spacing.
    expect(ways[1]![0]).toBe(halved[0]);
  });
});

describe('the summary', () => {
  const rows = [drilledWith(6, 2), drilledWith(8, 4), drilledWith(2, 2, 0.97)];

  it('counts holes until sure, and the most where that never comes', () => {
    expect(rows.map((d) => holesNeeded(d, 'equal spacing, set anew', 0.05))).toEqual([6, 8, 2]);
    expect(rows.map((d) => holesNeeded(d, 'as advised', 0.05))).toEqual([2, 4, 2]);
    expect(holesNeeded(drilledWith(13, 2), 'equal spacing, set anew', 0.05)).toBe(MOST_HOLES);
    expect(rows.map((d) => holesNeeded(d, 'as advised', 0.35))).toEqual([1, 1, 1]);
    expect(ratioAtCertainty('equal spacing, set anew', 0.05)(rows)).toBe(0.5);
  });

  it('stands where it stood after the holes made', () => {
    const made = {
      ...rows[0]!,
      stands: { ...rows[0]!.stands, 'as advised': [stand(1, 0.3), stand(4, 0.2)] },
    };
    expect([0, 1, 3, 9].map((n) => after(made, 'as advised', n).holes)).toEqual([0, 1, 1, 4]);
  });

  it('holds decisions against the truth', () => {
    // Kept with a chance of 1 % to be wrong; the third should have been acted on, though it lacks little.
    expect(rows.map((d) => isWrong(d, atStop(d)))).toEqual([false, false, true]);
    expect(rows.map((d) => isFarWrong(d, atStop(d)))).toEqual([false, false, false]);
    expect(isFarWrong(drilledWith(2, 2, 0.9), stand(2, 0.01))).toBe(true);
    expect(brier(rows[2]!, stand(2, 0.1))).toBeCloseTo(0.81, 12);
    expect(logScore(rows[0]!, stand(2, 0.5))).toBeCloseTo(Math.log(2), 12);
    expect(logScore(rows[2]!, stand(2, 0))).toBeCloseTo(Math.log(1000), 12);
  });

  it('makes ways equal in what they leave', () => {
    // One hole each leaves all three at 0.3, and nobody wrong but in the third.
    const lax = atCertainty(rows[0]!, 'as advised', CERTAINTIES[0]!);
    expect(lax.holes).toBe(2);
    const line = frontier(rows, 'as advised');
    expect(line[0]!.wrong).toBeCloseTo(1 / 3, 12);
    expect(holesAt(line, 'wrong', 0.4)).toBeCloseTo(8 / 3, 12);
    expect(holesAt(line, 'wrong', 0.1)).toBeNull();
    expect(ratioAtRealised('equal spacing, set anew', 'wrong', 0.4)(rows)).toBeCloseTo(0.5, 12);
    // Not reached by either: the advice counts the most, the other what it drilled.
    expect(ratioAtRealised('equal spacing, set anew', 'wrong', 0.1)(rows)).toBeCloseTo(12 / (16 / 3), 12);
  });

  it('holds the others to how often the advice is wrong', () => {
    // The advice is wrong in a third with 8/3 holes, equal spacing as often with 16/3.
    expect(ratioAtOwnWrong('equal spacing, set anew', 0.05)(rows)).toBeCloseTo(0.5, 12);
    expect(moreOftenWrong('equal spacing, set anew', 0.05)(rows)).toBe(0);
    const stuck = drilledWith(2, 2);
    stuck.stands['equal spacing, set anew'] = [stand(1, 0.999)];
    expect(moreOftenWrong('equal spacing, set anew', 0.05)([stuck])).toBe(1);
    // Wrong at every certainty: only the holes of its strictest count.
    expect(ratioAtOwnWrong('equal spacing, set anew', 0.05)([stuck])).toBe(2);
  });

  it('lies between two certainties in proportion', () => {
    const left = (holes: number, wrong: number) => ({ holes, wrong, chanceWrong: 0, farWrong: 0, brier: 0 });
    expect(holesAt([left(1, 0.2), left(3, 0.1)], 'wrong', 0.15)).toBeCloseTo(2, 12);
  });

  it('draws its interval about the value', () => {
    const { value, low, high } = resampled(rows, ratioAtCertainty('equal spacing, set anew', 0.05));
    expect(low).toBeLessThan(value);
    expect(high).toBeGreaterThan(value);
    expect(high).toBeLessThanOrEqual(1);
  });
});
