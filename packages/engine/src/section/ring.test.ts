import { describe, expect, it } from 'vitest';
import {
  contains,
  counterClockwise,
  distanceToSegment,
  segmentsMeet,
  selfCrossing,
  signedAreaMm2,
  withoutRepeats,
} from './ring.ts';
import type { PointMm } from './types.ts';

const square: PointMm[] = [
  [0, 0],
  [2, 0],
  [2, 2],
  [0, 2],
];

describe('rings', () => {
  it('knows their sense and turns it', () => {
    expect(signedAreaMm2(square)).toBe(4);
    expect(signedAreaMm2([...square].reverse())).toBe(-4);
    expect(counterClockwise([...square].reverse())).toEqual(square.slice().reverse().reverse());
    expect(counterClockwise(square)).toBe(square);
  });

  it('drops repeated and closing points', () => {
    expect(
      withoutRepeats([
        [0, 0],
        [0, 0],
        [2, 0],
        [2, 2],
        [2, 2],
        [0, 2],
        [0, 0],
      ]),
    ).toEqual(square);
  });

  it('tells inside from outside', () => {
    expect(contains(square, 1, 1)).toBe(true);
    expect(contains(square, 3, 1)).toBe(false);
    expect(contains(square, 1, -0.1)).toBe(false);
  });

  it('measures distance to a segment, its ends included', () => {
    expect(distanceToSegment(1, 3, 0, 0, 2, 0)).toBe(3);
    expect(distanceToSegment(5, 4, 0, 0, 2, 0)).toBe(5);
    expect(distanceToSegment(3, 4, 0, 0, 0, 0)).toBe(5);
  });

  it('sees segments cross, touch and miss', () => {
    expect(segmentsMeet([0, 0], [2, 2], [0, 2], [2, 0])).toBe(true);
    expect(segmentsMeet([0, 0], [2, 0], [1, 0], [1, 2])).toBe(true);
    expect(segmentsMeet([0, 0], [2, 0], [3, 0], [4, 0])).toBe(false);
    expect(segmentsMeet([0, 0], [2, 0], [0, 1], [2, 1])).toBe(false);
  });
});

describe('self-crossing', () => {
  it('passes simple rings, hollow corners and straight-on corners included', () => {
    expect(selfCrossing(square)).toBeNull();
    expect(
      selfCrossing([
        [0, 0],
        [1, 0],
        [2, 0],
        [2, 2],
        [1, 1],
        [0, 2],
      ]),
    ).toBeNull();
  });

  it('names the edges of a bow tie', () => {
    expect(
      selfCrossing([
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ]),
    ).toEqual([0, 2]);
  });

  it('finds a ring pinched at a corner, one that touches itself and one that doubles back', () => {
    expect(
      selfCrossing([
        [0, 0],
        [1, 1],
        [2, 0],
        [2, 2],
        [1, 1],
        [0, 2],
      ]),
    ).not.toBeNull();
    expect(
      selfCrossing([
        [0, 0],
        [4, 0],
        [4, 3],
        [2, 0],
        [0, 3],
      ]),
    ).not.toBeNull();
    expect(
      selfCrossing([
        [0, 0],
        [4, 0],
        [2, 0],
        [2, 3],
      ]),
    ).not.toBeNull();
  });
});
