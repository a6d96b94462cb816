import { existsSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { bagFromFolder, writeFolder } from '@standfast/casefile/node';
import { InputFault } from '@standfast/engine';
import { look, systemFault } from '../files/read.ts';
import { newPage } from '../terminal/page.ts';

/** The demonstration case, copied beside the built command. */
const DEMO_FOLDER = fileURLToPath(new URL('./demo/', import.meta.url));

/**
 * Writes the demonstration case.
 * @throws InputFault when the folder is a file, holds something already, or cannot be written
 */
export async function demo(folder: string): Promise<void> {
  if (folder === '-')
    throw new InputFault('A case is a folder of files; give the name of one to make.', folder);
  if (existsSync(folder)) {
    if (!look(folder).isDirectory())
      throw new InputFault('This is a file; give the name of a folder to make.', folder);
    let held: string[];
    try {
      held = readdirSync(folder);
    } catch (error) {
      throw systemFault(error, folder);
    }
    if (held.length)
      throw new InputFault('This folder is not empty. Give a new one, so that nothing is lost.', folder);
  }
  const bag = await bagFromFolder(DEMO_FOLDER);
  try {
    await writeFolder(bag, folder);
  } catch (error) {
    throw systemFault(error, folder);
  }
  const page = newPage();
  page.text(`Wrote the demonstration case (an invented tree) to ${folder}: ${bag.size} files.`);
  page.text(`Next: npx standfast assess ${folder} --report report.pdf`);
  page.print();
}
