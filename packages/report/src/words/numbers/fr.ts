/** How numbers, dates and directions are written in French. */
import type { NumberWords } from './en.ts';

export const frenchNumbers: NumberWords = {
  decimalMark: ',',
  range: (low, high) => `${low} à ${high}`,
  to: 'à',
  and: 'et',
  date: (day, month, year) => `${day === 1 ? '1er' : day} ${month} ${year}`,
  compassPoints: ['nord', 'nord-est', 'est', 'sud-est', 'sud', 'sud-ouest', 'ouest', 'nord-ouest'],
  compassLetters: { north: 'N', east: 'E', south: 'S', west: 'O' },
  /** A space before `: ; ? ! % »` and after `«` does not break the line. */
  spacing: (text) =>
    text
      .replace(/([^\s\u00a0]); /g, '$1\u00a0; ')
      .replace(/([\p{L})\d]): /gu, '$1\u00a0: ')
      .replace(/ ([:;?!%»])/g, '\u00a0$1')
      .replace(/« /g, '«\u00a0'),
};
