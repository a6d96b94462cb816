import { availableParallelism } from 'node:os';
import path from 'node:path';
import {
  byRiskThenDue,
  GEOJSON_END,
  GEOJSON_HEAD,
  geoJsonFeature,
  isDay,
  isDueBy,
  LIST_COLUMN_NAMES,
  unassessedRow,
  type WorkRow,
} from '@standfast/casefile';
import { onDisk, writeWholeFrom } from '@standfast/casefile/node';
import { casesBelow, refuseInsideACase } from '../batch/find-cases.ts';
import { inThreads } from '../batch/pool.ts';
import { isSameWay, resultsTable } from '../batch/results.ts';
import type { Task } from '../batch/worker.ts';
import { checkOutput } from '../files/output.ts';
import { rowOfCells } from '../list/row-of-cells.ts';
import { printList } from '../list/terminal.ts';
import { UsageFault } from '../outcome.ts';

interface Options {
  csv?: string;
  geojson?: string;
  due?: string;
  jobs?: number;
  seed?: number;
  draws?: number;
}

const table = resultsTable(LIST_COLUMN_NAMES, 'work list', '--csv');

/**
 * The work list of every case below a folder: printed, and as CSV and GeoJSON where asked for. A case that cannot be
 * assessed is in it with the reason. With a CSV, cases that an earlier run has done in the same way are kept as they are.
 * @throws InputFault when the folder or a place for results is at fault
 * @throws UsageFault when the options are
 */
export async function list(folder: string, options: Options): Promise<void> {
  const { csv, geojson, due } = options;
  if (due !== undefined && !isDay(due)) throw new UsageFault(`--due ${due} is no day: write 2027-01-31.`);
  if (csv !== undefined && geojson !== undefined && path.resolve(csv) === path.resolve(geojson))
    throw new UsageFault('--csv and --geojson name the same file; give each its own.');
  for (const file of [csv, geojson]) if (file !== undefined) await checkOutput(file);
  const names = await casesBelow(folder);
  if (csv !== undefined) refuseInsideACase(csv, folder, names, '--csv');
  if (geojson !== undefined) refuseInsideACase(geojson, folder, names, '--geojson');

  const rows = new Map<string, WorkRow>();
  if (csv !== undefined) {
    const earlier = await table.earlier(csv);
    for (const name of names) {
      const row = earlier.get(name);
      if (row && isSameWay(row, options)) rows.set(name, rowOfCells(row));
    }
    await table.start(csv, [...rows.values()]);
  }
  const tasks = names.map(
    (name): Task => ({
      path: path.join(folder, name),
      name,
      seed: options.seed,
      draws: options.draws,
      done: rows.get(name)?.contentSha256 ?? undefined,
    }),
  );
  const failed = ({ name }: Task, message: string) => unassessedRow(name, null, [message]);
  const jobs = options.jobs ?? availableParallelism();
  await inThreads<Task, WorkRow | null>(tasks, jobs, 'listOne', failed, async (task, row) => {
    if (!row) return;
    rows.set(task.name, row);
    if (csv !== undefined) await table.append(csv, row);
  });

  const all = names.map((name) => rows.get(name)!).sort(byRiskThenDue);
  const listed = due === undefined ? all : all.filter((row) => isDueBy(row, due));
  if (csv !== undefined) await table.start(csv, listed);
  if (geojson !== undefined) await onDisk(geojson, () => writeWholeFrom(geojson, geoJsonPieces(listed)));
  printList(
    listed,
    all.length,
    due,
    [csv, geojson].filter((file) => file !== undefined),
  );
}

function* geoJsonPieces(rows: readonly WorkRow[]): Generator<string> {
  yield GEOJSON_HEAD;
  for (const [i, row] of rows.entries()) yield geoJsonFeature(row, i === 0);
  yield GEOJSON_END;
}
