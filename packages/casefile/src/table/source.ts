/**
 * A table opened for reading: the rows that hold readings, as a guess says where they are.
 */
import { InputFault } from '@standfast/engine';
import { decodeText } from './encoding.ts';
import { type Cell, cellsOf, isSilent, linesOf, type TableRow } from './rows.ts';
import type { TableGuess } from './types.ts';
import { readWorkbook, type Sheet } from './workbook.ts';

/** What a file holds: a text, or the sheets of a workbook. */
export type LoadedTable = { kind: 'text'; text: string } | { kind: 'xlsx'; sheets: Sheet[] };

/** Opens the bytes as the guess says. */
export async function loadTable(bytes: Uint8Array, guess: TableGuess): Promise<LoadedTable> {
  return guess.kind === 'text'
    ? { kind: 'text', text: decodeText(bytes, guess.encoding, guess.name) }
    : { kind: 'xlsx', sheets: await readWorkbook(bytes, guess.name) };
}

/** The rows with readings: after the header, before the rows left out at the end, without blank rows and comments. */
export function* bodyRows(table: LoadedTable, guess: TableGuess): Generator<TableRow> {
  let headerLeft = guess.hasHeader;
  for (const row of fileRows(table, guess)) {
    if (row === null) continue;
    if (headerLeft) headerLeft = false;
    else yield row;
  }
}

/** Every row between those left out at the start and at the end; null for one that holds nothing. */
function* fileRows(table: LoadedTable, guess: TableGuess): Generator<TableRow | null> {
  const held: (TableRow | null)[] = [];
  let seen = 0;
  for (const row of allRows(table, guess)) {
    if (seen++ < guess.skipFirst) continue;
    if (guess.skipLast <= 0) yield row;
    else {
      held.push(row);
      if (held.length > guess.skipLast) yield held.shift() as TableRow | null;
    }
  }
}

function* allRows(table: LoadedTable, guess: TableGuess): Generator<TableRow | null> {
  if (table.kind === 'text') {
    const delimiter = guess.kind === 'text' ? guess.delimiter : ',';
    for (const { row, line } of linesOf(table.text)) {
      yield isSilent(line) ? null : { row, cells: cellsOf(line, delimiter) };
    }
    return;
  }
  const name = guess.kind === 'xlsx' ? guess.sheet : '';
  const sheet = table.sheets.find((each) => each.name === name);
  if (!sheet) {
    throw new InputFault(
      `there is no sheet called ${JSON.stringify(name)}; there are ${table.sheets.map((each) => each.name).join(', ')}`,
      guess.name,
    );
  }
  yield* sheetRows(sheet);
}

/** The rows of a sheet, null for one that is blank or a comment. */
export function* sheetRows(sheet: Sheet): Generator<TableRow | null> {
  for (const [i, cells] of sheet.rows.entries()) {
    const first = cells.find((cell) => !isBlankCell(cell));
    const silent = first === undefined || (typeof first === 'string' && first.trimStart().startsWith('#'));
    yield silent ? null : { row: i + 1, cells };
  }
}

/** Nothing in it, or only spaces. */
export function isBlankCell(cell: Cell | undefined): boolean {
  return cell === null || cell === undefined || (typeof cell === 'string' && cell.trim() === '');
}
