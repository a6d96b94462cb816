/** What the engine says, in the language that is spoken. */
import { ZONE_KINDS, type ZoneKind } from '@standfast/engine';
import { LANGUAGES } from './languages.ts';
import { englishNumbers } from './numbers/en.ts';
import { filled, type Recognised, recognise } from './recognise.ts';
import { language, term, zoneName } from './spoken.ts';
import { englishTerms, type TermScale } from './terms/en.ts';

/** Called with each text for which the language has no words; it is then printed as it is. */
export type OnMissing = (text: string) => void;

const IGNORE: OnMissing = () => {};

/** A sentence, or several joined, or a phrase of a table. English is said as it is. */
export function said(text: string, missing: OnMissing = IGNORE): string {
  if (language() === LANGUAGES.en || text === '') return text;
  const found = translated(text, missing);
  if (found === null) missing(text);
  return found ?? text;
}

/** The words beside a source's citations; the citations stay. */
export function saidSource(source: string): string {
  const { sourcePhrases, numbers } = language();
  if (sourcePhrases.length === 0) return source;
  let text = withTableTail(source);
  for (const [english, other] of longestFirst(sourcePhrases)) text = text.replaceAll(english, other);
  // Authors: `Smiley, Matheny and Lilly 2017`.
  return text.replace(
    / and (\p{Lu}[\p{L}-]+)(?=(?: \p{Lu}\w*)? (?:18|19|20)\d\d| 18| 19)/gu,
    ` ${numbers.and} $1`,
  );
}

/** A source that ends in prose of a table after a semicolon, with that prose in the language. */
function withTableTail(source: string): string {
  const parts = source.split('; ');
  for (let from = 0; from < parts.length; from++) {
    const tail = language().tableTexts[parts.slice(from).join('; ')];
    if (tail !== undefined) return [...parts.slice(0, from), tail].join('; ');
  }
  return source;
}

const sorted = new WeakMap<object, readonly (readonly [string, string])[]>();

function longestFirst(phrases: readonly (readonly [string, string])[]) {
  let list = sorted.get(phrases);
  if (!list) {
    list = [...phrases].sort(([a], [b]) => b.length - a.length);
    sorted.set(phrases, list);
  }
  return list;
}

/** The text in the language; null where it has no words for it. What is missing within it is named. */
function translated(text: string, missing: OnMissing): string | null {
  const { tableTexts } = language();
  const tabled = tableTexts[text];
  if (tabled !== undefined) return tabled;
  const templates = recognise(text);
  for (const template of templates) {
    const said = complete((note) => filledWith(template, note));
    if (said !== null) return said;
  }
  const parts = inParts(text);
  if (parts !== null) return parts;
  return templates.length === 0 ? null : filledWith(templates[0]!, missing);
}

/** What `make` gives, if nothing was missing. */
function complete<Result>(make: (missing: OnMissing) => Result): Result | null {
  let whole = true;
  const made = make(() => {
    whole = false;
  });
  return whole ? made : null;
}

function filledWith({ room, name, values }: Recognised, missing: OnMissing): string {
  const sentences: Readonly<Record<string, Readonly<Record<string, string>>>> = language().sentences;
  return filled(sentences[room]![name]!, (place) => value(place, values[place]!, missing));
}

/** Sentences that follow one another, each known by itself. */
function inParts(text: string): string | null {
  for (const { index } of text.matchAll(/[.] (?=\p{Lu})/gu)) {
    const head = complete((missing) => translated(text.slice(0, index + 1), missing));
    if (head === null) continue;
    const tail = complete((missing) => translated(text.slice(index + 2), missing));
    if (tail !== null) return `${head} ${tail}`;
  }
  return null;
}

/** Words that may stand in a judgement, whichever it is on. */
const JUDGED: TermScale[] = ['failure', 'impact', 'consequences'];

function value(place: string, text: string, missing: OnMissing): string {
  const kind = place.replace(/\d+$/, '');
  if (kind === 'recorded' || kind === 'id' || kind === 'idA' || kind === 'idB' || kind === 'ids') return text;
  if (kind === 'source') return saidSource(text);
  if (kind === 'toward') return compassSaid(text);
  if (kind === 'zone') return ZONE_KINDS.includes(text as ZoneKind) ? zoneName(text as ZoneKind) : text;
  if (kind === 'judged')
    return JUDGED.map((scale) => term(scale, text)).find((word) => word !== text) ?? text;
  if (kind === 'sign' || kind === 'signs' || kind === 'doubts')
    return text
      .split('; ')
      .map((one) => signSaid(one, missing))
      .join('; ');
  if (kind === 'species') return translated(text, missing) ?? text;
  if (Object.hasOwn(englishTerms, kind)) {
    const word = term(kind as TermScale, text);
    if (word !== text || Object.hasOwn(englishTerms[kind as TermScale], text)) return word;
  }
  if (isNumeric(text)) return inNumbers(text);
  if (kind === 'rest') return lowered(translated(raised(text), missing) ?? text);
  const sentence = translated(text, missing);
  if (sentence === null) missing(text);
  return sentence ?? text;
}

const raised = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const lowered = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** A compass point of English in the language. */
function compassSaid(point: string): string {
  return language().numbers.compassPoints[englishNumbers.compassPoints.indexOf(point)] ?? point;
}

/** `fruiting body (stem foot)`: the kind where it is one of the list, the place as it was written. */
export function signSaid(text: string, missing: OnMissing = IGNORE): string {
  const [, kind, where] = /^([^(]+?)( \([\s\S]*\))?$/.exec(text) ?? [];
  if (kind === undefined) return text;
  const plainKind = lowered(kind);
  const word = term('sign', plainKind);
  if (word !== plainKind) return (kind === plainKind ? word : raised(word)) + (where ?? '');
  return translated(text, missing) ?? text;
}

const UNITS = /\b(mm|cm|m\/s|m|kN·m|N·m|MPa|in|ft|mph|kip·ft|years?|degrees|percent)\b/g;
const JOINED = new RegExp(`(?<=[\\d%°)\\w]) (${englishNumbers.to}|${englishNumbers.and}) (?=[<\\d])`, 'g');

/** Whether a text is numbers and units only. */
function isNumeric(text: string): boolean {
  return !/\p{L}/u.test(text.replace(JOINED, ' ').replace(UNITS, ''));
}

/** Numbers as the language writes them. */
function inNumbers(text: string): string {
  const { decimalMark, to, and } = language().numbers;
  return text
    .replace(/(\d)\.(\d)/g, `$1${decimalMark}$2`)
    .replace(JOINED, (_, word: string) => ` ${word === englishNumbers.to ? to : and} `)
    .replace(/\b(years|degrees)\b/g, (word) => term('unit', word));
}
