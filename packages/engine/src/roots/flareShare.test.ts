import { describe, expect, it } from 'vitest';
import { type TraceReading, ZONE_KINDS, type ZoneKind } from '../trace/types.ts';
import { flareSoundShare } from './flareShare.ts';

/** A reading that is certain of its kinds, one for each millimetre. */
function certain(kinds: ZoneKind[]): TraceReading {
  const probability = new Float64Array(kinds.length * ZONE_KINDS.length);
  kinds.forEach((kind, i) => {
    probability[i * ZONE_KINDS.length + ZONE_KINDS.indexOf(kind)] = 1;
  });
  return { gridMm: Float64Array.from(kinds.keys()), probability } as TraceReading;
}

const run = (kind: ZoneKind, mm: number): ZoneKind[] => new Array(mm).fill(kind);

describe('flareSoundShare', () => {
  it('leaves bark and air out of the wood', () => {
    const bare = flareSoundShare([certain([...run('sound', 120), ...run('decayed', 120)])])!;
    const barked = flareSoundShare([
      certain([...run('air', 5), ...run('bark', 20), ...run('sound', 120), ...run('decayed', 120)]),
    ])!;
    expect(barked.p50).toBeCloseTo(bare.p50, 12);
    expect(bare.p50).toBeCloseTo(0.5, 12);
  });

  it('is surer with more wood met, and never certain', () => {
    const short = flareSoundShare([certain(run('sound', 120))])!;
    const long = flareSoundShare([certain(run('sound', 600)), certain(run('sound', 600))])!;
    expect(long.p05).toBeGreaterThan(short.p05);
    expect(long.p95).toBeLessThan(1);
    expect(short.p05).toBeLessThan(short.p50);
  });

  it('knows nothing where no wood was met', () => {
    expect(flareSoundShare([])).toBeNull();
    expect(flareSoundShare([certain(run('air', 50))])).toBeNull();
  });
});
