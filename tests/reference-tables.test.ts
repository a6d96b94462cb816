/** The reference tables: what the build accepts, what it refuses and how it says so, and that it is deterministic. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readTable, STATUSES, tablesModule } from '../scripts/build-tables.mjs';

const FOLDER = resolve(import.meta.dirname, '../packages/engine/src/reference');
const files = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.csv'))
  .map((name): [string, string] => [name, readFileSync(join(FOLDER, name), 'utf8')]);

describe('the tables of the repository', () => {
  it('carry a source and how it is known on every row', () => {
    expect(files.length).toBeGreaterThan(10);
    for (const [name, text] of files) {
      for (const row of readTable(name, text).rows) {
        expect(row.source, name).toMatch(/\S{3}/);
        expect(Object.keys(STATUSES)).toContain(row.status);
      }
    }
  });

  it('are built as they stand in the module, in whatever order they come', () => {
    const built = readFileSync(join(FOLDER, 'tables.generated.ts'), 'utf8');
    expect(tablesModule(files)).toBe(built);
    expect(tablesModule([...files].reverse())).toBe(built);
  });
});

describe('readTable', () => {
  const header = 'name,value:number,low:number?,source,status';

  it('reads text, numbers and numbers that may be missing; skips comments', () => {
    const { rows } = readTable('t.csv', `# what it is\n${header}\n"a, b",1.5e3,,Someone 1999,read\n`);
    expect(rows).toEqual([{ name: 'a, b', value: 1500, source: 'Someone 1999', status: 'read' }]);
  });

  it.each([
    ['a row without a source', `${header}\na,1,,,read`, 't.csv, line 2: no source'],
    [
      'a number that is none',
      `${header}\na,1,,S,read\nb,1.x,,S,read`,
      't.csv, line 3: value is "1.x", not a number',
    ],
    ['a number left out', `${header}\na,,,S,read`, 't.csv, line 2: value is "", not a number'],
    ['an unknown status', `${header}\na,1,,S,guess`, 't.csv, line 2: status "guess"'],
    ['a short row', `# c\n\n${header}\na,1,S,read`, 't.csv, line 4: 4 cells under 5 columns'],
    ['a table without sources', 'name,status\na,read', 't.csv, header: no "source" column'],
    ['a column twice', 'name,name,source,status\na,b,S,read', 't.csv, header: a column name occurs twice'],
    ['a column kind that is none', 'name:date,source,status\na,S,read', 't.csv, header: "name:date"'],
    ['no rows', header, 't.csv: no rows'],
    ['nothing', '', 't.csv: empty'],
  ])('refuses %s, naming file and line', (_, text, message) => {
    expect(() => readTable('t.csv', text)).toThrow(message);
  });
});
