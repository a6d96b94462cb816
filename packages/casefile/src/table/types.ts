/**
 * What a table of readings is taken to be. A `TableGuess` is plain data: it is shown, corrected by a person, and then
 * read exactly as it says by `readTable`.
 */
import type { Trace } from '@standfast/engine';

export const ENCODINGS = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const;
export type Encoding = (typeof ENCODINGS)[number];

/** `' '` stands for any run of spaces; `''` for a table of one column. */
export const DELIMITERS = [',', ';', '\t', '|', ' ', ''] as const;
export type Delimiter = (typeof DELIMITERS)[number];

export type DecimalSign = '.' | ',';

/** `''` where the table groups no thousands. `' '` also covers the no-break spaces. */
export const THOUSANDS_SIGNS = ['', ',', '.', ' ', "'"] as const;
export type ThousandsSign = (typeof THOUSANDS_SIGNS)[number];

export const DEPTH_UNITS = ['mm', 'cm', 'm', 'inch'] as const;
export type DepthUnit = (typeof DEPTH_UNITS)[number];

/** `percent` of full scale; `fraction` of full scale, 0 to 1; `counts` of a converter, with their full scale. */
export const RESISTANCE_UNITS = ['percent', 'fraction', 'counts'] as const;
export type ResistanceUnit = (typeof RESISTANCE_UNITS)[number];

/**
 * What a column is.
 * - `depth`: along the needle, in `unit`.
 * - `index`: a running number; the depth is its place times the step.
 * - `resistance`: in `unit`; each one is a drilling of its own, named by `label`. Its depth is the nearest `depth`
 *   or `index` column to its left, else the first there is, else the step.
 * - `feed`: belongs to the nearest resistance column to its left, else the first.
 * - `drilling`: names the drilling that the row belongs to; rows of one name are one trace.
 */
export type TableColumn =
  | { role: 'depth'; title: string; unit: DepthUnit }
  | { role: 'index'; title: string }
  | { role: 'resistance'; title: string; label: string; unit: 'percent' | 'fraction' }
  | { role: 'resistance'; title: string; label: string; unit: 'counts'; fullScale: number }
  | { role: 'feed'; title: string }
  | { role: 'drilling'; title: string }
  | { role: 'ignore'; title: string };

export type ColumnRole = TableColumn['role'];

/** Something the table does not settle: a person should look. */
export interface TableQuestion {
  about:
    | 'decimal sign'
    | 'delimiter'
    | 'depth unit'
    | 'resistance unit'
    | 'depth step'
    | 'columns'
    | 'order'
    | 'encoding'
    | 'sheet';
  text: string;
}

interface TableGuessCommon {
  name: string;
  /** Rows (lines of text, or rows of the sheet) before the header or the first numbers. */
  skipFirst: number;
  /** Whether the row after those names the columns. */
  hasHeader: boolean;
  /** Rows after the last numbers. */
  skipLast: number;
  columns: TableColumn[];
  /** Depth of the first row and step from row to row, mm, for traces without a depth column. */
  startMm: number;
  stepMm: number | null;
  /** The table runs from the deepest reading to the entry. */
  reversed: boolean;
  /** 0 to 1: how sure the guess is; below 0.7 a person should look before relying on it. */
  confidence: number;
  /** Why it was taken so, in words. */
  reasons: string[];
  questions: TableQuestion[];
  /** The first rows of each trace as they will be read. */
  preview: TracePreview[];
}

export interface TextGuess extends TableGuessCommon {
  kind: 'text';
  encoding: Encoding;
  delimiter: Delimiter;
  decimal: DecimalSign;
  thousands: ThousandsSign;
}

export interface WorkbookGuess extends TableGuessCommon {
  kind: 'xlsx';
  sheet: string;
  sheets: string[];
  /** For numbers that the sheet holds as text. */
  decimal: DecimalSign;
  thousands: ThousandsSign;
}

export type TableGuess = TextGuess | WorkbookGuess;

/** The first readings of a trace, as numbers in mm and percent, and the cells they came from. */
export interface TracePreview {
  label: string;
  rows: { row: number; cells: string[]; depthMm: number; resistancePct: number; feed?: number }[];
  /** What is wrong with the first rows under this guess, if anything. */
  fault: string | null;
}

/** A trace out of a table, with the name its column or rows gave it. */
export interface TableTrace {
  label: string;
  trace: Trace;
}
