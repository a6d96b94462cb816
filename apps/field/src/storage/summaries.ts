/** Cases in short, kept beside the cases: what list and map show. */
import { assessedWorkRow, unassessedRow, type WorkRow } from '@standfast/casefile';
import { type Assessment, ENGINE_VERSION, type Notice } from '@standfast/engine';
import { type CaseRecord, database, type SummaryRecord } from './database.ts';

/** Counts up when what a summary holds changes. */
const SHAPE = 1;
/** Who writes summaries now. */
const WRITER = `${ENGINE_VERSION}/${SHAPE}`;

type Summarised = Pick<CaseRecord, 'id' | 'caseFile' | 'savedAt' | 'origin'>;

/** What came of an assessment, as far as a summary needs it. */
export type Conclusion =
  | { assessment: Assessment; notices: readonly Notice[] }
  | { faults: readonly { what: string; where: string }[] };

/** Whether a summary is of the case as it stands, by this version. */
export function isFresh({ of, savedAt, by, waiting }: SummaryRecord): boolean {
  return of === savedAt && by === WRITER && !waiting;
}

/** What can be said of a case before it is assessed. */
export function firstSummary(record: Summarised): SummaryRecord {
  return summary(record, unassessedRow(record.id, record.caseFile, []), true);
}

/** A copy's summary: the figures of the case that it was copied from. */
export function copiedSummary({ row }: SummaryRecord, copy: Summarised): SummaryRecord {
  const { label } = unassessedRow(copy.id, copy.caseFile, []);
  return summary(copy, { ...row, case: copy.id, label }, false);
}

/** The summary of a case and what came of its assessment. */
export function summaryOf(record: Summarised, conclusion: Conclusion): SummaryRecord {
  const { id, caseFile } = record;
  if ('faults' in conclusion) {
    const told = conclusion.faults.map(({ what, where }) => (where ? `${where}: ${what}` : what));
    return summary(record, unassessedRow(id, caseFile, told), false);
  }
  const { assessment, notices } = conclusion;
  return summary(
    record,
    assessedWorkRow(id, caseFile, { ...assessment, notices: [...notices, ...assessment.notices] }),
    false,
  );
}

function summary(record: Summarised, row: WorkRow, waiting: boolean): SummaryRecord {
  const shown: WorkRow = record.origin === 'demonstration' ? { ...row, invented: 'yes' } : row;
  const { id, savedAt } = record;
  return { id, savedAt, of: savedAt, by: WRITER, row: shown, waiting };
}

/** Keeps summaries; one of a case that was saved again meanwhile is kept as stale. */
export async function keepSummaries(summaries: readonly SummaryRecord[]): Promise<void> {
  await database.transaction('rw', database.summaries, async () => {
    const before = await database.summaries.bulkGet(summaries.map(({ id }) => id));
    await database.summaries.bulkPut(
      summaries.map((each, i) => ({ ...each, savedAt: Math.max(each.savedAt, before[i]?.savedAt ?? 0) })),
    );
  });
}

/** One line of the list. */
export interface ListEntry {
  id: string;
  savedAt: number;
  row: WorkRow;
  /** Its figures are of an earlier state of the case or of another version, or there are none yet. */
  stale: boolean;
}

export interface CaseListing {
  kept: ListEntry[];
  binned: ListEntry[];
}

/** Every case in short. The cases themselves are not read, so that thousands cost no more than their summaries. */
export async function listCases(): Promise<CaseListing> {
  return database.transaction('r', database.cases, database.summaries, async () => {
    const [ids, binnedIds, summaries] = await Promise.all([
      database.cases.toCollection().primaryKeys(),
      database.cases.where('deletedAt').above(0).primaryKeys(),
      database.summaries.toArray(),
    ]);
    const known = new Map(summaries.map((each) => [each.id, each]));
    const binned = new Set(binnedIds);
    const listing: CaseListing = { kept: [], binned: [] };
    for (const id of ids) {
      const found = known.get(id);
      const entry: ListEntry = {
        id,
        savedAt: found?.savedAt ?? 0,
        row: found?.row ?? unassessedRow(id, null, []),
        stale: !found || !isFresh(found),
      };
      (binned.has(id) ? listing.binned : listing.kept).push(entry);
    }
    return listing;
  });
}
