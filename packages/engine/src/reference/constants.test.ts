import { describe, expect, it } from 'vitest';
import { constant, sourced, statusNote } from './constants.ts';
import { constants } from './tables.generated.ts';

describe('constants', () => {
  it('stand within the range they give', () => {
    for (const row of constants) {
      if (row.low !== undefined) expect(row.value, row.name).toBeGreaterThanOrEqual(row.low);
      if (row.high !== undefined) expect(row.value, row.name).toBeLessThanOrEqual(row.high);
    }
    expect(new Set(constants.map((row) => row.name)).size).toBe(constants.length);
  });

  it('say where a value is a proposal or from memory, beside its source', () => {
    expect(sourced('stem drag').source).toContain('from memory');
    expect(sourced('dynamic factor', 1.2)).toMatchObject({ value: 1.2, cov: 0.1 });
    expect(sourced('dynamic factor').source).toContain('proposal of this project');
    expect(sourced('en air density').source).toBe(constant('en air density').source);
    expect(statusNote('low confidence')).toContain('low confidence');
    expect(statusNote('checked')).toContain('cross-checked');
  });

  it('are asked for by a name that exists', () => {
    expect(() => constant('no such')).toThrow(/constants.csv/);
  });
});
