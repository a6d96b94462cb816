/**
 * The demonstration case: an invented scenario, its files kept in `packages/casefile/demo`.
 */
import { fileURLToPath } from 'node:url';
import type { CaseBag } from '../bag/bag.ts';
import { bagFromFolder } from './bagFromDisk.ts';

/** Where the demonstration lies when run from the sources. */
export const DEMO_FOLDER = fileURLToPath(new URL('../../demo', import.meta.url));

/** The demonstration's files; `folder` is where a bundled program keeps them. */
export async function demoBag(folder: string = DEMO_FOLDER): Promise<CaseBag> {
  return bagFromFolder(folder);
}
