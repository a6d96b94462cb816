/**
 * How the numbers of a column run, which tells depth from readings when no words do.
 */

export interface ColumnShape {
  /** Share of the cells with something in them that are numbers. */
  numericShare: number;
  values: number[];
  least: number;
  most: number;
  /** All whole numbers. */
  whole: boolean;
  /** 1 strictly growing, -1 strictly falling, 0 neither. */
  direction: 1 | -1 | 0;
  /** Median size of the step from row to row. */
  step: number;
  /** The steps are all within a few percent of the median. */
  even: boolean;
}

/** Steps further than this from the median, as a share of it, are uneven. */
const EVEN_WITHIN = 0.05;

/** The shape of the numbers among some cells; null stands for a cell that is no number. */
export function columnShape(numbers: readonly (number | null)[], filled: number): ColumnShape {
  const values = numbers.filter((value) => value !== null);
  const steps = values.slice(1).map((value, i) => value - values[i]!);
  const sizes = steps.map(Math.abs).sort((a, b) => a - b);
  const step = sizes[sizes.length >> 1] ?? 0;
  const direction =
    steps.length < 2 ? 0 : steps.every((each) => each > 0) ? 1 : steps.every((each) => each < 0) ? -1 : 0;
  return {
    numericShare: filled === 0 ? 0 : values.length / filled,
    values,
    least: values.reduce((least, value) => Math.min(least, value), Infinity),
    most: values.reduce((most, value) => Math.max(most, value), -Infinity),
    whole: values.every(Number.isInteger),
    direction,
    step,
    even:
      sizes.length > 0 && sizes[0]! >= (1 - EVEN_WITHIN) * step && sizes.at(-1)! <= (1 + EVEN_WITHIN) * step,
  };
}
