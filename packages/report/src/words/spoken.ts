/**
 * The language that a document or figure is being made in.
 *
 * Numbers and labels are written deep inside the figures. Rather than hand the language through every function, it is
 * set for the time of one synchronous call and put back after it, whatever happens inside: what `speaking` returns
 * depends on its arguments alone.
 */
import type { ZoneKind } from '@standfast/engine';
import type { FigureWords } from './en.ts';
import { LANGUAGES, type Language, type LanguageCode } from './languages.ts';
import type { TermScale } from './terms/en.ts';

let spoken: Language = LANGUAGES.en;

/** Runs `make` with numbers, figures and terms in a language. `make` must be synchronous. */
export function speaking<Result>(code: LanguageCode, make: () => Result): Result {
  const before = spoken;
  spoken = LANGUAGES[code];
  try {
    return make();
  } finally {
    spoken = before;
  }
}

export function language(): Language {
  return spoken;
}

/** The words within drawings, in the language that is spoken when they are read. */
export const figureWords: FigureWords = new Proxy(LANGUAGES.en.figures, {
  get: (_, key) => Reflect.get(spoken.figures, key),
});

export function zoneName(kind: ZoneKind): string {
  return spoken.zones[kind];
}

/** A word of one of the trade's scales; any other text unchanged. */
export function term(scale: TermScale, word: string): string {
  const words: Record<string, string> = spoken.terms[scale];
  return words[word] ?? word;
}
