/** The growing table of a batch: a row is on disk as soon as its case is done, so a stop loses nothing. */
import { existsSync } from 'node:fs';
import { appendFile, readFile } from 'node:fs/promises';
import { csvLine } from '@standfast/casefile';
import { onDisk, writeWholeFrom } from '@standfast/casefile/node';
import { DEFAULT_DRAWS, DEFAULT_SEED, ENGINE_VERSION, InputFault } from '@standfast/engine';
import { csvRows } from './csv.ts';

/** What an earlier run found of a case: its cells as text, by column. */
export type EarlierRow<Column extends string> = Record<Column, string>;
type Cells<Column extends string> = Record<Column, string | number | null>;

/** A table with these columns, the first of which names the case. */
export function resultsTable<Column extends string>(
  columns: readonly Column[],
  what: string,
  option: string,
) {
  const line = (row: Cells<Column>) => csvLine(columns.map((column) => row[column]));
  function* lines(rows: readonly Cells<Column>[]) {
    yield csvLine(columns);
    for (const row of rows) yield line(row);
  }
  return {
    /**
     * Reads the table of an earlier run; a row that was cut off by a crash is left out.
     * @returns rows by case, the last of each
     * @throws InputFault when the file holds something else, so that it is not overwritten
     */
    async earlier(file: string): Promise<Map<string, EarlierRow<Column>>> {
      if (!existsSync(file)) return new Map();
      const text = await onDisk(file, () => readFile(file, 'utf8'));
      const [head, ...rows] = csvRows(text.replace(/^\uFEFF/, ''));
      if (text === '') return new Map();
      if (!head || head.join() !== columns.join()) {
        throw new InputFault(
          `this file is no table of a ${what} of this version, so it is not overwritten: name another with ${option}`,
          file,
        );
      }
      return new Map(
        rows
          .filter((row) => row.length === columns.length)
          .map((row) => [
            row[0]!,
            Object.fromEntries(columns.map((column, i) => [column, row[i]!])) as EarlierRow<Column>,
          ]),
      );
    },

    /** Writes the table anew: its head and these rows. */
    async start(file: string, rows: readonly Cells<Column>[]): Promise<void> {
      await onDisk(file, () => writeWholeFrom(file, lines(rows)));
    },

    /** Adds one row at the end. */
    async append(file: string, row: Cells<Column>): Promise<void> {
      await onDisk(file, () => appendFile(file, line(row)));
    },
  };
}

/** Whether an earlier row was assessed by this engine with these draws, so that only its content need be compared. */
export function isSameWay(
  row: EarlierRow<'status' | 'engineVersion' | 'seed' | 'draws'> | undefined,
  { seed, draws }: { seed?: number; draws?: number },
): boolean {
  return (
    row?.status === 'assessed' &&
    row.engineVersion === ENGINE_VERSION &&
    Number(row.seed) === (seed ?? DEFAULT_SEED) &&
    Number(row.draws) === (draws ?? DEFAULT_DRAWS)
  );
}
