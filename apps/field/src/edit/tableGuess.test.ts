import type { TableGuess } from '@standfast/casefile';
import { describe, expect, it } from 'vitest';
import { fitColumns, withFullScale, withRole, withUnit } from './tableGuess.ts';

const guess = {
  kind: 'text',
  columns: [{ role: 'depth', title: 'Tiefe', unit: 'mm' }],
} as unknown as TableGuess;

describe('correcting how a table is read', () => {
  it('gives each cell a column, and the first two their likely roles', () => {
    const fitted = fitColumns(guess, 3);
    expect(fitted.columns.map(({ role }) => role)).toEqual(['depth', 'resistance', 'ignore']);
    expect(fitColumns(fitted, 2).columns.map(({ role }) => role)).toEqual(['depth', 'resistance']);
    expect(fitColumns(fitted, 3)).toBe(fitted);
  });

  it('changes roles and units of one column only', () => {
    const fed = withRole(fitColumns(guess, 3), 2, 'feed');
    expect(fed.columns.map(({ role }) => role)).toEqual(['depth', 'resistance', 'feed']);
    expect(withUnit(fed, 0, 'inch').columns[0]).toEqual({ role: 'depth', title: 'Tiefe', unit: 'inch' });
    const counted = withFullScale(withUnit(fed, 1, 'counts'), 1, 4095);
    expect(counted.columns[1]).toMatchObject({ unit: 'counts', fullScale: 4095 });
    expect(withUnit(counted, 1, 'fraction').columns[1]).not.toHaveProperty('fullScale');
    expect(withUnit(fed, 2, 'mm').columns[2]).toEqual({ role: 'feed', title: 'column 3' });
  });
});
