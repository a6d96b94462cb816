/**
 * Keeps the assessment following the case: waits until typing pauses, runs a quick pass with few draws so that the
 * answer moves within a blink, then the full pass. Only the latest case counts; what is under way for an older one
 * is let finish and thrown away.
 */
import type { CaseFile } from '@standfast/casefile';
import type { Assessment, Notice, TreeInput } from '@standfast/engine';
import { type Remote, wrap } from 'comlink';
import { traceFilesOf } from '../edit/drillings.ts';
import { loadFiles } from '../storage/blobs.ts';
import type { AssessOutcome, AssessorApi, FaultText, TraceSamples } from './assessor.worker.ts';
import { earlierEvidence } from './earlierVisit.ts';

export const QUICK_DRAWS = 200;
export const FULL_DRAWS = 2000;
const PAUSE_MS = 90;

export interface AssessmentView {
  /** The last assessment that could be made. */
  assessment: Assessment | null;
  /** The tree as it was taken, with what was left out filled in. */
  tree: TreeInput | null;
  /** The case that it is of. */
  of: CaseFile | null;
  /** It rests on the quick pass; the full one is on its way. */
  quick: boolean;
  working: boolean;
  /** Why the case as it is now cannot be assessed; empty when it can. */
  faults: FaultText[];
  /** From the file's own checks; the assessment carries its own. */
  notices: Notice[];
}

export const NO_ASSESSMENT: AssessmentView = {
  assessment: null,
  tree: null,
  of: null,
  quick: false,
  working: false,
  faults: [],
  notices: [],
};

export interface Wanted {
  caseFile: CaseFile;
  files: Record<string, string>;
}

export interface Assessor {
  /** The case as it is now; replaces whatever was wanted before. */
  want(wanted: Wanted): void;
  stop(): void;
}

/** The part of the worker that following needs, so that it can be tested without one. */
export interface AssessService {
  assess(wanted: Wanted, draws: number): Promise<AssessOutcome>;
}

/** Follows a case; `onChange` gets each new view. */
export function followCase(
  service: AssessService,
  onChange: (view: AssessmentView) => void,
  pauseMs = PAUSE_MS,
): Assessor {
  let view = NO_ASSESSMENT;
  let wanted: Wanted | null = null;
  let running = false;
  let stopped = false;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const show = (change: Partial<AssessmentView>) => {
    if (stopped) return;
    view = { ...view, ...change };
    onChange(view);
  };

  const run = async () => {
    if (running || stopped) return;
    running = true;
    while (wanted && !stopped) {
      const job: Wanted = wanted;
      for (const draws of [QUICK_DRAWS, FULL_DRAWS]) {
        // The full pass keeps the worker busy; while a person is still typing it would hold up the next quick one.
        if (draws === FULL_DRAWS) await pause(2 * pauseMs);
        if (wanted !== job || stopped) break;
        const outcome = await attempt(service, job, draws);
        if (wanted !== job || stopped) break;
        if (!outcome.ok) {
          show({ faults: outcome.faults, notices: outcome.notices, working: false });
          wanted = null;
          break;
        }
        const quick = draws !== FULL_DRAWS;
        show({
          assessment: outcome.assessment,
          tree: outcome.tree,
          of: job.caseFile,
          quick,
          faults: [],
          notices: outcome.notices,
          working: quick,
        });
        if (!quick) wanted = null;
      }
    }
    running = false;
  };

  return {
    want(next) {
      wanted = next;
      show({ working: true });
      clearTimeout(timer);
      timer = setTimeout(run, view.assessment ? pauseMs : 0);
    },
    stop() {
      stopped = true;
      wanted = null;
      clearTimeout(timer);
    },
  };
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

async function attempt(service: AssessService, job: Wanted, draws: number): Promise<AssessOutcome> {
  try {
    return await service.assess(job, draws);
  } catch (thrown) {
    const what = thrown instanceof Error ? thrown.message : String(thrown);
    return { ok: false, faults: [{ what, where: '' }], notices: [] };
  }
}

/** A worker that assesses, with the bytes it has been given. */
export interface AssessorWorker extends AssessService {
  /** All samples of one trace of a case. */
  samples(path: string, sha256: string): Promise<TraceSamples>;
  close(): void;
}

export function assessorWorker(): AssessorWorker {
  const worker = new Worker(new URL('./assessor.worker.ts', import.meta.url), {
    type: 'module',
    name: 'assessor',
  });
  const remote: Remote<AssessorApi> = wrap<AssessorApi>(worker);
  /** Gives the worker the bytes it has not seen yet. */
  const give = async (files: Record<string, string>): Promise<void> => {
    const unknown = new Set(await remote.unknown(Object.values(files)));
    const missing = Object.fromEntries(Object.entries(files).filter(([, sha256]) => unknown.has(sha256)));
    for (const [path, bytes] of await loadFiles(missing)) await remote.give(missing[path]!, bytes);
  };
  return {
    async assess(wanted, draws) {
      await give(traceFiles(wanted));
      return remote.assess({ ...wanted, draws });
    },
    async samples(path, sha256) {
      await give({ [path]: sha256 });
      return remote.samples(path, sha256);
    },
    close: () => worker.terminate(),
  };
}

function traceFiles({ caseFile, files }: Wanted): Record<string, string> {
  return {
    ...Object.fromEntries(traceFilesOf(caseFile, files).map(({ path, sha256 }) => [path, sha256])),
    ...earlierEvidence(caseFile, files),
  };
}

let shared: AssessorWorker | null = null;

/** One worker for what is on screen, started when first needed. */
export function sharedAssessor(): AssessorWorker {
  shared ??= assessorWorker();
  return shared;
}
