/** A return visit begun from a case: a new case that holds the old one whole; the bytes are shared. */
import { CASE_JSON, caseText, nextVisit } from '@standfast/casefile';
import { keepBlob } from './blobs.ts';
import { recordOf } from './cases.ts';
import { type CaseRecord, database } from './database.ts';
import { firstSummary } from './summaries.ts';

/** Makes the next visit's case and returns its id. */
export async function startNextVisit(
  { caseFile, files }: Pick<CaseRecord, 'caseFile' | 'files'>,
  today: string,
): Promise<string> {
  const { caseFile: next } = nextVisit(caseFile, new Map(), today);
  const kept: Record<string, string> = {
    [`${next.earlier}/${CASE_JSON}`]: await keepBlob(new TextEncoder().encode(caseText(caseFile))),
  };
  for (const [path, sha256] of Object.entries(files)) kept[`${next.earlier}/${path}`] = sha256;
  const logo = next.report?.letterhead?.logo;
  if (logo !== undefined && files[logo] !== undefined) kept[logo] = files[logo];
  const record = recordOf(next, kept, 'made here', Date.now());
  await database.transaction('rw', database.cases, database.summaries, async () => {
    await database.cases.add(record);
    await database.summaries.put(firstSummary(record));
  });
  return record.id;
}
