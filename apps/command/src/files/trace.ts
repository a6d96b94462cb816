/** The trace in a table: the standard one as it stands, any other by a guess that is told. */
import {
  guessTable,
  readTable,
  readTraceTable,
  type TableColumn,
  type TableGuess,
} from '@standfast/casefile';
import { InputFault, type Trace } from '@standfast/engine';

/** Below this a guess is shown and refused instead of relied on. */
const SURE_ENOUGH = 0.7;
/** As much of a table as holds its comments and header, bytes. */
const HEAD_BYTES = 64 * 1024;

/**
 * @param drilling label of the drilling wanted, where a table holds several
 * @throws InputFault when the table is broken, cannot be guessed surely, or holds several drillings and none is named
 */
export async function traceOf(bytes: Uint8Array, file: string, drilling?: string): Promise<Trace> {
  if (isStandard(bytes)) return readTraceTable(bytes, file);
  const guess = await guessTable(bytes, file);
  if (guess.confidence < SURE_ENOUGH) {
    throw new InputFault(
      `this is no standard trace table (header depth_mm,resistance), and it is not certain how to read it:\n${described(guess)}\nGive the table that header, or import it in the app, where the reading can be corrected`,
      file,
    );
  }
  const { traces, notices } = await readTable(bytes, guess);
  const labels = traces.map(({ label }) => label);
  const chosen = drilling === undefined ? traces[0] : traces.find(({ label }) => label === drilling);
  if (!chosen) {
    throw new InputFault(
      drilling === undefined
        ? 'this table holds no drilling'
        : `there is no drilling "${drilling}" in it; there are ${labels.join(', ')}`,
      file,
    );
  }
  if (drilling === undefined && traces.length > 1) {
    throw new InputFault(
      `this table holds ${traces.length} drillings (${labels.join(', ')}): name one with --drilling`,
      file,
    );
  }
  process.stderr.write(
    `standfast: ${file} is no standard trace table. It was read so:\n${described(guess)}\n`,
  );
  for (const { text } of notices) process.stderr.write(`  ${text}\n`);
  return chosen.trace;
}

/** Whether the first line that is no comment is the standard header, so that its faults are told as they are. */
function isStandard(bytes: Uint8Array): boolean {
  const head = new TextDecoder().decode(bytes.subarray(0, HEAD_BYTES)).replace(/^\uFEFF/, '');
  const first = head
    .split(/\r\n|\r|\n/)
    .find((line) => line.trim() !== '' && !line.trimStart().startsWith('#'));
  if (first === undefined) return true;
  const names = first.split(',').map((name) => name.trim().replace(/^"|"$/g, '').toLowerCase());
  return names.includes('depth_mm') && names.includes('resistance');
}

const DELIMITER_NAMES: Record<string, string> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'bars',
  ' ': 'spaces',
  '': 'one column',
};

/** A guess in words, a line each. */
function described(guess: TableGuess): string {
  const lines = [
    guess.kind === 'text'
      ? `columns parted by ${DELIMITER_NAMES[guess.delimiter]}, decimal sign "${guess.decimal}", ${guess.encoding}`
      : `workbook, sheet "${guess.sheet}"`,
    ...guess.columns.map((column, i) => `column ${i + 1} "${column.title}": ${columnMeaning(column)}`),
    ...guess.questions.map(({ text }) => `unsettled: ${text}`),
    `sure to ${Math.round(guess.confidence * 100)} %`,
  ];
  return lines.map((line) => `  ${line}`).join('\n');
}

function columnMeaning(column: TableColumn): string {
  switch (column.role) {
    case 'depth':
      return `depth in ${column.unit}`;
    case 'resistance':
      return column.unit === 'counts'
        ? `resistance in counts of ${column.fullScale}`
        : `resistance in ${column.unit}`;
    case 'index':
      return 'running number';
    case 'feed':
      return 'feed';
    case 'drilling':
      return 'name of the drilling';
    case 'ignore':
      return 'left out';
  }
}
