/**
 * Likelihood of impact: the definitions of the trade's manual (Dunster, Smiley, Matheny and Lilly 2013, Tree Risk
 * Assessment Manual) as quoted in a handout that was read (very low, low); medium and high from memory of the best
 * management practices (Smiley, Matheny and Lilly 2017).
 */
import { describe, expect, it } from 'vitest';
import { impactLikelihood } from '../../packages/engine/src/reference/tables.generated.ts';

const word = (occupancy: string, protection: string) =>
  impactLikelihood.find((row) => row.occupancy === occupancy && row.protection === protection)?.result;

describe('likelihood of impact', () => {
  it.each([
    ['rarely used, fully exposed', 'rare', 'none', 'very low'],
    ['occasionally used, partly protected', 'occasional', 'partial', 'very low'],
    ['occasionally used, fully exposed', 'occasional', 'none', 'low'],
    ['frequently used, partly exposed', 'frequent', 'partial', 'low'],
    ['constant, well protected', 'constant', 'good', 'low'],
    ['frequently used, fully exposed on one side (from memory)', 'frequent', 'none', 'medium'],
    ['constant, partly protected (from memory)', 'constant', 'partial', 'medium'],
    ['constant, fully exposed (from memory)', 'constant', 'none', 'high'],
  ])('%s', (_, occupancy, protection, expected) => {
    expect(word(occupancy, protection)).toBe(expected);
  });

  it('has a word for every pair', () => {
    for (const occupancy of ['rare', 'occasional', 'frequent', 'constant']) {
      for (const protection of ['none', 'partial', 'good']) expect(word(occupancy, protection)).toBeDefined();
    }
  });
});
