/** The languages a report can be made in. A language is one table of each kind; docs/guide/languages.md says how to add one. */
import type { REPORT_LANGUAGES } from '@standfast/casefile';
import type { ZoneKind } from '@standfast/engine';
import { type FigureWords, figureWords, type ReportWords, reportWords, zoneNames } from './en.ts';
import { frenchFigureWords, frenchReportWords, frenchZoneNames } from './fr.ts';
import { englishNumbers, type NumberWords } from './numbers/en.ts';
import { frenchNumbers } from './numbers/fr.ts';
import { englishSentences, type SentenceTable } from './sentences/en.ts';
import { frenchSentences } from './sentences/fr.ts';
import { frenchSourcePhrases } from './sources/fr.ts';
import { frenchTableTexts } from './tables/fr.ts';
import { englishTerms, type Terms } from './terms/en.ts';
import { frenchTerms } from './terms/fr.ts';

/** Those that a case may name (`report.language`). */
export type LanguageCode = (typeof REPORT_LANGUAGES)[number];

export interface Language {
  /** As a language calls itself. */
  name: string;
  report: ReportWords;
  figures: FigureWords;
  zones: Record<ZoneKind, string>;
  numbers: NumberWords;
  terms: Terms;
  /** What the engine and the case's notices say; the English is theirs. */
  sentences: SentenceTable;
  /** Prose of the engine's tables by its English text. */
  tableTexts: Readonly<Record<string, string>>;
  /** Words beside the citations of a source, and what stands for them. */
  sourcePhrases: readonly (readonly [english: string, other: string])[];
}

const english: Language = {
  name: 'English',
  report: reportWords,
  figures: figureWords,
  zones: zoneNames,
  numbers: englishNumbers,
  terms: englishTerms,
  sentences: englishSentences,
  tableTexts: {},
  sourcePhrases: [],
};

const french: Language = {
  name: 'Français',
  report: frenchReportWords,
  figures: frenchFigureWords,
  zones: frenchZoneNames,
  numbers: frenchNumbers,
  terms: frenchTerms,
  sentences: frenchSentences,
  tableTexts: frenchTableTexts,
  sourcePhrases: frenchSourcePhrases,
};

/** By their codes (ISO 639-1). */
export const LANGUAGES: Readonly<Record<LanguageCode, Language>> = { en: english, fr: french };

export function isLanguage(code: string): code is LanguageCode {
  return Object.hasOwn(LANGUAGES, code);
}
