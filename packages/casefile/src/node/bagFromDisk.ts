/**
 * A case from a folder or a zip on disk.
 */

import { readdir, readFile, realpath, stat } from 'node:fs/promises';
import { basename, dirname, join, relative, sep } from 'node:path';
import { InputFault } from '@standfast/engine';
import { BAG_LIMITS, type BagLimits, CASE_JSON, type CaseBag } from '../bag/bag.ts';
import { bagFromZip } from '../bag/bagFromZip.ts';
import { checkCount, checkSize, checkTotal } from '../bag/limits.ts';
import { onDisk } from './diskFault.ts';

/** Folders deeper than this are no part of a case. */
const DEEPEST = 8;

/**
 * A case from a path: a case folder, its `case.json`, or a zip.
 *
 * @throws InputFault when there is nothing there or it cannot be a case.
 */
export async function bagFromPath(path: string, limits: BagLimits = BAG_LIMITS): Promise<CaseBag> {
  const found = await onDisk(path, () => stat(path));
  if (found.isDirectory()) return bagFromFolder(path, limits);
  if (basename(path).toLowerCase() === CASE_JSON) return bagFromFolder(dirname(path), limits);
  // A zip is packed: what it may unpack to is looked at when it is opened.
  checkSize(found.size, path, { ...limits, maxFileBytes: limits.maxTotalBytes });
  const bytes = await onDisk(path, () => readFile(path));
  return bagFromZip(bytes, path, limits);
}

/**
 * Every file of a case folder but hidden ones. Links are followed only where they stay inside the folder.
 *
 * @throws InputFault when the folder is missing, too large, or a link leads out of it.
 */
export async function bagFromFolder(folder: string, limits: BagLimits = BAG_LIMITS): Promise<CaseBag> {
  const root = await onDisk(folder, () => realpath(folder));
  const sizes = new Map<string, number>();
  await onDisk(folder, () => listFiles(root, root, '', 0, sizes, folder, limits));
  checkTotal(
    [...sizes.values()].reduce((sum, size) => sum + size, 0),
    folder,
    limits,
  );
  const bag: CaseBag = new Map();
  for (const path of [...sizes.keys()].sort()) {
    const bytes = await onDisk(join(folder, path), () => readFile(join(root, path)));
    // Node gives small files out of a shared pool; a view of their own keeps the bag plain.
    bag.set(path, new Uint8Array(bytes));
  }
  return bag;
}

async function listFiles(
  root: string,
  folder: string,
  prefix: string,
  depth: number,
  sizes: Map<string, number>,
  shown: string,
  limits: BagLimits,
): Promise<void> {
  if (depth > DEEPEST) {
    throw new InputFault(
      `folders lie more than ${DEEPEST} deep: is this a case folder?`,
      join(shown, prefix),
    );
  }
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    if (entry.name.startsWith('.')) continue;
    const path = `${prefix}${entry.name}`;
    const full = join(folder, entry.name);
    if (entry.isSymbolicLink()) await refuseLinkOut(root, full, join(shown, path));
    const found = entry.isSymbolicLink() ? await stat(full) : entry;
    if (found.isDirectory()) await listFiles(root, full, `${path}/`, depth + 1, sizes, shown, limits);
    else if (found.isFile()) {
      const { size } = await stat(full);
      checkSize(size, join(shown, path), limits);
      sizes.set(path, size);
      checkCount(sizes.size, shown, limits);
    }
  }
}

async function refuseLinkOut(root: string, link: string, shown: string): Promise<void> {
  const target = await realpath(link).catch(() => null);
  if (target === null) {
    throw new InputFault('this link leads nowhere: remove it or put the file in its place', shown);
  }
  const inside = relative(root, target);
  if (inside === '..' || inside.startsWith(`..${sep}`) || inside === target) {
    throw new InputFault('this link leads out of the case folder: put the file itself there', shown);
  }
}
