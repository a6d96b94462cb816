import type { CaseFile } from '@standfast/casefile';
import { describe, expect, it } from 'vitest';
import { drillingsOf, freeId, freeTracePath, traceFilesOf } from './drillings.ts';

const caseFile = {
  sections: [{ id: 's1', drillings: [{ id: 'd1', azimuthDeg: 0, trace: 'traces/d1.csv' }] }],
  flares: [{ id: 'f1', drillings: [{ id: 'd2', azimuthDeg: 20 }] }],
} as unknown as CaseFile;

describe('drillings of a case', () => {
  it('are found at sections and on flares, with their paths', () => {
    expect(drillingsOf(caseFile).map(({ path, placeId, kind }) => [path, placeId, kind])).toEqual([
      ['sections.0.drillings.0', 's1', 'section'],
      ['flares.0.drillings.0', 'f1', 'flare'],
    ]);
  });

  it('name their trace files, whatever the case of the letters', () => {
    expect(traceFilesOf(caseFile, { 'traces/D1.csv': 'abc' })).toEqual([
      { named: 'traces/d1.csv', path: 'traces/D1.csv', sha256: 'abc' },
    ]);
    expect(traceFilesOf(caseFile, {})).toEqual([]);
  });

  it('get ids and files that are free', () => {
    expect(freeId(['d1', 'd2', 'd4'], 'd')).toBe('d3');
    expect(freeTracePath({}, 'd1')).toBe('traces/d1.csv');
    expect(freeTracePath({ 'traces/d1.csv': 'x', 'traces/d1-2.csv': 'y' }, 'd1')).toBe('traces/d1-3.csv');
    expect(freeTracePath({}, '../up')).toBe('traces/-up.csv');
  });
});
