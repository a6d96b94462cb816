/** The tasks of a study shared out between as many processes as the machine runs at once. */
import { type ChildProcess, fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';

const MOST_PROCESSES = 8;

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
 * @param toGo told now and then how many tasks are left
 */
export async function inProcesses<Task, Result>(
  script: string,
  tasks: readonly Task[],
  toGo: (left: number) => void,
): Promise<Result[]> {
  const done: Result[] = [];
  const waiting = tasks.map((task, i) => ({ task, i }));
  const works = (child: ChildProcess) =>
    new Promise<void>((resolve, reject) => {
      let at = -1;
      const give = () => {
        const next = waiting.shift();
        at = next?.i ?? -1;
        if (next) child.send(next.task as object);
        else {
          child.disconnect();
          resolve();
        }
      };
      child.on('message', (result: Result) => {
        done[at] = result;
        if (waiting.length > 0 && waiting.length % 50 === 0) toGo(waiting.length);
        give();
      });
      child.on('exit', (code) => {
        if (at >= 0) reject(new Error(`a process of the study ended with ${code}`));
      });
      give();
    });
  const processes = Math.min(availableParallelism(), MOST_PROCESSES, tasks.length);
  await Promise.all(Array.from({ length: processes }, () => works(fork(fileURLToPath(script)))));
  return done;
}
