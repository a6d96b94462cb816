/**
 * What a table of readings probably is, as plain data to show, correct and read.
 */
import { InputFault } from '@standfast/engine';
import { decodeText, guessEncoding } from './encoding.ts';
import { type ColumnsGuess, guessColumns } from './guessColumns.ts';
import { guessFormat } from './guessFormat.ts';
import { roleInWords } from './headerWords.ts';
import { numberReader } from './numbers.ts';
import { previewOf } from './readTable.ts';
import { type Cell, cellsOf, isSilent, linesOf, type TableRow } from './rows.ts';
import { isBlankCell, type LoadedTable, sheetRows } from './source.ts';
import type { TableGuess, TableQuestion, TextGuess, WorkbookGuess } from './types.ts';
import { looksLikeWorkbook, readWorkbook, type Sheet } from './workbook.ts';

/** Rows looked at from the start, and lines from the end. */
const HEAD_ROWS = 3000;
const TAIL_LINES = 60;
const BULK_LINES = 250;
/** Characters that surely hold the last lines. */
const TAIL_CHARACTERS = 64 * 1024;

/** What each kind of open question takes off the confidence. */
const DOUBT: Partial<Record<TableQuestion['about'], number>> = {
  'decimal sign': 0.4,
  delimiter: 0.3,
  encoding: 0.05,
  sheet: 0.35,
};

/**
 * Looks at a table and says how it would be read. Nothing is decided in secret: what the table does not settle is
 * among the guess's `questions`, and takes from its confidence.
 *
 * @param name the file's name, for messages.
 * @throws InputFault when the file is empty or no table at all.
 */
export async function guessTable(bytes: Uint8Array, name: string): Promise<TableGuess> {
  if (bytes.length === 0) throw new InputFault('the file is empty: export the table again', name);
  return looksLikeWorkbook(bytes) ? guessWorkbook(bytes, name) : guessText(bytes, name);
}

function guessText(bytes: Uint8Array, name: string): TextGuess {
  const { encoding, sure } = guessEncoding(bytes);
  const text = decodeText(bytes, encoding, name);
  if (text.slice(0, 4096).includes('\0')) {
    throw new InputFault('this is no table: give a text table (CSV) or an .xlsx workbook', name);
  }
  const head: { row: number; line: string }[] = [];
  const comments: string[] = [];
  for (const { row, line } of linesOf(text)) {
    if (isSilent(line)) comments.push(line);
    else head.push({ row, line });
    if (head.length >= HEAD_ROWS) break;
  }
  if (head.length === 0) throw new InputFault('the table is empty: export it again', name);
  const tail = lastLines(text);
  const { format, questions, reasons } = guessFormat(
    bulk(
      head.map(({ line }) => line),
      head.length < HEAD_ROWS ? [] : tail,
    ),
    head.slice(0, 40).map(({ line }) => line),
  );
  const toNumber = textNumbers(format);
  const rows = head.map(({ row, line }) => ({ row, cells: cellsOf(line, format.delimiter) }));
  if (!sure)
    questions.push({ about: 'encoding', text: 'the letters are taken as Western European (Windows).' });
  const skipLast = rowsAfterNumbers(
    tail.map((line) => (isSilent(line) ? null : cellsOf(line, format.delimiter))),
    toNumber,
  );
  const common = guessRows(
    rows,
    toNumber,
    skipLast,
    [...comments, ...head.slice(0, 40).map(({ line }) => line)],
    name,
    {
      questions,
      reasons,
    },
  );
  const guess: TextGuess = { kind: 'text', encoding, ...format, ...common };
  return withPreview(guess, { kind: 'text', text });
}

async function guessWorkbook(bytes: Uint8Array, name: string): Promise<WorkbookGuess> {
  const sheets = await readWorkbook(bytes, name);
  const counts = sheets.map(countOfNumbers);
  const most = Math.max(0, ...counts);
  const sheet = sheets[counts.indexOf(most)];
  if (!sheet || most === 0)
    throw new InputFault('no sheet of the workbook holds numbers: give another', name);
  const questions: TableQuestion[] = [];
  if (counts.filter((count) => count > most / 4).length > 1) {
    questions.push({
      about: 'sheet',
      text: `the sheet ${JSON.stringify(sheet.name)} is taken; others hold numbers too (${sheets
        .filter((other, i) => other !== sheet && counts[i]! > most / 4)
        .map((other) => other.name)
        .join(', ')}).`,
    });
  }
  const all = [...sheetRows(sheet)];
  const rows = all.filter((row) => row !== null).slice(0, HEAD_ROWS);
  // Numbers that the sheet holds as text follow the sign that more of them fit.
  const texts = rows.flatMap(({ cells }) => cells.filter((cell) => typeof cell === 'string'));
  const fits = (decimal: '.' | ',') => {
    const read = numberReader({ decimal, thousands: '' });
    return texts.filter((cell) => read(cell) !== null).length;
  };
  const format = { decimal: fits(',') > fits('.') ? (',' as const) : ('.' as const), thousands: '' as const };
  const toNumber = textNumbers(format);
  const skipLast = rowsAfterNumbers(
    all.slice(-TAIL_LINES).map((row) => row?.cells ?? null),
    toNumber,
  );
  const first = rows.slice(0, 40).map(({ cells }) => cells.map((cell) => String(cell ?? '')).join(' '));
  const common = guessRows(rows, toNumber, skipLast, first, name, {
    questions,
    reasons: [`The sheet ${JSON.stringify(sheet.name)} of the workbook is read.`],
  });
  const guess: WorkbookGuess = {
    kind: 'xlsx',
    sheet: sheet.name,
    sheets: sheets.map((each) => each.name),
    ...format,
    ...common,
  };
  return withPreview(guess, { kind: 'xlsx', sheets });
}

function withPreview<G extends TableGuess>(guess: G, table: LoadedTable): G {
  return { ...guess, preview: previewOf(table, guess) };
}

function countOfNumbers(sheet: Sheet): number {
  const asText = (['.', ','] as const).map((decimal) => numberReader({ decimal, thousands: '' }));
  const isNumber = (cell: Cell) =>
    typeof cell === 'number' || (typeof cell === 'string' && asText.some((read) => read(cell) !== null));
  return sheet.rows.reduce((sum, cells) => sum + cells.filter(isNumber).length, 0);
}

function textNumbers(format: Parameters<typeof numberReader>[0]): (cell: Cell | undefined) => number | null {
  const read = numberReader(format);
  return (cell) => {
    if (typeof cell === 'number') return cell;
    return typeof cell === 'string' ? read(cell) : null;
  };
}

/** The last lines, the first of them whole. */
function lastLines(text: string): string[] {
  const cut = text.length > TAIL_CHARACTERS;
  const lines = [...linesOf(cut ? text.slice(-TAIL_CHARACTERS) : text)].map(({ line }) => line);
  return (cut ? lines.slice(1) : lines).slice(-TAIL_LINES);
}

/** Lines from the start, where small depths stand, and from the end, where large ones and their thousands do. */
function bulk(head: readonly string[], tail: readonly string[]): string[] {
  const some =
    head.length > 2 * BULK_LINES ? [...head.slice(0, BULK_LINES), ...head.slice(-BULK_LINES)] : head;
  return [...some, ...tail.filter((line) => !isSilent(line))];
}

/** How many rows at the end hold no number at all; blank rows alone count for nothing. */
function rowsAfterNumbers(
  tail: readonly (readonly Cell[] | null)[],
  toNumber: (cell: Cell | undefined) => number | null,
): number {
  const last = tail.findLastIndex((cells) => cells?.some((cell) => toNumber(cell) !== null));
  const after = tail.slice(last + 1);
  return last < 0 || after.every((cells) => cells === null) ? 0 : after.length;
}

type Common = Omit<TextGuess, 'kind' | 'encoding' | 'delimiter' | 'decimal' | 'thousands'>;

function guessRows(
  rows: readonly TableRow[],
  toNumber: (cell: Cell | undefined) => number | null,
  skipLast: number,
  words: readonly string[],
  name: string,
  found: { questions: TableQuestion[]; reasons: string[] },
): Common {
  const first = firstOfBody(rows, toNumber);
  if (first < 0) throw new InputFault('the table holds no rows of numbers: is this the right file?', name);
  const body = rows.slice(first).filter(({ cells }) => cells.some((cell) => toNumber(cell) !== null));
  const header = headerBefore(rows, first, toNumber);
  const width = Math.max(header?.cells.length ?? 0, ...body.map(({ cells }) => cells.length));
  const titles = Array.from({ length: width }, (_, c) => titleOf(header?.cells[c]));
  const columns = guessColumns(
    titles,
    body.map(({ cells }) => cells),
    toNumber,
  );
  const start = header ?? rows[first]!;
  const reasons = [...found.reasons];
  if (header) reasons.push(`Row ${header.row} names the columns.`);
  else reasons.push('No row names the columns.');
  if (start.row > 1 && rows[0]!.row < start.row)
    reasons.push(`The ${start.row - 1} rows before it are left out.`);
  if (skipLast > 0) reasons.push(`The last ${skipLast} rows hold no numbers and are left out.`);
  const questions = [...found.questions, ...columns.questions];
  const before = header ? undefined : rows[first - 1];
  const leftOut = before?.cells.length === width && before.cells.some((cell) => toNumber(cell) !== null);
  if (before && leftOut) {
    questions.push({
      about: 'columns',
      text: `row ${before.row} holds a number, but is left out because the rest of it is none: does the table begin there?`,
    });
  }
  const step = stepFor(columns, words, reasons, questions);
  const doubt =
    columns.doubt +
    (leftOut ? 0.35 : 0) +
    questions.reduce((sum, { about }) => sum + (DOUBT[about] ?? 0), 0) +
    (columns.needsStep ? (step === null ? 0.8 : 0.1) : 0);
  return {
    name,
    skipFirst: start.row - 1,
    hasHeader: header !== null,
    skipLast,
    columns: columns.columns,
    startMm: 0,
    stepMm: step,
    reversed: columns.reversed,
    confidence: Math.round(100 * Math.max(0, Math.min(1, 1 - doubt))) / 100,
    reasons: [...reasons, ...columns.reasons],
    questions,
    preview: [],
  };
}

/** The first of two rows on end that look like the bulk of the table: as many cells, numbers in the same columns. */
function firstOfBody(rows: readonly TableRow[], toNumber: (cell: Cell | undefined) => number | null): number {
  const signs = rows.map(({ cells }) =>
    cells.map((cell) => (isBlankCell(cell) ? '-' : toNumber(cell) === null ? 't' : 'n')).join(''),
  );
  const counts = new Map<string, number>();
  for (const sign of signs) if (sign.includes('n')) counts.set(sign, (counts.get(sign) ?? 0) + 1);
  const usual = [...counts].reduce((best, entry) => (entry[1] > best[1] ? entry : best), ['', 0])[0];
  const numbersIn = usual.split('').flatMap((sign, c) => (sign === 'n' ? [c] : []));
  const fits = (sign: string) => {
    const cells = numbersIn.map((c) => sign[c] ?? '-');
    return cells.includes('n') && !cells.includes('t');
  };
  return signs.findIndex((sign, i) => fits(sign) && (i + 1 >= signs.length || fits(signs[i + 1]!)));
}

/** The row before the first readings, when it holds words and as many of them as a header would. */
function headerBefore(
  rows: readonly TableRow[],
  first: number,
  toNumber: (cell: Cell | undefined) => number | null,
): TableRow | null {
  const before = rows[first - 1];
  if (!before) return null;
  const filled = before.cells.filter((cell) => !isBlankCell(cell));
  const wide = rows[first]!.cells.length;
  const enough = filled.length >= Math.min(2, wide);
  const words = filled.filter((cell) => toNumber(cell) === null);
  // Drillings may be called 1, 2, 3; then at least one title says what its column is.
  const isHeader = words.length === filled.length || words.some((cell) => roleInWords(String(cell)) !== null);
  return enough && isHeader ? before : null;
}

function titleOf(cell: Cell | undefined): string {
  return isBlankCell(cell) ? '' : String(cell).trim();
}

/** A step that the words around the table give, in mm; asked for otherwise. */
function stepFor(
  { needsStep }: ColumnsGuess,
  words: readonly string[],
  reasons: string[],
  questions: TableQuestion[],
): number | null {
  if (!needsStep) return null;
  for (const line of words) {
    const said = /(?:step|spacing|interval|schritt\w*|pas)\D{0,12}?(\d+(?:[.,]\d+)?)\s*mm\b/i.exec(line)?.[1];
    const step = said === undefined ? 0 : Number(said.replace(',', '.'));
    if (step > 0) {
      reasons.push(`The step of ${step} mm stands in the words around the table.`);
      return step;
    }
  }
  questions.push({
    about: 'depth step',
    text: 'there is no depth column: say how far apart the readings are, in mm.',
  });
  return null;
}
