import { fileURLToPath } from 'node:url';
import { demoBag, writeFolder } from '@standfast/casefile/node';
import { InputFault } from '@standfast/engine';
import { newPage } from '../terminal/page.ts';

/** The demonstration case, copied beside the built command. */
const DEMO_FOLDER = fileURLToPath(new URL('./demo/', import.meta.url));

/**
 * Writes the demonstration case.
 * @throws InputFault when the folder is a file, holds something already, or cannot be written
 */
export async function demo(folder: string): Promise<void> {
  if (folder === '-')
    throw new InputFault('a case is a folder of files: give the name of one to make', folder);
  const bag = await demoBag(DEMO_FOLDER);
  await writeFolder(bag, folder);
  const page = newPage();
  page.text(`Wrote the demonstration case (an invented tree) to ${folder}: ${bag.size} files.`);
  page.text(`Next: npx standfast assess ${folder} --report report.pdf`);
  page.print();
}
