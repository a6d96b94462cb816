/** Places for results: looked at before any work is done for them. */
import { accessSync, constants, existsSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import { onDisk } from '@standfast/casefile/node';
import { InputFault } from '@standfast/engine';

/**
 * Refuses a place where a result cannot or must not be written.
 * @param inputs files that must not be overwritten by it
 * @throws InputFault when it is a folder, its folder is missing or closed, or it is one of the inputs
 */
export async function checkOutput(file: string, inputs: string[] = []): Promise<void> {
  if (file === '-') {
    throw new InputFault('results are not written to standard output here: give the name of a file', file);
  }
  const folder = path.dirname(path.resolve(file));
  if (/[/\\]$/.test(file) || (existsSync(file) && statSync(file).isDirectory())) {
    throw new InputFault('this is a folder: give the name of the file to write', file);
  }
  if (!existsSync(folder)) {
    throw new InputFault(`the folder ${path.dirname(file)} does not exist: make it first`, file);
  }
  if (!statSync(folder).isDirectory()) {
    throw new InputFault(`${path.dirname(file)} is a file, not a folder: choose another place`, file);
  }
  await onDisk(file, async () => accessSync(folder, constants.W_OK));
  const isInput = (input: string) => existsSync(input) && realpathSync(input) === realpathSync(file);
  if (existsSync(file) && inputs.some(isInput)) {
    throw new InputFault('this would overwrite the input: choose another name', file);
  }
}
