/** What a person recorded: the case file, its folder and zip, tables of readings, and edits. */
export * from './actions/index.ts';

export * from './bag/bag.ts';
export { bagFromZip } from './bag/bagFromZip.ts';
export { bagBelow, EARLIER_FOLDER, withBagBelow } from './bag/earlierBag.ts';
export { filesInWords, findFile, pathProblem } from './bag/paths.ts';
export { looksLikeZip } from './bag/zipDirectory.ts';
export { zipOfBag } from './bag/zipOfBag.ts';
export { CaseFaults } from './caseFaults.ts';
export { checkCase, drillingsOf } from './check/checkCase.ts';
export type { Findings } from './check/findings.ts';
export { DEFAULTS, engineInput } from './engineInput.ts';
export { type Firm, parseFirm, withFirm } from './firm/firm.ts';
export * from './history.ts';
export * from './list/index.ts';
export { type InspectedCase, inspectCase, openCase } from './openCase.ts';
export {
  hasJpegEnd,
  hasWebpEnd,
  isJpeg,
  isPng,
  isWebp,
  jpegSize,
  pngSize,
  textAt,
  webpSize,
} from './photo/photoBytes.ts';
export { photoOrientation } from './photo/photoOrientation.ts';
export { caseText, saveCase } from './saveCase.ts';
export { jsonTrouble, parseCase } from './schema/parseCase.ts';
export * from './schema/schema.ts';
export { type StripOrigin, shareRead, stripNotes, stripNotesIn, stripOriginIn } from './strip/notes.ts';
export { gapsOf, stretchesOf, UNSURE_BELOW, unsureStretches, usualStep } from './strip/stretches.ts';
export { guessTable } from './table/guessTable.ts';
export { previewTable, readTable } from './table/readTable.ts';
export * from './table/types.ts';
export { readTraceTable, TRACE_HEADER } from './trace/readTraceTable.ts';
export { traceNotices } from './trace/traceNotices.ts';
export { type StripSamples, writeStripTable } from './trace/writeStripTable.ts';
export { writeTraceTable } from './trace/writeTraceTable.ts';
