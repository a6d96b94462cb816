import { describe, expect, it } from 'vitest';
import { readTraceTable } from './readTraceTable.ts';

const read = (text: string) => readTraceTable(new TextEncoder().encode(text), 'traces/d1.csv');
const plain = (text: string) => {
  const { depthMm, resistancePct, feed } = read(text);
  return { depth: [...depthMm], resistance: [...resistancePct], feed: feed && [...feed] };
};

describe('readTraceTable', () => {
  it('reads depth and resistance', () => {
    expect(plain('depth_mm,resistance\n0,1.5\n0.1,2\n0.25,30.125\n')).toEqual({
      depth: [0, 0.1, 0.25],
      resistance: [1.5, 2, 30.125],
      feed: undefined,
    });
  });

  it('skips comments and blank lines, and takes any line end, a byte order mark, capitals, quotes and spaces', () => {
    const text =
      '\uFEFF# made by hand\r\n\r\n"Depth_mm" , "Resistance"\r\n# between\r\n 0 ,\t1\r\n\r\n"0.5", "2e1"\r\n  \r\n+1.0,-.5';
    expect(plain(text)).toMatchObject({ depth: [0, 0.5, 1], resistance: [1, 20, -0.5] });
    expect(plain('depth_mm,resistance\r0,1\r1,2\r')).toMatchObject({ depth: [0, 1], resistance: [1, 2] });
  });

  it('takes columns in any order, reads feed, and leaves others out', () => {
    expect(plain('feed,note,resistance,depth_mm\n7,a b,1,0\n8,"x,y",2,1\n')).toEqual({
      depth: [0, 1],
      resistance: [1, 2],
      feed: [7, 8],
    });
  });

  it('reads numbers to the last bit', () => {
    const numbers = [
      '0.1',
      '0.30000000000000004',
      '123456789.123456789',
      '1e-7',
      '99.99999999999999',
      '2.2250738585072014e-308',
    ];
    const text = `depth_mm,resistance\n${numbers.map((number, i) => `${i},${number}`).join('\n')}`;
    expect(plain(text).resistance).toEqual(numbers.map(Number));
  });

  it.each([
    ['', 'traces/d1.csv: the file is empty: expected a header depth_mm,resistance and rows'],
    ['# nothing\n\n', 'traces/d1.csv: the table is empty: expected a header depth_mm,resistance and rows'],
    ['depth_mm,resistance\n', 'traces/d1.csv: the table has a header but no rows: export the readings again'],
    [
      '0,1\n1,2\n',
      'traces/d1.csv: row 1: the header should be depth_mm,resistance, but is "0,1": bring a table of another shape in through table import',
    ],
    [
      '# x\ndepth;resistance\n0;1\n',
      'traces/d1.csv: row 2: the header should be depth_mm,resistance, but is "depth;resistance"',
    ],
    ['depth_mm,resistance,depth_mm\n0,1,2\n', 'traces/d1.csv: row 1: the header names depth_mm twice'],
    [
      'depth_mm,resistance\n0,1\n1,NaN\n',
      'traces/d1.csv: row 3: resistance is NaN, not a number: correct or remove the row',
    ],
    [
      'depth_mm,resistance\n0,1\n,5\n',
      'traces/d1.csv: row 3: depth_mm is blank: fill it in or remove the row',
    ],
    ['depth_mm,resistance\n0,1\n1,5x\n', 'traces/d1.csv: row 3: resistance is "5x", not a number'],
    [
      'depth_mm,resistance\n0,1\n1,Infinity\n',
      'traces/d1.csv: row 3: resistance is "Infinity", not a number',
    ],
    ['depth_mm,resistance\n0,1\n1,1e999\n', 'traces/d1.csv: row 3: resistance is "1e999", not a number'],
    ['depth_mm,resistance\n0,1\n1,0x10\n', 'traces/d1.csv: row 3: resistance is "0x10", not a number'],
    ['depth_mm,resistance\n0,1\n1,.\n', 'traces/d1.csv: row 3: resistance is ".", not a number'],
    [
      'depth_mm,resistance\n# c\n0,1\n2,5\n1.5,5\n',
      'traces/d1.csv: row 5: depth goes back from 2 to 1.5 mm: depth must grow from row to row',
    ],
    ['depth_mm,resistance\n0,1\n0,5\n', 'traces/d1.csv: row 3: depth repeats 0 mm'],
    ['depth_mm,resistance\n0,1\n1\n', 'traces/d1.csv: row 3: the row has 1 column where the header has 2'],
    [
      'depth_mm,resistance\n0,1\n1,2,3\n',
      'traces/d1.csv: row 3: the row has 3 columns where the header has 2: correct',
    ],
    [
      'depth_mm,resistance\n0,1,5,2\n',
      'traces/d1.csv: row 2: the row has 4 columns where the header has 2 (a comma as decimal sign?',
    ],
    ['depth_mm,resistance\n0,1\n\u0000', 'traces/d1.csv: the file is not text'],
  ])('refuses %j', (text, message) => {
    expect(() => read(text)).toThrow(message);
  });

  it('refuses UTF-16 by name', () => {
    expect(() => readTraceTable(new Uint8Array([0xff, 0xfe, 0x64, 0]), 'a.csv')).toThrow(
      'a.csv: the file is UTF-16 text',
    );
  });
});
