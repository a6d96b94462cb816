import { expect, it } from 'vitest';
import { gapsOf, stretchesOf, unsureStretches, usualStep } from './stretches.ts';

it('turns samples that a brush touched into stretches of depth', () => {
  const depthMm = Float64Array.of(1, 2, 3, 4, 5, 6);
  expect(stretchesOf(depthMm, (i) => i === 1 || i === 2 || i === 5)).toEqual([
    [2, 3],
    [6, 6],
  ]);
});

it('tells a gap from samples that only lie unevenly', () => {
  const depthMm = Float64Array.of(0, 1, 2, 4, 5, 8, 9);
  expect(usualStep(depthMm)).toBe(1);
  expect(gapsOf(depthMm)).toEqual([[5, 8]]);
});

it('tells unsure stretches, neighbours as one and specks not at all, and leaves out what a person drew', () => {
  const depthMm = Float64Array.from({ length: 21 }, (_, i) => i / 2);
  const confidence = new Float64Array(21).fill(0.9);
  for (const i of [2, 3, 4, 5, 9, 14, 15, 16]) confidence[i] = 0.2;
  expect(unsureStretches({ depthMm, confidence })).toEqual([
    [1, 2.5],
    [7, 8],
  ]);
  const byHand = Uint8Array.from(depthMm, (depth) => (depth >= 7 ? 1 : 0));
  expect(unsureStretches({ depthMm, confidence, byHand })).toEqual([[1, 2.5]]);
});
