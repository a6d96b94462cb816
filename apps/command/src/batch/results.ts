/** The growing table of a batch: a row is on disk as soon as its case is done, so a stop loses nothing. */
import { existsSync } from 'node:fs';
import { appendFile, readFile } from 'node:fs/promises';
import { onDisk, writeWhole } from '@standfast/casefile/node';
import { InputFault } from '@standfast/engine';
import { csvLine, csvRows } from './csv.ts';
import { COLUMNS, type Row } from './row.ts';

/** What an earlier run found of a case: its cells as text, by column. */
export type EarlierRow = Record<(typeof COLUMNS)[number], string>;

/**
 * Reads the table of an earlier run; a row that was cut off by a crash is left out.
 * @returns rows by case, the last of each
 * @throws InputFault when the file holds something else, so that it is not overwritten
 */
export async function earlierResults(file: string): Promise<Map<string, EarlierRow>> {
  if (!existsSync(file)) return new Map();
  const text = await onDisk(file, () => readFile(file, 'utf8'));
  const [head, ...rows] = csvRows(text.replace(/^\uFEFF/, ''));
  if (text === '') return new Map();
  if (!head || head.join() !== COLUMNS.join()) {
    throw new InputFault(
      'this file is no table of a batch of this version, so it is not overwritten: name another with --out',
      file,
    );
  }
  return new Map(
    rows
      .filter((row) => row.length === COLUMNS.length)
      .map((row) => [
        row[0]!,
        Object.fromEntries(COLUMNS.map((column, i) => [column, row[i]!])) as EarlierRow,
      ]),
  );
}

/** Writes the table anew: its head and these rows. */
export async function startTable(file: string, rows: readonly (Row | EarlierRow)[]): Promise<void> {
  await onDisk(file, () => writeWhole(file, new TextEncoder().encode(tableText(rows))));
}

/** Adds one row at the end. */
export async function appendRow(file: string, row: Row): Promise<void> {
  await onDisk(file, () => appendFile(file, line(row)));
}

function tableText(rows: readonly (Row | EarlierRow)[]): string {
  return csvLine(COLUMNS) + rows.map(line).join('');
}

const line = (row: Row | EarlierRow) => csvLine(COLUMNS.map((column) => row[column]));
