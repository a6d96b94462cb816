import type { Trace, TraceReading, TraceToRead } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { rememberingReader } from './rememberingReader.ts';

const trace = { depthMm: new Float64Array(1), resistancePct: new Float64Array(1) } as Trace;
const toRead = (change: Partial<TraceToRead> = {}): TraceToRead => ({
  id: 'd1',
  trace,
  barkMm: 15,
  ...change,
});

describe('a reader that remembers', () => {
  it('reads again only when something it hangs on has changed', () => {
    let reads = 0;
    const reader = rememberingReader((traces) => {
      reads++;
      return traces.map(() => ({}) as TraceReading);
    });
    const first = reader([toRead()]);
    expect(reader([toRead()])).toBe(first);
    expect(reads).toBe(1);
    for (const change of [{ barkMm: 20 }, { exitMm: 400 }, { id: 'd2' }, { trace: { ...trace } }]) {
      reader([toRead(change)]);
    }
    expect(reads).toBe(5);
    reader([toRead(), toRead({ id: 'd2' })]);
    expect(reads).toBe(6);
  });

  it('remembers two visits, read in turn', () => {
    let reads = 0;
    const reader = rememberingReader((traces) => {
      reads++;
      return traces.map(() => ({}) as TraceReading);
    });
    const [earlier, later] = [[toRead()], [toRead({ trace: { ...trace } })]];
    for (let edit = 0; edit < 3; edit++) {
      reader(later);
      reader(earlier);
    }
    expect(reads).toBe(2);
  });
});
