import { describe, expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { checkTrace } from './checkTrace.ts';
import type { Trace } from './types.ts';

function even(n: number, spacingMm: number, level = 40): Trace {
  return {
    depthMm: Float64Array.from({ length: n }, (_, i) => i * spacingMm),
    resistancePct: new Float64Array(n).fill(level),
  };
}

function fault(trace: Trace): InputFault {
  try {
    checkTrace(trace, 'd1.csv');
  } catch (error) {
    if (error instanceof InputFault) return error;
  }
  throw new Error('no fault was raised');
}

describe('checkTrace', () => {
  it('accepts spacings from 0.01 to 2 mm, even or not, starting anywhere', () => {
    checkTrace(even(30000, 0.01), 'a');
    checkTrace(even(150, 2), 'a');
    const uneven = even(200, 1);
    for (let i = 0; i < 200; i++) uneven.depthMm[i] = i + 0.4 * Math.sin(i) - 12;
    checkTrace(uneven, 'a');
  });

  it('names the row where depth goes backwards or stands still, counting data rows from 1', () => {
    const trace = even(100, 1);
    trace.depthMm[41] = 40;
    expect(fault(trace).message).toMatch(/^d1\.csv: .*row 42 .*row 41/);
    trace.depthMm[41] = 3;
    expect(fault(trace).message).toMatch(/row 42/);
  });

  it('names the row of a value that is not a number', () => {
    const depth = even(100, 1);
    depth.depthMm[9] = Number.NaN;
    expect(fault(depth).message).toMatch(/Depth in row 10 is not a number/);
    const level = even(100, 1);
    level.resistancePct[0] = Number.POSITIVE_INFINITY;
    expect(fault(level).message).toMatch(/Resistance in row 1 is not a number/);
  });

  it('refuses empty and short traces and arrays that do not match', () => {
    expect(fault(even(0, 1)).message).toMatch(/empty/);
    expect(fault(even(7, 1)).message).toMatch(/7 readings/);
    expect(fault({ ...even(100, 1), resistancePct: new Float64Array(99) }).message).toMatch(/100 depths/);
    expect(fault({ ...even(100, 1), feed: new Float64Array(3) }).message).toMatch(/3 feed/);
  });

  it('refuses spans that only make sense in another unit', () => {
    expect(fault(even(3000, 0.0001)).message).toMatch(/metres, centimetres or inches/);
    expect(fault(even(3000, 100)).message).toMatch(/micrometres/);
  });

  it('refuses levels that are no percentage', () => {
    expect(fault(even(100, 1, 812)).message).toMatch(/percent/);
  });
});
