/** Reading what a person named on the command line, with a clear message for each way it can fail. */
import type { Stats } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { jsonTrouble } from '@standfast/casefile';
import { onDisk } from '@standfast/casefile/node';
import { InputFault } from '@standfast/engine';

/**
 * Looks at what lies at a path.
 * @throws InputFault when nothing is there or it may not be looked at
 */
export async function look(path: string): Promise<Stats> {
  if (path === '-') {
    throw new InputFault('standard input is not read here: save it to a file and give its name', path);
  }
  return onDisk(path, () => stat(path));
}

/**
 * Reads a whole file.
 * @param what what it should be, for the message when it is a folder: for example 'a trace table'
 * @throws InputFault when it cannot be read, is no ordinary file, or is larger than `limitBytes`
 */
export async function readInput(path: string, what: string, limitBytes: number): Promise<Uint8Array> {
  const found = await look(path);
  if (found.isDirectory()) throw new InputFault(`this is a folder: give the file of ${what}`, path);
  if (!found.isFile()) throw new InputFault(`this is no ordinary file: give the file of ${what}`, path);
  if (found.size > limitBytes) {
    throw new InputFault(
      `this file has ${megabytes(found.size)} MB, and ${what} may have ${megabytes(limitBytes)} MB at most: check that it is the right file`,
      path,
    );
  }
  return onDisk(path, () => readFile(path));
}

/**
 * Reads a JSON file.
 * @throws InputFault as `readInput`, or with line and column where the JSON is broken
 */
export async function readJson(path: string, what: string, limitBytes: number): Promise<unknown> {
  const bytes = await readInput(path, what, limitBytes);
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new InputFault('this is not UTF-8 text, so not JSON: give a .json file', path);
  }
  try {
    return JSON.parse(text);
  } catch {
    throw new InputFault(`this is not valid JSON${jsonTrouble(text)}`, path);
  }
}

const megabytes = (bytes: number) => Math.ceil(bytes / 1e6).toLocaleString('en');
