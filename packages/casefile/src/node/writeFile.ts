/**
 * Files are written beside their place and moved there when whole, so that a crash or a full disk leaves the old file
 * or the new one, never half of one.
 */
import { randomUUID } from 'node:crypto';
import { open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** A name beside `path` that nothing else uses. */
export function besides(path: string): string {
  return join(dirname(path), `.${basename(path)}.${randomUUID().slice(0, 8)}.part`);
}

/** Writes and flushes a file that must not exist yet. */
export async function writeNewFile(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(path, 'wx');
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Writes a file whole or not at all, replacing what was there. */
export async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const part = besides(path);
  try {
    await writeNewFile(part, bytes);
    await rename(part, path);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}

/** Writes a text file whole or not at all from its pieces, one after another, so that it need not fit the memory. */
export async function writeWholeFrom(path: string, pieces: Iterable<string>): Promise<void> {
  const part = besides(path);
  try {
    const file = await open(part, 'wx');
    try {
      let text = '';
      for (const piece of pieces) {
        text += piece;
        if (text.length < PIECE_LENGTH) continue;
        await file.writeFile(text);
        text = '';
      }
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(part, path);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}

/** Characters written at a time. */
const PIECE_LENGTH = 1 << 20;
