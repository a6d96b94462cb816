/** What the firm keeps once on this device, and each new case begun with it. */
import { type CaseFile, type Firm, newCase, withFirm } from '@standfast/casefile';
import { liveQuery } from 'dexie';
import { useEffect, useState } from 'react';
import { addCase } from './cases.ts';
import { database, type FirmRecord } from './database.ts';

/** Keeps of this case what belongs to the firm: not what was struck and added, nor the day of signing. */
export async function keepFirm(caseFile: CaseFile, files: ReadonlyMap<string, Uint8Array>): Promise<void> {
  const { units, paper, letterhead, signature, language, wording } = caseFile.report ?? {};
  const { signedOn: _of, place: _here, ...lasting } = signature ?? {};
  const report: Firm['report'] = {
    ...(units ? { units } : {}),
    ...(paper ? { paper } : {}),
    ...(letterhead ? { letterhead } : {}),
    ...(Object.keys(lasting).length > 0 ? { signature: lasting } : {}),
    ...(language ? { language } : {}),
    ...(wording ? { wording } : {}),
  };
  const pictures = [letterhead?.logo, signature?.image].filter((path) => path !== undefined);
  const record: FirmRecord = {
    id: 'firm',
    report,
    files: new Map(pictures.flatMap((path) => (files.has(path) ? [[path, files.get(path)!]] : []))),
    ...(caseFile.assessor ? { assessor: caseFile.assessor } : {}),
  };
  await database.firms.put(record);
}

export async function forgetFirm(): Promise<void> {
  await database.firms.delete('firm');
}

/** A new case, with what the firm keeps, and returns its id. */
export async function addNewCase(today: string): Promise<string> {
  const firm = await database.firms.get('firm');
  const empty = newCase(today);
  if (!firm) return addCase(empty, new Map(), 'made here');
  const { caseFile, bag } = withFirm(empty, new Map(), firm);
  return addCase(caseFile, bag, 'made here');
}

/** What the firm keeps on this device; null while there is nothing. */
export function useFirm(): Firm | null {
  const [firm, setFirm] = useState<Firm | null>(null);
  useEffect(() => {
    const following = liveQuery(() => database.firms.get('firm')).subscribe({
      next: (found) => setFirm(found ?? null),
      error: () => setFirm(null),
    });
    return () => following.unsubscribe();
  }, []);
  return firm;
}
