import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { onDisk } from '@standfast/casefile/node';
import { InputFault } from '@standfast/engine';
import { look } from '../files/read.ts';

/**
 * Every case below a folder: folders that hold a case.json (not looked into further) and zip files. Hidden
 * folders are passed over and links are not followed, so that no case is met twice.
 * @returns paths relative to the folder, in order of name
 * @throws InputFault when a folder cannot be read
 */
export async function findCases(folder: string): Promise<string[]> {
  const found: string[] = [];
  const visit = async (relative: string) => {
    const absolute = path.join(folder, relative);
    const entries = await onDisk(absolute, () => readdir(absolute, { withFileTypes: true }));
    if (entries.some((entry) => entry.name === 'case.json')) {
      found.push(relative || '.');
      return;
    }
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
      if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
      const below = path.join(relative, entry.name);
      if (entry.isDirectory()) await visit(below);
      else if (entry.isFile() && entry.name.toLowerCase().endsWith('.zip')) found.push(below);
    }
  };
  await visit('');
  return found;
}

/**
 * The cases below a folder, at least one.
 * @throws InputFault when it is no folder, cannot be read, or holds no case
 */
export async function casesBelow(folder: string): Promise<string[]> {
  if (!(await look(folder)).isDirectory()) {
    throw new InputFault('this is a file: give a folder with cases below it', folder);
  }
  const names = await findCases(folder);
  if (!names.length) {
    throw new InputFault(
      'there is no case below this folder: no folder with a case.json, and no zip',
      folder,
    );
  }
  return names;
}

/**
 * A case folder is evidence: nothing of ours goes into it, and what it holds decides whether it has changed.
 * @param option with which another place can be named
 */
export function refuseInsideACase(file: string, folder: string, names: string[], option: string): void {
  for (const name of names) {
    const below = path.relative(path.resolve(folder, name), path.resolve(file));
    if (!below.startsWith('..') && !path.isAbsolute(below)) {
      throw new InputFault(
        `this lies in the case ${name}: choose a place outside the cases with ${option}`,
        file,
      );
    }
  }
}
