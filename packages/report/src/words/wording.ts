/**
 * A firm's own wording of chosen texts: introductions, scope, standing paragraphs, advice, closing. A text's key is its
 * path in `ReportWords`; values stand in named places. Cautions and limits can be added to and never removed.
 */
import { InputFault } from '@standfast/engine';
import type { ReportWords } from './en.ts';
import { filled, placesOf } from './recognise.ts';

/** Places that stand in for facts of the case, in any text. */
export const CASE_PLACES = [
  'tree',
  'client',
  'assessor',
  'firm',
  'place',
  'visitedOn',
  'reportedOn',
] as const;
export type CasePlaces = Record<(typeof CASE_PLACES)[number], string>;

export interface WordingText {
  key: string;
  /** The text as it stands; for an addition the text that it is put after. */
  text: string;
  /** Places that a replacement must keep: values without which the text is not true. */
  places: readonly string[];
  /** Added after the text, which stays. */
  adds: boolean;
}

/** Texts that may be replaced, and the places each must keep. */
const REPLACED: Readonly<Record<string, readonly string[]>> = {
  title: [],
  'summary.asked': ['client', 'tree'],
  'summary.askedNoClient': ['tree'],
  'summary.purpose': ['text'],
  'summary.again': [],
  'summary.againWhy': [],
  'summary.suggestedBy': [],
  'summary.assessorSays': [],
  'advice.enough': [],
  'advice.drillNext': ['section', 'toward', 'worth', 'why'],
  'advice.drillStop': ['why'],
  'decision.intro': ['years'],
  'decision.riskIntro': [],
  'decision.matrixNote': [],
  'options.intro': [],
  'options.againAtOnce': [],
  'safety.intro': [],
  'criteria.intro': [],
  'felled.intro': [],
  'drillings.intro': [],
  'load.intro': ['code', 'speed', 'terrain'],
  'load.caption': [],
  'record.notices': [],
  'sources.intro': [],
  'signOff.statement': [],
  'annex.repeat': [],
  'photos.intro': [],
  'worked.intro': [],
};

/** Cautions, limits, scope and what defers to local codes. */
const ADDED_TO = [
  'summary.noDrillings',
  'summary.thin',
  'summary.cautions',
  'advice.exceeded',
  'advice.short',
  'advice.uncertain',
  'advice.thinAnchorage',
  'decision.noTargets',
  'decision.unsigned',
  'safety.gustNote',
  'anchorage.tooThin',
  'anchorage.noFlares',
  'record.noSigns',
  'record.noTargets',
  'scope.text',
  'method.paragraphs',
  'limits.items',
] as const;

const ADD = '.add';

type Told = string | readonly string[] | ((...values: string[]) => string);

function at(words: ReportWords, key: string): Told {
  return key
    .split('.')
    .reduce<unknown>((within, part) => (within as Record<string, unknown>)[part], words) as Told;
}

function put<Tree>(tree: Tree, path: readonly string[], value: Told): Tree {
  const [first, ...rest] = path as [string, ...string[]];
  const within = tree as Record<string, unknown>;
  return { ...within, [first]: rest.length === 0 ? value : put(within[first], rest, value) } as Tree;
}

function template(told: Told, places: readonly string[]): string {
  if (typeof told === 'function') return told(...places.map((place) => `{${place}}`));
  return typeof told === 'string' ? told : told.join('\n');
}

/** Every text that a firm may word, with its present text in the language of `words`. */
export function wordingTexts(words: ReportWords): WordingText[] {
  return [
    ...Object.entries(REPLACED).map(([key, places]) => ({
      key,
      text: template(at(words, key), places),
      places,
      adds: false,
    })),
    ...ADDED_TO.map((key) => ({
      key: key + ADD,
      text: template(at(words, key), []),
      places: [],
      adds: true,
    })),
  ];
}

/** What is wrong with a wording, one sentence for each fault; none when it can be used. Keys are the same in every language. */
export function wordingFaults(wording: unknown): { key: string; what: string }[] {
  if (typeof wording !== 'object' || wording === null || Array.isArray(wording))
    return [{ key: '', what: 'a wording is one object of keys and texts: {"safety.intro": "…"}' }];
  return Object.entries(wording).flatMap(([key, text]): { key: string; what: string }[] => {
    const fault = (what: string) => [{ key, what }];
    const base = key.endsWith(ADD) ? key.slice(0, -ADD.length) : key;
    const addable = (ADDED_TO as readonly string[]).includes(base);
    if (key === base && addable)
      return fault(
        `this text can be added to and not replaced: use "${key}${ADD}" for what is to stand after it`,
      );
    const places = key === base ? REPLACED[key] : addable ? [] : undefined;
    if (places === undefined) {
      const known = [...Object.keys(REPLACED), ...ADDED_TO.map((one) => one + ADD)];
      return fault(`is no text of the report that can be worded; nearest is "${nearest(key, known)}"`);
    }
    if (typeof text !== 'string') return fault('is no text: write it in quotes');
    if (text.trim() === '') return [];
    const used = placesOf(text);
    const missing = places.filter((place) => !used.includes(place));
    if (missing.length > 0)
      return fault(`leaves out ${inBraces(missing)}, without which the text is not complete`);
    const unknown = used.filter(
      (place) => !places.includes(place) && !(CASE_PLACES as readonly string[]).includes(place),
    );
    if (unknown.length > 0)
      return fault(
        `has ${inBraces(unknown)}, which stands for nothing here; use ${inBraces([...places, ...CASE_PLACES])}`,
      );
    return [];
  });
}

const inBraces = (places: readonly string[]) => [...new Set(places)].map((place) => `{${place}}`).join(', ');

/** The known key that shares the longest beginning and the most letters. */
function nearest(key: string, known: readonly string[]): string {
  const pairs = (text: string) =>
    new Set(Array.from({ length: Math.max(0, text.length - 1) }, (_, i) => text.slice(i, i + 2)));
  const own = pairs(key);
  const score = (other: string) => {
    const theirs = pairs(other);
    return [...own].filter((pair) => theirs.has(pair)).length / Math.max(1, own.size + theirs.size);
  };
  return known.reduce((best, one) => (score(one) > score(best) ? one : best));
}

/** The keys under which a wording says something of its own: neither nothing nor what the report says anyway. */
export function ownTexts(words: ReportWords, wording: Readonly<Record<string, string>>): string[] {
  return wordingTexts(words)
    .filter(({ key, text, adds }) => {
      const own = wording[key]?.trim() ?? '';
      return own !== '' && (adds || own !== text.trim());
    })
    .map(({ key }) => key);
}

/**
 * The words with a firm's own in place of the report's.
 * @throws InputFault naming the key, when a text cannot be used
 */
export function withWording(
  words: ReportWords,
  wording: Readonly<Record<string, string>>,
  facts: CasePlaces,
): ReportWords {
  const [first] = wordingFaults(wording);
  if (first) throw new InputFault(first.what, `report.wording["${first.key}"]`);
  let made = words;
  for (const key of ownTexts(words, wording)) {
    const text = wording[key]!;
    if (key.endsWith(ADD)) {
      const base = key.slice(0, -ADD.length);
      const told = at(words, base);
      const more = filled(text, (place) => facts[place as keyof CasePlaces]);
      made = put(
        made,
        base.split('.'),
        typeof told === 'string'
          ? `${told} ${more}`
          : [...(told as readonly string[]), ...more.split('\n').filter((line) => line.trim() !== '')],
      );
      continue;
    }
    const places = REPLACED[key]!;
    const say = (values: readonly string[]) =>
      filled(text, (place) => {
        const own = places.indexOf(place);
        return own < 0 ? facts[place as keyof CasePlaces] : values[own]!;
      });
    const replaced: Told = places.length === 0 ? say([]) : (...values: string[]) => say(values);
    made = put(made, key.split('.'), replaced);
  }
  return made;
}
