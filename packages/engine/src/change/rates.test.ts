import { describe, expect, it } from 'vitest';
import { randomFrom } from '../random.ts';
import { interval } from '../wind/interval.ts';
import { rateDraws } from './rates.ts';

const PRIOR = { slow: 3, middle: 10, fast: 20 };
const YEARS = 4;
const draw = (measures: Parameters<typeof rateDraws>[0]) =>
  rateDraws(measures, YEARS, PRIOR, randomFrom(1), 2000);

describe('speeds of decay fronts', () => {
  it('stay as believed where nothing was measured', () => {
    const { elsewhere } = draw([]);
    const standing = elsewhere.filter((v) => v === 0).length / elsewhere.length;
    expect(standing).toBeCloseTo(0.25, 1);
    expect(interval(elsewhere.filter((v) => v > 0)).p50).toBeCloseTo(PRIOR.middle, -0.5);
  });
  it('follow a sharp measurement at its place', () => {
    const { atDrillings } = draw([{ kind: 'moved by', meanMm: 24, sdMm: 2 }]);
    const { p05, p50, p95 } = interval(atDrillings[0]!);
    expect(p50).toBeCloseTo(6, 0);
    expect(p95 - p05).toBeLessThan(3);
  });
  it('tell a front that stood from one that moved in the same section', () => {
    const { atDrillings } = draw([
      { kind: 'moved by', meanMm: 30, sdMm: 4 },
      { kind: 'moved by', meanMm: 0, sdMm: 4 },
    ]);
    expect(interval(atDrillings[0]!).p05).toBeGreaterThan(interval(atDrillings[1]!).p50);
  });
  it('take a front met only now as having moved at least so far', () => {
    const { atDrillings } = draw([{ kind: 'moved at least', meanMm: 40, sdMm: 3 }]);
    expect(interval(atDrillings[0]!).p05).toBeGreaterThan(8);
  });
  it('are the same for the same seed', () => {
    const measure = [{ kind: 'moved by', meanMm: 10, sdMm: 5 } as const];
    expect(draw(measure)).toEqual(draw(measure));
  });
});
