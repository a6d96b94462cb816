/**
 * How a text parts its columns and writes its numbers: every combination is tried on the first rows, and the one under
 * which the table makes most sense is taken. Combinations that make as much sense are told, not hidden.
 */
import { columnShape } from './columnShape.ts';
import { type NumberFormat, numberReader } from './numbers.ts';
import { cellsOf } from './rows.ts';
import { DELIMITERS, type Delimiter, type TableQuestion, THOUSANDS_SIGNS } from './types.ts';

/** Grouped thousands are taken only where they are needed. */
const THOUSANDS_COST = 0.004;
/** Two delimiters whose scores are closer than this are both told. */
const NEAR_TIE = 0.1;

export interface TextFormat extends NumberFormat {
  delimiter: Delimiter;
}

interface Candidate extends TextFormat {
  score: number;
  /** Every cell that holds something in rows with numbers is a number. */
  clean: boolean;
  /** Whole numbers with a zero in front, as the decimals of a number cut in two have. */
  splitsDecimals: boolean;
  values: (number | null)[];
  cells: string[];
}

/**
 * The format of a text, and what could be taken otherwise.
 *
 * @param lines the lines with readings for the most part, no blanks, no comments.
 * @param opening the first lines of the text, among them the header if there is one.
 */
export function guessFormat(
  lines: readonly string[],
  opening: readonly string[],
): {
  format: TextFormat;
  questions: TableQuestion[];
  reasons: string[];
} {
  const candidates = DELIMITERS.flatMap((delimiter) => {
    const rows = lines.map((line) => cellsOf(line, delimiter));
    const first = opening.map((line) => cellsOf(line, delimiter));
    const readers = NUMBER_FORMATS.map((format) => ({ format, toNumber: numberReader(format) }));
    // One start for all formats, the earliest: a format must not look clean by leaving out what it cannot read.
    const starts = readers.map(({ toNumber }) => firstNumbers(rows, toNumber)).filter((start) => start >= 0);
    const body = rows.slice(Math.min(...starts, rows.length) % rows.length);
    return readers.map(({ format, toNumber }) => judge(body, first, delimiter, format, toNumber));
  });
  let best = candidates[0]!;
  for (const candidate of candidates) if (candidate.score > best.score + 1e-9) best = candidate;
  return { format: formatOf(best), questions: questionsOn(best, candidates), reasons: reasonsFor(best) };
}

function formatOf({ delimiter, decimal, thousands }: Candidate): TextFormat {
  return { delimiter, decimal, thousands };
}

/** Any sign may stand in a number, the delimiter's own too: a cell that holds it is quoted. */
const NUMBER_FORMATS: NumberFormat[] = (['.', ','] as const).flatMap((decimal) =>
  THOUSANDS_SIGNS.filter((sign) => sign !== decimal).map((thousands) => ({ decimal, thousands })),
);

/** How much sense the rows make: the same number of cells in each, cells that are numbers, a column like a depth. */
function judge(
  rows: readonly string[][],
  opening: readonly string[][],
  delimiter: Delimiter,
  format: NumberFormat,
  toNumber: (text: string) => number | null,
): Candidate {
  const numbers = rows.map((cells) => cells.map(toNumber));
  const withNumbers = rows.flatMap((cells, i) =>
    numbers[i]!.some((value) => value !== null) ? [{ cells, i }] : [],
  );
  const candidate: Candidate = {
    ...format,
    delimiter,
    score: 0,
    clean: false,
    splitsDecimals: false,
    values: [],
    cells: [],
  };
  if (withNumbers.length === 0) return candidate;
  const width = mostCommon(withNumbers.map(({ cells }) => cells.length));
  // A delimiter that is not there parts nothing: that is the table of one column.
  if (width === 1 && delimiter !== '') return candidate;
  let filled = 0;
  let numeric = 0;
  let fitting = 0;
  for (const { cells, i } of withNumbers) {
    if (cells.length === width) fitting++;
    cells.forEach((cell, c) => {
      if (cell === '') return;
      filled++;
      if (numbers[i]![c] !== null) numeric++;
    });
  }
  const body = withNumbers.filter(({ cells }) => cells.length === width);
  candidate.values = body.flatMap(({ i }) => numbers[i]!);
  candidate.cells = body.flatMap(({ cells }) => cells);
  candidate.splitsDecimals = candidate.cells.some((cell) => /^0\d/.test(cell));
  candidate.clean = candidate.values.every((value, k) => value !== null || candidate.cells[k] === '');
  const shapes = Array.from({ length: width }, (_, c) =>
    columnShape(
      body.map(({ i }) => numbers[i]![c] ?? null),
      body.filter(({ cells }) => cells[c] !== '').length,
    ),
  );
  const depth = shapes.find(({ direction, numericShare }) => direction !== 0 && numericShare > 0.9);
  const readings = shapes.filter((shape) => shape !== depth && shape.values.length > 0);
  candidate.score =
    (withNumbers.length / rows.length) * (fitting / withNumbers.length) * (numeric / filled) +
    (candidate.clean ? 0.02 : 0) +
    (depth ? 0.15 : 0) +
    (width > 1 ? 0.05 : 0) +
    headerFit(opening, width, toNumber) -
    (format.thousands === '' ? 0 : THOUSANDS_COST) -
    (candidate.splitsDecimals ? 0.2 : 0) +
    // Needles are 300 to 1000 mm long and are read every 0.01 to 2 mm; readings are mostly percent.
    (depth && depth.step <= 5 && depth.most <= 2000 ? 0.04 : 0) +
    (readings.length > 0 && readings.every(({ most }) => most <= 105) ? 0.02 : 0);
  return candidate;
}

/** Where the first two rows on end stand that hold nothing but numbers; -1 where there are none. */
function firstNumbers(rows: readonly string[][], toNumber: (text: string) => number | null): number {
  const pure = rows.map((cells) => cells.every((cell) => cell === '' || toNumber(cell) !== null));
  return pure.findIndex((each, i) => each && pure[i + 1]);
}

/** A header with as many words as there are columns speaks for them, another number of words against. */
function headerFit(
  opening: readonly string[][],
  width: number,
  toNumber: (text: string) => number | null,
): number {
  const first = opening.findIndex(
    (cells) => cells.length === width && cells.some((cell) => toNumber(cell) !== null),
  );
  const header = opening[first - 1];
  if (!header) return 0;
  return header.length === width ? 0.06 : -0.06;
}

function mostCommon(numbers: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const number of numbers) counts.set(number, (counts.get(number) ?? 0) + 1);
  return [...counts].reduce((best, entry) => (entry[1] > best[1] ? entry : best))[0];
}

function questionsOn(best: Candidate, candidates: readonly Candidate[]): TableQuestion[] {
  const questions: TableQuestion[] = [];
  const otherNumbers = candidates.find(
    (other) =>
      other !== best &&
      other.delimiter === best.delimiter &&
      other.clean === best.clean &&
      other.values.length === best.values.length &&
      other.values.some((value, i) => value !== best.values[i]) &&
      other.values.every((value, i) => (value === null) === (best.values[i] === null)),
  );
  if (otherNumbers) {
    const at = otherNumbers.values.findIndex((value, i) => value !== best.values[i]);
    questions.push({
      about: 'decimal sign',
      text: `${JSON.stringify(best.cells[at])} is read as ${best.values[at]}, but could be ${otherNumbers.values[at]}: every number in the table fits both. Say which sign is the decimal sign.`,
    });
  }
  const otherDelimiter = candidates
    .filter(
      (other) =>
        other.delimiter !== best.delimiter &&
        other.clean &&
        other.score > best.score - NEAR_TIE &&
        (other.values.length !== best.values.length ||
          other.values.some((value, i) => value !== best.values[i])),
    )
    .sort((a, b) => b.score - a.score)[0];
  if (otherDelimiter) {
    questions.push({
      about: 'delimiter',
      text: `columns are taken as parted by ${NAMES[best.delimiter]}, but could be by ${NAMES[otherDelimiter.delimiter]}.`,
    });
  }
  if (best.splitsDecimals && best.delimiter === ',') {
    questions.push({
      about: 'delimiter',
      text: 'commas seem to stand both between columns and inside numbers: export the table again with semicolons between columns.',
    });
  }
  return questions;
}

const NAMES: Record<Delimiter, string> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'bars',
  ' ': 'spaces',
  '': 'nothing (one column)',
};

function reasonsFor(best: Candidate): string[] {
  const reasons = [
    best.delimiter === '' ? 'Each line holds one value.' : `Columns are parted by ${NAMES[best.delimiter]}.`,
  ];
  if (best.cells.some((cell) => /[.,]/.test(cell))) {
    const sign = best.decimal === ',' ? 'comma' : 'point';
    const grouped = best.thousands === '' ? '' : `, and ${JSON.stringify(best.thousands)} parts thousands`;
    reasons.push(`The decimal sign is a ${sign}${grouped}.`);
  }
  return reasons;
}
