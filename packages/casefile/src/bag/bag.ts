/**
 * A case as a bag of files: the path inside the case folder, with forward slashes, to the file's bytes. The same bag
 * comes from a folder on disk, from a zip and from files dropped on the app, so everything after it is the same.
 */
export type CaseBag = Map<string, Uint8Array>;

/** A bag that is only read. */
export type ReadonlyCaseBag = ReadonlyMap<string, Uint8Array>;

/** Where the case itself stands in a bag. */
export const CASE_JSON = 'case.json';

/** How much a folder or zip may hold before it is refused, so that a hostile or mistaken one cannot fill the memory. */
export interface BagLimits {
  maxFiles: number;
  maxFileBytes: number;
  maxTotalBytes: number;
}

/** Room for a trace of tens of millions of rows and some hundred photos. */
export const BAG_LIMITS: BagLimits = {
  maxFiles: 10_000,
  maxFileBytes: 512 * 1024 * 1024,
  maxTotalBytes: 1024 * 1024 * 1024,
};
