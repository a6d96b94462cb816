import { describe, expect, it } from 'vitest';
import { randomFrom } from '../random.ts';
import { readTraces } from './readTraces.ts';
import { logPriorOfUnseen } from './searchLevels.ts';
import type { Trace } from './types.ts';

/** Bark, sound wood at `soundPct`, and a void to the end, with hardly any friction. */
function soundThenVoid(soundPct: number, soundMm: number, voidMm: number, seed: number): Trace {
  const random = randomFrom(seed);
  const depthMm: number[] = [];
  const resistancePct: number[] = [];
  for (let depth = 0; depth < 15 + soundMm + voidMm; depth += 0.5) {
    const level = depth < 15 ? 3 : depth < 15 + soundMm ? soundPct : 0;
    depthMm.push(depth);
    resistancePct.push(3 + level + (level > 0 ? 1.5 : 0.3) * random.normal());
  }
  return { depthMm: Float64Array.from(depthMm), resistancePct: Float64Array.from(resistancePct) };
}

describe('the search for levels', () => {
  it('tries lesser friction where the usual friction would lie above a long void', () => {
    for (const seed of [1, 2, 3, 4]) {
      const [reading] = readTraces([{ id: 'd1', trace: soundThenVoid(25, 300, 180, seed) }]);
      expect(reading!.zones.map((zone) => zone.kind)).toEqual(['bark', 'sound', 'void']);
      expect(Math.abs(reading!.residualWallMm - 300)).toBeLessThan(2);
    }
  });

  it('holds a sound level against which no drilling speaks for made up', () => {
    expect(logPriorOfUnseen(30, 33)).toBeCloseTo(0, 12);
    expect(logPriorOfUnseen(66, 33)).toBeLessThan(-20);
  });
});
