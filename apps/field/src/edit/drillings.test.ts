import type { CaseFile } from '@standfast/casefile';
import { describe, expect, it } from 'vitest';
import {
  drillingAddress,
  fileNamed,
  placedDrillings,
  refOfAddress,
  traceFilesOf,
  withFirstDrillings,
} from './drillings.ts';

const caseFile = {
  sections: [{ id: 's1', drillings: [{ id: 'd1', azimuthDeg: 0, trace: 'traces/d1.csv' }] }],
  flares: [{ id: 'f1', drillings: [{ id: 'd2', azimuthDeg: 20, trace: '../up.csv' }] }],
} as unknown as CaseFile;

describe('drillings of a case', () => {
  it('are found at sections and on flares, with their paths', () => {
    expect(placedDrillings(caseFile).map(({ path, ref, place }) => [path, ref, place])).toEqual([
      ['sections.0.drillings.0', 's1/d1', { sectionId: 's1' }],
      ['flares.0.drillings.0', 'f1/d2', { flareId: 'f1' }],
    ]);
  });

  it('name their trace files, whatever the case of the letters, and never one outside', () => {
    expect(traceFilesOf(caseFile, { 'traces/D1.csv': 'abc', '../up.csv': 'def' })).toEqual([
      { named: 'traces/d1.csv', path: 'traces/D1.csv', sha256: 'abc' },
    ]);
    expect(traceFilesOf(caseFile, {})).toEqual([]);
  });

  it('name their photos, whatever the case of the letters, and never one outside', () => {
    const files = { 'photos/D1.JPG': 'abc', '../up.jpg': 'def' };
    expect(fileNamed(files, 'photos/d1.jpg', 'a')?.sha256).toBe('abc');
    expect(fileNamed(files, '../up.jpg', 'a')).toBeNull();
    expect(fileNamed(files, 'photos/d2.jpg', 'a')).toBeNull();
  });

  it('are taken one by one, in the order they were recorded, at one section only', () => {
    expect(withFirstDrillings(caseFile, 's1', 0).sections[0]?.drillings).toEqual([]);
    expect(withFirstDrillings(caseFile, 's1', 1)).toEqual(caseFile);
    expect(withFirstDrillings(caseFile, 'f1', 0)).toEqual(caseFile);
  });

  it('have addresses that lead back to them', () => {
    const address = drillingAddress('c', 's1/d 4');
    expect(address).toBe('/case/c/section/s1%3Ad%204');
    expect(refOfAddress(address.split('/').pop()!)).toBe('s1/d 4');
  });
});
