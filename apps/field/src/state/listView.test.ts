import { unassessedRow, type WorkRow } from '@standfast/casefile';
import { describe, expect, it } from 'vitest';
import type { ListEntry } from '../storage/summaries.ts';
import { isFiltered, type ListView, listed, WHOLE_LIST } from './listView.ts';

const TODAY = '2026-05-14';
const entry = (id: string, change: Partial<WorkRow>, savedAt = 0): ListEntry => ({
  id,
  savedAt,
  stale: false,
  row: { ...unassessedRow(id, null, []), status: 'assessed', label: id, ...change },
});
const entries = [
  entry('a', { risk: 'low', dueOn: '2026-05-13', client: 'Town', species: 'Acer saccharum' }, 3),
  entry('b', { risk: 'high', dueOn: '2026-06-14', place: 'Allée du Château' }, 1),
  entry('c', { risk: null, dueOn: '2027-05-15' }, 2),
  entry('d', { status: 'not assessed', label: null }, 4),
];
const ids = (change: Partial<ListView>) =>
  listed(entries, { ...WHOLE_LIST, ...change }, TODAY)
    .map(({ id }) => id)
    .join('');

describe('the list as it is wanted', () => {
  it('is sorted by risk, due date, label or last saved', () => {
    expect(ids({})).toBe('bacd');
    expect(ids({ order: 'due' })).toBe('abcd');
    expect(ids({ order: 'saved' })).toBe('dacb');
    expect(ids({ order: 'label' })).toBe('abcd');
  });

  it('is filtered by risk, due date, client, and words wherever they stand', () => {
    expect(ids({ risk: 'high' })).toBe('b');
    expect(ids({ risk: 'no target' })).toBe('c');
    expect(ids({ risk: 'not assessed' })).toBe('d');
    expect(ids({ due: 'overdue' })).toBe('a');
    expect(ids({ due: 'in a month' })).toBe('ba');
    expect(ids({ due: 'in a year' })).toBe('ba');
    expect(ids({ due: 'none' })).toBe('d');
    expect(ids({ client: 'Town' })).toBe('a');
    expect(ids({ search: ' SACCH acer ' })).toBe('a');
    expect(ids({ search: 'chateau' })).toBe('b');
    expect(ids({ search: 'acer chateau' })).toBe('');
  });

  it('knows whether anything is left out', () => {
    expect(isFiltered(WHOLE_LIST)).toBe(false);
    expect(isFiltered({ ...WHOLE_LIST, order: 'due', search: '  ' })).toBe(false);
    expect(isFiltered({ ...WHOLE_LIST, search: 'x' })).toBe(true);
  });
});
