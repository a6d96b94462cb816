import { describe, expect, it } from 'vitest';
import { shareEdges } from './shared-edges.ts';
import type { PointMm } from './types.ts';

const square: PointMm[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];

describe('shared edges', () => {
  it('moves a later ring’s corner onto an earlier one’s', () => {
    const near: PointMm[] = [
      [10 + 1e-9, -1e-9],
      [20, 0],
      [20, 5],
    ];
    const [first, second] = shareEdges([square, near], 1e-8);
    expect(first![1]).toEqual([10, 0]);
    expect(second![0]).toEqual([10, 0]);
  });

  it('gives an edge a corner where another ring’s corner lies on it, in order', () => {
    const teeth: PointMm[] = [
      [7, 1e-10],
      [5, -4],
      [3, -1e-10],
    ];
    const [first] = shareEdges([square, teeth], 1e-8);
    expect(first!.slice(0, 4)).toEqual([
      [0, 0],
      [3, -1e-10],
      [7, 1e-10],
      [10, 0],
    ]);
  });

  it('leaves rings apart as they are', () => {
    const away: PointMm[] = [
      [4, 4],
      [6, 4],
      [5, 6],
    ];
    expect(shareEdges([square, away], 1e-8)).toEqual([square, away]);
  });
});
