/** A work list's row back from its CSV. */
import { LIST_COLUMNS, type ListColumnName, type WorkRow } from '@standfast/casefile';

const NUMERIC: ReadonlySet<string> = new Set([
  '° north',
  '° east',
  '°',
  'ratio',
  'share',
  'years',
  'count',
  'number',
]);

/** What `listCsvLine` wrote, as it was; an empty cell is null. */
export function rowOfCells(cells: Readonly<Record<ListColumnName, string>>): WorkRow {
  const entries = LIST_COLUMNS.map(({ name, unit }) => {
    const text = cells[name];
    if (text === '') return [name, null];
    return [name, NUMERIC.has(unit) ? Number(text) : text];
  });
  // The columns are those of a row by their type; what stands in them was written by this program.
  return Object.fromEntries(entries) as WorkRow;
}
