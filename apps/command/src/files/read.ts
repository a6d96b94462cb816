/** Reading what a person named on the command line, with a clear message for each way it can fail. */
import { type Stats, statSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { InputFault } from '@standfast/engine';

/**
 * Looks at what lies at a path.
 * @throws InputFault when nothing is there or it may not be looked at
 */
export function look(path: string): Stats {
  if (path === '-') {
    throw new InputFault('Standard input is not read here. Save it to a file and give its name.', path);
  }
  try {
    return statSync(path);
  } catch (error) {
    throw systemFault(error, path);
  }
}

/**
 * Reads a whole file.
 * @param what what it should be, for the message when it is a folder: for example 'a trace table'
 * @throws InputFault when it cannot be read, is no ordinary file, or is larger than `limitBytes`
 */
export async function readInput(path: string, what: string, limitBytes: number): Promise<Uint8Array> {
  const found = look(path);
  if (found.isDirectory()) throw new InputFault(`This is a folder; give the file of ${what}.`, path);
  if (!found.isFile()) throw new InputFault(`This is no ordinary file; give the file of ${what}.`, path);
  if (found.size > limitBytes) {
    throw new InputFault(
      `This file has ${megabytes(found.size)} MB; ${what} may have ${megabytes(limitBytes)} MB at most. Check that it is the right file.`,
      path,
    );
  }
  try {
    return await readFile(path);
  } catch (error) {
    throw systemFault(error, path);
  }
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
    throw new InputFault('This is not UTF-8 text, so not JSON. Give a .json file.', path);
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new InputFault(`This is not valid JSON (${jsonTrouble(error, text)}). Mend it there.`, path);
  }
}

/** Where a JSON text breaks off, as line and column when the parser's message tells the position. */
function jsonTrouble(error: unknown, text: string): string {
  const message = error instanceof Error ? error.message : String(error);
  const position = /position (\d+)/.exec(message)?.[1];
  if (position === undefined) return text.trim() === '' ? 'the file is empty' : 'it breaks off at its end';
  const before = text.slice(0, Number(position)).split('\n');
  return `line ${before.length}, column ${before[before.length - 1]!.length + 1}`;
}

/** What a failed call to the system means for the person. Faults that are not the system's are passed on. */
export function systemFault(error: unknown, path: string): unknown {
  switch ((error as NodeJS.ErrnoException).code) {
    case 'ENOENT':
      return new InputFault('There is no such file or folder. Check the name.', path);
    case 'ENOTDIR':
      return new InputFault('Part of this path is a file, not a folder. Check the name.', path);
    case 'EACCES':
    case 'EPERM':
      return new InputFault('This may not be read or written by you. Change its permissions.', path);
    case 'EISDIR':
      return new InputFault('This is a folder; a file is wanted.', path);
    case 'ELOOP':
      return new InputFault('This link leads back to itself.', path);
    case 'ENAMETOOLONG':
      return new InputFault('This name is too long.', path.length > 60 ? `${path.slice(0, 57)}…` : path);
    case 'ENOSPC':
    case 'EDQUOT':
      return new InputFault('The disk is full. Make room and try again.', path);
    case 'EROFS':
      return new InputFault('This disk may only be read. Choose another place.', path);
    default:
      return error;
  }
}

const megabytes = (bytes: number) => Math.ceil(bytes / 1e6).toLocaleString('en');
