/**
 * The list of contents at the end of a zip (PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16). It is read before
 * anything is unpacked, so that a zip that is cut short, locked, or claims more than may be unpacked is refused early.
 */
import { InputFault } from '@standfast/engine';

export interface ZipEntry {
  /** The path as the zip has it. */
  name: string;
  /** 0 stored, 8 deflated; others are not read. */
  method: number;
  encrypted: boolean;
  isLink: boolean;
  crc: number;
  packedBytes: number;
  bytes: number;
  /** Where the local header stands. */
  headerAt: number;
}

const END_SIGNATURE = 0x06054b50;
const ENTRY_SIGNATURE = 0x02014b50;
const LOCAL_SIGNATURE = 0x04034b50;
const END_BYTES = 22;
const LONGEST_COMMENT = 65_535;
const ONLY_IN_ZIP64 = 0xffffffff;
const UNIX_LINK = 0o120000;
const UNIX_KIND = 0o170000;

/** True when the bytes begin like a zip. */
export function looksLikeZip(bytes: Uint8Array): boolean {
  return (
    bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 3 || bytes[2] === 5) && bytes[3] === bytes[2]! + 1
  );
}

/**
 * The entries of a zip.
 *
 * @throws InputFault when it is no zip, is cut short, or is of a kind that is not read (parts, over 4 GB).
 */
export function zipDirectory(zip: Uint8Array, where: string): ZipEntry[] {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  const endAt = endRecord(view);
  if (endAt < 0) {
    throw new InputFault(
      looksLikeZip(zip)
        ? 'the zip is cut short (its list of contents is missing): copy or download it again'
        : 'this is not a zip file',
      where,
    );
  }
  const count = view.getUint16(endAt + 10, true);
  const start = view.getUint32(endAt + 16, true);
  if (start === ONLY_IN_ZIP64 || count === 0xffff) {
    throw new InputFault('the zip is of the kind for more than 4 GB: unpack it and open the folder', where);
  }
  const entries: ZipEntry[] = [];
  let at = start;
  for (let i = 0; i < count; i++) {
    if (at + 46 > zip.length || view.getUint32(at, true) !== ENTRY_SIGNATURE) throw broken(where);
    const flags = view.getUint16(at + 8, true);
    const nameBytes = view.getUint16(at + 28, true);
    const nextAt = at + 46 + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    if (nextAt > zip.length) throw broken(where);
    entries.push({
      name: nameOf(zip.subarray(at + 46, at + 46 + nameBytes)),
      method: view.getUint16(at + 10, true),
      encrypted: (flags & 1) !== 0,
      isLink: ((view.getUint32(at + 38, true) >>> 16) & UNIX_KIND) === UNIX_LINK,
      crc: view.getUint32(at + 16, true),
      packedBytes: view.getUint32(at + 20, true),
      bytes: view.getUint32(at + 24, true),
      headerAt: view.getUint32(at + 42, true),
    });
    at = nextAt;
  }
  return entries;
}

/** The packed bytes of an entry. */
export function packedBytes(zip: Uint8Array, entry: ZipEntry, where: string): Uint8Array {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  const at = entry.headerAt;
  if (at + 30 > zip.length || view.getUint32(at, true) !== LOCAL_SIGNATURE) throw broken(where);
  const start = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  if (start + entry.packedBytes > zip.length) throw broken(where);
  return zip.subarray(start, start + entry.packedBytes);
}

function endRecord(view: DataView): number {
  const earliest = Math.max(0, view.byteLength - END_BYTES - LONGEST_COMMENT);
  for (let at = view.byteLength - END_BYTES; at >= earliest; at--) {
    if (view.getUint32(at, true) === END_SIGNATURE) return at;
  }
  return -1;
}

/** Names are UTF-8 nowadays whether or not the zip says so; what is not is taken as Western European. */
function nameOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

function broken(where: string): InputFault {
  return new InputFault(
    'the zip is damaged (its list of contents does not fit): copy or download it again',
    where,
  );
}
