import { InputFault } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { LANGUAGES } from './languages.ts';
import { placesOf } from './recognise.ts';
import {
  CASE_PLACES,
  type CasePlaces,
  ownTexts,
  withWording,
  wordingFaults,
  wordingTexts,
} from './wording.ts';

const facts = Object.fromEntries(CASE_PLACES.map((place) => [place, `<${place}>`])) as CasePlaces;

describe.each(Object.entries(LANGUAGES))('the texts a firm may word, in %s', (_, { report }) => {
  it('stand with their places, and can be used as they are', () => {
    const texts = wordingTexts(report);
    for (const { key, text, places } of texts)
      expect([key, placesOf(text)]).toEqual([key, expect.arrayContaining([...places])]);
    const asWritten = Object.fromEntries(texts.map(({ key, text, adds }) => [key, adds ? '' : text]));
    expect(wordingFaults(asWritten)).toEqual([]);
    expect(ownTexts(report, asWritten)).toEqual([]);
    expect(withWording(report, asWritten, facts)).toBe(report);
  });

  it('take the firm’s words with values and facts in their places', () => {
    const wording = {
      'load.intro': '{firm} reckons with {speed} by {code} ({terrain}) for {tree}.',
      'safety.intro': 'Seen on {visitedOn}.',
    };
    const made = withWording(report, wording, facts);
    expect(made.load.intro('EN 1991-1-4', '24 m/s', 'III')).toBe(
      '<firm> reckons with 24 m/s by EN 1991-1-4 (III) for <tree>.',
    );
    expect(made.safety.intro).toBe('Seen on <visitedOn>.');
    expect(made.drillings).toBe(report.drillings);
    expect(ownTexts(report, wording)).toEqual(expect.arrayContaining(['load.intro', 'safety.intro']));
  });

  it('only ever grow where they warn or limit', () => {
    const wording = {
      'limits.items.add': 'One more.\nAnd another for {client}.',
      'scope.text.add': 'Agreed with {client}.',
    };
    const made = withWording(report, wording, facts);
    expect(made.limits.items).toEqual([...report.limits.items, 'One more.', 'And another for <client>.']);
    expect(made.scope.text).toBe(`${report.scope.text} Agreed with <client>.`);
  });
});

describe('a wording that cannot be used', () => {
  it.each([
    ['limits.items', 'No limits.', /added to and not replaced: use "limits\.items\.add"/],
    ['scope.text', 'All is fine.', /added to/],
    ['advice.exceeded', 'Fine.', /added to/],
    ['safty.intro', 'x', /nearest is "safety\.intro"/],
    ['load.intro', 'By {code}.', /leaves out \{speed\}, \{terrain\}/],
    ['safety.intro', 'For {owner}.', /\{owner\}, which stands for nothing here; use \{tree\}, \{client\}/],
    ['safety.intro', 7, /is no text/],
  ])('is told of: %s', (key, text, message) => {
    const [fault, ...others] = wordingFaults({ [key]: text });
    expect(others).toEqual([]);
    expect(fault).toEqual({ key, what: expect.stringMatching(message) });
    expect(() => withWording(LANGUAGES.en.report, { [key]: text as string }, facts)).toThrow(InputFault);
  });

  it('is not one object', () => {
    for (const wording of [null, 'x', ['x']]) expect(wordingFaults(wording)).toHaveLength(1);
  });
});
