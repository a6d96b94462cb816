/**
 * Tables written in a random shape and read back through the guess: the same numbers, or an open question. Never other
 * numbers without a question.
 */
import { guessTable, readTable, type TableGuess } from '@standfast/casefile';
import fc from 'fast-check';
import { expect, it } from 'vitest';

interface Shape {
  delimiter: ',' | ';' | '\t' | '|' | ' ';
  decimal: '.' | ',';
  grouped: boolean;
  header: 'words' | 'plain' | 'none';
  lineEnd: '\n' | '\r\n' | '\r';
  encoding: 'utf-8' | 'utf-8 with mark' | 'utf-16le' | 'utf-16be';
  preamble: boolean;
  footer: boolean;
  reversed: boolean;
  stepMm: number;
  rows: number;
  decimals: number;
  seed: number;
}

const SHAPES: fc.Arbitrary<Shape> = fc.record({
  delimiter: fc.constantFrom(',', ';', '\t', '|', ' '),
  decimal: fc.constantFrom('.', ','),
  grouped: fc.boolean(),
  header: fc.constantFrom('words', 'plain', 'none'),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  encoding: fc.constantFrom('utf-8', 'utf-8 with mark', 'utf-16le', 'utf-16be'),
  preamble: fc.boolean(),
  footer: fc.boolean(),
  reversed: fc.boolean(),
  stepMm: fc.constantFrom(0.1, 0.25, 0.5, 1),
  rows: fc.integer({ min: 150, max: 1500 }),
  decimals: fc.integer({ min: 1, max: 4 }),
  seed: fc.integer({ min: 0, max: 1e6 }),
});

/** Readings of an invented trace, rounded as they are written. */
function readings({ rows, stepMm, decimals, seed }: Shape): { depth: number; level: number }[] {
  return Array.from({ length: rows }, (_, i) => ({
    depth: Number(((i + 1) * stepMm).toFixed(2)),
    level: Number((35 + 20 * Math.sin(i / 7 + seed) + 5 * Math.sin(i * 1.7 + seed)).toFixed(decimals)),
  }));
}

function written(shape: Shape): string {
  const number = (value: number, decimals: number) => {
    const [whole, part] = value.toFixed(decimals).split('.');
    const groups = shape.grouped
      ? whole!.replace(/\B(?=(\d{3})+$)/g, shape.decimal === '.' ? ',' : '.')
      : whole!;
    const text = part === undefined ? groups : groups + shape.decimal + part;
    // A cell that holds the delimiter is quoted, as spreadsheets do.
    return text.includes(shape.delimiter) ? `"${text}"` : text;
  };
  const lines = readings(shape).map(
    ({ depth, level }) => number(depth, 2) + shape.delimiter + number(level, shape.decimals),
  );
  if (shape.reversed) lines.reverse();
  if (shape.header === 'words') lines.unshift(['depth_mm', 'resistance'].join(shape.delimiter));
  if (shape.header === 'plain') lines.unshift(['Tiefe', 'Widerstand'].join(shape.delimiter));
  if (shape.preamble) lines.unshift('Invented readings', '', '# for a test');
  if (shape.footer) lines.push('', 'end');
  return lines.join(shape.lineEnd) + shape.lineEnd;
}

function encoded(text: string, encoding: Shape['encoding']): Uint8Array {
  if (encoding === 'utf-8') return new TextEncoder().encode(text);
  if (encoding === 'utf-8 with mark') return new TextEncoder().encode(`\uFEFF${text}`);
  const little = encoding === 'utf-16le';
  return Uint8Array.from(
    [...`\uFEFF${text}`].flatMap((letter) => {
      const unit = letter.charCodeAt(0);
      return little ? [unit & 255, unit >> 8] : [unit >> 8, unit & 255];
    }),
  );
}

async function expectRead(bytes: Uint8Array, guess: TableGuess, shape: Shape): Promise<void> {
  const { traces } = await readTable(bytes, guess);
  expect(traces).toHaveLength(1);
  const expected = readings(shape);
  expect([...traces[0]!.trace.depthMm]).toEqual(expected.map(({ depth }) => depth));
  expect([...traces[0]!.trace.resistancePct]).toEqual(expected.map(({ level }) => level));
}

it('a table in any shape is read back as it was written, or asked about', async () => {
  await fc.assert(
    fc.asyncProperty(SHAPES, async (shape) => {
      const bytes = encoded(written(shape), shape.encoding);
      const guess = await guessTable(bytes, 'table.csv');
      if (guess.questions.length === 0) return expectRead(bytes, guess, shape);
      expect(guess.confidence).toBeLessThan(0.7);
      // A person's answer settles it.
      if (guess.kind !== 'text') throw new Error('expected a text');
      return expectRead(
        bytes,
        {
          ...guess,
          delimiter: shape.delimiter,
          decimal: shape.decimal,
          thousands: shape.grouped ? (shape.decimal === '.' ? ',' : '.') : '',
          columns: [
            { role: 'depth', title: '', unit: 'mm' },
            { role: 'resistance', title: '', label: 'd1', unit: 'percent' },
          ],
          reversed: shape.reversed,
        },
        shape,
      );
    }),
    { numRuns: 60 },
  );
});

it('most shapes need no question', async () => {
  let asked = 0;
  const shapes = fc.sample(SHAPES, { numRuns: 40, seed: 20260601 });
  for (const shape of shapes) {
    const { questions } = await guessTable(encoded(written(shape), shape.encoding), 'table.csv');
    if (questions.length > 0) asked++;
  }
  // Left open by design: depths that span less than a needle in mm without a unit, and numbers of three decimals.
  expect(asked).toBeLessThan(shapes.length / 4);
});

it('never reads rubbish without a fault or a question, and never crashes', async () => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), async (bytes) => {
      try {
        const guess = await guessTable(bytes, 'rubbish.csv');
        await readTable(bytes, guess);
      } catch (error) {
        expect((error as Error).name).toBe('InputFault');
      }
    }),
    { numRuns: 150 },
  );
});
