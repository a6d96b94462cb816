/**
 * What the disk refused, in words.
 */
import { InputFault } from '@standfast/engine';

const WORDS: Record<string, string> = {
  ENOENT: 'there is no such file or folder: check the path',
  ENOTDIR: 'a part of the path is a file, not a folder: check the path',
  EACCES: 'this may not be read or written by you: check its permissions',
  EPERM: 'this may not be read or written by you: check its permissions',
  EROFS: 'the disk can only be read: choose another place',
  ENOSPC: 'the disk is full: make room and try again',
  EISDIR: 'this is a folder, not a file',
  EEXIST: 'this exists already',
  ENOTEMPTY: 'the folder is not empty: choose a new or empty one',
  EMFILE: 'too many files are open on this machine: close some programs and try again',
};

/** Runs a step on the disk; what the disk refuses becomes an `InputFault` about `where`. */
export async function onDisk<T>(where: string, step: () => Promise<T>): Promise<T> {
  try {
    return await step();
  } catch (error) {
    const words = error instanceof Error && 'code' in error ? WORDS[String(error.code)] : undefined;
    if (words === undefined) throw error;
    throw new InputFault(words, where);
  }
}
