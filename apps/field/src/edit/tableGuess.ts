/** Corrections of a table guess, as pure functions: what the person says goes, the rest stays. */
import type { ColumnRole, DepthUnit, ResistanceUnit, TableColumn, TableGuess } from '@standfast/casefile';

/** The guess with as many columns as the rows have cells: new ones are left out until they are given a role. */
export function fitColumns(guess: TableGuess, count: number): TableGuess {
  if (count === 0 || guess.columns.length === count) return guess;
  const columns = guess.columns.slice(0, count);
  while (columns.length < count) columns.push({ role: 'ignore', title: `column ${columns.length + 1}` });
  // A first look that finds no reading is of no use: depth comes first in nearly every table, the reading next.
  if (count >= 2 && !columns.some(({ role }) => role === 'resistance')) {
    columns[0] = columnAs(columns[0]!, 'depth');
    columns[1] = columnAs(columns[1]!, 'resistance');
  }
  return { ...guess, columns };
}

/** The guess with one column in another role. */
export function withRole(guess: TableGuess, index: number, role: ColumnRole): TableGuess {
  return {
    ...guess,
    columns: guess.columns.map((column, i) => (i === index ? columnAs(column, role) : column)),
  };
}

/** The guess with one column in another unit; for columns that have none it stays as it is. */
export function withUnit(guess: TableGuess, index: number, unit: string): TableGuess {
  const change = (column: TableColumn): TableColumn => {
    if (column.role === 'depth') return { ...column, unit: unit as DepthUnit };
    if (column.role !== 'resistance') return column;
    const { title, label } = column;
    return (unit as ResistanceUnit) === 'counts'
      ? { role: 'resistance', title, label, unit: 'counts', fullScale: 1023 }
      : { role: 'resistance', title, label, unit: unit as 'percent' | 'fraction' };
  };
  return { ...guess, columns: guess.columns.map((column, i) => (i === index ? change(column) : column)) };
}

/** The guess with the converter's full scale of a column of counts. */
export function withFullScale(guess: TableGuess, index: number, fullScale: number): TableGuess {
  return {
    ...guess,
    columns: guess.columns.map((column, i) =>
      i === index && column.role === 'resistance' && column.unit === 'counts'
        ? { ...column, fullScale }
        : column,
    ),
  };
}

function columnAs(column: TableColumn, role: ColumnRole): TableColumn {
  const { title } = column;
  if (column.role === role) return column;
  if (role === 'depth') return { role, title, unit: 'mm' };
  if (role === 'resistance') return { role, title, label: title, unit: 'percent' };
  return { role, title };
}
