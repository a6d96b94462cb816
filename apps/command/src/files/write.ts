/** Writing results so that a file is either there whole or as it was before. */
import { accessSync, constants, existsSync, realpathSync, rmSync, statSync } from 'node:fs';
import { open, rename } from 'node:fs/promises';
import path from 'node:path';
import { InputFault } from '@standfast/engine';
import { systemFault } from './read.ts';

/**
 * Refuses a place for a result before any work is done for it.
 * @param inputs files that must not be overwritten by it
 * @throws InputFault when it is a folder, its folder is missing or closed, or it is one of the inputs
 */
export function checkOutput(file: string, inputs: string[] = []): void {
  const folder = path.dirname(path.resolve(file));
  if (existsSync(file) && statSync(file).isDirectory()) {
    throw new InputFault('This is a folder; give the name of the file to write.', file);
  }
  if (file.endsWith('/') || file.endsWith(path.sep)) {
    throw new InputFault('This names a folder; give the name of the file to write.', file);
  }
  if (!existsSync(folder)) {
    throw new InputFault(`The folder ${path.dirname(file)} does not exist. Make it first.`, file);
  }
  if (!statSync(folder).isDirectory()) {
    throw new InputFault(`${path.dirname(file)} is a file, not a folder. Choose another place.`, file);
  }
  try {
    accessSync(folder, constants.W_OK);
  } catch (error) {
    throw systemFault(error, file);
  }
  if (
    existsSync(file) &&
    inputs.some((input) => existsSync(input) && realpathSync(input) === realpathSync(file))
  ) {
    throw new InputFault('This would overwrite the input. Choose another name.', file);
  }
}

/**
 * Writes files all or none: each to a neighbour first, and into place only when all are safely on disk.
 * @throws InputFault when the disk is full or closed; then nothing has changed
 */
export async function writeFiles(files: { file: string; content: Uint8Array | string }[]): Promise<void> {
  const waiting: { from: string; to: string }[] = [];
  try {
    for (const { file, content } of files) {
      const from = path.join(path.dirname(file), `.${path.basename(file)}.${process.pid}.part`);
      waiting.push({ from, to: file });
      const handle = await open(from, 'w').catch((error) => {
        throw systemFault(error, file);
      });
      try {
        await handle.writeFile(content);
        await handle.sync();
      } catch (error) {
        throw systemFault(error, file);
      } finally {
        await handle.close();
      }
    }
    for (const { from, to } of waiting) await rename(from, to);
  } catch (error) {
    for (const { from } of waiting) rmSync(from, { force: true });
    throw error;
  }
}
