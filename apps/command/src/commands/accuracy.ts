import { availableParallelism } from 'node:os';
import path from 'node:path';
import { onDisk, writeWhole } from '@standfast/casefile/node';
import { InputFault } from '@standfast/engine';
import { type AccuracySummary, summedUp } from '../accuracy/summary.ts';
import { accuracyTable } from '../accuracy/table.ts';
import type { CaseOutcome, SectionVerdict } from '../accuracy/verdict.ts';
import { casesBelow, refuseInsideACase } from '../batch/find-cases.ts';
import { inThreads } from '../batch/pool.ts';
import type { Task } from '../batch/worker.ts';
import { checkOutput } from '../files/output.ts';
import { printJson } from '../json.ts';
import { INPUT_AT_FAULT } from '../outcome.ts';
import { accuracyPage } from '../terminal/accuracy.ts';

interface Options {
  json?: boolean;
  csv?: string;
  jobs?: number;
  seed?: number;
  draws?: number;
}

/**
 * Sums up how predictions stood against felled sections, over every case below a folder that has one.
 * @returns 1 when any case failed
 * @throws InputFault when no case below the folder has a felled section, or the folder or the table's place is at fault
 */
export async function accuracy(folder: string, options: Options): Promise<number> {
  const names = await casesBelow(folder);
  if (options.csv) {
    await checkOutput(options.csv);
    refuseInsideACase(options.csv, folder, names, '--csv');
  }
  const outcomes = new Map<string, CaseOutcome>();
  const tasks = names.map(
    (name): Task => ({ path: path.join(folder, name), name, seed: options.seed, draws: options.draws }),
  );
  await inThreads<Task, CaseOutcome>(
    tasks,
    options.jobs ?? availableParallelism(),
    'judgeOne',
    ({ name }, message) => ({ case: name, status: 'failed', message }),
    ({ name }, outcome) => {
      outcomes.set(name, outcome);
    },
  );
  // In the order of the cases, whatever order they were done in.
  const ordered = names.map((name) => outcomes.get(name)!);
  const verdicts = ordered.flatMap((outcome): SectionVerdict[] =>
    outcome.status === 'judged' ? outcome.sections : [],
  );
  const failed = ordered.filter((outcome) => outcome.status === 'failed');
  const standing = ordered.filter(({ status }) => status === 'standing').length;
  if (verdicts.length === 0) {
    const reasons = failed.slice(0, 3).map((one) => `; ${one.case} failed: ${one.message}`);
    throw new InputFault(
      `none of the ${names.length === 1 ? 'one case' : `${names.length} cases`} below this folder has a felled section: write what was seen after felling into "felled" of a section in case.json (docs/guide/accuracy.md)${reasons.join('')}`,
      folder,
    );
  }
  const summary: AccuracySummary = summedUp(verdicts);
  if (options.csv) {
    const { csv } = options;
    const table = new TextEncoder().encode(accuracyTable(verdicts));
    await onDisk(csv, () => writeWhole(csv, table));
  }
  if (options.json) {
    printJson({
      format: 'standfast-accuracy',
      version: 1,
      summary,
      sections: verdicts,
      standing,
      failed: failed.map(({ case: name, message }) => ({ case: name, message })),
    });
  } else accuracyPage({ summary, verdicts, standing, failed, csv: options.csv });
  return failed.length ? INPUT_AT_FAULT : 0;
}
