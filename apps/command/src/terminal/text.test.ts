import { describe, expect, it } from 'vitest';
import { table, widthOf, wrapped } from './text.ts';

describe('text in columns', () => {
  it('counts what a person sees', () => {
    expect(widthOf('Zoe\u0308 \u001b[31mred\u001b[39m')).toBe(7);
  });

  it('aligns columns', () => {
    expect(
      table(
        [
          { head: 'id', align: 'left' },
          { head: 'mm', align: 'right' },
        ],
        [
          ['d1', '143.0'],
          ['d10', '9.5'],
        ],
      ),
    ).toEqual(['id      mm', 'd1   143.0', 'd10    9.5']);
  });

  it('breaks lines at the width and hangs the rest', () => {
    expect(wrapped('one two three four', 9, '  ')).toEqual(['one two', '  three', '  four']);
  });

  it('leaves a word that is too long whole', () => {
    expect(wrapped('unbreakable', 5)).toEqual(['unbreakable']);
  });
});
