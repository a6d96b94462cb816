/** How the list and the map are sorted and filtered: one choice for both, kept while the app is open. */
import {
  byDueThenRisk,
  byLabel,
  byRiskThenDue,
  isDueBy,
  isOverdue,
  monthsAfter,
  type WorkRow,
} from '@standfast/casefile';
import { RISKS, type Risk } from '@standfast/engine';
import { useSyncExternalStore } from 'react';
import type { ListEntry } from '../storage/summaries.ts';

export type RiskFilter = 'any' | Risk | 'no target' | 'not assessed';
export type DueFilter = 'any' | 'overdue' | 'in a month' | 'in a year' | 'none';
export type ListOrder = 'risk' | 'due' | 'label' | 'saved';

export interface ListView {
  search: string;
  risk: RiskFilter;
  due: DueFilter;
  /** Name of the client; empty for any. */
  client: string;
  order: ListOrder;
}

export const WHOLE_LIST: ListView = { search: '', risk: 'any', due: 'any', client: '', order: 'risk' };
export const RISK_FILTERS: readonly RiskFilter[] = [
  'any',
  ...RISKS.toReversed(),
  'no target',
  'not assessed',
];

const listeners = new Set<() => void>();
let view = WHOLE_LIST;

export function changeListView(change: Partial<ListView>) {
  view = { ...view, ...change };
  for (const listener of listeners) listener();
}

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export function useListView(): ListView {
  return useSyncExternalStore(subscribe, () => view);
}

/** Whether anything is left out. */
export function isFiltered({ search, risk, due, client }: ListView): boolean {
  return search.trim() !== '' || risk !== 'any' || due !== 'any' || client !== '';
}

/** The entries that are wanted, in the order that is wanted. */
export function listed(entries: readonly ListEntry[], wanted: ListView, today: string): ListEntry[] {
  const words = folded(wanted.search).split(/\s+/).filter(Boolean);
  const kept = entries.filter(
    ({ row }) =>
      (wanted.risk === 'any' || riskWord(row) === wanted.risk) &&
      isDue(row, wanted.due, today) &&
      (wanted.client === '' || row.client === wanted.client) &&
      (words.length === 0 || hasWords(row, words)),
  );
  if (wanted.order === 'saved') return kept.sort((a, b) => b.savedAt - a.savedAt);
  const order = { risk: byRiskThenDue, due: byDueThenRisk, label: byLabel }[wanted.order];
  return kept.sort((a, b) => order(a.row, b.row));
}

/** The word for a row's risk, where there is none the word for that. */
export function riskWord({ risk, status }: Pick<WorkRow, 'risk' | 'status'>): Exclude<RiskFilter, 'any'> {
  return risk ?? (status === 'assessed' ? 'no target' : 'not assessed');
}

function isDue(row: WorkRow, due: DueFilter, today: string): boolean {
  if (due === 'any') return true;
  if (due === 'none') return row.dueOn === null;
  if (due === 'overdue') return isOverdue(row, today);
  return isDueBy(row, monthsAfter(today, due === 'in a month' ? 1 : 12));
}

function hasWords({ label, species, client, place, advice, riskTarget }: WorkRow, words: string[]): boolean {
  const text = folded([label, species, client, place, advice, riskTarget].join(' '));
  return words.every((word) => text.includes(word));
}

/** Without case and accents, so that what a phone's keyboard gives is found. */
function folded(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}
