/**
 * Winds averaged over different times, and Beaufort's scale, for comparing a record or a forecast with a gust.
 *
 * Ratios to the hour's mean after Durst 1960 (open country), between tabled times linear in ln(time).
 */
import { InputFault } from '../faults.ts';
import { constant } from '../reference/index.ts';
import { gustAveraging } from '../reference/tables.generated.ts';

/** Greatest wind averaged over `seconds` over the mean of the hour. */
export function averagingRatio(seconds: number): number {
  const first = gustAveraging[0]!;
  const last = gustAveraging.at(-1)!;
  if (!(seconds >= first.seconds && seconds <= last.seconds)) {
    throw new InputFault(
      `An averaging time of ${seconds} s is outside the table; give ${first.seconds} to ${last.seconds} s.`,
      'seconds',
    );
  }
  const above = gustAveraging.findIndex((row) => row.seconds >= seconds);
  const high = gustAveraging[above]!;
  if (high.seconds === seconds) return high.ratio;
  const low = gustAveraging[above - 1]!;
  const share = Math.log(seconds / low.seconds) / Math.log(high.seconds / low.seconds);
  return low.ratio + share * (high.ratio - low.ratio);
}

/** A wind averaged over one time as the greatest over another, m/s. */
export function convertAveraging(windMs: number, fromSeconds: number, toSeconds: number): number {
  return (windMs * averagingRatio(toSeconds)) / averagingRatio(fromSeconds);
}

/** The 10-minute mean at 10 m, m/s, that a Beaufort force stands for: a mean, not a gust. */
export function beaufortMs(force: number): number {
  return constant('beaufort factor').value * force ** constant('beaufort exponent').value;
}
