/**
 * How good the soundness field is on simulated sections, written to docs/accuracy/sections.md with its figures:
 * `npm run accuracy sections`. Readings go through simulated traces and the trace reader. Sections are shared out between
 * processes.
 */
import { answer, inProcesses, isStarted } from '../inProcesses.ts';
import { type Judged, judgeSection } from './judge.ts';
import { writePage } from './page.ts';
import { JUDGING_FAMILIES, TUNING_FAMILIES } from './trueSection.ts';
import { UNSEEN_FAMILIES } from './unseenFamilies.ts';

const COUNTS = [1, 2, 4, 6, 8, 12];
const PER_CELL = 8;
const TUNING_PER_CELL = 3;
const DRAWS = 500;
/** Seeds of the sections judged; those used in tuning began at 50 000 and at 2 100 000, those looked at before at 700 000. */
const SEEDS = { unseen: 3_900_000, judging: 3_700_000, tuning: 3_800_000 };
/** Drillings and sections of the part in which nobody noted the surface. */
const UNNOTED_COUNTS = [4, 6, 8];
const UNNOTED_PER_CELL = 4;

const unseen = Object.keys(UNSEEN_FAMILIES);
const judging = Object.keys(JUDGING_FAMILIES);
const tuning = Object.keys(TUNING_FAMILIES);

interface Task {
  part: 'unseen' | 'judging' | 'tuning' | 'unseen, not noted';
  family: string;
  drillings: number;
  seed: number;
}

function tasksOf(
  part: Task['part'],
  families: readonly string[],
  seed: number,
  perCell: number,
  counts: readonly number[],
): Task[] {
  return families.flatMap((family, f) =>
    counts.flatMap((drillings) =>
      Array.from({ length: perCell }, (_, k) => ({
        part,
        family,
        drillings,
        seed: seed + 10_000 * f + 100 * drillings + k,
      })),
    ),
  );
}

function judge({ part, family, drillings, seed }: Task): Judged[] {
  const lookedAround = part !== 'unseen, not noted';
  return judgeSection(family, seed, { drillings, readings: 'traces', lookedAround }, DRAWS);
}

async function study(): Promise<void> {
  const started = Date.now();
  const tasks = [
    ...tasksOf('unseen', unseen, SEEDS.unseen, PER_CELL, COUNTS),
    ...tasksOf('judging', judging, SEEDS.judging, PER_CELL, COUNTS),
    ...tasksOf('tuning', tuning, SEEDS.tuning, TUNING_PER_CELL, COUNTS),
    ...tasksOf('unseen, not noted', unseen, SEEDS.unseen, UNNOTED_PER_CELL, UNNOTED_COUNTS),
  ];
  const rows = await inProcesses<Task, Judged[]>(import.meta.url, tasks);
  const of = (part: Task['part']) => rows.filter((_, i) => tasks[i]!.part === part).flat();
  writePage({
    counts: COUNTS,
    unseen: of('unseen'),
    judged: of('judging'),
    tuned: of('tuning'),
    unnoted: of('unseen, not noted'),
  });
  process.stderr.write(`docs/accuracy/sections.md written, ${Math.round((Date.now() - started) / 1000)} s\n`);
}

if (isStarted()) answer(judge);
else await study();
