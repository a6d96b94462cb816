import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomFrom } from './random.ts';

describe('randomFrom', () => {
  it('gives the same stream for the same seed', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const a = randomFrom(seed);
        const b = randomFrom(seed);
        for (let i = 0; i < 20; i++) expect(a.normal()).toBe(b.normal());
      }),
    );
  });

  it('has the moments of a standard normal', () => {
    const stream = randomFrom(7);
    const n = 200_000;
    let sum = 0;
    let squares = 0;
    let fourth = 0;
    for (let i = 0; i < n; i++) {
      const x = stream.normal();
      sum += x;
      squares += x * x;
      fourth += x ** 4;
    }
    // Four standard errors of each moment: 1/sqrt(n), sqrt(2/n), sqrt(96/n).
    expect(Math.abs(sum / n)).toBeLessThan(4 / Math.sqrt(n));
    expect(Math.abs(squares / n - 1)).toBeLessThan(4 * Math.sqrt(2 / n));
    expect(Math.abs(fourth / n - 3)).toBeLessThan(4 * Math.sqrt(96 / n));
  });

  it('forks streams that depend on seed and label only', () => {
    const used = randomFrom(3);
    used.normal();
    expect(used.fork('wind').uniform()).toBe(randomFrom(3).fork('wind').uniform());
    expect(randomFrom(3).fork('wind').uniform()).not.toBe(randomFrom(3).fork('wood').uniform());
    expect(randomFrom(3).fork('wind').uniform()).not.toBe(randomFrom(4).fork('wind').uniform());
  });
});
