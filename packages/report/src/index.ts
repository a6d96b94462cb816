/** Figures, the document model, and their printing to HTML and PDF: one drawing code for screen and paper. */

export * from './document/blocks.ts';
export { monthsOn } from './document/dueDate.ts';
export * from './document/input.ts';
export { type Passage, passagesOf } from './document/passages.ts';
export * from './document/reportDocument.ts';
export { textInUnits } from './document/textInUnits.ts';
export * from './figures/index.ts';
export * from './fonts.ts';
export { type HtmlOptions, toHtml } from './html/toHtml.ts';
export * from './pdf/toPdf.ts';
export { htmlWithCase, pdfWithCase, provenHtml, provenPdf, withEvidence } from './proof/proven.ts';
export { reducePhotos, type Shrink } from './proof/reducePhotos.ts';
export * from './proof/verifyReport.ts';
export * from './scene/index.ts';
export * from './testing/sampleAssessment.ts';
export * from './theme.ts';
export * from './units.ts';
export { type ReportWords, reportWords } from './words/en.ts';
export { isLanguage, LANGUAGES, type LanguageCode } from './words/languages.ts';
export { speaking } from './words/spoken.ts';
export { CASE_PLACES, ownTexts, type WordingText, wordingFaults, wordingTexts } from './words/wording.ts';
