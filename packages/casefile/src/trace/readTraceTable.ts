/**
 * The trace table: CSV with `#` comment lines, a header row `depth_mm,resistance`, and perhaps further columns, of
 * which `feed` is read. A scanner of its own, straight from bytes to arrays, so that ten million rows take seconds
 * and no more memory than their numbers.
 */
import { InputFault, type Trace } from '@standfast/engine';

const LF = 10;
const CR = 13;
const TAB = 9;
const SPACE = 32;
const QUOTE = 34;
const HASH = 35;
const PLUS = 43;
const COMMA = 44;
const MINUS = 45;
const POINT = 46;

/** Powers of ten that a double holds exactly, so that mantissa / power is correctly rounded (Clinger 1990). */
const POWERS_OF_TEN = Float64Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));
/** Digits that always fit a double exactly. */
const EXACT_DIGITS = 15;

export const TRACE_HEADER = 'depth_mm,resistance';

const COLUMN_NAMES = { depth: 'depth_mm', resistance: 'resistance', feed: 'feed' } as const;

/**
 * Reads a trace table.
 *
 * @param where the file's name for messages.
 * @returns depth in mm, strictly ascending; resistance in percent; feed where there is such a column.
 * @throws InputFault naming the row (counted as lines of the file, from 1) and what to do.
 */
export function readTraceTable(bytes: Uint8Array, where: string): Trace {
  const end = bytes.length;
  let at = startOfText(bytes, where);
  let row = 1;

  // Comments and blank lines, then the header.
  let header = '';
  while (at < end && header === '') {
    const lineEnd = endOfLine(bytes, at);
    if (bytes[at] !== HASH) header = textOf(bytes, at, lineEnd).trim();
    at = afterLine(bytes, lineEnd);
    row++;
  }
  if (header === '')
    throw new InputFault(`the table is empty: expected a header ${TRACE_HEADER} and rows`, where);
  const names = header.split(',').map((name) => unquoted(name).trim().toLowerCase());
  const depthColumn = column(names, COLUMN_NAMES.depth, header, where, row - 1);
  const resistanceColumn = column(names, COLUMN_NAMES.resistance, header, where, row - 1);
  const feedColumn = names.indexOf(COLUMN_NAMES.feed);
  const columns = names.length;

  const room = countLines(bytes, at);
  const depthMm = new Float64Array(room);
  const resistancePct = new Float64Array(room);
  const feed = feedColumn >= 0 ? new Float64Array(room) : undefined;
  let rows = 0;
  let lastDepth = -Infinity;

  for (; at < end; row++) {
    const first = bytes[at]!;
    if (first === HASH || first === LF || first === CR) {
      at = afterLine(bytes, endOfLine(bytes, at));
      continue;
    }
    if (isBlank(bytes, at)) {
      at = afterLine(bytes, endOfLine(bytes, at));
      continue;
    }
    for (let c = 0; c < columns; c++) {
      const wanted = c === depthColumn || c === resistanceColumn || c === feedColumn;
      const fieldStart = at;
      let value = 0;
      if (wanted) {
        // The usual number, in place: spaces, sign, digits, point, digits.
        while (bytes[at] === SPACE || bytes[at] === TAB) at++;
        const sign = bytes[at];
        if (sign === MINUS || sign === PLUS) at++;
        let mantissa = 0;
        let digits = 0;
        let decimals = 0;
        let digit = bytes[at]! - 48;
        while (digit >= 0 && digit <= 9) {
          mantissa = mantissa * 10 + digit;
          digits++;
          digit = bytes[++at]! - 48;
        }
        if (bytes[at] === POINT) {
          digit = bytes[++at]! - 48;
          while (digit >= 0 && digit <= 9) {
            mantissa = mantissa * 10 + digit;
            digits++;
            decimals++;
            digit = bytes[++at]! - 48;
          }
        }
        while (bytes[at] === SPACE || bytes[at] === TAB) at++;
        const next = bytes[at];
        const ended = next === COMMA || next === LF || next === CR || at >= end;
        if (ended && digits > 0 && digits <= EXACT_DIGITS) {
          value = mantissa / POWERS_OF_TEN[decimals]!;
          if (sign === MINUS) value = -value;
        } else {
          at = endOfField(bytes, fieldStart);
          value = slowNumber(textOf(bytes, fieldStart, at), names[c]!, where, row);
        }
      } else {
        at = endOfField(bytes, at);
      }
      const atComma = bytes[at] === COMMA;
      if (c < columns - 1) {
        if (!atComma) throw unevenRow(bytes, at, columns, c + 1, where, row);
        at++;
      } else if (atComma) {
        throw unevenRow(bytes, at, columns, columns + 1, where, row);
      }
      if (c === depthColumn) depthMm[rows] = value;
      else if (c === resistanceColumn) resistancePct[rows] = value;
      else if (feed && c === feedColumn) feed[rows] = value;
    }
    const depth = depthMm[rows]!;
    if (!(depth > lastDepth)) throw backwards(depth, lastDepth, where, row);
    lastDepth = depth;
    rows++;
    at = afterLine(bytes, at);
  }
  if (rows === 0)
    throw new InputFault('the table has a header but no rows: export the readings again', where);
  return {
    depthMm: depthMm.subarray(0, rows),
    resistancePct: resistancePct.subarray(0, rows),
    ...(feed ? { feed: feed.subarray(0, rows) } : {}),
  };
}

/** The first byte after a byte order mark; other encodings and binary files are told apart here. */
function startOfText(bytes: Uint8Array, where: string): number {
  if (bytes.length === 0) {
    throw new InputFault(`the file is empty: expected a header ${TRACE_HEADER} and rows`, where);
  }
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return 3;
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    throw new InputFault(
      'the file is UTF-16 text: save it as UTF-8, or bring it in through table import',
      where,
    );
  }
  if (bytes.subarray(0, 1024).includes(0)) {
    throw new InputFault('the file is not text: bring a spreadsheet in through table import', where);
  }
  return 0;
}

function column(names: string[], name: string, header: string, where: string, row: number): number {
  const found = names.indexOf(name);
  if (found < 0) {
    throw new InputFault(
      `the header should be ${TRACE_HEADER}, but is ${JSON.stringify(shortened(header))}: ` +
        'bring a table of another shape in through table import',
      `${where}: row ${row}`,
    );
  }
  if (names.indexOf(name, found + 1) >= 0) {
    throw new InputFault(`the header names ${name} twice: leave one`, `${where}: row ${row}`);
  }
  return found;
}

function endOfLine(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at < bytes.length && bytes[at] !== LF && bytes[at] !== CR) at++;
  return at;
}

/** The start of the next line, given the end of this one. */
function afterLine(bytes: Uint8Array, lineEnd: number): number {
  return bytes[lineEnd] === CR && bytes[lineEnd + 1] === LF ? lineEnd + 2 : lineEnd + 1;
}

function endOfField(bytes: Uint8Array, from: number): number {
  let at = from;
  while (bytes[at] === SPACE || bytes[at] === TAB) at++;
  if (bytes[at] === QUOTE) {
    at++;
    while (at < bytes.length && bytes[at] !== QUOTE && bytes[at] !== LF) at++;
  }
  while (at < bytes.length && bytes[at] !== COMMA && bytes[at] !== LF && bytes[at] !== CR) at++;
  return at;
}

function isBlank(bytes: Uint8Array, from: number): boolean {
  let at = from;
  while (bytes[at] === SPACE || bytes[at] === TAB) at++;
  return at >= bytes.length || bytes[at] === LF || bytes[at] === CR;
}

/** Most lines that the rest can have. */
function countLines(bytes: Uint8Array, from: number): number {
  let lines = 1;
  for (let at = from; at < bytes.length; at++) {
    const byte = bytes[at];
    if (byte === LF || (byte === CR && bytes[at + 1] !== LF)) lines++;
  }
  return lines;
}

/** Quoted numbers, exponents, very long numbers; and the fault when it is no number. */
function slowNumber(field: string, name: string, where: string, row: number): number {
  const text = unquoted(field).trim();
  const value = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(text) ? Number(text) : Number.NaN;
  if (Number.isFinite(value)) return value;
  const place = `${where}: row ${row}`;
  if (text === '') throw new InputFault(`${name} is blank: fill it in or remove the row`, place);
  if (/^[+-]?nan$/i.test(text)) {
    throw new InputFault(`${name} is NaN, not a number: correct or remove the row`, place);
  }
  throw new InputFault(
    `${name} is ${JSON.stringify(shortened(text))}, not a number: correct or remove the row`,
    place,
  );
}

function unevenRow(
  bytes: Uint8Array,
  at: number,
  columns: number,
  reached: number,
  where: string,
  row: number,
): InputFault {
  let found = reached;
  for (let i = at + 1; i < bytes.length && bytes[i] !== LF && bytes[i] !== CR; i++) {
    if (bytes[i] === COMMA) found++;
  }
  const comma =
    found === 2 * columns ? ' (a comma as decimal sign? then bring it in through table import)' : '';
  return new InputFault(
    `the row has ${found} ${found === 1 ? 'column' : 'columns'} where the header has ${columns}${comma}: correct or remove the row`,
    `${where}: row ${row}`,
  );
}

function backwards(depth: number, before: number, where: string, row: number): InputFault {
  const how = depth === before ? `repeats ${depth} mm` : `goes back from ${before} to ${depth} mm`;
  return new InputFault(
    `depth ${how}: depth must grow from row to row; sort the rows, remove repeats, or split the file where a second drilling begins`,
    `${where}: row ${row}`,
  );
}

function textOf(bytes: Uint8Array, from: number, to: number): string {
  return new TextDecoder().decode(bytes.subarray(from, to));
}

function unquoted(text: string): string {
  const trimmed = text.trim();
  return trimmed.length >= 2 && trimmed.startsWith('"') && trimmed.endsWith('"')
    ? trimmed.slice(1, -1)
    : trimmed;
}

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
