/**
 * Rows of cells out of a text, one at a time, with their line numbers.
 */
import Papa from 'papaparse';
import type { Delimiter } from './types.ts';

/** A cell as read: workbooks hold numbers, texts hold text. */
export type Cell = string | number | boolean | Date | null;

/** A row that holds something, with its number in the file (from 1). */
export interface TableRow {
  row: number;
  cells: Cell[];
}

/** Every line of a text with its number from 1; line ends may be LF, CRLF or CR. */
export function* linesOf(text: string): Generator<{ row: number; line: string }> {
  let row = 1;
  let from = 0;
  // Texts with a carriage return alone as line end come from very old programs.
  const onlyReturns = !text.includes('\n');
  while (from < text.length) {
    let to = text.indexOf(onlyReturns ? '\r' : '\n', from);
    if (to < 0) to = text.length;
    const end = !onlyReturns && text.charCodeAt(to - 1) === 13 && to > from ? to - 1 : to;
    yield { row, line: text.slice(from, end) };
    from = to + 1;
    row++;
  }
}

/** Blank lines and comments hold no readings. */
export function isSilent(line: string): boolean {
  for (let i = 0; i < line.length; i++) {
    const code = line.charCodeAt(i);
    if (code === 35) return true;
    // A space, a tab, or a no-break space.
    if (code !== 32 && code !== 9 && code !== 160) return false;
  }
  return true;
}

/** The cells of a line, trimmed. A delimiter at the very end makes no further column. */
export function cellsOf(line: string, delimiter: Delimiter): string[] {
  let cells: string[];
  if (delimiter === '') cells = [line.replace(/^\s*"(.*)"\s*$/, '$1')];
  else if (delimiter === ' ') cells = line.trim().split(/[ \t]+/);
  else if (line.includes('"')) {
    cells = Papa.parse<string[]>(line, { delimiter, newline: '\n' }).data[0] ?? [];
  } else cells = line.split(delimiter);
  for (let i = 0; i < cells.length; i++) cells[i] = cells[i]!.trim();
  if (cells.length > 1 && cells.at(-1) === '') cells.pop();
  return cells;
}
