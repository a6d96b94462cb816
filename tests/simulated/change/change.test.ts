import { describe, expect, it } from 'vitest';
import { heldOf, judgePair, studyPairs } from './pairs.ts';

/** 48 pairs: an interval that holds in 90 % falls below this share by chance once in a thousand runs (binomial). */
const LEAST_HELD = 0.75;
/** Of 24 fronts that stood, more than this many called moved by chance at 5 % each: once in two hundred. */
const MOST_FALSE = 4;

describe('pairs of simulated traces with known change', () => {
  it('hold the truth of front, growth and wall about as often as they say', () => {
    const held = heldOf(studyPairs(3, 70_000));
    expect(held.pairs).toBe(48);
    expect(held.compared).toBeGreaterThan(40);
    expect(held.frontHeld).toBeGreaterThan(LEAST_HELD);
    expect(held.growthHeld).toBeGreaterThan(LEAST_HELD);
    expect(held.wallHeld).toBeGreaterThan(LEAST_HELD);
  }, 120_000);

  it('seldom call a front moved that stood, and nearly always one that moved by 40 mm', () => {
    const stood = Array.from({ length: 24 }, (_, i) =>
      judgePair(i % 2 ? 'conifer' : 'diffuse', 0, 71_000 + i),
    );
    expect(stood.filter(({ verdict }) => verdict === 'moved').length).toBeLessThanOrEqual(MOST_FALSE);
    const moved = Array.from({ length: 10 }, (_, i) => judgePair('ring-porous', 40, 72_000 + i));
    expect(moved.filter(({ verdict }) => verdict === 'moved').length).toBeGreaterThanOrEqual(9);
  }, 120_000);
});
