/** Brings files in and says what came of it; each file that cannot be read is named with the reason. */
import { InputFault } from '@standfast/engine';
import { binCase, bringInBag, bringInZip, restoreCase } from '../storage/cases.ts';
import { storageFaultOf } from '../storage/faults.ts';
import { addNewCase } from '../storage/firm.ts';
import { type Incoming, type PathFile, sortIncoming } from './incoming.ts';
import { complain, say } from './toast.tsx';
import { waitForImport, waitForInventories, waitForReports, waitForStrips } from './waiting.ts';

/** Today's date as a case writes it, in the person's own time zone. */
export function today(now = new Date()): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

export function faultText(thrown: unknown, name: string): string {
  if (thrown instanceof InputFault) return `${name}: ${thrown.message}`;
  return `${name}: ${storageFaultOf(thrown).message}`;
}

/**
 * @param openCaseId the case on screen, which takes loose tables and photos; without one they go into a new case.
 * @returns the case to show now, or null to stay.
 */
export async function bringIn(files: readonly PathFile[], openCaseId: string | null): Promise<string | null> {
  let incoming: Incoming[];
  try {
    incoming = await sortIncoming(files);
  } catch (thrown) {
    complain(`The files could not be read: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
    return null;
  }
  if (incoming.length === 0) complain('There is no file in what you brought in.');
  const opened: string[] = [];
  let made: string | null = null;
  // Loose files belong to the case on screen; without one, a new case is made for all of them.
  const needsCase = incoming.some(({ kind }) => kind === 'tables' || kind === 'photos');
  if (needsCase && openCaseId === null) {
    try {
      made = await addNewCase(today());
    } catch (thrown) {
      complain(storageFaultOf(thrown).message);
      return null;
    }
  }
  for (const each of incoming) {
    try {
      if (each.kind === 'zip') opened.push(await bringInZip(each.bytes, each.name, 'brought in'));
      if (each.kind === 'folder') opened.push(await bringInBag(each.bag, 'brought in'));
      if (each.kind === 'tables') waitForImport(each.tables);
      if (each.kind === 'photos') waitForStrips(each.photos);
      if (each.kind === 'report') waitForReports([each.file]);
      if (each.kind === 'inventory') waitForInventories([each.file]);
      if (each.kind === 'unknown') {
        complain(
          `${each.name}: this kind of file cannot be read. Bring in a case folder, a case zip, tables (csv, txt, xlsx), photos of paper strips (JPEG, PNG, HEIC), a tree inventory (GeoJSON), or a report to verify (PDF, HTML).`,
        );
      }
    } catch (thrown) {
      complain(faultText(thrown, 'name' in each ? each.name : 'tables'));
    }
  }
  if (opened.length > 1) say(`${opened.length} cases brought in.`);
  return made ?? opened.at(-1) ?? null;
}

/** Puts a case in the bin, with the way back. */
export async function binWithUndo(id: string, name: string): Promise<void> {
  try {
    await binCase(id);
    say(`${name} is in the bin.`, { label: 'Undo', run: () => restoreCase(id) });
  } catch (thrown) {
    complain(storageFaultOf(thrown).message);
  }
}
