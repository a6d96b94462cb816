import { describe, expect, it } from 'vitest';
import {
  type SimulateTraceOptions,
  simulateTrace,
} from '../../../../tests/simulated/traces/simulateTrace.ts';
import { conditionTrace } from './conditionTrace.ts';
import { findNotches } from './notches.ts';
import { textureOf } from './texture.ts';

const SOUND_PCT = 45;
const notches = (options: SimulateTraceOptions) => {
  const c = conditionTrace(simulateTrace({ frictionPctPerMm: 0, frictionOnsetPct: 0, ...options }).trace);
  return findNotches(c, new Float64Array(c.gridMm.length), textureOf(c).scatterPct, SOUND_PCT);
};

describe('findNotches', () => {
  it('finds a crack that stands alone, with its edges', () => {
    const found = notches({
      seed: 3,
      stretches: [
        { kind: 'sound', lengthMm: 80 },
        { kind: 'crack', lengthMm: 2.5 },
        { kind: 'sound', lengthMm: 80 },
      ],
    });
    expect(found.length).toBe(1);
    expect(found[0]!.logOdds).toBeGreaterThan(0);
    expect(Math.abs(found[0]!.fromMm - 80)).toBeLessThan(1);
    expect(Math.abs(found[0]!.toMm - 82.5)).toBeLessThan(1);
  });

  it('takes deep earlywood that repeats for rings', () => {
    const found = notches({
      seed: 4,
      stretches: [{ kind: 'sound', lengthMm: 200 }],
      rings: 'ring-porous',
      ringContrast: 0.8,
      ringMm: 6,
    });
    expect(found.filter((n) => n.logOdds > 0)).toEqual([]);
  });

  it('leaves a void of 12 mm alone', () => {
    const found = notches({
      seed: 5,
      stretches: [
        { kind: 'sound', lengthMm: 80 },
        { kind: 'void', lengthMm: 12 },
        { kind: 'sound', lengthMm: 80 },
      ],
    });
    expect(found).toEqual([]);
  });
});
