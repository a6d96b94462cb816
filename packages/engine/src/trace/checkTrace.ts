import { InputFault } from '../faults.ts';
import type { Trace } from './types.ts';

/** Fewest readings a trace must have to be read. */
export const LEAST_READINGS = 20;
/** Shortest and longest needle pass that makes sense, mm. */
export const SHORTEST_SPAN_MM = 5;
export const LONGEST_SPAN_MM = 3000;
/** Resistance beyond these bounds is not a percentage of full scale (zero error and noise allowed for), percent. */
const LOWEST_PCT = -25;
const HIGHEST_PCT = 150;

/**
 * Refuse a trace that cannot be read: too few readings, arrays of different length, a depth or reading that is not
 * a finite number, depth that does not ascend strictly, a span or a level that makes no sense in its unit.
 * One pass, no copies: millions of rows are fine. Rows are counted from 1, the first row of data.
 *
 * @param where what the trace is called in messages: a file name or a field.
 * @throws InputFault
 */
export function checkTrace(trace: Trace, where: string): void {
  const { depthMm, resistancePct, feed } = trace;
  const n = depthMm.length;
  if (resistancePct.length !== n)
    throw new InputFault(
      `There are ${n} depths but ${resistancePct.length} resistance readings. Give each depth one reading.`,
      where,
    );
  if (feed && feed.length !== n)
    throw new InputFault(
      `There are ${n} depths but ${feed.length} feed readings. Give each depth one.`,
      where,
    );
  if (n === 0) throw new InputFault('The trace is empty. Give at least one drilling’s readings.', where);
  if (n < LEAST_READINGS)
    throw new InputFault(
      `The trace has ${n} readings; at least ${LEAST_READINGS} are needed to read zones. Export it with all its rows.`,
      where,
    );
  let highest = -Infinity;
  let lowest = Infinity;
  for (let i = 0; i < n; i++) {
    const x = depthMm[i]!;
    const y = resistancePct[i]!;
    if (!Number.isFinite(x))
      throw new InputFault(`Depth in row ${i + 1} is not a number (${x}). Correct or remove the row.`, where);
    if (!Number.isFinite(y))
      throw new InputFault(
        `Resistance in row ${i + 1} is not a number (${y}). Correct or remove the row.`,
        where,
      );
    if (i > 0 && !(x > depthMm[i - 1]!))
      throw new InputFault(
        `Depth must ascend from row to row, but row ${i + 1} (${x} mm) does not lie beyond row ${i} ` +
          `(${depthMm[i - 1]} mm). Sort the rows, remove repeats, or split the table where a second drilling begins.`,
        where,
      );
    if (y > highest) highest = y;
    if (y < lowest) lowest = y;
  }
  const span = depthMm[n - 1]! - depthMm[0]!;
  if (span < SHORTEST_SPAN_MM)
    throw new InputFault(
      `The depths span only ${span.toPrecision(3)} mm. Depth is taken in millimetres: if it was written in metres, ` +
        'centimetres or inches, convert it.',
      where,
    );
  if (span > LONGEST_SPAN_MM)
    throw new InputFault(
      `The depths span ${span.toPrecision(4)} mm, longer than any needle. Depth is taken in millimetres: if it was ` +
        'written in micrometres or in steps of the drill, convert it.',
      where,
    );
  if (highest > HIGHEST_PCT || lowest < LOWEST_PCT)
    throw new InputFault(
      `Resistance runs from ${lowest.toPrecision(3)} to ${highest.toPrecision(3)}. It is taken in percent of the ` +
        'drill’s full scale (0 to 100): convert it from the drill’s own unit.',
      where,
    );
}
