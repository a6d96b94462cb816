import { describe, expect, it } from 'vitest';
import { cellsOf, isSilent, linesOf } from './rows.ts';

describe('rows', () => {
  it.each(['a\nb\n\nc', 'a\r\nb\r\n\r\nc\r\n', 'a\rb\r\rc\r'])('lines of %j', (text) => {
    expect([...linesOf(text)]).toEqual([
      { row: 1, line: 'a' },
      { row: 2, line: 'b' },
      { row: 3, line: '' },
      { row: 4, line: 'c' },
    ]);
  });

  it.each([
    ['1,2', ',', ['1', '2']],
    ['1; 2 ;', ';', ['1', '2']],
    ['1;;2', ';', ['1', '', '2']],
    ['"1,5","a ""b"""', ',', ['1,5', 'a "b"']],
    ['  1   2\t3 ', ' ', ['1', '2', '3']],
    ['1\t\t', '\t', ['1', '']],
    ['"1,5"', '', ['1,5']],
    ['1|2', '|', ['1', '2']],
  ] as const)('cells of %j by %j', (line, delimiter, cells) => {
    expect(cellsOf(line, delimiter)).toEqual(cells);
  });

  it('knows lines with nothing in them', () => {
    expect(['', '  ', '\t# x', '#', '1', ' 1 # x'].map(isSilent)).toEqual([
      true,
      true,
      true,
      true,
      false,
      false,
    ]);
  });
});
