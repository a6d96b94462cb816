import { availableParallelism } from 'node:os';
import path from 'node:path';
import { casesBelow, refuseInsideACase } from '../batch/find-cases.ts';
import { inThreads } from '../batch/pool.ts';
import { type EarlierRow, isSameWay, resultsTable } from '../batch/results.ts';
import { COLUMNS, type Column, failedRow, type Row } from '../batch/row.ts';
import type { Task } from '../batch/worker.ts';
import { checkOutput } from '../files/output.ts';
import { INPUT_AT_FAULT } from '../outcome.ts';
import { newPage } from '../terminal/page.ts';

interface Options {
  out?: string;
  jobs?: number;
  seed?: number;
  draws?: number;
}

const table = resultsTable(COLUMNS, 'batch', '--out');

/**
 * Assesses every case below a folder. A case that fails is a row with its reason, and the others go on; cases
 * that an earlier run has done in the same way are kept as they are.
 * @returns 1 when any case failed
 * @throws InputFault when the folder or the table's place is at fault
 */
export async function batch(folder: string, options: Options): Promise<number> {
  const out = options.out ?? 'standfast-batch.csv';
  await checkOutput(out);
  const names = await casesBelow(folder);
  refuseInsideACase(out, folder, names, '--out');
  const earlier = await table.earlier(out);
  const same = (row: EarlierRow<Column> | undefined) => isSameWay(row, options);
  const kept = new Map<string, Row | EarlierRow<Column>>();
  for (const name of names) {
    const row = earlier.get(name);
    if (row && same(row)) kept.set(name, row);
  }
  await table.start(out, [...kept.values()]);

  const tasks = names.map(
    (name): Task => ({
      path: path.join(folder, name),
      name,
      seed: options.seed,
      draws: options.draws,
      done: kept.get(name)?.contentSha256 as string | undefined,
    }),
  );
  const counts = { assessed: 0, failed: 0, unchanged: 0 };
  const failed = ({ name }: Task, message: string) => failedRow(name, null, message);
  const jobs = options.jobs ?? availableParallelism();
  await inThreads<Task, Row | null>(tasks, jobs, 'default', failed, async (task, row) => {
    if (!row) counts.unchanged++;
    else {
      counts[row.status === 'assessed' ? 'assessed' : 'failed']++;
      kept.set(task.name, row);
      await table.append(out, row);
    }
  });
  // The same cases give the same table, whatever order they were done in.
  await table.start(
    out,
    names.map((name) => kept.get(name)!),
  );

  const page = newPage();
  page.text(
    `${names.length} ${names.length === 1 ? 'case' : 'cases'}: ${counts.assessed} assessed, ${counts.unchanged} unchanged since an earlier run, ${counts.failed} failed.`,
  );
  for (const name of names) {
    const row = kept.get(name)!;
    if (row.status === 'failed') page.item('!', `${name}: ${row.message}`);
  }
  page.text(`Wrote ${out}`);
  page.print();
  return counts.failed ? INPUT_AT_FAULT : 0;
}
