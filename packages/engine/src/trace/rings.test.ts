import { describe, expect, it } from 'vitest';
import { simulateTrace } from '../../../../tests/simulated/traces/simulateTrace.ts';
import { conditionTrace } from './conditionTrace.ts';
import { findRings } from './rings.ts';

const sound = { kind: 'sound', lengthMm: 220 } as const;
const rings = (options: Partial<Parameters<typeof simulateTrace>[0]>) =>
  findRings(conditionTrace(simulateTrace({ seed: 21, stretches: [sound], ...options }).trace));

describe('findRings', () => {
  it('finds ring width where rings show', () => {
    for (const ringMm of [2, 4, 6]) {
      const found = rings({ rings: 'ring-porous', ringMm, ringScatter: 0.1 });
      expect(found.visible).toBe(true);
      // A quarter: rings vary in width and the window holds a handful of wide ones.
      expect(Math.abs(found.widthMm - ringMm)).toBeLessThan(0.25 * ringMm);
    }
  });

  it('finds none where there are none', () => {
    expect(rings({ rings: 'none' }).visible).toBe(false);
    expect(rings({ rings: 'none', noiseSdPct: 4, wanderShare: 0 }).visible).toBe(false);
  });
});
