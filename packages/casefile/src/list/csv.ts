/** Lines of a CSV file (RFC 4180), as this program writes them. */
import { LIST_COLUMN_NAMES } from './columns.ts';
import type { WorkRow } from './workRow.ts';

/**
 * One line, ended. Text that a spreadsheet would take for a formula gets an apostrophe before it, so that a
 * label from a foreign case cannot run anything.
 */
export function csvLine(cells: readonly (string | number | null)[]): string {
  return `${cells.map(cell).join(',')}\r\n`;
}

function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const formula = /^[=+\-@\t\r]/.test(value) && Number.isNaN(Number(value));
  const safe = formula ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** The head of a work list's table. */
export const listCsvHead = (): string => csvLine(LIST_COLUMN_NAMES);

/** A work list's row as a line of its table. */
export function listCsvLine(row: WorkRow): string {
  return csvLine(LIST_COLUMN_NAMES.map((column) => row[column]));
}
