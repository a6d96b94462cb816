import { expect, it } from 'vitest';
import { reportWords } from '../words/en.ts';
import { chanceInWords } from './chance.ts';

it.each([
  [0, 'less than 1 in 200'],
  [0.09, 'about 1 in 11 (9\u00a0%)'],
  [0.5, 'about even (50\u00a0%)'],
  [0.66, 'about 2 in 3 (66\u00a0%)'],
  [0.884, 'about 9 in 10 (88\u00a0%)'],
  [0.999, 'more than 199 in 200'],
])('says a chance of %s as %s', (p, said) => {
  expect(chanceInWords(p, reportWords.chance)).toBe(said);
});
