import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { onDisk } from '@standfast/casefile/node';

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
