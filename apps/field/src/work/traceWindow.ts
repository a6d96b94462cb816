/** A stretch of a trace as drawn at a width: least and greatest reading in each pixel column, so no spike is lost. */
import type { DrillingAssessment } from '@standfast/engine';
import type { TraceSamples } from './assessor.worker.ts';

type Drawn = DrillingAssessment['drawn'];

/** Index of the first depth at or beyond `mm`. */
export function firstAtOrBeyond(depthMm: ArrayLike<number>, mm: number): number {
  let low = 0;
  let high = depthMm.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (depthMm[middle]! < mm) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The stretch from `fromMm` to `toMm` in `columns` columns; the friction is read off the whole trace as drawn. */
export function traceWindow(
  { depthMm, resistancePct }: TraceSamples,
  whole: Drawn,
  fromMm: number,
  toMm: number,
  columns: number,
): Drawn {
  const drawn: Drawn = { depthMm: [], lowPct: [], highPct: [], frictionPct: [] };
  // One sample beyond either end, so that the line runs to the edge of the picture.
  const first = Math.max(0, firstAtOrBeyond(depthMm, fromMm) - 1);
  const end = Math.min(depthMm.length, firstAtOrBeyond(depthMm, toMm) + 1);
  const width = (toMm - fromMm) / columns;
  const columnOf = (i: number) => Math.floor((depthMm[i]! - fromMm) / width);
  for (let i = first; i < end; ) {
    const column = columnOf(i);
    const start = i;
    let low = Infinity;
    let high = -Infinity;
    for (; i < end && columnOf(i) === column; i++) {
      low = Math.min(low, resistancePct[i]!);
      high = Math.max(high, resistancePct[i]!);
    }
    const at = i - start > 1 ? fromMm + (column + 0.5) * width : depthMm[start]!;
    drawn.depthMm.push(at);
    drawn.lowPct.push(low);
    drawn.highPct.push(high);
    drawn.frictionPct.push(between(whole.depthMm, whole.frictionPct, at));
  }
  return drawn;
}

/** Linear interpolation in a table, flat beyond its ends; 0 for an empty one. */
export function between(at: readonly number[], values: readonly number[], x: number): number {
  const next = firstAtOrBeyond(at, x);
  if (at.length === 0) return 0;
  if (next === 0) return values[0]!;
  if (next === at.length) return values.at(-1)!;
  const share = (x - at[next - 1]!) / (at[next]! - at[next - 1]!);
  return values[next - 1]! + share * (values[next]! - values[next - 1]!);
}

/** What a view of a stretch allows: at least 5 mm wide, within the whole. */
export function clampWindow(
  [from, to]: readonly [number, number],
  [least, most]: readonly [number, number],
): [number, number] {
  const width = Math.min(most - least, Math.max(5, to - from));
  const start = Math.min(most - width, Math.max(least, from));
  return [start, start + width];
}

/** The stretch zoomed by a factor (above 1: closer) with the depth at `aboutMm` staying where it is. */
export function zoomWindow(
  [from, to]: readonly [number, number],
  factor: number,
  aboutMm: number,
): [number, number] {
  return [aboutMm - (aboutMm - from) / factor, aboutMm + (to - aboutMm) / factor];
}
