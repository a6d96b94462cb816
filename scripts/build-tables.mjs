/**
 * Turns the reference tables (CSV files with a source on each row) into one typed, frozen TypeScript module.
 *
 * A table's header names its columns; `name:number` is a number, `name:number?` a number that may be left empty,
 * anything else is text. Each row needs a `source` and a `status` (one of STATUSES). Lines starting with `#` are
 * comments. Plain Node, so that it can run before anything is built; the same tables give the same bytes.
 *
 * Usage: node scripts/build-tables.mjs [folder with the tables] [file to write]
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import Papa from 'papaparse';

/** How a row is known. Everything but `read` and `computed` says so where the value is shown. */
export const STATUSES = {
  read: 'read in a stored copy of the source or of a text quoting it',
  checked: 'from memory, cross-checked against an independent table that was read',
  memory: 'from memory',
  'low confidence': 'from memory, round or borrowed: wants replacing',
  computed: 'computed from other rows by the formula its source names',
  proposal: 'a proposal of this project, with no published authority',
};

class TableFault extends Error {}

const camel = (name) => name.replace(/_([a-z0-9])/g, (_, letter) => letter.toUpperCase());
const pascal = (name) => name[0].toUpperCase() + name.slice(1);

/** Columns of a header: property name, kind, and the name as written. */
function readHeader(file, fields) {
  const columns = fields.map((written) => {
    const [name, kind = 'text'] = written.split(':');
    if (!/^[a-z][a-z0-9_]*$/.test(name) || !['text', 'number', 'number?'].includes(kind)) {
      throw new TableFault(
        `${file}, header: "${written}" is no column name (use name, name:number or name:number?)`,
      );
    }
    return { written, name, property: camel(name), kind };
  });
  for (const needed of ['source', 'status']) {
    if (!columns.some((column) => column.name === needed))
      throw new TableFault(`${file}, header: no "${needed}" column`);
  }
  if (new Set(columns.map((column) => column.name)).size !== columns.length) {
    throw new TableFault(`${file}, header: a column name occurs twice`);
  }
  return columns;
}

function readCell(file, line, column, text) {
  if (column.kind === 'text') return text;
  if (text === '' && column.kind === 'number?') return undefined;
  const value = Number(text);
  if (text === '' || !Number.isFinite(value)) {
    throw new TableFault(`${file}, line ${line}: ${column.name} is "${text}", not a number`);
  }
  return value;
}

/** Reads one table. Rows carry the line they stand on, so that a fault can name it. */
export function readTable(file, text) {
  const lines = text.split(/\r?\n/);
  const kept = lines
    .map((content, i) => ({ content, line: i + 1 }))
    .filter(({ content }) => content.trim() !== '' && !content.startsWith('#'));
  if (kept.length === 0) throw new TableFault(`${file}: empty`);
  const parsed = kept.map(({ content, line }) => {
    const { data, errors } = Papa.parse(content, { delimiter: ',' });
    if (errors.length > 0 || data.length !== 1)
      throw new TableFault(`${file}, line ${line}: ${errors[0]?.message ?? 'not one row'}`);
    return { line, cells: data[0].map((cell) => cell.trim()) };
  });
  const columns = readHeader(file, parsed[0].cells);
  const rows = parsed.slice(1).map(({ line, cells }) => {
    if (cells.length !== columns.length) {
      throw new TableFault(`${file}, line ${line}: ${cells.length} cells under ${columns.length} columns`);
    }
    const row = {};
    columns.forEach((column, i) => {
      const value = readCell(file, line, column, cells[i]);
      if (value !== undefined) row[column.property] = value;
    });
    if (!row.source) throw new TableFault(`${file}, line ${line}: no source`);
    if (!Object.hasOwn(STATUSES, row.status)) {
      throw new TableFault(
        `${file}, line ${line}: status "${row.status}" is none of ${Object.keys(STATUSES).join(', ')}`,
      );
    }
    return row;
  });
  if (rows.length === 0) throw new TableFault(`${file}: no rows under the header`);
  return { columns, rows };
}

const literal = (value) => {
  if (typeof value === 'number') return String(value);
  const quoted = JSON.stringify(value);
  return quoted.includes("'") ? quoted : `'${quoted.slice(1, -1).replaceAll('\\"', '"')}'`;
};

/** TypeScript for one table: its row type and its frozen rows. */
function tableSource(name, { columns, rows }) {
  const table = camel(name.replaceAll('-', '_'));
  const type = `${pascal(table)}Row`;
  const fields = columns.map(({ property, kind, name: column }) => {
    if (column === 'status') return '  status: Status;';
    return `  ${property}${kind === 'number?' ? '?' : ''}: ${kind === 'text' ? 'string' : 'number'};`;
  });
  const body = rows.map(
    (row) =>
      `  Object.freeze({ ${Object.entries(row)
        .map(([k, v]) => `${k}: ${literal(v)}`)
        .join(', ')} }),`,
  );
  return [
    `/** A row of ${name}.csv. */`,
    `export interface ${type} {`,
    ...fields,
    '}',
    '',
    `export const ${table}: readonly Readonly<${type}>[] = Object.freeze([`,
    ...body.map((line) => line.replace('Object.freeze({', `Object.freeze<${type}>({`)),
    ']);',
  ].join('\n');
}

/** The whole module from tables given as [file name, text] pairs; order of the pairs does not matter. */
export function tablesModule(files) {
  const sorted = [...files].sort(([a], [b]) => (a < b ? -1 : 1));
  const statuses = Object.entries(STATUSES).map(([name, meaning]) => `  /** ${meaning} */\n  | '${name}'`);
  return `${[
    '/** Made by scripts/build-tables.mjs from the CSV files beside this module. Edit those, not this. */',
    `/** How a row is known. */\nexport type Status =\n${statuses.join('\n')};`,
    ...sorted.map(([file, text]) => tableSource(file.replace(/\.csv$/, ''), readTable(file, text))),
  ].join('\n\n')}\n`;
}

/** Reads the folder's tables and writes the module, only when it differs. */
export function buildTables(folder, target) {
  const names = readdirSync(folder).filter((name) => name.endsWith('.csv'));
  if (names.length === 0) throw new TableFault(`${folder}: no tables`);
  const source = tablesModule(names.map((name) => [name, readFileSync(join(folder, name), 'utf8')]));
  let before = null;
  try {
    before = readFileSync(target, 'utf8');
  } catch {
    // not built yet
  }
  if (before !== source) writeFileSync(target, source);
  return names.length;
}

if (process.argv[1] && import.meta.url === pathToFileURL(resolve(process.argv[1])).href) {
  const home = resolve(dirname(fileURLToPath(import.meta.url)), '../packages/engine/src/reference');
  const folder = resolve(process.argv[2] ?? home);
  const target = resolve(process.argv[3] ?? join(folder, 'tables.generated.ts'));
  try {
    buildTables(folder, target);
  } catch (error) {
    if (!(error instanceof TableFault)) throw error;
    console.error(`reference tables: ${error.message}`);
    process.exitCode = 1;
  }
}
