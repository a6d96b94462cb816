/** What a number says when it is opened. All text is ready to print, in the units of the screen. */

export interface ExplainedInput {
  name: string;
  value: string;
  /** Where the value comes from: a measurement of this case, a table with its row, a code with its clause. */
  source: string;
}

export interface Explanation {
  name: string;
  /** The number with its unit and range, as it stands on the screen. */
  value: string;
  /** What the number means, in one or two sentences. */
  meaning: string;
  /** Steps of the calculation, in order. */
  formula: string[];
  inputs: ExplainedInput[];
  sources: string[];
  /** What it does not account for, empty when there is nothing particular. */
  limits: string;
}
