/** Cases worked on side by side, each in a thread of its own. */

/** Enough that no thread waits while results are put away. */
const LANES_PER_JOB = 4;

/**
 * Runs the worker's function `name` on every task, so many at a time, with a progress bar on standard error where that
 * is a terminal.
 * @param failed what stands for the result of a task that could not be finished
 * @param done is told of each result as soon as it is there
 */
export async function inThreads<Task, Result>(
  tasks: readonly Task[],
  jobs: number,
  name: 'default' | 'judgeOne' | 'listOne',
  failed: (task: Task, message: string) => Result,
  done: (task: Task, result: Result) => Promise<void> | void,
): Promise<void> {
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({
    filename: new URL('./batch-worker.js', import.meta.url).href,
    minThreads: 1,
    maxThreads: Math.min(jobs, tasks.length),
  });
  const bar = process.stderr.isTTY ? await progressBar(tasks.length) : null;
  try {
    const waiting = tasks.values();
    /** Takes one task after another; a city's cases must not all stand in the queue at once. */
    const lane = async () => {
      for (const task of waiting) {
        const result: Result = await pool
          .run(task, { name })
          .catch((error: Error) => failed(task, `It could not be finished: ${error.message}`));
        await done(task, result);
        bar?.increment();
      }
    };
    await Promise.all(Array.from({ length: Math.min(LANES_PER_JOB * jobs, tasks.length) }, lane));
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
