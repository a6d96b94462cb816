/** The case of an earlier visit, kept whole in a folder inside a case. */
import type { CaseBag, ReadonlyCaseBag } from './bag.ts';

/** Folder that earlier visits are kept in. */
export const EARLIER_FOLDER = 'earlier/';

/** The files below a folder of the bag, with their paths from there; the folder is matched as written, else in any capitals. */
export function bagBelow(bag: ReadonlyCaseBag, folder: string): CaseBag {
  const prefix = folder.endsWith('/') ? folder : `${folder}/`;
  const below = (same: (path: string) => boolean): CaseBag =>
    new Map(
      [...bag].filter(([path]) => same(path)).map(([path, bytes]) => [path.slice(prefix.length), bytes]),
    );
  const exact = below((path) => path.startsWith(prefix));
  return exact.size > 0 ? exact : below((path) => path.toLowerCase().startsWith(prefix.toLowerCase()));
}

/** The bag with another whole case in one of its folders. */
export function withBagBelow(bag: ReadonlyCaseBag, folder: string, inner: ReadonlyCaseBag): CaseBag {
  const prefix = folder.endsWith('/') ? folder : `${folder}/`;
  return new Map([
    ...bag,
    ...[...inner].map(([path, bytes]): [string, Uint8Array] => [`${prefix}${path}`, bytes]),
  ]);
}
