/**
 * How many holes the advice on the next drilling saves against equal spacing, written to docs/accuracy/drillings.md with its
 * figures: `npm run accuracy drillings`. Sections are shared out between processes.
 */
import { fork } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bars } from '../sections/figures.ts';
import { JUDGING_FAMILIES, TUNING_FAMILIES } from '../sections/trueSection.ts';
import { page } from './page.ts';
import { advised, equallySpaced, halving, isSure, MOST_HOLES, undrilled } from './strategies.ts';
import { type Drilled, holesNeeded, isSureBy, mean, WAYS } from './summary.ts';
import { type Readings, visit } from './visit.ts';

const PER_FAMILY = { judging: 10, tuning: 3, traces: 1 };
/**
 * Seeds of their own; the method was tried out with seeds from 60 000 to 90 000, on the tuning families only. Traces are
 * simulated for the first of the judging sections, drilled once more.
 */
const SEEDS = { judging: 1_700_000, tuning: 1_800_000, traces: 1_700_000 };
type Part = keyof typeof SEEDS;
const DRAWS = 1000;

interface Task {
  part: Part;
  family: string;
  seed: number;
}

/** A section of the study; without `drilled` it was sure before any hole. */
export interface Studied extends Task {
  drilled: Drilled | null;
}

const judging = Object.keys(JUDGING_FAMILIES);
const tuning = Object.keys(TUNING_FAMILIES);
const familiesOf = (part: Part) => (part === 'tuning' ? tuning : judging);
const readingsOf = (part: Part): Readings => (part === 'traces' ? 'traces' : 'zones');

function study({ part, family, seed }: Task): Studied {
  const section = visit(family, seed, familiesOf(part), readingsOf(part), true);
  const before = undrilled(section, DRAWS);
  if (isSure(before)) return { part, family, seed, drilled: null };
  const drilled = {
    family,
    seed,
    truth: section.truth,
    undrilled: before,
    spaced: equallySpaced(section, DRAWS),
    halving: halving(section, DRAWS),
    advised: advised(section, DRAWS),
  };
  return { part, family, seed, drilled };
}

if (process.send) {
  process.on('message', (task: Task) => process.send!(study(task)));
} else {
  const started = Date.now();
  // Round the families again and again, so that processes end together.
  const tasks = (Object.keys(SEEDS) as Part[]).flatMap((part) =>
    Array.from({ length: PER_FAMILY[part] }, (_, k) =>
      familiesOf(part).map((family, f): Task => ({ part, family, seed: SEEDS[part] + 1000 * f + k })),
    ).flat(),
  );
  const studied = await inProcesses(tasks);
  write(studied);
  process.stderr.write(
    `docs/accuracy/drillings.md written, ${Math.round((Date.now() - started) / 1000)} s\n`,
  );
}

/** The tasks done by as many processes as the machine runs at once, in the order given. */
async function inProcesses(tasks: readonly Task[]): Promise<Studied[]> {
  const done: Studied[] = [];
  const waiting = tasks.map((task, i) => ({ task, i }));
  await Promise.all(
    Array.from(
      { length: Math.min(availableParallelism(), 8) },
      () =>
        new Promise<void>((resolve, reject) => {
          const child = fork(fileURLToPath(import.meta.url));
          let ended = false;
          let now: { task: Task; i: number } | undefined;
          const give = () => {
            now = waiting.shift();
            if (now) child.send(now.task);
            else {
              ended = true;
              child.disconnect();
              resolve();
            }
          };
          child.on('message', (result: Studied) => {
            done[now!.i] = result;
            if (waiting.length > 0 && waiting.length % 20 === 0)
              process.stderr.write(`${waiting.length} sections to go\n`);
            give();
          });
          child.on('exit', (code) => {
            if (!ended) reject(new Error(`a process of the study ended with ${code}`));
          });
          give();
        }),
    ),
  );
  return done;
}

function write(studied: readonly Studied[]): void {
  const out = fileURLToPath(new URL('../../../docs/accuracy/drillings.md', import.meta.url));
  const figures = join(dirname(out), 'figures');
  mkdirSync(figures, { recursive: true });
  const of = (part: Part) => studied.filter((s) => s.part === part);
  const doubtful = (part: Part) => of(part).flatMap(({ drilled }) => drilled ?? []);
  const judged = doubtful('judging');
  writeFileSync(
    join(figures, 'drillings-sure.svg'),
    bars({
      title: 'Share of sections whose decision is sure, by number of holes (families never fitted to)',
      groups: [1, 2, 3, 4, 6, 8, MOST_HOLES].map((holes) => ({
        label: `${holes}`,
        values: WAYS.map((way) => {
          const within = (d: Drilled) => isSureBy(d, way) && holesNeeded(d, way) <= holes;
          return mean(judged.map((d) => (within(d) ? 1 : 0)));
        }),
      })),
      series: [...WAYS],
      top: 1,
      axis: 'holes at the section',
    }),
  );
  writeFileSync(
    join(figures, 'drillings-families.svg'),
    bars({
      title: 'Mean number of holes until the decision is sure, by family',
      groups: judging.map((family) => ({
        label: family,
        values: WAYS.map((way) =>
          mean(judged.filter((d) => d.family === family).map((d) => holesNeeded(d, way))),
        ),
      })),
      series: [...WAYS],
      top: MOST_HOLES,
      axis: 'family',
    }),
  );
  writeFileSync(
    out,
    page({
      judging: { all: of('judging').length, doubtful: judged },
      tuning: { all: of('tuning').length, doubtful: doubtful('tuning') },
      traces: { all: of('traces').length, doubtful: doubtful('traces') },
      draws: DRAWS,
    }),
  );
}
