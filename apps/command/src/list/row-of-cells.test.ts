import {
  LIST_COLUMN_NAMES,
  type ListColumnName,
  listCsvLine,
  unassessedRow,
  type WorkRow,
} from '@standfast/casefile';
import { describe, expect, it } from 'vitest';
import { csvRows } from '../batch/csv.ts';
import { rowOfCells } from './row-of-cells.ts';

describe('a row of the list', () => {
  it('comes back from CSV as it went, numbers as numbers', () => {
    const row: WorkRow = {
      ...unassessedRow('park/a', null, ['case.json: "x", y']),
      label: '12',
      latitude: -33.86,
      longitude: 151.2093,
      safetyP50: 1.62341,
      chanceP05: 1e-9,
      draws: 4000,
      risk: 'high',
    };
    const [cells] = csvRows(listCsvLine(row));
    const named = Object.fromEntries(LIST_COLUMN_NAMES.map((name, i) => [name, cells![i]!]));
    expect(rowOfCells(named as Record<ListColumnName, string>)).toEqual(row);
  });
});
