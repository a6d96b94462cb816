/**
 * How the picture of a section sharpened: the case assessed with none, one, two … of its drillings, in the order they
 * were made, one after the other in a worker of its own so that editing is not held up. Each step is kept as long as
 * the case stays as it is.
 */
import type { CaseFile } from '@standfast/casefile';
import type { SectionAssessment } from '@standfast/engine';
import { withFirstDrillings } from '../edit/drillings.ts';
import { type AssessorWorker, assessorWorker, type Wanted } from './assessor.ts';

/** Enough for the 5 % points to lie still to a percent or so. */
const DRAWS = 1000;

/** The section as it stood after so many drillings. */
export interface SharpeningStep {
  drillings: number;
  section: SectionAssessment;
}

export interface Sharpening {
  steps: readonly SharpeningStep[];
  done: boolean;
  fault: string | null;
}

export const NOT_BEGUN: Sharpening = { steps: [], done: false, fault: null };

const kept = new WeakMap<CaseFile, Map<string, Sharpening>>();

/** What is known already of a case. */
export function sharpeningKept(caseFile: CaseFile, sectionId: string): Sharpening {
  return kept.get(caseFile)?.get(sectionId) ?? NOT_BEGUN;
}

/**
 * Works through the steps, fewest drillings first; `onChange` gets each new state. Steps worked out before are not
 * worked out again.
 * @returns a function that stops it
 */
export function followSharpening(
  wanted: Wanted,
  sectionId: string,
  onChange: (state: Sharpening) => void,
  start: () => Pick<AssessorWorker, 'assess' | 'close'> = assessorWorker,
): () => void {
  const { caseFile } = wanted;
  let state = sharpeningKept(caseFile, sectionId);
  let stopped = false;
  let worker: Pick<AssessorWorker, 'assess' | 'close'> | null = null;
  const count = caseFile.sections.find(({ id }) => id === sectionId)?.drillings.length ?? 0;
  const show = (change: Partial<Sharpening>) => {
    if (stopped) return;
    state = { ...state, ...change };
    const ofCase = kept.get(caseFile) ?? new Map<string, Sharpening>();
    kept.set(caseFile, ofCase.set(sectionId, state));
    onChange(state);
  };
  const run = async () => {
    show({ fault: null });
    for (let drillings = state.steps.length; drillings <= count && !stopped; drillings++) {
      worker ??= start();
      const job = { ...wanted, caseFile: withFirstDrillings(caseFile, sectionId, drillings) };
      const outcome = await worker.assess(job, DRAWS);
      if (stopped) return;
      const section = outcome.ok ? outcome.assessment.sections.find(({ id }) => id === sectionId) : undefined;
      if (!section) {
        const [first] = outcome.ok ? [] : outcome.faults;
        show({ fault: first?.what ?? 'This section is no longer in the case.' });
        break;
      }
      show({ steps: [...state.steps, { drillings, section }], done: drillings === count });
    }
    worker?.close();
  };
  run().catch((thrown: unknown) => {
    show({ fault: thrown instanceof Error ? thrown.message : String(thrown) });
    worker?.close();
  });
  return () => {
    stopped = true;
    worker?.close();
  };
}
