import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { whereJsonBreaks } from './whereJsonBreaks.ts';

describe('where JSON breaks', () => {
  it.each([
    ['{"a": 1,}', 1, 9, false],
    ['{"a": }', 1, 7, false],
    ['{\n  "a": 1\n  "b": 2\n}', 3, 3, false],
    ['{"a": [1, 2', 1, 12, true],
    ['', 1, 1, true],
    ['{"a": "no end\n}', 1, 14, false],
    ['{"a": 01}', 1, 8, false],
    ['{"a": NaN}', 1, 7, false],
    ["{'a': 1}", 1, 2, false],
    ['{"a": 1} x', 1, 10, false],
    ['{"a": "\\x"}', 1, 8, false],
    ['[1 2]', 1, 4, false],
    ['{"a": tru', 1, 7, false],
    ['{"a": 1]', 1, 8, false],
  ])('%j', (text, line, column, atEnd) => {
    expect(whereJsonBreaks(text)).toEqual({ line, column, atEnd });
  });

  it('finds nothing in what the machine can parse, and something in what it cannot', () => {
    const json = fc.json({ maxDepth: 4 });
    fc.assert(
      fc.property(
        json,
        fc.nat(),
        fc.constantFrom('', ',', '"', '}', ']', '{', ' ', '1', 'e', '\\'),
        (text, n, put) => {
          const at = n % (text.length + 1);
          const spoilt = text.slice(0, at) + put + text.slice(at + 1);
          for (const candidate of [text, spoilt]) {
            expect(whereJsonBreaks(candidate) === null).toBe(parses(candidate));
          }
        },
      ),
      { numRuns: 2000 },
    );
  });
});

function parses(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
