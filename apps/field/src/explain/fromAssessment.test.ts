import { sampleAssessment } from '@standfast/report';
import { describe, expect, it } from 'vitest';
import * as explain from './fromAssessment.ts';

const assessment = sampleAssessment();
const section = assessment.sections[0]!;

/** Every explanation on screen, in both kinds of units. */
const all = (['metric', 'us'] as const).flatMap((units) => [
  explain.explainSafety(assessment, units),
  explain.explainChance(assessment, 1),
  explain.explainChance(assessment, 1.5),
  explain.explainCriticalGust(assessment, 'breakage', units),
  explain.explainCriticalGust(assessment, 'uprooting', units),
  explain.explainMoment(assessment, units),
  explain.explainGust(assessment, units),
  explain.explainRemaining(section, assessment, units),
  ...section.drillings.map((drilling) => explain.explainWall(drilling, units)),
  ...section.criteria.map(explain.explainCriterion),
]);

describe('opened numbers', () => {
  it.each(all.map((one) => [one.name, one] as const))(
    '%s says what it is and how it was found',
    (_name, one) => {
      expect(one.name).not.toBe('');
      expect(one.value).not.toMatch(/NaN|undefined|null/);
      expect(one.meaning.length).toBeGreaterThan(20);
      expect(one.formula.length).toBeGreaterThan(0);
      expect(one.inputs.length + one.sources.length).toBeGreaterThan(0);
      for (const input of one.inputs) {
        expect(`${input.name} ${input.value} ${input.source}`).not.toMatch(/NaN|undefined|null/);
        expect(input.source).not.toBe('');
      }
    },
  );

  it('finds the nearest direction across north', () => {
    const list = [{ directionDeg: 10 }, { directionDeg: 180 }, { directionDeg: 350 }];
    expect(explain.nearest(list, 358)).toEqual({ directionDeg: 350 });
    expect(explain.nearest(list, 5)).toEqual({ directionDeg: 10 });
    expect(explain.nearest([], 5)).toBeUndefined();
  });
});
