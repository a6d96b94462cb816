/**
 * Several faults found in one reading, so that a person mends them all at once and not one a run.
 */
import { InputFault } from '@standfast/engine';

/** An `InputFault` that carries every fault found; its message has one line for each. */
export class CaseFaults extends InputFault {
  override name = 'CaseFaults';
  constructor(readonly faults: readonly InputFault[]) {
    super(faults[0]?.what ?? 'nothing is wrong', faults[0]?.where ?? '');
    this.message = faults.map((fault) => fault.message).join('\n');
  }
}

/** Throws the one fault as it is, or all of them as `CaseFaults`; does nothing when there are none. */
export function throwFaults(faults: readonly InputFault[]): void {
  if (faults.length === 1) throw faults[0];
  if (faults.length > 1) throw new CaseFaults(faults);
}
