import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readTraceTable } from './readTraceTable.ts';
import { writeTraceTable } from './writeTraceTable.ts';

/** Adding zero turns -0 into 0, which is one depth with it. */
const number = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }).map((x) => x + 0);

it('what is written is read back to the last bit', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(number, { minLength: 1, maxLength: 60 }),
      fc.infiniteStream(number),
      fc.boolean(),
      (depths, stream, withFeed) => {
        const depthMm = Float64Array.from(depths).sort();
        const draw = () => Float64Array.from(depthMm, () => stream.next().value);
        const trace = { depthMm, resistancePct: draw(), ...(withFeed ? { feed: draw() } : {}) };
        expect(readTraceTable(writeTraceTable(trace, ['a\nb']), 'x')).toEqual(trace);
      },
    ),
    { numRuns: 200 },
  );
});

it('puts comments on lines of their own', () => {
  const bytes = writeTraceTable(
    { depthMm: new Float64Array([0, 0.1]), resistancePct: new Float64Array([1, 2]) },
    ['invented\r\nfor a test'],
  );
  expect(new TextDecoder().decode(bytes)).toBe('# invented for a test\ndepth_mm,resistance\n0,1\n0.1,2\n');
});
