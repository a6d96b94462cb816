import { describe, expect, it } from 'vitest';
import { apartDeg, matchDrillings } from './matchDrillings.ts';

const drilling = (id: string, azimuthDeg: number, offRadialDeg = 0, downDeg = 0) => ({
  id,
  azimuthDeg,
  offRadialDeg,
  downDeg,
});

describe('drillings of two visits', () => {
  it('are paired by place, not by name, and the nearest first', () => {
    const { pairs, onlyEarlier, onlyLater } = matchDrillings(
      [drilling('a', 10), drilling('b', 18), drilling('c', 200)],
      [drilling('c', 17), drilling('x', 356), drilling('y', 90)],
    );
    expect(pairs).toEqual([[1, 0]]);
    expect(onlyEarlier).toEqual([0, 2]);
    expect(onlyLater).toEqual([1, 2]);
  });
  it('pair across north', () => {
    expect(apartDeg(357, 4)).toBeCloseTo(7);
    expect(matchDrillings([drilling('a', 357)], [drilling('a', 4)]).pairs).toEqual([[0, 0]]);
  });
  it('do not pair when the heading or the fall is another', () => {
    expect(matchDrillings([drilling('a', 10)], [drilling('a', 10, 30)]).pairs).toEqual([]);
    expect(matchDrillings([drilling('a', 10)], [drilling('a', 10, 0, 40)]).pairs).toEqual([]);
  });
});
