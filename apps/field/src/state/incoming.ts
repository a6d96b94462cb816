/**
 * Files dropped or chosen: told apart as a case (folder or zip), loose tables, photos of paper strips, a report to verify,
 * or an inventory of trees. Each but a case waits until the step that takes it.
 */
import { CASE_JSON, type CaseBag } from '@standfast/casefile';

export interface LooseFile {
  name: string;
  bytes: Uint8Array;
}

export type Incoming =
  | { kind: 'zip'; name: string; bytes: Uint8Array }
  | { kind: 'folder'; name: string; bag: CaseBag }
  | { kind: 'tables'; tables: LooseFile[] }
  | { kind: 'photos'; photos: LooseFile[] }
  | { kind: 'report'; file: File }
  | { kind: 'inventory'; file: File }
  | { kind: 'unknown'; name: string };

/** A file with its path inside what was dropped. */
export interface PathFile {
  path: string;
  file: File;
}

const TABLE = /\.(csv|txt|tsv|dat|asc|xlsx)$/i;
const PHOTO = /\.(jpe?g|png|heic|heif|webp)$/i;
const ZIP = /\.zip$/i;
const REPORT = /\.(pdf|html?)$/i;
const INVENTORY = /\.(geojson|json)$/i;

/** Reads the files and says what they are. Several cases in one go come back as several. */
export async function sortIncoming(files: readonly PathFile[]): Promise<Incoming[]> {
  const found: Incoming[] = [];
  const seen = files.filter(({ path }) => !/(^|\/)(\.|__MACOSX)/.test(path));
  const folders = seen
    .filter(({ path }) => path.split('/').pop() === CASE_JSON)
    .map(({ path }) => path.slice(0, -CASE_JSON.length));
  // A case within a case is an earlier visit of it and comes along with it.
  const roots = folders.filter((root) => !folders.some((other) => other !== root && root.startsWith(other)));
  for (const root of roots) {
    const bag: CaseBag = new Map();
    for (const { path, file } of seen) {
      if (path.startsWith(root)) bag.set(path.slice(root.length), await bytesOf(file));
    }
    found.push({ kind: 'folder', name: root.replace(/\/$/, '') || 'case', bag });
  }
  const rest = seen.filter(({ path }) => !roots.some((root) => path.startsWith(root)));
  const tables: LooseFile[] = [];
  const photos: LooseFile[] = [];
  for (const { path, file } of rest) {
    if (ZIP.test(path)) found.push({ kind: 'zip', name: file.name, bytes: await bytesOf(file) });
    else if (TABLE.test(path)) tables.push({ name: file.name, bytes: await bytesOf(file) });
    else if (isPhoto(path, file)) photos.push({ name: file.name, bytes: await bytesOf(file) });
    else if (REPORT.test(path)) found.push({ kind: 'report', file });
    else if (INVENTORY.test(path)) found.push({ kind: 'inventory', file });
    else found.push({ kind: 'unknown', name: file.name });
  }
  if (photos.length > 0) found.push({ kind: 'photos', photos });
  if (tables.length > 0) found.push({ kind: 'tables', tables });
  return found;
}

/** By its name, or by what the device says it is: pickers hand over pictures without an ending too. */
const isPhoto = (path: string, file: File) => PHOTO.test(path) || /^image\/(?!svg)/.test(file.type);

async function bytesOf(file: File): Promise<Uint8Array> {
  return new Uint8Array(await file.arrayBuffer());
}

/** Everything in a drop, folders opened all the way down. */
export async function filesOfDrop(transfer: DataTransfer): Promise<PathFile[]> {
  // Entries and files are to be had only while the event is being handled, so both are taken before anything waits.
  const dropped = Array.from(transfer.items)
    .filter(({ kind }) => kind === 'file')
    .map((item) => ({ entry: item.webkitGetAsEntry(), file: item.getAsFile() }));
  const lists = await Promise.all(
    dropped.map(async ({ entry, file }) => {
      if (entry) return filesOfEntry(entry, '');
      return file ? [{ path: file.name, file }] : [];
    }),
  );
  return lists.flat();
}

async function filesOfEntry(entry: FileSystemEntry, above: string): Promise<PathFile[]> {
  const path = above + entry.name;
  if (entry.isFile) {
    const file = await new Promise<File>((resolve, reject) =>
      (entry as FileSystemFileEntry).file(resolve, reject),
    );
    return [{ path, file }];
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const inside: FileSystemEntry[] = [];
  // A reader hands out at most a hundred entries a time.
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) =>
      reader.readEntries(resolve, reject),
    );
    if (some.length === 0) break;
    inside.push(...some);
  }
  const lists = await Promise.all(inside.map((each) => filesOfEntry(each, `${path}/`)));
  return lists.flat();
}

/** Files of a picker, with the folder they stand in where one was chosen. */
export function filesOfPicker(list: FileList): PathFile[] {
  return Array.from(list, (file) => ({ path: file.webkitRelativePath || file.name, file }));
}

/** What a picker of the steps below takes. */
export const TABLE_FILES = '.csv,.txt,.tsv,.dat,.asc,.xlsx';
export const PHOTO_FILES = 'image/jpeg,image/png,image/heic,image/heif,image/webp';
export const REPORT_FILES = '.pdf,.html,.htm,application/pdf,text/html';
export const INVENTORY_FILES = '.geojson,.json,application/geo+json';
