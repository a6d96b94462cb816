/**
 * Works out, one case after another and off the page's thread, the summaries that are missing or stale. It runs while a
 * list or map is on screen; one tab at a time does it for all.
 */
import { type CaseRecord, database, type SummaryRecord } from '../storage/database.ts';
import { type Conclusion, keepSummaries, listCases, summaryOf } from '../storage/summaries.ts';
import { type AssessorWorker, assessorWorker, FULL_DRAWS } from './assessor.ts';

/** Summaries are put away together, so that a list of thousands is not drawn anew for each. */
const PUT_EVERY_MS = 600;
const LOCK = 'standfast-summaries';

/** Begins as soon as no other does; `stop` ends it after the case at hand. */
export function freshenSummaries(): { stop(): void } {
  const stopping = new AbortController();
  const { signal } = stopping;
  const locks = navigator.locks as LockManager | undefined;
  const run = locks ? locks.request(LOCK, { signal }, () => freshen(signal)) : freshen(signal);
  // What could not be worked out or kept is stale still, and is tried again when the list is next opened.
  run.catch(() => undefined);
  return { stop: () => stopping.abort() };
}

async function freshen(signal: AbortSignal): Promise<void> {
  const { kept, binned } = await listCases();
  const ids = [...kept, ...binned].filter(({ stale }) => stale).map(({ id }) => id);
  if (ids.length === 0 || signal.aborted) return;
  const worker = assessorWorker();
  let done: SummaryRecord[] = [];
  let putAt = Date.now();
  const put = async () => {
    const ready = done;
    done = [];
    putAt = Date.now();
    await keepSummaries(ready);
  };
  try {
    for (const id of ids) {
      if (signal.aborted) break;
      const record = await database.cases.get(id);
      if (!record) continue;
      done.push(summaryOf(record, await conclusionOn(record, worker)));
      if (Date.now() - putAt > PUT_EVERY_MS) await put();
    }
    await put();
  } finally {
    worker.close();
  }
}

async function conclusionOn(
  { caseFile, files }: Pick<CaseRecord, 'caseFile' | 'files'>,
  worker: AssessorWorker,
): Promise<Conclusion> {
  try {
    const outcome = await worker.assess({ caseFile, files }, FULL_DRAWS);
    return outcome.ok
      ? { assessment: outcome.assessment, notices: outcome.notices }
      : { faults: outcome.faults };
  } catch (thrown) {
    return { faults: [{ what: thrown instanceof Error ? thrown.message : String(thrown), where: '' }] };
  }
}
