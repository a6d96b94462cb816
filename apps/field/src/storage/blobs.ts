/** Bytes kept by their SHA-256: written once, read back and checked before anything refers to them. */
import { database } from './database.ts';
import { StorageFault } from './faults.ts';

/** SHA-256 as 64 hexadecimal digits. */
export async function sha256Of(bytes: Uint8Array): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * Keeps the bytes and returns their SHA-256. What was written is read back and compared.
 * @throws StorageFault when it does not come back as it was.
 */
export async function keepBlob(bytes: Uint8Array): Promise<string> {
  const sha256 = await sha256Of(bytes);
  if (await database.blobs.get(sha256)) return sha256;
  await database.blobs.put({ sha256, bytes, storedAt: Date.now() });
  const back = await database.blobs.get(sha256);
  if (!back || (await sha256Of(back.bytes)) !== sha256) {
    throw new StorageFault(
      'A file did not come back from this browser’s storage as it was written.',
      'write',
    );
  }
  return sha256;
}

/** The bytes of each path. @throws StorageFault naming the file that is no longer there. */
export async function loadFiles(files: Record<string, string>): Promise<Map<string, Uint8Array>> {
  const paths = Object.keys(files);
  const rows = await database.blobs.bulkGet(paths.map((path) => files[path]!));
  const loaded = new Map<string, Uint8Array>();
  paths.forEach((path, i) => {
    const row = rows[i];
    if (!row) throw new StorageFault(`${path} is missing from this browser’s storage.`, 'missing');
    loaded.set(path, row.bytes);
  });
  return loaded;
}

/** Long enough that no tab can still be about to refer to a blob it has just written. */
const GRACE_MS = 24 * 3600 * 1000;

/** Drops bytes that no case refers to any more, binned cases included. */
export async function dropUnusedBlobs(now: number): Promise<void> {
  await database.transaction('rw', database.cases, database.blobs, async () => {
    const used = new Set<string>();
    await database.cases.each((row) => {
      for (const sha256 of Object.values(row.files)) used.add(sha256);
    });
    const old = await database.blobs
      .where('storedAt')
      .below(now - GRACE_MS)
      .primaryKeys();
    await database.blobs.bulkDelete(old.filter((sha256) => !used.has(sha256)));
  });
}
