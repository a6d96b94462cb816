import { csvLine } from '@standfast/casefile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvRows } from './csv.ts';

describe('CSV of a batch', () => {
  it('reads back what it wrote, whatever the text', () => {
    const text = fc.string({ unit: 'grapheme' }).filter((value) => !/^[=+\-@\t\r]|\r$/.test(value));
    fc.assert(
      fc.property(fc.array(fc.array(text, { minLength: 2, maxLength: 5 })), (rows) => {
        expect(csvRows(rows.map(csvLine).join(''))).toEqual(rows);
      }),
    );
  });

  it('leaves out a last line that was cut off', () => {
    expect(csvRows('a,b\r\n1,2\r\n3,')).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ]);
  });

  it('disarms text that a spreadsheet would run, and leaves numbers alone', () => {
    expect(csvLine(['=1+1', '-0.5', '+cmd', -0.5, null])).toBe("'=1+1,-0.5,'+cmd,-0.5,\r\n");
  });

  it('does not disarm twice', () => {
    const once = csvLine(['=A1']);
    expect(csvLine(csvRows(once)[0]!)).toBe(once);
  });
});
