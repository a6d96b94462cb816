import { fileURLToPath } from 'node:url';
import { demoBag, secondVisitBag, writeFolder } from '@standfast/casefile/node';
import { InputFault } from '@standfast/engine';
import { newPage } from '../terminal/page.ts';

/** The demonstration case and its second visit, copied beside the built command. */
const DEMO_FOLDER = fileURLToPath(new URL('./demo/', import.meta.url));
const SECOND_VISIT_FOLDER = fileURLToPath(new URL('./demo-second-visit/', import.meta.url));

/**
 * Writes the demonstration case, or its second visit with the first one inside.
 * @throws InputFault when the folder is a file, holds something already, or cannot be written
 */
export async function demo(folder: string, { secondVisit }: { secondVisit?: boolean } = {}): Promise<void> {
  if (folder === '-')
    throw new InputFault('a case is a folder of files: give the name of one to make', folder);
  const bag = secondVisit
    ? await secondVisitBag(SECOND_VISIT_FOLDER, DEMO_FOLDER)
    : await demoBag(DEMO_FOLDER);
  await writeFolder(bag, folder);
  const page = newPage();
  const what = secondVisit ? 'the second visit of the demonstration case' : 'the demonstration case';
  page.text(`Wrote ${what} (an invented tree) to ${folder}: ${bag.size} files.`);
  page.text(`Next: npx standfast assess ${folder} --report report.pdf`);
  page.print();
}
