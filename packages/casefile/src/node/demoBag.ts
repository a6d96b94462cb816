/**
 * The demonstration case: an invented scenario, its files kept in `packages/casefile/demo`; and its second visit, which
 * is kept in `packages/casefile/demo-second-visit` without the first and given it when it is opened.
 */
import { fileURLToPath } from 'node:url';
import type { CaseBag } from '../bag/bag.ts';
import { withBagBelow } from '../bag/earlierBag.ts';
import { bagFromFolder } from './bagFromDisk.ts';

/** Where the demonstration lies when run from the sources. */
export const DEMO_FOLDER = fileURLToPath(new URL('../../demo', import.meta.url));

/** The demonstration's files; `folder` is where a bundled program keeps them. */
export async function demoBag(folder: string = DEMO_FOLDER): Promise<CaseBag> {
  return bagFromFolder(folder);
}

const SECOND_VISIT_FOLDER = fileURLToPath(new URL('../../demo-second-visit', import.meta.url));
/** Where the first visit lies in the second one's case; its case file names this. */
const FIRST_VISIT = 'earlier/2026-06-18';

/** The second visit's files with the first visit whole inside; the folders are where a bundled program keeps them. */
export async function secondVisitBag(
  folder: string = SECOND_VISIT_FOLDER,
  firstFolder: string = DEMO_FOLDER,
): Promise<CaseBag> {
  return withBagBelow(await bagFromFolder(folder), FIRST_VISIT, await bagFromFolder(firstFolder));
}
