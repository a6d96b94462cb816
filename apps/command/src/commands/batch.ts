import { availableParallelism } from 'node:os';
import path from 'node:path';
import { DEFAULT_DRAWS, DEFAULT_SEED, ENGINE_VERSION, InputFault } from '@standfast/engine';
import { findCases } from '../batch/find-cases.ts';
import { appendRow, type EarlierRow, earlierResults, startTable } from '../batch/results.ts';
import { failedRow, type Row } from '../batch/row.ts';
import type { Task } from '../batch/worker.ts';
import { checkOutput } from '../files/output.ts';
import { look } from '../files/read.ts';
import { INPUT_AT_FAULT } from '../outcome.ts';
import { newPage } from '../terminal/page.ts';

interface Options {
  out?: string;
  jobs?: number;
  seed?: number;
  draws?: number;
}

/**
 * Assesses every case below a folder. A case that fails is a row with its reason, and the others go on; cases
 * that an earlier run has done in the same way are kept as they are.
 * @returns 1 when any case failed
 * @throws InputFault when the folder or the table's place is at fault
 */
export async function batch(folder: string, options: Options): Promise<number> {
  if (!(await look(folder)).isDirectory())
    throw new InputFault('this is a file: give a folder with cases below it', folder);
  const out = options.out ?? 'standfast-batch.csv';
  await checkOutput(out);
  const names = await findCases(folder);
  if (!names.length) {
    throw new InputFault(
      'there is no case below this folder: no folder with a case.json, and no zip',
      folder,
    );
  }
  refuseInsideACase(out, folder, names);
  const earlier = await earlierResults(out);
  const same = (row: EarlierRow | undefined) => isSameWay(row, options);
  const kept = new Map<string, Row | EarlierRow>();
  for (const name of names) {
    const row = earlier.get(name);
    if (row && same(row)) kept.set(name, row);
  }
  await startTable(out, [...kept.values()]);

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
  await inThreads(tasks, options.jobs ?? availableParallelism(), async (task, row) => {
    if (!row) counts.unchanged++;
    else {
      counts[row.status === 'assessed' ? 'assessed' : 'failed']++;
      kept.set(task.name, row);
      await appendRow(out, row);
    }
  });
  // The same cases give the same table, whatever order they were done in.
  await startTable(
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

/** A case folder is evidence: nothing of ours goes into it, and what it holds decides whether it has changed. */
function refuseInsideACase(out: string, folder: string, names: string[]): void {
  for (const name of names) {
    const below = path.relative(path.resolve(folder, name), path.resolve(out));
    if (!below.startsWith('..') && !path.isAbsolute(below)) {
      throw new InputFault(`this lies in the case ${name}: choose a place outside the cases with --out`, out);
    }
  }
}

/** Whether an earlier row was assessed by this engine with these draws, so that only its content need be compared. */
function isSameWay(row: EarlierRow | undefined, { seed, draws }: Options): boolean {
  return (
    row?.status === 'assessed' &&
    row.engineVersion === ENGINE_VERSION &&
    Number(row.seed) === (seed ?? DEFAULT_SEED) &&
    Number(row.draws) === (draws ?? DEFAULT_DRAWS)
  );
}

/** Runs the tasks on so many threads, with a progress bar on standard error where that is a terminal. */
async function inThreads(
  tasks: Task[],
  jobs: number,
  done: (task: Task, row: Row | null) => Promise<void>,
): Promise<void> {
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({
    filename: new URL('./batch-worker.js', import.meta.url).href,
    minThreads: 1,
    maxThreads: Math.min(jobs, tasks.length),
  });
  const bar = process.stderr.isTTY ? await progressBar(tasks.length) : null;
  try {
    await Promise.all(
      tasks.map(async (task) => {
        const row: Row | null = await pool
          .run(task)
          .catch((error: Error) => failedRow(task.name, null, `It could not be finished: ${error.message}`));
        await done(task, row);
        bar?.increment();
      }),
    );
  } finally {
    bar?.stop();
    await pool.destroy();
  }
}

async function progressBar(total: number) {
  const { default: progress } = await import('cli-progress');
  const bar = new progress.SingleBar({
    format: '{bar} {value} of {total} cases, {eta_formatted} left',
    barCompleteChar: '=',
    barIncompleteChar: ' ',
    stream: process.stderr,
  });
  bar.start(total, 0);
  return bar;
}
