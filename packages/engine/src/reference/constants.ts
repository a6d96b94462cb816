/**
 * Single values with their source, from constants.csv, and how a value is worded for the reader.
 */
import type { SourcedValue } from '../assessment.ts';
import { type ConstantsRow, constants, type Status } from './tables.generated.ts';

/** A single value: what it is, its range and scatter, its source, and how it is known. */
export type Constant = Readonly<ConstantsRow>;

const byName = new Map(constants.map((row) => [row.name, row]));

/**
 * The constant of that name.
 * @throws Error when there is none: a slip of ours, never of the input.
 */
export function constant(name: string): Constant {
  const row = byName.get(name);
  if (!row) throw new Error(`no constant named "${name}" in constants.csv`);
  return row;
}

/** How a source is worded where its standing must be said: nothing for what was read or computed. */
export function statusNote(status: Status): string {
  switch (status) {
    case 'read':
    case 'computed':
      return '';
    case 'checked':
      return ' (from memory, cross-checked)';
    case 'memory':
      return ' (from memory)';
    case 'low confidence':
      return ' (from memory, low confidence)';
    case 'proposal':
      return ' (a proposal of this project)';
  }
}

/** A constant as it is shown: `value` in its place where the constant was replaced or combined. */
export function sourced(name: string, value?: number): SourcedValue {
  const row = constant(name);
  return {
    name: row.meaning,
    value: value ?? row.value,
    unit: row.unit,
    ...(row.logSd === undefined ? {} : { cov: row.logSd }),
    source: row.source + statusNote(row.status),
  };
}
