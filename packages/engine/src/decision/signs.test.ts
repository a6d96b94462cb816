import { describe, expect, it } from 'vitest';
import { signSpeaksOf } from '../reference/index.ts';
import { readSigns } from './signs.ts';

const readings = (kind: string, note?: string) =>
  readSigns([{ kind, note }]).map(({ bearsOn, floor }) => `${bearsOn} ${floor}`);

describe('readSigns', () => {
  it.each([
    ['ants', undefined, 'decay possible'],
    ['frass', undefined, 'decay possible'],
    ['included bark', undefined, 'breakage possible'],
    ['soil-heave', undefined, 'failure begun imminent'],
    ['fresh lean', undefined, 'failure begun imminent'],
    ['crack', 'open crack through the stem', 'failure begun imminent'],
    ['dead limb', undefined, 'limb probable'],
    ['hanging limb', undefined, 'limb imminent'],
    ['fruiting body', 'Meripilus giganteus', 'uprooting possible'],
    ['root cut', undefined, 'uprooting possible'],
  ])('%s (%s): %s', (kind, note, expected) => {
    expect(readings(kind, note)).toContain(expected);
  });

  it('does not read plants as ants, heavy as heaving, or what the note denies', () => {
    expect(readings('climbing plants')).toEqual([]);
    expect(readings('heavy end weight')).toEqual([]);
    expect(readings('lean', 'long-standing, no soil cracks, no heaving')).toEqual([]);
    expect(readings('lean', 'no wind that day; heaving soil seen')).toContain('failure begun imminent');
  });

  it('says what a fungus does, and gives every reading its source', () => {
    const read = readSigns([{ kind: 'fruiting body', note: 'Ganoderma sp.' }]);
    expect(
      read.some(({ text }) => text.includes('Ganoderma rots root, butt and lower stem (white rot)')),
    ).toBe(true);
    for (const { source } of read) expect(source).not.toBe('');
  });
});

describe('signSpeaksOf', () => {
  it('looks at every place the word stands', () => {
    expect(signSpeaksOf({ kind: 'x', note: 'no ants in 2020. Ants in 2025' }, '\\bants?\\b')).toBe(true);
    expect(signSpeaksOf({ kind: 'x', note: 'no sign of ants' }, '\\bants?\\b')).toBe(false);
  });
});
