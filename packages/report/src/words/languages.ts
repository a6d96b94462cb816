/** The languages a report can be made in. A language is one table of each kind; docs/guide/languages.md says how to add one. */
import type { ZoneKind } from '@standfast/engine';
import { type FigureWords, figureWords, type ReportWords, reportWords, zoneNames } from './en.ts';
import { frenchFigureWords, frenchReportWords, frenchZoneNames } from './fr.ts';
import { englishNumbers, type NumberWords } from './numbers/en.ts';
import { frenchNumbers } from './numbers/fr.ts';
import { englishTerms, type Terms } from './terms/en.ts';
import { frenchTerms } from './terms/fr.ts';

export interface Language {
  /** As a language calls itself. */
  name: string;
  report: ReportWords;
  figures: FigureWords;
  zones: Record<ZoneKind, string>;
  numbers: NumberWords;
  terms: Terms;
}

const english: Language = {
  name: 'English',
  report: reportWords,
  figures: figureWords,
  zones: zoneNames,
  numbers: englishNumbers,
  terms: englishTerms,
};

const french: Language = {
  name: 'Français',
  report: frenchReportWords,
  figures: frenchFigureWords,
  zones: frenchZoneNames,
  numbers: frenchNumbers,
  terms: frenchTerms,
};

/** By their codes (ISO 639-1). */
export const LANGUAGES = { en: english, fr: french } as const;

export type LanguageCode = keyof typeof LANGUAGES;

export function isLanguage(code: string): code is LanguageCode {
  return Object.hasOwn(LANGUAGES, code);
}
