/**
 * The doors for reading a table as a guess says.
 */
import { checkTrace, InputFault, type Notice } from '@standfast/engine';
import { traceNotices } from '../trace/traceNotices.ts';
import { readRows } from './readRows.ts';
import type { Cell, TableRow } from './rows.ts';
import { bodyRows, type LoadedTable, loadTable } from './source.ts';
import type { TableGuess, TableTrace, TracePreview } from './types.ts';

/** Readings shown of each trace. */
const PREVIEW_ROWS = 8;

/**
 * Reads the traces of a table, doing exactly what the guess says. What it cannot read it refuses: nothing is left
 * out, filled in or put in order beyond what the guess says.
 *
 * @throws InputFault with file, row and column, and what to do.
 */
export async function readTable(
  bytes: Uint8Array,
  guess: TableGuess,
): Promise<{ traces: TableTrace[]; notices: Notice[] }> {
  const table = await loadTable(bytes, guess);
  const traces = readRows(bodyRows(table, guess), guess).map(({ label, trace }) => ({ label, trace }));
  const notices = traces.flatMap(({ label, trace }) => {
    try {
      checkTrace(trace, label);
    } catch (error) {
      if (!(error instanceof InputFault)) throw error;
      return [{ severity: 'serious' as const, where: label, text: error.what }];
    }
    return traceNotices(trace, label);
  });
  return { traces, notices };
}

/** The first readings of each trace as `readTable` will read them, for a guess that a person has corrected. */
export async function previewTable(bytes: Uint8Array, guess: TableGuess): Promise<TracePreview[]> {
  try {
    return previewOf(await loadTable(bytes, guess), guess);
  } catch (error) {
    if (!(error instanceof InputFault)) throw error;
    return [{ label: '', rows: [], fault: error.message }];
  }
}

/** The preview of a table already opened. */
export function previewOf(table: LoadedTable, guess: TableGuess): TracePreview[] {
  try {
    // Only the whole table tells the depth of a reversed one.
    const most = guess.reversed ? Infinity : PREVIEW_ROWS;
    const traces = readRows(bodyRows(table, guess), guess, most);
    const cells = cellsByRow(
      table,
      guess,
      new Set(traces.flatMap(({ rows }) => [...rows.slice(0, PREVIEW_ROWS)])),
    );
    return traces.map(({ label, trace, rows }) => ({
      label,
      fault: null,
      rows: [...rows.slice(0, PREVIEW_ROWS)].map((row, i) => ({
        row,
        cells: cells.get(row)?.map(shownCell) ?? [],
        depthMm: trace.depthMm[i]!,
        resistancePct: trace.resistancePct[i]!,
        ...(trace.feed ? { feed: trace.feed[i]! } : {}),
      })),
    }));
  } catch (error) {
    if (!(error instanceof InputFault)) throw error;
    return [{ label: '', rows: [], fault: error.message }];
  }
}

function cellsByRow(table: LoadedTable, guess: TableGuess, wanted: ReadonlySet<number>): Map<number, Cell[]> {
  const found = new Map<number, Cell[]>();
  for (const { row, cells } of bodyRows(table, guess) as Iterable<TableRow>) {
    if (wanted.has(row)) found.set(row, cells);
    if (found.size === wanted.size) break;
  }
  return found;
}

function shownCell(cell: Cell): string {
  if (cell === null) return '';
  return cell instanceof Date ? cell.toISOString().slice(0, 10) : String(cell);
}
