/**
 * Works out, one case after another and off the page's thread, the summaries that are missing or stale. It runs while a
 * list or map is on screen; one tab does it for all.
 */
import { database, type SummaryRecord } from '../storage/database.ts';
import { type firstSummary, keepSummaries, summaryOf } from '../storage/summaries.ts';
import { assessorWorker, FULL_DRAWS } from './assessor.ts';

/** Summaries are put away together, so that a list of thousands is not drawn anew for each. */
const PUT_EVERY_MS = 600;
const LOCK = 'standfast-summaries';

/** Begins; `stop` ends it after the case at hand. */
export function freshenSummaries(ids: readonly string[]): { stop(): void } {
  let stopped = false;
  const work = async () => {
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
        if (stopped) break;
        const record = await database.cases.get(id);
        if (!record) continue;
        done.push(await summaryBy(worker, record));
        if (Date.now() - putAt > PUT_EVERY_MS) await put();
      }
      await put();
    } finally {
      worker.close();
    }
  };
  const locks = navigator.locks as LockManager | undefined;
  const run = locks
    ? locks.request(LOCK, { ifAvailable: true }, (lock) => (lock && !stopped ? work() : undefined))
    : work();
  // What could not be worked out or kept is stale still, and is tried again when the list is next opened.
  Promise.resolve(run).catch(() => undefined);
  return {
    stop() {
      stopped = true;
    },
  };
}

async function summaryBy(
  worker: ReturnType<typeof assessorWorker>,
  record: Parameters<typeof firstSummary>[0] & { files: Record<string, string> },
): Promise<SummaryRecord> {
  try {
    const { caseFile, files } = record;
    return summaryOf(record, conclusionOf(await worker.assess({ caseFile, files }, FULL_DRAWS)));
  } catch (thrown) {
    const what = thrown instanceof Error ? thrown.message : String(thrown);
    return summaryOf(record, { faults: [{ what, where: '' }] });
  }
}

function conclusionOf(outcome: Awaited<ReturnType<ReturnType<typeof assessorWorker>['assess']>>) {
  return outcome.ok
    ? { assessment: outcome.assessment, notices: outcome.notices }
    : { faults: outcome.faults };
}
