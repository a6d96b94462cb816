/** Photos made smaller for the report, so that it can be sent by mail; what they were made from is kept on record. */
import {
  type CaseBag,
  type CaseFile,
  type CaseReport,
  findFile,
  isJpeg,
  isPng,
  pathProblem,
  type ReadonlyCaseBag,
  saveCase,
} from '@standfast/casefile';
import { sha256 } from './proven.ts';

/** Bytes of all photos together; they stand in the report twice, on the page and in the attached case. */
const BUDGET_BYTES = 5e6;
/** Longest sides tried, px, until the photos fit. */
const LONGEST_SIDES = [1600, 1200, 900, 640];
/** A smaller file is left as it is. */
const SMALL_BYTES = 120_000;

/** A JPEG of the picture, upright, no side longer than so many px; null where it cannot be decoded. */
export type Shrink = (bytes: Uint8Array, longestPx: number, path: string) => Promise<Uint8Array | null>;

/**
 * The case with its photos small enough for a report, each with the size and fingerprint of the one it was made from. Photos that
 * fit as they are stay untouched. Logo and signature are no photos.
 */
export async function reducePhotos(
  caseFile: CaseFile,
  bag: ReadonlyCaseBag,
  shrink: Shrink,
): Promise<{ caseFile: CaseFile; bag: ReadonlyCaseBag }> {
  const originals = photosIn(caseFile, bag);
  const total = (photos: ReadonlyMap<string, Uint8Array>) =>
    [...photos.values()].reduce((sum, { length }) => sum + length, 0);
  if (total(originals) <= BUDGET_BYTES) return { caseFile, bag };
  let made = new Map(originals);
  for (const longest of LONGEST_SIDES) {
    const next = new Map<string, Uint8Array>();
    // From what the step before made: a photo is unpacked in full once only.
    for (const [path, bytes] of made) {
      const smaller =
        bytes.length > SMALL_BYTES && (isJpeg(bytes) || isPng(bytes))
          ? await shrink(bytes, longest, path)
          : null;
      next.set(path, smaller !== null && smaller.length < bytes.length ? smaller : bytes);
    }
    made = next;
    if (total(made) <= BUDGET_BYTES) break;
  }
  const files: CaseBag = new Map(bag);
  const renamed = new Map<string, string>();
  const before = new Map((caseFile.report?.reduced ?? []).map((one) => [one.photo, one]));
  const reduced: NonNullable<CaseReport['reduced']> = [];
  for (const [path, bytes] of originals) {
    const smaller = made.get(path)!;
    if (smaller === bytes) {
      const one = before.get(path);
      if (one) reduced.push(one);
      continue;
    }
    const photo = /\.jpe?g$/i.test(path) ? path : `${path}.jpg`;
    files.delete(path);
    files.set(photo, smaller);
    renamed.set(path, photo);
    reduced.push({ photo, originalSha256: await sha256(bytes), originalBytes: bytes.length });
  }
  const changed: CaseFile = {
    ...withPhotoPaths(caseFile, renamed),
    report: { ...caseFile.report, reduced },
  };
  return { caseFile: changed, bag: saveCase(changed, files) };
}

/** The photos that signs, drillings and felled sections name, and that are there, by their path in the bag. */
function photosIn(caseFile: CaseFile, bag: ReadonlyCaseBag): Map<string, Uint8Array> {
  const found = new Map<string, Uint8Array>();
  JSON.stringify(caseFile, (key, value) => {
    if (key === 'report') return undefined;
    if (key !== 'photo' || typeof value !== 'string' || pathProblem(value) !== null) return value;
    const file = findFile(bag, value, 'case.json');
    if (file) found.set(file.path, file.bytes);
    return value;
  });
  return found;
}

/** The case with every `photo` that was renamed under its new name. */
function withPhotoPaths(caseFile: CaseFile, renamed: ReadonlyMap<string, string>): CaseFile {
  const lower = new Map([...renamed].map(([from, to]) => [from.toLowerCase(), to]));
  return JSON.parse(
    JSON.stringify(caseFile, (key, value) =>
      key === 'photo' && typeof value === 'string' ? (lower.get(value.toLowerCase()) ?? value) : value,
    ),
  ) as CaseFile;
}
