/**
 * A case out of a zip. The zip may come from anyone, so its paths, sizes and contents are checked before they count.
 */
import { InputFault } from '@standfast/engine';
import { inflateSync } from 'fflate';
import { BAG_LIMITS, type BagLimits, CASE_JSON, type CaseBag } from './bag.ts';
import { crc32 } from './crc32.ts';
import { checkCount, checkSize, checkTotal } from './limits.ts';
import { pathProblem } from './paths.ts';
import { packedBytes, type ZipEntry, zipDirectory } from './zipDirectory.ts';

const STORED = 0;
const DEFLATED = 8;

/**
 * The files of a zip. When `case.json` lies in the zip's one top folder, paths are taken from there.
 *
 * @param name the zip's name for messages.
 * @throws InputFault when the zip is damaged, locked, too large, holds a path twice, a link, or a path that climbs out.
 */
export function bagFromZip(zip: Uint8Array, name = 'the zip', limits: BagLimits = BAG_LIMITS): CaseBag {
  const entries = zipDirectory(zip, name).filter((entry) => !isClutter(entry.name));
  checkCount(entries.length, name, limits);
  let total = 0;
  for (const entry of entries) {
    checkEntry(entry, name);
    checkSize(entry.bytes, `${name}: ${entry.name}`, limits);
    total += entry.bytes;
  }
  checkTotal(total, name, limits);
  const bag: CaseBag = new Map();
  for (const entry of entries) {
    const path = withSlashes(entry.name);
    if (bag.has(path)) {
      throw new InputFault('the zip holds this file twice: make the zip again', `${name}: ${entry.name}`);
    }
    bag.set(path, unpacked(zip, entry, name));
  }
  return fromTopFolder(bag);
}

/** Folders, and what macOS and file browsers leave lying about. */
function isClutter(path: string): boolean {
  return /[\\/]$|^__MACOSX[\\/]|(^|[\\/])(\.DS_Store|Thumbs\.db|desktop\.ini)$/i.test(path);
}

/** Some Windows programs write backslashes into zips, against the format. */
function withSlashes(path: string): string {
  return path.replaceAll('\\', '/');
}

function checkEntry(entry: ZipEntry, name: string): void {
  const where = `${name}: ${entry.name}`;
  const problem = pathProblem(withSlashes(entry.name));
  if (problem) throw new InputFault(`the zip is refused: ${problem}`, where);
  if (entry.isLink) throw new InputFault('the zip is refused: it holds a link, not a file', where);
  if (entry.encrypted) {
    throw new InputFault(
      'the zip is locked with a password: unlock it, or zip the folder without one',
      where,
    );
  }
  if (entry.method !== STORED && entry.method !== DEFLATED) {
    throw new InputFault(
      `packed by method ${entry.method}, which is not read here: make the zip again with the usual method (deflate)`,
      where,
    );
  }
}

function unpacked(zip: Uint8Array, entry: ZipEntry, name: string): Uint8Array {
  const where = `${name}: ${entry.name}`;
  const packed = packedBytes(zip, entry, name);
  let bytes: Uint8Array;
  if (entry.method === STORED) bytes = new Uint8Array(packed);
  else {
    try {
      // One byte more than declared: what really unpacks to more is caught and never grows further.
      bytes = inflateSync(packed, { out: new Uint8Array(entry.bytes + 1) });
    } catch {
      throw new InputFault(
        'the file inside the zip is damaged or larger than it claims: make the zip again',
        where,
      );
    }
  }
  if (bytes.length !== entry.bytes) {
    throw new InputFault(
      `the file inside the zip is not as long as it claims (${entry.bytes} bytes): make the zip again`,
      where,
    );
  }
  if (crc32(bytes) !== entry.crc) {
    throw new InputFault(
      'the file inside the zip is damaged (its checksum differs): make the zip again',
      where,
    );
  }
  return bytes;
}

/** Zipping a folder often keeps the folder's own name in front. */
function fromTopFolder(bag: CaseBag): CaseBag {
  if (bag.has(CASE_JSON)) return bag;
  const tops = new Set([...bag.keys()].map((path) => path.slice(0, path.indexOf('/') + 1)));
  const top = [...tops][0];
  if (tops.size !== 1 || !top || !bag.has(`${top}${CASE_JSON}`)) return bag;
  return new Map([...bag].map(([path, bytes]) => [path.slice(top.length), bytes]));
}
