/**
 * Paths inside a case. They are relative, use forward slashes and stay inside: a case comes from strangers too, and
 * must not be able to name a file elsewhere on the machine.
 */
import { InputFault } from '@standfast/engine';
import type { ReadonlyCaseBag } from './bag.ts';

/** Why a path cannot be used in a case, or null when it can. */
export function pathProblem(path: string): string | null {
  if (path === '') return 'the path is empty';
  if (path.includes('\0')) return 'the path holds a zero character';
  if (path.includes('\\')) {
    return `the path has backslashes: write it with forward slashes, ${JSON.stringify(path.replaceAll('\\', '/'))}`;
  }
  if (path.startsWith('/'))
    return 'the path starts at the root of the machine: write it relative to the case folder';
  if (/^[a-zA-Z]:/.test(path)) return 'the path names a drive: write it relative to the case folder';
  const parts = path.split('/');
  if (parts.includes('..'))
    return 'the path climbs out of the case (".."): keep the file inside the case folder';
  if (parts.some((part) => part === '' || part === '.'))
    return 'the path has empty parts: write it like traces/d1.csv';
  if (path.length > 400) return 'the path is longer than 400 characters';
  return null;
}

/**
 * The file that a case means by a path: the same path, or else the only one that differs in capitals or in how
 * accents are composed (file systems differ in both). Null when there is none.
 *
 * @throws InputFault when the path cannot be used in a case.
 */
export function findFile(
  bag: ReadonlyCaseBag,
  path: string,
  where: string,
): { path: string; bytes: Uint8Array; exact: boolean } | null {
  const problem = pathProblem(path);
  if (problem) throw new InputFault(`${problem} (${JSON.stringify(path)})`, where);
  const exact = bag.get(path);
  if (exact) return { path, bytes: exact, exact: true };
  const wanted = loose(path);
  const near = [...bag].filter(([name]) => loose(name) === wanted);
  const only = near.length === 1 ? near[0] : undefined;
  return only ? { path: only[0], bytes: only[1], exact: false } : null;
}

function loose(path: string): string {
  return path.normalize('NFC').toLowerCase();
}

/** The files of a folder of the bag in words, for a message about one that is missing. */
export function filesInWords(bag: ReadonlyCaseBag, folder: string, most = 12): string {
  const names = [...bag.keys()].filter((name) => name.startsWith(folder)).sort();
  if (names.length === 0) return folder ? `there are no files in ${folder}` : 'there are no files';
  const more = names.length > most ? ` and ${names.length - most} more` : '';
  return `there are ${names.slice(0, most).join(', ')}${more}`;
}
