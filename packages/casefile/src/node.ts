/** Cases on disk: folders and zip files, for the command line and for tests. */
import type { BagLimits, CaseBag, ReadonlyCaseBag } from './bag/bag.ts';

export declare function bagFromFolder(folder: string, limits?: BagLimits): Promise<CaseBag>;
export declare function bagFromPath(path: string, limits?: BagLimits): Promise<CaseBag>;
export declare function writeFolder(
  bag: ReadonlyCaseBag,
  folder: string,
  options?: { update?: boolean },
): Promise<void>;
export declare function writeZipFile(
  bag: ReadonlyCaseBag,
  path: string,
  options?: { overwrite?: boolean },
): Promise<void>;
export declare function demoBag(): Promise<CaseBag>;
