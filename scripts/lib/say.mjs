/** What the scripts print: one short line a step, and a reason with a remedy when they stop. */

/** A stop that is not a bug: its message is all a person needs. */
export class Stop extends Error {}

/** @param {string} line */
export function say(line) {
  process.stdout.write(`${line}\n`);
}

/**
 * Runs a script's main function; a Stop ends it with its message and status 1.
 * @param {() => Promise<number | void>} main
 */
export async function runScript(main) {
  try {
    process.exitCode = (await main()) ?? process.exitCode;
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = 1;
  }
}
