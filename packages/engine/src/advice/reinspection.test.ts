import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DrillingAssessment, SectionAssessment } from '../assessment.ts';
import { readSigns } from '../decision/signs.ts';
import type { FailureLikelihood } from '../decision/words.ts';
import { reinspection, yearsToLimit } from './reinspection.ts';
import { assessedTree } from './testTree.ts';

const base = assessedTree({ tree: { stemDiameterMm: 1200 } });
const safe = { ...base.result.assessment, governing: { ...base.result.assessment.governing, p50: 3 } };

const ring = Array.from({ length: 360 }, (_, i): [number, number] => [
  400 * Math.sin((i * Math.PI) / 180),
  400 * Math.cos((i * Math.PI) / 180),
]);
function section(walls: { mm: number; atLeast?: boolean }[], kind: 'decayed' | 'sound' = 'decayed') {
  return {
    id: 's1',
    cambiumMm: ring,
    drillings: walls.map(({ mm, atLeast }, i) => ({
      id: `d${i + 1}`,
      residualWallMm: mm,
      residualWallIntervalMm: { p05: mm - 5, p50: mm, p95: mm + 5 },
      residualWallAtLeast: atLeast ?? false,
      zones: [{ kind, fromMm: mm, toMm: 300, confidence: 0.9 }],
    })) as unknown as DrillingAssessment[],
  } as SectionAssessment;
}
function look(
  walls: { mm: number; atLeast?: boolean }[],
  signs: { kind: string; note?: string }[] = [],
  likelihood: FailureLikelihood = 'improbable',
  kind?: 'decayed' | 'sound',
) {
  return reinspection({
    sections: [section(walls, kind)],
    signs,
    readings: readSigns(signs),
    likelihood,
    safety: safe,
  });
}

describe('yearsToLimit', () => {
  it('never comes where growth keeps up, and is the time that solves the equation', () => {
    expect(yearsToLimit(16, 40, 0.3, 0.2, 0.3)).toBeNull();
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (radius, share, decay, growth) => {
          const wall = radius * (0.3 + 0.7 * share);
          const years = yearsToLimit(wall, radius, 0.3, decay, growth)!;
          expect((wall + (growth - decay) * years) / (radius + growth * years)).toBeCloseTo(0.3, 9);
        },
      ),
    );
  });

  it('is 0 where the wall is thin already', () => {
    expect(yearsToLimit(10, 40, 0.3, 1, 0.3)).toBe(0);
  });
});

describe('reinspection', () => {
  it('takes the shortest of what practice allows and half the fast scenario', () => {
    expect(look([{ mm: 350 }], [], 'imminent').months).toBe(0);
    expect(look([{ mm: 350 }], [], 'probable').months).toBe(6);
    expect(look([{ mm: 350 }], [{ kind: 'ants' }]).months).toBe(12);
    // (145 - 5 - 0.3 x 400) mm at 2 cm against 0.3 cm of growth: 2 / 1.79 years, half of it 6 months.
    const thin = look([{ mm: 145 }, { mm: 350 }]);
    expect(thin.months).toBe(6);
    expect(thin.wallYears?.drillingId).toBe('d1');
    expect(thin.wallYears!.fast).toBeCloseTo(2.5 / 1.79, 3);
    expect(thin.wallYears!.slow).toBeGreaterThan(thin.wallYears!.middle!);
  });

  it('speaks of a wall below the limit, and of none', () => {
    const below = look([{ mm: 80 }]);
    expect(below.months).toBe(12);
    expect(below.why.join(' ')).toContain('thinner than 0.3 of the radius already');
    const none = look([{ mm: 390, atLeast: true }], [], 'improbable', 'sound');
    expect(none.wallYears).toBeNull();
    expect(none.months).toBe(36);
    expect(none.why.join(' ')).toContain('No needle met a decay front');
  });

  it('takes the rate of the rot named, and always tells when to look sooner', () => {
    const soft = look([{ mm: 200 }], [{ kind: 'fruiting body', note: 'Kretzschmaria deusta' }]);
    const unknown = look([{ mm: 200 }]);
    expect(soft.wallYears!.fast).toBeGreaterThan(unknown.wallYears!.fast!);
    expect(soft.why.join(' ')).toContain('Kretzschmaria deusta was named');
    expect(unknown.sooner.length).toBeGreaterThan(3);
  });
});
