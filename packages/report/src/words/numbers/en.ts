/** How numbers, dates and directions are written in English. */
export const englishNumbers = {
  decimalMark: '.',
  range: (low: string, high: string): string => `${low} to ${high}`,
  /** The words between two ends, and before the last of a list. */
  to: 'to',
  and: 'and',
  date: (day: number, month: string, year: string): string => `${day} ${month} ${year}`,
  /** Clockwise from north, by eighths. */
  compassPoints: [
    'north',
    'north-east',
    'east',
    'south-east',
    'south',
    'south-west',
    'west',
    'north-west',
  ] as readonly string[],
  compassLetters: { north: 'N', east: 'E', south: 'S', west: 'W' },
  /** What the type of this language asks of spaces; English asks nothing. */
  spacing: (text: string): string => text,
};

export type NumberWords = typeof englishNumbers;
