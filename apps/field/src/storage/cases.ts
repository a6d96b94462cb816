/** What can be done with whole cases: make, bring in, copy, bin, restore, pack. Each is one step in the database. */
import {
  bagFromZip,
  CASE_JSON,
  type CaseBag,
  CaseFaults,
  type CaseFile,
  inspectCase,
  saveCase,
  zipOfBag,
} from '@standfast/casefile';
import { keepBlob, loadFiles } from './blobs.ts';
import { type CaseOrigin, type CaseRecord, database } from './database.ts';
import { copiedSummary, firstSummary, isFresh } from './summaries.ts';

/** The demonstration has a fixed id, so two tabs that open it at once make one case. */
export const DEMONSTRATION_ID = 'demonstration';

/** How long a binned case can be restored. */
export const BIN_DAYS = 30;

export function newId(): string {
  return crypto.randomUUID().slice(0, 13);
}

export function recordOf(
  caseFile: CaseFile,
  files: Record<string, string>,
  origin: CaseOrigin,
  now: number,
): CaseRecord {
  return {
    id: newId(),
    caseFile,
    files,
    drafts: {},
    origin,
    createdAt: now,
    savedAt: now,
    deletedAt: 0,
  };
}

/** Adds a case and returns its id. */
export async function addCase(
  caseFile: CaseFile,
  bag: ReadonlyMap<string, Uint8Array>,
  origin: CaseOrigin,
  id = newId(),
): Promise<string> {
  const files: Record<string, string> = {};
  for (const [path, bytes] of bag) {
    if (path !== CASE_JSON) files[path] = await keepBlob(bytes);
  }
  const record = { ...recordOf(caseFile, files, origin, Date.now()), id };
  await database.transaction('rw', database.cases, database.summaries, async () => {
    await database.cases.put(record);
    await database.summaries.put(firstSummary(record));
  });
  return id;
}

/**
 * Adds a case from a bag. A half-done case comes in too, and says on its own pages what it lacks; nothing is kept of
 * a bag whose case.json cannot be read.
 * @throws InputFault
 */
export async function bringInBag(bag: CaseBag, origin: CaseOrigin, id?: string): Promise<string> {
  const { caseFile, faults } = inspectCase(bag);
  if (!caseFile) throw new CaseFaults(faults);
  return addCase(caseFile, bag, origin, id);
}

/** Adds the case of a zip. @throws InputFault */
export async function bringInZip(zip: Uint8Array, name: string, origin: CaseOrigin, id?: string) {
  return bringInBag(bagFromZip(zip, name), origin, id);
}

/** A copy of a case under its own id; bytes are shared. */
export async function duplicateCase(id: string): Promise<string> {
  return database.transaction('rw', database.cases, database.summaries, async () => {
    const found = await database.cases.get(id);
    if (!found) throw new Error('That case is no longer here.');
    const copy = recordOf(found.caseFile, found.files, 'made here', Date.now());
    const label = found.caseFile.tree.label?.trim();
    copy.caseFile = {
      ...found.caseFile,
      tree: { ...found.caseFile.tree, label: label ? `${label} (copy)` : 'Copy' },
    };
    copy.drafts = found.drafts;
    await database.cases.add(copy);
    const summary = await database.summaries.get(id);
    await database.summaries.put(
      summary && isFresh(summary) ? copiedSummary(summary, copy) : firstSummary(copy),
    );
    return copy.id;
  });
}

export async function binCase(id: string): Promise<void> {
  await database.cases.update(id, { deletedAt: Date.now() });
}

export async function restoreCase(id: string): Promise<void> {
  await database.cases.update(id, { deletedAt: 0 });
}

/** Lets go of cases binned longer ago than they can be restored. */
export async function emptyOldBin(now: number): Promise<void> {
  const limit = now - BIN_DAYS * 24 * 3600 * 1000;
  await database.transaction('rw', database.cases, database.summaries, async () => {
    const old = await database.cases.where('deletedAt').between(1, limit).primaryKeys();
    await database.cases.bulkDelete(old);
    await database.summaries.bulkDelete(old);
  });
}

/** The case as the zip that can be opened anywhere. */
export async function zipOfCase(record: Pick<CaseRecord, 'caseFile' | 'files'>): Promise<Uint8Array> {
  return zipOfBag(saveCase(record.caseFile, await loadFiles(record.files)));
}
