/** Cases on disk: folders and zip files, for the command line and for tests. */
export { bagFromFolder, bagFromPath } from './node/bagFromDisk.ts';
export { DEMO_FOLDER, demoBag, secondVisitBag } from './node/demoBag.ts';
export { onDisk } from './node/diskFault.ts';
export { writeFolder, writeZipFile } from './node/writeBag.ts';
export { writeWhole, writeWholeFrom } from './node/writeFile.ts';
