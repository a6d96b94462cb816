/**
 * An input that cannot be assessed: what is wrong, where, and what to do. It is the person's to mend, so every
 * edge (command line, app) shows its message and never a stack trace.
 */
export class InputFault extends Error {
  override name = 'InputFault';
  constructor(
    /** What is wrong and what to do, one or two sentences. */
    readonly what: string,
    /** Where: a file, a row or a field, for example `case.json: sections[0].outline`. */
    readonly where: string,
  ) {
    super(where ? `${where}: ${what}` : what);
  }
}
