import { describe, expect, it } from 'vitest';
import { bearing, fixed, measure, roundNumber, span } from '../units.ts';
import { said, saidSource, signSaid } from './said.ts';
import { figureWords, speaking, term } from './spoken.ts';

const inFrench = <Result>(make: () => Result) => speaking('fr', make);

describe('what the engine says, in French', () => {
  it('keeps values, and writes numbers as French does', () => {
    expect(
      inFrench(() =>
        said(
          'The critical gust at its lower 5 % point, 26.5 m/s, does not lie above the 50-year gust, 38 m/s.',
        ),
      ),
    ).toBe(
      'La rafale critique à son point inférieur de 5 %, 26,5 m/s, ne dépasse pas la rafale à 50 ans, 38 m/s.',
    );
  });

  it('knows sentences that follow one another, and sentences within sentences', () => {
    expect(
      inFrench(() =>
        said(
          'No opening was recorded. Section s1 at 90 degrees: No section was described, so there is nowhere to drill. Describe a section first.',
        ),
      ),
    ).toBe(
      'Aucune ouverture n’a été relevée. Section s1 à 90 degrés : Aucune section n’a été décrite : il n’y a où forer. Décrivez d’abord une section.',
    );
  });

  it('leaves a person’s own words alone, and names what it does not know', () => {
    const missing: string[] = [];
    const text = inFrench(() =>
      said(
        'How often the old bench, oak was not stated is used was not stated: it is taken as frequent.',
        (one) => missing.push(one),
      ),
    );
    expect(text).toContain('the old bench, oak');
    expect(missing).toEqual([]);
    expect(inFrench(() => said('A sentence nobody foresaw.', (one) => missing.push(one)))).toBe(
      'A sentence nobody foresaw.',
    );
    expect(missing).toEqual(['A sentence nobody foresaw.']);
    expect(inFrench(() => signSaid('fruiting body (north side, low)'))).toBe('carpophore (north side, low)');
  });

  it('keeps citations and says how they are known', () => {
    expect(
      inFrench(() => saidSource('Smiley, Matheny and Lilly 2017 Tree Risk Assessment (from memory)')),
    ).toBe('Smiley, Matheny et Lilly 2017 Tree Risk Assessment (de mémoire)');
  });

  it('is English outside, whatever went wrong within', () => {
    expect(() =>
      inFrench(() => {
        throw new Error('within');
      }),
    ).toThrow('within');
    expect([said('No opening was recorded.'), fixed(1.5, 1), bearing(90), figureWords.gust]).toEqual([
      'No opening was recorded.',
      '1.5',
      '90° (east)',
      'gust',
    ]);
  });
});

it('writes numbers, ranges, directions and terms in French', () => {
  expect(
    inFrench(() => [
      fixed(-12345.678, 2),
      roundNumber(-0.5),
      measure(12.34, 'speedMs', 'metric'),
      span(100, 254, 'lengthMm', 'us'),
      bearing(270),
      term('risk', 'high'),
      term('impact', 'high'),
      figureWords.gust,
    ]),
  ).toEqual([
    '−12\u00a0345,68',
    '−0,5',
    '12,3\u00a0m/s',
    '3,9 à 10,0\u00a0in',
    '270° (ouest)',
    'élevé',
    'élevée',
    'rafale',
  ]);
});
