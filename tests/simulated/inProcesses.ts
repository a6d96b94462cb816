/**
 * The tasks of a study shared out between as many processes as the machine runs at once. A study takes long: where the
 * environment names a file (`STUDY_KEPT`), each result is added to it, and a later run goes on from there.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';

const MOST_PROCESSES = 8;
/** Tasks between two words on how many are left. */
const TELL_EVERY = 50;
const KEPT = process.env.STUDY_KEPT;

/** Whether this process was started by `inProcesses`; then `answer` what comes, and do nothing else. */
export const isStarted = () => process.send !== undefined;

/** In a process started by `inProcesses`: works on every task that comes. */
export function answer<Task, Result>(work: (task: Task) => Result): void {
  process.on('message', (task: Task) => process.send!(work(task)));
}

/**
 * Results of the tasks, in the order given, whichever process did them and whenever.
 *
 * @param script the module (`import.meta.url`) that calls `answer` when it is started so
 * @param tasks plain data, each unlike every other
 */
export async function inProcesses<Task extends object, Result extends object>(
  script: string,
  tasks: readonly Task[],
): Promise<Result[]> {
  const kept = keptResults<Result>();
  const done = tasks.map((task) => kept.get(JSON.stringify(task)));
  const waiting = tasks.map((task, i) => ({ task, i })).filter(({ i }) => done[i] === undefined);
  const works = (child: ChildProcess) =>
    new Promise<void>((resolve, reject) => {
      let now: { task: Task; i: number } | undefined;
      const give = () => {
        now = waiting.shift();
        if (now) child.send(now.task);
        else {
          child.disconnect();
          resolve();
        }
      };
      child.on('message', (result: Result) => {
        done[now!.i] = result;
        if (KEPT) appendFileSync(KEPT, `${JSON.stringify({ task: now!.task, result })}\n`);
        if (waiting.length > 0 && waiting.length % TELL_EVERY === 0)
          process.stderr.write(`${waiting.length} sections to go\n`);
        give();
      });
      child.on('exit', (code) => {
        if (now) reject(new Error(`a process of the study ended with ${code}`));
      });
      give();
    });
  const processes = Math.min(availableParallelism(), MOST_PROCESSES, waiting.length);
  await Promise.all(Array.from({ length: processes }, () => works(fork(fileURLToPath(script)))));
  return done as Result[];
}

/** Results of an earlier run by their task. */
function keptResults<Result>(): Map<string, Result> {
  if (!KEPT || !existsSync(KEPT)) return new Map();
  const lines = readFileSync(KEPT, 'utf8').trim().split('\n').filter(Boolean);
  return new Map(
    lines.map((line) => {
      const { task, result } = JSON.parse(line) as { task: object; result: Result };
      return [JSON.stringify(task), result];
    }),
  );
}
