/**
 * A case onto the disk, whole or not at all, and never over something else.
 */

import { lstat, mkdir, readdir, rename, rm, rmdir } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { InputFault } from '@standfast/engine';
import { CASE_JSON, type ReadonlyCaseBag } from '../bag/bag.ts';
import { pathProblem } from '../bag/paths.ts';
import { zipOfBag } from '../bag/zipOfBag.ts';
import { onDisk } from './diskFault.ts';
import { besides, writeNewFile, writeWhole } from './writeFile.ts';

/**
 * Writes the bag as a folder. A new or empty folder appears at once, when all its files are written. A folder that
 * holds something is refused, unless `update` is set and it is a case folder: then each file is replaced whole,
 * `case.json` last, and files that the bag does not have are left alone.
 *
 * @throws InputFault when the place is taken or the disk refuses.
 */
export async function writeFolder(
  bag: ReadonlyCaseBag,
  folder: string,
  options: { update?: boolean } = {},
): Promise<void> {
  for (const path of bag.keys()) {
    const problem = pathProblem(path);
    if (problem) throw new InputFault(problem, path);
  }
  const target = resolve(folder);
  const held = await onDisk(folder, () => contents(target));
  if (held === 'file') throw new InputFault('this is a file: choose another name for the folder', folder);
  if (held !== null && held.length > 0) {
    if (!options.update) {
      throw new InputFault(
        'the folder is not empty, and nothing in it was touched: choose a new or empty one',
        folder,
      );
    }
    if (!held.includes(CASE_JSON)) {
      throw new InputFault(
        'the folder holds other things and no case.json: choose a new or empty one',
        folder,
      );
    }
    await onDisk(folder, () => updateFolder(bag, target));
  } else {
    await onDisk(folder, () => newFolder(bag, target, held !== null));
  }
}

/**
 * Writes the bag as a zip file.
 *
 * @throws InputFault when a file is there already and `overwrite` is not set, or the disk refuses.
 */
export async function writeZipFile(
  bag: ReadonlyCaseBag,
  path: string,
  options: { overwrite?: boolean } = {},
): Promise<void> {
  const held = await onDisk(path, () => contents(path));
  if (held !== null && (held !== 'file' || !options.overwrite)) {
    throw new InputFault('this exists already: choose another name', path);
  }
  await onDisk(path, () => writeWhole(path, zipOfBag(bag)));
}

/** The names in a folder, `file` for anything else, null when there is nothing. */
async function contents(path: string): Promise<string[] | 'file' | null> {
  const found = await lstat(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    throw error;
  });
  if (found === null) return null;
  return found.isFile() ? 'file' : readdir(path);
}

async function newFolder(bag: ReadonlyCaseBag, target: string, exists: boolean): Promise<void> {
  await mkdir(dirname(target), { recursive: true });
  const part = besides(target);
  try {
    for (const [path, bytes] of bag) {
      await mkdir(dirname(join(part, path)), { recursive: true });
      await writeNewFile(join(part, path), bytes);
    }
    await mkdir(part, { recursive: true });
    if (exists) await rmdir(target);
    await rename(part, target);
  } catch (error) {
    await rm(part, { recursive: true, force: true });
    throw error;
  }
}

/** All files are written beside their places first; only when every one is there are they moved in. */
async function updateFolder(bag: ReadonlyCaseBag, target: string): Promise<void> {
  const order = [...bag.keys()].sort((a, b) => Number(a === CASE_JSON) - Number(b === CASE_JSON));
  const parts = new Map<string, string>();
  try {
    for (const path of order) {
      const place = join(target, path);
      await mkdir(dirname(place), { recursive: true });
      const part = besides(place);
      parts.set(path, part);
      await writeNewFile(part, bag.get(path)!);
    }
    for (const path of order) {
      await rename(parts.get(path)!, join(target, path));
      parts.delete(path);
    }
  } finally {
    for (const part of parts.values()) await rm(part, { force: true });
  }
}
