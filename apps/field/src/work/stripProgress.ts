/** Shares told by several pieces of work, put together into one bar that only grows. */
import type { StripProgress } from '@standfast/engine';

/** Tells shares of one piece of work as shares of the whole, of which it runs from `from` to `to`. */
export function portion(tell: StripProgress, from: number, to: number): StripProgress {
  return (share, step) => tell(from + share * (to - from), step);
}

/**
 * Tells of a piece of work, shares that only grow, for as long as it runs: what a worker told before it answered, or was
 * stopped, may come in after.
 */
export async function whileTelling<T>(
  tell: StripProgress,
  work: (tell: StripProgress) => Promise<T>,
): Promise<T> {
  let over = false;
  const latest = growing((share, step) => {
    if (!over) tell(share, step);
  });
  try {
    return await work(latest);
  } finally {
    over = true;
  }
}

/** Never tells less than it told before: a bar is not set back. */
export function growing(tell: StripProgress): StripProgress {
  let most = 0;
  return (share, step) => {
    most = Math.min(1, Math.max(most, share));
    tell(most, step);
  };
}
