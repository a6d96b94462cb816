/**
 * What the words over a column say it is, in the languages that tables come in.
 */
import type { ColumnRole, DepthUnit } from './types.ts';

/** Checked in this order; the first that fits counts. Titles are lower case, without accents, signs as spaces. */
const ROLE_WORDS: readonly [ColumnRole, RegExp][] = [
  [
    'ignore',
    /\b(time|date|zeit|datum|temp\w*|battery|remark\w*|note|comment|bemerkung|confidence|angle|heure)\b/,
  ],
  ['feed', /\b(feed\w*|vorschub\w*|push\w*|thrust|avance|voeding|avanzamento)\b/],
  [
    'depth',
    /\b(depth|tiefe|bohrtiefe|eindringtiefe|profond\w*|profund\w*|diepte|djup|dybde|glebokosc|hloubka|distance|dist|abstand|weg|position|pos|penetration)\b/,
  ],
  [
    'resistance',
    /\b(resist\w*|res|widerstand|bohrwiderstand|amplitude|ampl|torque|drehmoment|couple|weerstand|motstand|modstand|odpor|opor)\b/,
  ],
  ['index', /^(n|nr|no|num|number|index|idx|i|row|sample|samples|point|lfd|lfd nr|zeile|nummer)$/],
  [
    'drilling',
    /\b(drilling|drillings|hole|bore|boring|bohrung|forage|perforazione|boorgat|measurement|messung|id)\b/,
  ],
];

const UNIT_WORDS: readonly [DepthUnit, RegExp][] = [
  ['mm', /\b(mm|millimet\w*)\b/],
  ['cm', /\b(cm|centimet\w*|zentimet\w*)\b/],
  ['inch', /\b(in|inch|inches|zoll|pouces?|pulgadas?)\b|["\u2033]/],
  ['m', /\b(m|met(er|re)s?)\b/],
];

/** A title as the patterns want it. */
function plain(title: string): string {
  return title
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replaceAll('\u0142', 'l')
    .replace(/[_\-.:;/()[\]{}|]+/g, ' ')
    .trim();
}

/** The role that a title names, or null when it names none. */
export function roleInWords(title: string): ColumnRole | null {
  const words = plain(title);
  if (words === '') return null;
  const named = ROLE_WORDS.find(([, pattern]) => pattern.test(words))?.[0];
  if (named) return named;
  // A unit alone says what is measured.
  if (/^(mm|cm|m|in|inch|inches)$/.test(words)) return 'depth';
  if (/^(%|percent|pct)$/.test(words)) return 'resistance';
  return null;
}

/** The unit of length that a title names, or null. */
export function depthUnitInWords(title: string): DepthUnit | null {
  const words = plain(title);
  return UNIT_WORDS.find(([, pattern]) => pattern.test(words))?.[0] ?? null;
}

/** Whether a title says percent. */
export function saysPercent(title: string): boolean {
  return /%|\b(percent|prozent|pct)\b/.test(plain(title));
}

/** What is left of a title when the words for role and unit are taken out: often the drilling's name. */
export function drillingInTitle(title: string): string {
  return title
    .replace(/[([{][^)\]}]*[)\]}]/g, ' ')
    .split(/[\s_:;/|]+/)
    .filter((word) => {
      const role = roleInWords(word);
      return word !== '' && word !== '%' && role !== 'resistance' && role !== 'depth';
    })
    .join(' ')
    .replace(/^[\s-]+|[\s-]+$/g, '');
}
