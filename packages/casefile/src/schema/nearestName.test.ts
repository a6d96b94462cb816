import { expect, it } from 'vitest';
import { nearestName } from './nearestName.ts';

const KNOWN = ['heightM', 'widthM', 'leanDeg', 'species', 'id', 'notes'];

it.each([
  ['heigthM', 'heightM'],
  ['height', 'heightM'],
  ['height_m', 'heightM'],
  ['speceis', 'species'],
  ['note', 'notes'],
  ['colour', null],
  ['x', null],
  ['age', null],
])('%s -> %s', (written, meant) => {
  expect(nearestName(written, KNOWN)).toBe(meant);
});
