import { describe, expect, it } from 'vitest';
import { randomFrom } from '../random.ts';
import { normalQuantile, stratifiedNormals, stratifiedUniforms } from './sampling.ts';

describe('normalQuantile', () => {
  // Abramowitz and Stegun Table 26.5 and its complements.
  it.each([
    [0.5, 0],
    [0.95, 1.6448536269514722],
    [0.975, 1.959963984540054],
    [0.01, -2.3263478740408408],
    [1e-6, -4.753424308822899],
  ])('at %d is %d', (p, z) => {
    expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(1e-8);
  });
});

describe('stratified draws', () => {
  it('put one draw in each slice, in an order that the seed decides', () => {
    const drawn = stratifiedUniforms(randomFrom(5), 1000);
    const slices = new Set([...drawn].map((u) => Math.floor(u * 1000)));
    expect(slices.size).toBe(1000);
    expect(drawn).not.toEqual(drawn.slice().sort());
    expect(stratifiedUniforms(randomFrom(5), 1000)).toEqual(drawn);
  });

  it('have the moments of a standard normal', () => {
    const drawn = stratifiedNormals(randomFrom(6), 2000);
    const mean = drawn.reduce((sum, z) => sum + z, 0) / 2000;
    const variance = drawn.reduce((sum, z) => sum + z * z, 0) / 2000;
    expect(Math.abs(mean)).toBeLessThan(0.005);
    expect(Math.abs(variance - 1)).toBeLessThan(0.01);
  });
});
