import { expect, it } from 'vitest';
import { traceNotices } from './traceNotices.ts';

const traceOf = (depths: number[], level: number) => ({
  depthMm: Float64Array.from(depths),
  resistancePct: Float64Array.from(depths, () => level),
});
const steps = (step: number, n = 100) => Array.from({ length: n }, (_, i) => i * step);
const texts = (depths: number[], level: number) =>
  traceNotices(traceOf(depths, level), 'd1').map(({ text }) => text);

it('says nothing about a usual trace', () => {
  expect(texts(steps(0.1), 40)).toEqual([]);
});

it.each<[string, number[], number, RegExp]>([
  ['a fraction', steps(0.1), 0.4, /never exceeds 0\.4.*multiply it by 100/],
  ['beyond the scale', steps(0.1), 120, /reaches 120 %/],
  ['coarse spacing', steps(5), 40, /stand 5\.00 mm apart/],
  ['spacing in metres', steps(0.0001), 40, /only 0\.00010 mm apart: is the depth in millimetres/],
  ['a gap', [...steps(0.1), ...steps(0.1).map((x) => x + 60)], 40, /no readings between 9\.9.* and 60 mm/],
])('questions %s', (_, depths, level, message) => {
  expect(texts(depths, level).join('\n')).toMatch(message);
});
