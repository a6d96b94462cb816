/**
 * A case as a zip, always the same bytes for the same files: sorted by path, with one fixed date.
 */
import { type Zippable, zipSync } from 'fflate';
import type { ReadonlyCaseBag } from './bag.ts';

/** The first moment a zip can hold, in local time as zip has it. */
const FIXED_DATE = new Date(1980, 0, 1);

/** Already packed; packing again costs time and saves nothing. */
const PACKED = /\.(jpe?g|png|heic|webp|mp4|mov|zip|pdf|xlsx)$/i;

/** The bag as zip bytes. */
export function zipOfBag(bag: ReadonlyCaseBag): Uint8Array {
  const files: Zippable = {};
  for (const path of [...bag.keys()].sort()) {
    files[path] = [bag.get(path)!, { level: PACKED.test(path) ? 0 : 6, mtime: FIXED_DATE }];
  }
  return zipSync(files);
}
