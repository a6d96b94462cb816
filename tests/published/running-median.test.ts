import { describe, expect, it } from 'vitest';
import { runningMedian } from '../../packages/engine/src/trace/texture.ts';
import fixture from './running-median.json' with { type: 'json' };

/** Source: scipy.ndimage.median_filter, by running-median.py beside this file. A median picks a value: no rounding. */
describe('running median against SciPy', () => {
  for (const [reach, expected] of Object.entries(fixture.filtered))
    it(`agrees exactly away from the ends, reach ${reach}`, () => {
      const r = Number(reach);
      const ours = runningMedian(Float64Array.from(fixture.values), r);
      expect(Array.from(ours.slice(r, fixture.values.length - r))).toEqual(expected);
    });
});
