import { describe, expect, it } from 'vitest';
import { readTraces } from '../../../packages/engine/src/trace/index.ts';
import type { TraceReading } from '../../../packages/engine/src/trace/types.ts';
import { type HardCase, hardCase } from './hardCases.ts';

/** Specimens of each kind, judging side; seeds from here on. The bounds guard against getting worse. */
const EACH = 15;
const SHELLS = 30;
const FIRST_SEED = 4100;
/** How far a wall may be off and still count as right, mm. */
const WALL_TOLERANCE_MM = 5;
/** Of EACH: bark split, walls ended early, dips called unsound; one or two are chance. */
const MOST_BARK_SPLIT = 2;
const MOST_WALLS_OFF = 2;
const MOST_DIPS_UNSOUND = 1;

const UNSOUND = new Set(['incipient', 'decayed', 'void', 'crack']);
const readUnsound = (r: TraceReading) => r.zones.some((z) => UNSOUND.has(z.kind));

function readings(name: HardCase, each = EACH): { wallMm: number; reading: TraceReading }[] {
  return Array.from({ length: each }, (_, i) => {
    const s = hardCase(name, 'judging', FIRST_SEED + i);
    const [reading] = readTraces([{ id: `${name} ${i}`, trace: s.trace }]);
    return { wallMm: s.residualWallMm, reading: reading! };
  });
}
const wallsOff = (all: { wallMm: number; reading: TraceReading }[]) =>
  all.filter((s) => Math.abs(s.reading.residualWallMm - s.wallMm) > WALL_TOLERANCE_MM).length;

describe('traces that are easy to misread', () => {
  it('with a thin shell of sound wood before rot are never read as sound through', () => {
    for (const { reading } of readings('rotten shell', SHELLS)) expect(readUnsound(reading)).toBe(true);
  });
  it('with fissured bark are seldom read as decayed or hollow under the bark', () => {
    const split = readings('fissured bark').filter((s) => readUnsound(s.reading)).length;
    expect(split).toBeLessThanOrEqual(MOST_BARK_SPLIT);
  });
  it('with deep rings and slow waves keep their wall', () => {
    expect(wallsOff(readings('uneven sound'))).toBeLessThanOrEqual(MOST_WALLS_OFF);
  });
  it('with a short dip between long sound stretches stay sound, and say so', () => {
    const all = readings('short dip');
    expect(all.filter((s) => readUnsound(s.reading)).length).toBeLessThanOrEqual(MOST_DIPS_UNSOUND);
    expect(all.some((s) => s.reading.warnings.some((w) => /short dip of level/.test(w)))).toBe(true);
  });
});
