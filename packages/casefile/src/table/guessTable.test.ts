import { describe, expect, it } from 'vitest';
import { workbookOf } from '../testing/workbookOf.ts';
import { guessTable } from './guessTable.ts';
import { previewTable, readTable } from './readTable.ts';
import type { TableColumn, TableGuess, TextGuess } from './types.ts';

const encode = (text: string) => new TextEncoder().encode(text);
const comma = (text: string) => text.replace('.', ',');
const rows = (n: number, row: (i: number) => string) =>
  Array.from({ length: n }, (_, i) => row(i)).join('\n');
/** An invented trace: 0.5 mm steps, levels of two decimals. */
const depth = (i: number, step = 0.5) => (i * step).toFixed(step < 0.1 ? 3 : 2);
const level = (i: number) => (30 + 12 * Math.sin(i / 9)).toFixed(2);
const N = 400;

const roles = (guess: TableGuess) => guess.columns.map(({ role }) => role);
const about = (guess: TableGuess) => guess.questions.map((question) => question.about);

async function guessed(text: string): Promise<TextGuess> {
  const guess = await guessTable(encode(text), 'x.csv');
  if (guess.kind !== 'text') throw new Error('expected a text');
  return guess;
}

/** Guesses and reads; the trace must be the invented one, in mm and percent. */
async function readsAs(text: string, guess: TableGuess, traces = 1, n = N): Promise<void> {
  const read = await readTable(encode(text), guess);
  expect(read.traces).toHaveLength(traces);
  for (const { trace } of read.traces) {
    expect(trace.depthMm).toHaveLength(n);
    trace.depthMm.forEach((value, i) => {
      expect(value).toBeCloseTo(Number(depth(i)), 6);
    });
    trace.resistancePct.forEach((value, i) => {
      expect(value).toBeCloseTo(Number(level(i)), 6);
    });
  }
  // The preview shows what is read.
  guess.preview.forEach(({ label, fault, rows: shown }, t) => {
    const { trace } = read.traces[t]!;
    expect([label, fault]).toEqual([read.traces[t]!.label, null]);
    expect(shown.map(({ depthMm }) => depthMm)).toEqual([...trace.depthMm.slice(0, 8)]);
    expect(shown.map(({ resistancePct }) => resistancePct)).toEqual([...trace.resistancePct.slice(0, 8)]);
  });
}

describe('tables that settle everything', () => {
  it.each<[string, string, Partial<TextGuess>]>([
    [
      'semicolons and decimal commas, German words',
      `Tiefe (mm);Widerstand (%)\n${rows(N, (i) => `${comma(depth(i))};${comma(level(i))}`)}\n`,
      { delimiter: ';', decimal: ',', thousands: '', skipFirst: 0, hasHeader: true },
    ],
    [
      'tabs under a preamble',
      `Tree\t12\nWet day\n\ndepth mm\tresistance %\n${rows(N, (i) => `${depth(i)}\t${level(i)}`)}`,
      { delimiter: '\t', decimal: '.', skipFirst: 3, hasHeader: true },
    ],
    [
      'runs of spaces',
      `  depth_mm   resistance\n${rows(N, (i) => `  ${depth(i)}     ${level(i)}`)}`,
      { delimiter: ' ', decimal: '.' },
    ],
    ['bars', `depth_mm|resistance\n${rows(N, (i) => `${depth(i)}|${level(i)}`)}`, { delimiter: '|' }],
    [
      'quoted decimal commas between commas',
      `"depth mm","resistance"\n${rows(N, (i) => `"${comma(depth(i))}","${comma(level(i))}"`)}`,
      { delimiter: ',', decimal: ',' },
    ],
    [
      'inches',
      `depth (in),resistance\n${rows(N, (i) => `${(Number(depth(i)) / 25.4).toFixed(12)},${level(i)}`)}`,
      { delimiter: ',', decimal: '.' },
    ],
    [
      'centimetres, with rows after the numbers',
      `Depth [cm];Resistance\n${rows(N, (i) => `${(i * 0.05).toFixed(2)};${level(i)}`)}\n\nend of record\n`,
      { delimiter: ';', skipLast: 2 },
    ],
    [
      'metres',
      `depth m;resistance %\n${rows(N, (i) => `${(i * 0.0005).toFixed(4)};${level(i)}`)}`,
      { delimiter: ';' },
    ],
    [
      'further columns in another order',
      `time;resistance;note;depth mm\n${rows(N, (i) => `${i};${level(i)};x;${depth(i)}`)}`,
      { delimiter: ';' },
    ],
    [
      'deepest first',
      `depth mm;resistance\n${rows(N, (i) => `${depth(N - 1 - i)};${level(N - 1 - i)}`)}`,
      { reversed: true },
    ],
  ])('%s', async (_, text, expected) => {
    const guess = await guessed(text);
    expect(guess).toMatchObject(expected);
    expect(guess.questions).toEqual([]);
    expect(guess.confidence).toBeGreaterThanOrEqual(0.9);
    await readsAs(text, guess);
  });

  it('without a header, a little less sure', async () => {
    const text = rows(N, (i) => `${comma(depth(i))};${comma(level(i))}`);
    const guess = await guessed(text);
    expect(guess.hasHeader).toBe(false);
    expect(roles(guess)).toEqual(['depth', 'resistance']);
    expect(guess.confidence).toBeGreaterThanOrEqual(0.7);
    expect(guess.confidence).toBeLessThan(0.9);
    expect(guess.reasons.join(' ')).toContain('Column 1 grows from row to row, so it is the depth.');
    await readsAs(text, guess);
  });

  it('thousands that appear only far down', async () => {
    const n = 4000;
    const text = `depth mm;resistance\n${rows(n, (i) => `${(i * 0.5).toLocaleString('de-DE', { minimumFractionDigits: 2 })};${comma(level(i))}`)}`;
    const guess = await guessed(text);
    expect(guess).toMatchObject({ decimal: ',', thousands: '.' });
    await readsAs(text, guess, 1, n);
  });

  it('feed goes with its resistance', async () => {
    const text = `depth_mm;resistance;feed\n${rows(N, (i) => `${depth(i)};${level(i)};${i}`)}`;
    const { traces } = await readTable(encode(text), await guessed(text));
    expect([...traces[0]!.trace.feed!]).toEqual(Array.from({ length: N }, (_, i) => i));
  });
});

describe('several drillings in one table', () => {
  it('one depth column for all, some shorter', async () => {
    const text = `depth mm;D1;D2;D3\n${rows(N, (i) => `${depth(i)};${level(i)};${level(i + 5)};${i < 250 ? level(i + 9) : ''}`)}`;
    const guess = await guessed(text);
    const { traces } = await readTable(encode(text), guess);
    expect(traces.map(({ label, trace }) => [label, trace.depthMm.length])).toEqual([
      ['D1', N],
      ['D2', N],
      ['D3', 250],
    ]);
    expect(traces[2]!.trace.resistancePct[1]).toBe(Number(level(10)));
    expect(guess.preview.map(({ label }) => label)).toEqual(['D1', 'D2', 'D3']);
  });

  it('drillings called by numbers', async () => {
    const text = `depth mm;1;2;3\n${rows(N, (i) => `${depth(i)};${level(i)};${level(i)};${level(i)}`)}`;
    const guess = await guessed(text);
    expect(guess.columns.map((column) => ('label' in column ? column.label : ''))).toEqual([
      '',
      '1',
      '2',
      '3',
    ]);
    await readsAs(text, guess, 3);
  });

  it('a pair of columns for each', async () => {
    const text = `A depth mm;A resistance;B depth mm;B resistance\n${rows(N, (i) => `${depth(i)};${level(i)};${depth(i)};${level(i)}`)}`;
    const guess = await guessed(text);
    expect(guess.columns).toEqual([
      { role: 'depth', title: 'A depth mm', unit: 'mm' },
      { role: 'resistance', title: 'A resistance', label: 'A', unit: 'percent' },
      { role: 'depth', title: 'B depth mm', unit: 'mm' },
      { role: 'resistance', title: 'B resistance', label: 'B', unit: 'percent' },
    ]);
    await readsAs(text, guess, 2);
  });

  it('one below another, named in a column', async () => {
    const text = `hole;depth mm;resistance\n${rows(2 * N, (i) => `H${i < N ? 1 : 2};${depth(i % N)};${level(i % N)}`)}`;
    const guess = await guessed(text);
    expect(roles(guess)).toEqual(['drilling', 'depth', 'resistance']);
    expect(guess.preview.map(({ label }) => label)).toEqual(['H1', 'H2']);
    await readsAs(text, guess, 2);
  });

  it('one below another without names is asked about and refused', async () => {
    const text = `depth mm;resistance\n${rows(2 * N, (i) => `${depth(i % N)};${level(i % N)}`)}`;
    const guess = await guessed(text);
    expect(about(guess)).toContain('order');
    expect(guess.confidence).toBeLessThan(0.7);
    await expect(readTable(encode(text), guess)).rejects.toThrow(
      `x.csv: row ${N + 2}, column 1 (depth mm): depth goes back from 199.5 to 0 mm in drilling drilling: sort the rows, remove repeats, or split the table where a second drilling begins`,
    );
  });
});

describe('tables that leave something open', () => {
  it('1.000 is one or a thousand', async () => {
    const text = `depth;resistance\n${rows(N, (i) => `${(i + 1).toFixed(3)};${(20 + (i % 50)).toFixed(3)}`)}`;
    const guess = await guessed(text);
    expect(guess.decimal).toBe('.');
    expect(about(guess)).toEqual(['decimal sign']);
    expect(guess.questions[0]?.text).toMatch(/"\d+\.000" is read as \d+, but could be \d+000/);
    expect(guess.confidence).toBeLessThan(0.7);
    const { traces } = await readTable(encode(text), guess);
    expect(traces[0]!.trace.depthMm[0]).toBe(1);
    // Corrected by a person, it is read the other way, and the preview shows it.
    const other: TextGuess = { ...guess, decimal: ',', thousands: '.' };
    expect((await readTable(encode(text), other)).traces[0]!.trace.depthMm[0]).toBe(1000);
    expect((await previewTable(encode(text), other))[0]!.rows[0]!.depthMm).toBe(1000);
  });

  it('1,000 likewise', async () => {
    const text = `depth;resistance\n${rows(N, (i) => `${comma((i + 1).toFixed(3))};${comma((20 + (i % 50)).toFixed(3))}`)}`;
    const guess = await guessed(text);
    expect(guess.decimal).toBe(',');
    expect(about(guess)).toEqual(['decimal sign']);
  });

  it('0.100 settles it: no thousand begins with a zero', async () => {
    const text = `depth;resistance\n${rows(N, (i) => `${((i + 1) * 0.5).toFixed(3)};${(20 + (i % 50)).toFixed(3)}`)}`;
    expect(about(await guessed(text))).toEqual([]);
  });

  it('a depth of 15 may be inches', async () => {
    const guess = await guessed(
      `depth;resistance\n${rows(N, (i) => `${(i * 0.04).toFixed(2)};${level(i)}`)}`,
    );
    expect(guess.columns[0]).toMatchObject({ role: 'depth', unit: 'inch' });
    expect(about(guess)).toEqual(['depth unit']);
    expect(guess.confidence).toBeLessThan(0.7);
  });

  it('readings above 100 are counts of an unknown full scale', async () => {
    const text = `depth mm;value\n${rows(N, (i) => `${depth(i)};${Math.round(1000 + 900 * Math.sin(i / 9))}`)}`;
    const guess = await guessed(text);
    expect(guess.columns[1]).toMatchObject({ role: 'resistance', unit: 'counts', fullScale: 2000 });
    expect(about(guess)).toEqual(['resistance unit']);
    expect(guess.confidence).toBeLessThan(0.7);
    const { traces } = await readTable(encode(text), guess);
    expect(traces[0]!.trace.resistancePct[0]).toBe(50);
  });

  it('readings below 1 are a fraction', async () => {
    const text = `depth mm;resistance\n${rows(N, (i) => `${depth(i)};${(Number(level(i)) / 100).toFixed(4)}`)}`;
    const guess = await guessed(text);
    expect(about(guess)).toEqual(['resistance unit']);
    await readsAs(text, guess);
  });

  it('one column needs a step', async () => {
    const text = rows(N, (i) => comma(level(i)));
    const guess = await guessed(text);
    expect(guess).toMatchObject({ delimiter: '', decimal: ',', stepMm: null });
    expect(about(guess)).toEqual(['depth step']);
    expect(guess.confidence).toBeLessThan(0.3);
    expect(guess.preview[0]?.fault).toContain('give the step from reading to reading in millimetres');
    await expect(readTable(encode(text), guess)).rejects.toThrow('there is no depth column');
    const corrected = { ...guess, stepMm: 0.5 };
    await readsAs(text, { ...corrected, preview: await previewTable(encode(text), corrected) });
  });

  it('one column from the deepest reading on', async () => {
    const text = rows(N, (i) => level(N - 1 - i));
    const guess = { ...(await guessed(text)), stepMm: 0.5, reversed: true };
    await readsAs(text, { ...guess, preview: await previewTable(encode(text), guess) });
  });

  it('a step in the words around is used', async () => {
    const text = `# step: 0,5 mm\nresistance\n${rows(N, (i) => level(i))}`;
    const guess = await guessed(text);
    expect(guess.stepMm).toBe(0.5);
    expect(guess.reasons.join(' ')).toContain('The step of 0.5 mm stands in the words around the table.');
    await readsAs(text, guess);
  });

  it('a running number times the step', async () => {
    const text = `n;resistance\n${rows(N, (i) => `${i + 1};${level(i)}`)}`;
    const guess = await guessed(text);
    expect(roles(guess)).toEqual(['index', 'resistance']);
    await readsAs(text, { ...guess, stepMm: 0.5, preview: [] });
    // A reading left out leaves a gap, and moves nothing.
    const gap = text.replace(/\n3;.*\n/, '\n');
    const { traces } = await readTable(encode(gap), { ...guess, stepMm: 0.5 });
    expect([...traces[0]!.trace.depthMm.slice(0, 4)]).toEqual([0, 0.5, 1.5, 2]);
  });

  it('a count by ones may be the depth in mm', async () => {
    const guess = await guessed(rows(300, (i) => `${i},${level(i)}`));
    expect(roles(guess)).toEqual(['depth', 'resistance']);
    expect(about(guess)).toEqual(['columns']);
    expect(guess.confidence).toBeLessThan(0.7);
  });

  it('commas between columns and inside numbers cannot be told apart', async () => {
    const guess = await guessed(rows(N, (i) => `${comma(depth(i))},${comma(level(i))}`));
    expect(guess.confidence).toBe(0);
    expect(guess.questions.map(({ text }) => text).join(' ')).toContain('commas seem to stand both');
  });

  it('old Western European letters', async () => {
    const text = `Höhe über Grund\nTiefe mm;Widerstand\n${rows(N, (i) => `${depth(i)};${level(i)}`)}`;
    const bytes = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    const guess = await guessTable(bytes, 'x.csv');
    expect(guess).toMatchObject({ encoding: 'windows-1252', skipFirst: 1 });
    expect(about(guess)).toEqual(['encoding']);
  });
});

describe('what cannot be read is refused with its place', () => {
  const good = `depth mm;resistance\n${rows(N, (i) => `${depth(i)};${level(i)}`)}\n`;

  it.each([
    [
      'a word among the numbers',
      good.replace(`;${level(7)}\n`, ';abc\n'),
      'x.csv: row 9, column 2 (resistance): "abc" is not a number with a point as decimal sign: correct the cell, or how the table is read',
    ],
    [
      'NaN',
      good.replace(`;${level(7)}\n`, ';NaN\n'),
      'x.csv: row 9, column 2 (resistance): "NaN" is not a number',
    ],
    [
      'a blank reading',
      good.replace(`;${level(7)}\n`, ';\n'),
      'x.csv: row 9, column 2 (resistance): the reading is blank, but readings go on in row 10',
    ],
    [
      'a blank depth',
      good.replace(`\n${depth(7)};`, '\n;'),
      'x.csv: row 9, column 1 (depth mm): the cell is blank',
    ],
    [
      'a column too many',
      good.replace(`;${level(7)}\n`, `;${level(7)};1\n`),
      'x.csv: row 9: the row has 3 columns where the table has 2',
    ],
    [
      'a depth twice',
      good.replace(`\n${depth(8)};`, `\n${depth(7)};`),
      'x.csv: row 10, column 1 (depth mm): depth repeats 3.5 mm',
    ],
  ])('%s', async (_, text, message) => {
    // The guess is a person's, made on the sound table.
    const guess = await guessed(good);
    await expect(readTable(encode(text), guess)).rejects.toThrow(message);
  });

  it('a guess that names no resistance, a false scale, one name twice', async () => {
    const guess = await guessed(good);
    const withColumns = (columns: TableColumn[]) => readTable(encode(good), { ...guess, columns });
    const depthColumn = guess.columns[0]!;
    await expect(withColumns([depthColumn, { role: 'ignore', title: '' }])).rejects.toThrow(
      'no column is the resistance',
    );
    await expect(
      withColumns([depthColumn, { role: 'resistance', title: '', label: 'a', unit: 'counts', fullScale: 0 }]),
    ).rejects.toThrow('x.csv: column 2: give the full scale of the counts');
    const resistance = { role: 'resistance', title: '', label: 'a', unit: 'percent' } as const;
    await expect(withColumns([resistance, resistance])).rejects.toThrow('two columns are called "a"');
  });

  it.each([
    ['', 'x.csv: the file is empty'],
    ['# only\n# comments\n', 'x.csv: the table is empty'],
    ['hello\nworld\n', 'x.csv: the table holds no rows of numbers'],
    ['PNG\u0000 and so on, 12,5', 'x.csv: this is no table'],
  ])('%j', async (text, message) => {
    await expect(guessTable(encode(text), 'x.csv')).rejects.toThrow(message);
  });

  it('a trace too short to assess is told with the import', async () => {
    const { notices } = await readTable(
      encode('depth mm;resistance\n0;1\n1;2\n'),
      await guessed('depth mm;resistance\n0;1\n1;2\n'),
    );
    expect(notices).toMatchObject([{ severity: 'serious', where: 'drilling' }]);
  });
});

describe('workbooks', () => {
  const body = (n = N) => Array.from({ length: n }, (_, i) => [Number(depth(i)), Number(level(i))]);

  it('the sheet with the numbers is read', async () => {
    const bytes = workbookOf({
      Notes: [['nothing'], [1]],
      Data: [['Tree 12'], [], ['Depth mm', 'Resistance'], ...body()],
    });
    const guess = await guessTable(bytes, 'x.xlsx');
    expect(guess).toMatchObject({
      kind: 'xlsx',
      sheet: 'Data',
      sheets: ['Notes', 'Data'],
      skipFirst: 2,
      hasHeader: true,
      questions: [],
    });
    const { traces } = await readTable(bytes, guess);
    expect([...traces[0]!.trace.depthMm]).toEqual(body().map(([x]) => x));
    expect([...traces[0]!.trace.resistancePct]).toEqual(body().map(([, y]) => y));
    expect(guess.preview[0]?.rows[1]).toMatchObject({ row: 5, depthMm: 0.5 });
  });

  it('is read from a view into a larger buffer, as Node hands files out', async () => {
    const bytes = workbookOf({ Data: [['depth mm', 'resistance'], ...body()] });
    const pool = Buffer.concat([Buffer.from('before'), bytes, Buffer.from('after')]);
    const view = pool.subarray(6, 6 + bytes.length);
    const { traces } = await readTable(view, await guessTable(view, 'x.xlsx'));
    expect(traces[0]!.trace.depthMm).toHaveLength(N);
  });

  it('several sheets of numbers are asked about; another can be chosen', async () => {
    const bytes = workbookOf({
      D1: [['depth mm', 'resistance'], ...body()],
      D2: [['depth mm', 'resistance'], ...body(300)],
    });
    const guess = await guessTable(bytes, 'x.xlsx');
    expect(about(guess)).toEqual(['sheet']);
    if (guess.kind !== 'xlsx') throw new Error('expected a workbook');
    const { traces } = await readTable(bytes, { ...guess, sheet: 'D2' });
    expect(traces[0]!.trace.depthMm).toHaveLength(300);
    await expect(readTable(bytes, { ...guess, sheet: 'D3' })).rejects.toThrow(
      'there is no sheet called "D3"; there are D1, D2',
    );
  });

  it('numbers held as text with decimal commas', async () => {
    const cells = body().map(([x, y]) => [comma(x!.toFixed(2)), comma(y!.toFixed(2))]);
    const bytes = workbookOf({ A: [['depth mm', 'resistance'], ...cells] });
    const guess = await guessTable(bytes, 'x.xlsx');
    expect(guess).toMatchObject({ kind: 'xlsx', decimal: ',' });
    const { traces } = await readTable(bytes, guess);
    expect([...traces[0]!.trace.depthMm]).toEqual(body().map(([x]) => x));
  });

  it('a number that the spreadsheet took for a date is refused with its place', async () => {
    const rowsOf = [['depth mm', 'resistance'], ...body()] as (string | number | { days: number })[][];
    rowsOf[9]![1] = { days: 45_000 };
    const bytes = workbookOf({ A: rowsOf });
    await expect(readTable(bytes, await guessTable(bytes, 'x.xlsx'))).rejects.toThrow(
      'x.xlsx: row 10, column 2 (resistance): the cell is a date: the spreadsheet took a number for one',
    );
  });

  it('old, locked, damaged or other files are refused in words', async () => {
    const old = new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
    await expect(guessTable(old, 'x.xls')).rejects.toThrow(
      'x.xls: this is an older workbook (.xls) or one with a password',
    );
    const bytes = workbookOf({ A: body() });
    await expect(guessTable(bytes.slice(0, 500), 'x.xlsx')).rejects.toThrow('x.xlsx: the zip is cut short');
    await expect(guessTable(workbookOf({ A: [['no numbers']] }), 'x.xlsx')).rejects.toThrow(
      'no sheet of the workbook holds numbers',
    );
  });
});
