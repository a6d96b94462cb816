/**
 * Timing by the processor time this process used, all its threads counted, so that a busy machine does not spoil
 * the figures. On a quiet core it is what the clock shows.
 */

const LEAST_MS = 20;

/** Processor milliseconds that one call takes: the median of `runs` runs, each long enough to be told. */
export function medianMs(work: () => unknown, runs = 7): number {
  work();
  const once = processorMs(work);
  const calls = Math.max(1, Math.ceil(LEAST_MS / Math.max(once, 0.001)));
  return median(
    Array.from(
      { length: runs },
      () =>
        processorMs(() => {
          for (let call = 0; call < calls; call++) work();
        }) / calls,
    ),
  );
}

/** Processor milliseconds that the work takes this once. */
export function processorMs(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Milliseconds by the clock that the work takes this once. */
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
