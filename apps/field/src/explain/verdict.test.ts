import type { SafetyAssessment } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { verdictWords } from './verdict.ts';

const safety = (chanceBelow1: number, chanceBelow1_5: number) =>
  ({ chanceBelow1, chanceBelow1_5 }) as SafetyAssessment;

describe('a verdict in words', () => {
  it.each([
    [0.7, 0.9, 'fails', '70 %'],
    [0.08, 0.6, 'may-fail', '8.0 %'],
    [0.01, 0.4, 'below-mark', '40 %'],
    [0.0005, 0.01, 'holds', '1.5'],
  ] as const)('chances %d and %d are “%s”', (below1, below15, grade, said) => {
    const words = verdictWords(safety(below1, below15));
    expect(words.grade).toBe(grade);
    expect(words.text).toContain(said);
  });
});
