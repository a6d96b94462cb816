import { type Dirent, readdirSync } from 'node:fs';
import path from 'node:path';
import { systemFault } from '../files/read.ts';

/**
 * Every case below a folder: folders that hold a case.json (not looked into further) and zip files. Hidden
 * folders are passed over and links are not followed, so that no case is met twice.
 * @returns paths relative to the folder, in order of name
 * @throws InputFault when a folder cannot be read
 */
export function findCases(folder: string): string[] {
  const found: string[] = [];
  const visit = (relative: string) => {
    const absolute = path.join(folder, relative);
    let entries: Dirent[];
    try {
      entries = readdirSync(absolute, { withFileTypes: true });
    } catch (error) {
      throw systemFault(error, absolute);
    }
    if (entries.some((entry) => entry.name === 'case.json')) {
      found.push(relative || '.');
      return;
    }
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
      if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
      const below = path.join(relative, entry.name);
      if (entry.isDirectory()) visit(below);
      else if (entry.isFile() && entry.name.toLowerCase().endsWith('.zip')) found.push(below);
    }
  };
  visit('');
  return found;
}
