/** Timing: the median of several runs, each long enough for the clock. */

const LEAST_MS = 20;

/** Milliseconds that one call takes: the median of `runs` runs, after the first calls have let the code settle. */
export function medianMs(work: () => unknown, runs = 7): number {
  work();
  const once = elapsedMs(work);
  const calls = Math.max(1, Math.ceil(LEAST_MS / Math.max(once, 0.001)));
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    times.push(
      elapsedMs(() => {
        for (let call = 0; call < calls; call++) work();
      }) / calls,
    );
  }
  return median(times);
}

/** Milliseconds that the work takes this once. */
export function elapsedMs(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

export function median(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
