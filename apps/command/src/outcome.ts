/**
 * How a command ends: 0 done, 1 the input is at fault, 2 wrong usage. A person sees a message, never a stack trace.
 */
import { InputFault } from '@standfast/engine';

export const INPUT_AT_FAULT = 1;
export const WRONG_USAGE = 2;

/** Options that contradict each other or hold no sensible value. */
export class UsageFault extends Error {}

/**
 * Wraps a command's action: turns what it throws into a message on standard error and an exit status.
 * Standard output is let run empty, so the status is set and the process not cut off.
 */
export function withOutcome<Args extends unknown[]>(
  action: (...args: Args) => Promise<number | undefined> | Promise<void>,
): (...args: Args) => Promise<void> {
  return async (...args) => {
    try {
      process.exitCode = (await action(...args)) ?? process.exitCode ?? 0;
    } catch (error) {
      process.exitCode = report(error);
    }
  };
}

/** Writes why a command stopped to standard error. @returns the exit status it means */
function report(error: unknown): number {
  if (error instanceof UsageFault) {
    process.stderr.write(`standfast: ${error.message}\n`);
    return WRONG_USAGE;
  }
  process.stderr.write(`standfast: ${faultMessage(error)}\n`);
  return INPUT_AT_FAULT;
}

/** What to tell a person of anything thrown: their input's fault as it is, a fault of ours as one. */
export function faultMessage(error: unknown): string {
  if (error instanceof InputFault) return error.message;
  const message = error instanceof Error ? error.message : String(error);
  if (process.env.STANDFAST_DEBUG && error instanceof Error) return error.stack ?? message;
  return `a fault of this program, not of your input: ${message.split('\n')[0]}. Nothing was written. Please report it with the input that caused it (STANDFAST_DEBUG=1 shows where).`;
}
