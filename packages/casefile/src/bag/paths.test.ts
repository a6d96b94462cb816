import { describe, expect, it } from 'vitest';
import { filesInWords, findFile, pathProblem } from './paths.ts';

const EMPTY = new Uint8Array();

describe('paths', () => {
  it.each(['case.json', 'traces/d1.csv', 'photos/a b/ü.jpg', 'traces/..d1.csv'])('%s can be used', (path) => {
    expect(pathProblem(path)).toBeNull();
  });

  it.each([
    ['', 'empty'],
    ['../d1.csv', 'climbs out'],
    ['traces/../../d1.csv', 'climbs out'],
    ['..', 'climbs out'],
    ['/etc/passwd', 'root of the machine'],
    ['C:/traces/d1.csv', 'names a drive'],
    ['c:d1.csv', 'names a drive'],
    ['traces\\d1.csv', 'write it with forward slashes, "traces/d1.csv"'],
    ['..\\d1.csv', 'backslashes'],
    ['traces//d1.csv', 'empty parts'],
    ['./d1.csv', 'empty parts'],
    ['traces/', 'empty parts'],
    ['a\0b', 'zero character'],
    ['x'.repeat(500), 'longer than'],
  ])('%j cannot', (path, problem) => {
    expect(pathProblem(path)).toContain(problem);
  });

  it('finds the file that is meant', () => {
    const bag = new Map([
      ['traces/D1.csv', EMPTY],
      ['traces/d2.csv', EMPTY],
      ['photos/Gru\u0308n.jpg', EMPTY],
      ['a/x', EMPTY],
      ['A/X', EMPTY],
    ]);
    expect(findFile(bag, 'traces/d2.csv', '')).toMatchObject({ path: 'traces/d2.csv', exact: true });
    expect(findFile(bag, 'traces/d1.CSV', '')).toMatchObject({ path: 'traces/D1.csv', exact: false });
    expect(findFile(bag, 'photos/gr\u00fcn.jpg', '')).toMatchObject({
      path: 'photos/Gru\u0308n.jpg',
      exact: false,
    });
    expect(findFile(bag, 'traces/d3.csv', '')).toBeNull();
    // Two files that differ in capitals only: neither is taken for the other.
    expect(findFile(bag, 'a/X', '')).toBeNull();
    expect(() => findFile(bag, '../x', 'case.json: f')).toThrow(
      'case.json: f: the path climbs out of the case',
    );
  });

  it('lists files in words', () => {
    const bag = new Map(
      Array.from({ length: 15 }, (_, i) => [`traces/${String(i).padStart(2, '0')}.csv`, EMPTY]),
    );
    expect(filesInWords(new Map(), '')).toBe('there are no files');
    expect(filesInWords(new Map(), 'traces/')).toBe('there are no files in traces/');
    expect(filesInWords(bag, 'traces/', 2)).toBe('there are traces/00.csv, traces/01.csv and 13 more');
  });
});
