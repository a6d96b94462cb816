/**
 * From rows of cells to traces, exactly as a guess says. The preview and the import both come through here, so what
 * was shown is what is read.
 */
import { InputFault, type Trace } from '@standfast/engine';
import { numberReader } from './numbers.ts';
import type { Cell, TableRow } from './rows.ts';
import { isBlankCell } from './source.ts';
import type { TableColumn, TableGuess } from './types.ts';
import { MM_PER, percentPer } from './units.ts';

/** A trace with, for each reading, the row it came from. */
export interface RowedTrace {
  label: string;
  trace: Trace;
  rows: Float64Array;
}

/** Where one drilling's numbers stand in a row. */
interface Plan {
  label: string;
  resistance: number;
  percentPer: number;
  depth:
    | { from: 'column'; column: number; mmPer: number }
    | { from: 'index'; column: number }
    | { from: 'step' };
  feed: number | null;
}

/** Numbers as they come in. */
interface Growing {
  label: string;
  plan: Plan;
  length: number;
  depth: Float64Array;
  resistance: Float64Array;
  feed: Float64Array | null;
  rows: Float64Array;
  /** The first row in which this drilling had nothing: after it nothing may come. */
  blankRow: number | null;
}

/**
 * Reads traces out of rows.
 *
 * @param most readings taken of each trace, for a preview.
 * @throws InputFault with file, row and column.
 */
export function readRows(rows: Iterable<TableRow>, guess: TableGuess, most = Infinity): RowedTrace[] {
  const plans = plansOf(guess);
  const drillingColumn = guess.columns.findIndex(({ role }) => role === 'drilling');
  const toNumber = numberReader(guess);
  const traces = new Map<string, Growing>();
  const single = drillingColumn < 0 ? plans.map((plan) => startOf(plan.label, plan)) : null;
  for (const trace of single ?? []) traces.set(trace.label, trace);
  let begun = 0;
  let full = 0;
  for (const { row, cells } of rows) {
    begun++;
    refuseExtraCells(cells, guess, row);
    const drilling = drillingColumn < 0 ? null : nameIn(cells[drillingColumn], guess, drillingColumn, row);
    for (let p = 0; p < plans.length; p++) {
      const trace = single?.[p] ?? traceNamed(traces, plans[p]!, drilling, plans.length);
      if (trace.length >= most) continue;
      addReading(trace, cells, row, guess, toNumber);
      if (trace.length >= most) full++;
    }
    if (single && full === plans.length) break;
  }
  if (begun === 0)
    throw new InputFault('there are no rows with readings: check where the numbers begin', guess.name);
  return [...traces.values()].filter(({ length }) => length > 0).map((trace) => finished(trace, guess));
}

function plansOf(guess: TableGuess): Plan[] {
  const { columns, name } = guess;
  const plans = columns.flatMap((column, i): Plan[] => {
    if (column.role !== 'resistance') return [];
    if (column.unit === 'counts' && !(column.fullScale > 0)) {
      throw new InputFault('give the full scale of the counts, a number above 0', `${name}: column ${i + 1}`);
    }
    return [
      {
        label: column.label,
        resistance: i,
        percentPer: percentPer(column),
        depth: depthFor(columns, i),
        feed: feedFor(columns, i),
      },
    ];
  });
  if (plans.length === 0) throw new InputFault('no column is the resistance: say which one it is', name);
  const labels = plans.map(({ label }) => label);
  const twice = labels.find((label, i) => labels.indexOf(label) !== i);
  if (twice !== undefined) {
    throw new InputFault(
      `two columns are called ${JSON.stringify(twice)}: give each drilling its own name`,
      name,
    );
  }
  const step = guess.stepMm;
  if (plans.some(({ depth }) => depth.from !== 'column') && !(step !== null && step > 0)) {
    throw new InputFault(
      'there is no depth column: give the step from reading to reading in millimetres',
      name,
    );
  }
  return plans;
}

function depthFor(columns: readonly TableColumn[], resistance: number): Plan['depth'] {
  const isDepth = ({ role }: TableColumn) => role === 'depth' || role === 'index';
  const before = columns.slice(0, resistance).findLastIndex(isDepth);
  const at = before >= 0 ? before : columns.findIndex(isDepth);
  const column = columns[at];
  if (column?.role === 'depth') return { from: 'column', column: at, mmPer: MM_PER[column.unit] };
  return column ? { from: 'index', column: at } : { from: 'step' };
}

/** The feed column that belongs to a resistance column: the first one after it, before the next resistance. */
function feedFor(columns: readonly TableColumn[], resistance: number): number | null {
  const resistances = columns.filter(({ role }) => role === 'resistance').length;
  if (resistances === 1) {
    const only = columns.findIndex(({ role }) => role === 'feed');
    return only < 0 ? null : only;
  }
  for (let i = resistance + 1; i < columns.length && columns[i]!.role !== 'resistance'; i++) {
    if (columns[i]!.role === 'feed') return i;
  }
  return null;
}

function refuseExtraCells(cells: readonly Cell[], guess: TableGuess, row: number): void {
  for (let i = guess.columns.length; i < cells.length; i++) {
    if (!isBlankCell(cells[i])) {
      throw new InputFault(
        `the row has ${cells.length} columns where the table has ${guess.columns.length}: correct or remove the row`,
        `${guess.name}: row ${row}`,
      );
    }
  }
}

function nameIn(cell: Cell | undefined, guess: TableGuess, column: number, row: number): string {
  if (isBlankCell(cell)) {
    throw new InputFault(
      'the name of the drilling is blank: fill it in or remove the row',
      place(guess, column, row),
    );
  }
  return String(cell).trim();
}

/** The trace of a drilling named in the row, begun where there is none yet. */
function traceNamed(
  traces: Map<string, Growing>,
  plan: Plan,
  drilling: string | null,
  plans: number,
): Growing {
  const label = plans === 1 ? (drilling ?? plan.label) : `${drilling} ${plan.label}`;
  const found = traces.get(label) ?? startOf(label, plan);
  traces.set(label, found);
  return found;
}

function startOf(label: string, plan: Plan): Growing {
  return {
    label,
    plan,
    length: 0,
    depth: new Float64Array(256),
    resistance: new Float64Array(256),
    feed: plan.feed === null ? null : new Float64Array(256),
    rows: new Float64Array(256),
    blankRow: null,
  };
}

function addReading(
  trace: Growing,
  cells: readonly Cell[],
  row: number,
  guess: TableGuess,
  toNumber: (text: string) => number | null,
): void {
  const { plan, length: at } = trace;
  if (isBlankCell(cells[plan.resistance])) {
    trace.blankRow ??= row;
    return;
  }
  if (trace.blankRow !== null) {
    throw new InputFault(
      `the reading is blank, but readings go on in row ${row}: fill it in or remove the row`,
      place(guess, plan.resistance, trace.blankRow),
    );
  }
  if (at === trace.depth.length) grow(trace);
  const read = (column: number) => numberIn(cells[column], guess, column, row, toNumber);
  if (plan.depth.from === 'column') trace.depth[at] = times(read(plan.depth.column), plan.depth.mmPer);
  else if (plan.depth.from === 'index') trace.depth[at] = read(plan.depth.column);
  trace.resistance[at] = times(read(plan.resistance), plan.percentPer);
  if (trace.feed && plan.feed !== null) trace.feed[at] = read(plan.feed);
  trace.rows[at] = row;
  trace.length++;
}

/** The product without the dust of binary fractions: 0.1 mm times 3 is 0.3 mm. */
function times(value: number, factor: number): number {
  return factor === 1 ? value : Math.round(value * factor * 1e9) / 1e9;
}

function grow(trace: Growing): void {
  const twice = (values: Float64Array) => {
    const longer = new Float64Array(values.length * 2);
    longer.set(values);
    return longer;
  };
  trace.depth = twice(trace.depth);
  trace.resistance = twice(trace.resistance);
  trace.rows = twice(trace.rows);
  if (trace.feed) trace.feed = twice(trace.feed);
}

function numberIn(
  cell: Cell | undefined,
  guess: TableGuess,
  column: number,
  row: number,
  toNumber: (text: string) => number | null,
): number {
  if (typeof cell === 'number' && Number.isFinite(cell)) return cell;
  const value = typeof cell === 'string' ? toNumber(cell) : null;
  if (value !== null) return value;
  const where = place(guess, column, row);
  if (isBlankCell(cell)) throw new InputFault('the cell is blank: fill it in or remove the row', where);
  if (cell instanceof Date) {
    throw new InputFault(
      'the cell is a date: the spreadsheet took a number for one; set the column to numbers and enter it again',
      where,
    );
  }
  throw new InputFault(
    `${JSON.stringify(String(cell).slice(0, 60))} is not a number with ${guess.decimal === ',' ? 'a comma' : 'a point'} as decimal sign` +
      `${guess.thousands === '' ? '' : ` and ${JSON.stringify(guess.thousands)} between thousands`}: correct the cell, or how the table is read`,
    where,
  );
}

function place(guess: TableGuess, column: number, row: number): string {
  const title = guess.columns[column]?.title;
  return `${guess.name}: row ${row}, column ${column + 1}${title ? ` (${title})` : ''}`;
}

/** Puts the readings in order of depth and checks that it grows. */
function finished(trace: Growing, guess: TableGuess): RowedTrace {
  const { plan, length, label } = trace;
  const cut = (values: Float64Array) => {
    const own = values.slice(0, length);
    return guess.reversed ? own.reverse() : own;
  };
  const depthMm = cut(trace.depth);
  const rows = cut(trace.rows);
  const step = guess.stepMm ?? 0;
  if (plan.depth.from === 'step')
    for (let i = 0; i < length; i++) depthMm[i] = guess.startMm + times(i, step);
  if (plan.depth.from === 'index') {
    const first = depthMm[0]!;
    for (let i = 0; i < length; i++) depthMm[i] = guess.startMm + times(depthMm[i]! - first, step);
  }
  for (let i = 1; i < length; i++) {
    if (!(depthMm[i]! > depthMm[i - 1]!)) throw backwards(depthMm, i, rows, trace, guess);
  }
  return {
    label,
    trace: {
      depthMm,
      resistancePct: cut(trace.resistance),
      ...(trace.feed ? { feed: cut(trace.feed) } : {}),
    },
    rows,
  };
}

function backwards(
  depthMm: Float64Array,
  at: number,
  rows: Float64Array,
  { label, plan }: Growing,
  guess: TableGuess,
): InputFault {
  const falls = depthMm.every((depth, i) => i === 0 || depth < depthMm[i - 1]!);
  const column = plan.depth.from === 'step' ? plan.resistance : plan.depth.column;
  const remedy = falls
    ? 'the table runs the other way: change its order'
    : 'sort the rows, remove repeats, or split the table where a second drilling begins';
  const before = rounded(depthMm[at - 1]!);
  const depth = rounded(depthMm[at]!);
  return new InputFault(
    `depth ${depth === before ? `repeats ${depth} mm` : `goes back from ${before} to ${depth} mm`} in drilling ${label}: ${remedy}`,
    place(guess, column, rows[at]!),
  );
}

function rounded(value: number): number {
  return Number(value.toPrecision(8));
}
