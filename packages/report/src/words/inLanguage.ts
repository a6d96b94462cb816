/** An assessment with its sentences in the language that is spoken. Numbers, ids and the words of scales stay. */
import type { Assessment } from '@standfast/engine';
import { LANGUAGES } from './languages.ts';
import { type OnMissing, said, saidSource, signSaid } from './said.ts';
import { language } from './spoken.ts';

/** Where prose stands: the nearest named field above, and the field. */
const PROSE = new Set([
  'criteria.name',
  'criteria.note',
  'drillings.warnings',
  'drillings.why',
  'values.name',
  'safety.anchorageBasis',
  'nextDrilling.why',
  'firstDrillings.why',
  'firstDrillings.notes',
  'rules.text',
  'notices.text',
  'decision.timeFrameBasis',
  'decision.likelihoodReasons',
  'decision.standing',
  'decision.reasons',
  'chance.basis',
  'signs.text',
  'targets.basis',
  'options.what',
  'options.why',
  'options.limits',
  'leastPruning.text',
  'reinspection.why',
  'reinspection.sooner',
  'felled.notes',
]);

/** @param missing called with each sentence that the language has no words for */
export function inLanguage(assessment: Assessment, missing?: OnMissing): Assessment {
  if (language() === LANGUAGES.en) return assessment;
  return walk(assessment, '', '', missing) as Assessment;
}

function walk(value: unknown, above: string, field: string, missing?: OnMissing): unknown {
  if (typeof value === 'string') return word(value, above, field, missing);
  if (Array.isArray(value)) return value.map((one) => walk(one, above, field, missing));
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, walk(one, field, key, missing)]));
}

function word(text: string, above: string, field: string, missing?: OnMissing): string {
  if (field === 'sources' || (field === 'source' && above !== 'felled')) return saidSource(text);
  if (above === 'signs' && field === 'sign') return signSaid(text);
  // A species' own name has no other words.
  if (above === 'wood' && field === 'matched') return said(text);
  return PROSE.has(`${above}.${field}`) ? said(text, missing) : text;
}
