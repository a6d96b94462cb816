/**
 * The set words of the trade that stand alone in tables: scales of likelihood, harm and risk, what was recorded from a
 * list. The words themselves are the keys, as the assessment and the case have them.
 */
import { CROWN_SHAPES, SIGN_KINDS } from '@standfast/casefile';
import {
  CONSEQUENCES,
  EVENT_LIKELIHOODS,
  FAILURE_LIKELIHOODS,
  IMPACT_LIKELIHOODS,
  OCCUPANCIES,
  PROTECTIONS,
  RISKS,
} from '@standfast/engine';

function same<Word extends string>(...words: Word[]): Record<Word, string> {
  const table: Partial<Record<Word, string>> = {};
  for (const word of words) table[word] = word;
  return table as Record<Word, string>;
}

export const englishTerms = {
  failure: same(...FAILURE_LIKELIHOODS),
  impact: same(...IMPACT_LIKELIHOODS),
  event: same(...EVENT_LIKELIHOODS),
  consequences: same(...CONSEQUENCES),
  risk: same(...RISKS),
  occupancy: same(...OCCUPANCIES),
  protection: same(...PROTECTIONS),
  priority: same('first', 'advised', 'possible', 'not advised'),
  crown: same(...CROWN_SHAPES),
  sign: same(...SIGN_KINDS),
  unit: same('years', 'months', 'tree heights', 'cm/year', 'in/year', 'degrees', '1/m'),
};

export type Terms = typeof englishTerms;
export type TermScale = keyof Terms;
