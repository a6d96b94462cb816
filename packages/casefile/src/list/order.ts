/** The order of a work list, and what of it is due. */
import { RISKS } from '@standfast/engine';
import type { WorkRow } from './workRow.ts';

type Sortable = Pick<WorkRow, 'risk' | 'status' | 'dueOn' | 'label' | 'case'>;

const natural = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/**
 * Place of a row's risk: the greatest first, then assessed cases without a target, last what is not assessed yet. That
 * a case is last says nothing of its tree.
 */
export function riskPlace({ risk, status }: Pick<WorkRow, 'risk' | 'status'>): number {
  if (risk !== null) return RISKS.length - 1 - RISKS.indexOf(risk);
  return status === 'assessed' ? RISKS.length : RISKS.length + 1;
}

/** By risk, then due date (none last), then label as people count (`T2` before `T10`), then where the case is. */
export function byRiskThenDue(a: Sortable, b: Sortable): number {
  return riskPlace(a) - riskPlace(b) || byDue(a, b) || byLabel(a, b);
}

/** By due date, then as `byRiskThenDue`. */
export function byDueThenRisk(a: Sortable, b: Sortable): number {
  return byDue(a, b) || riskPlace(a) - riskPlace(b) || byLabel(a, b);
}

export function byLabel(a: Pick<Sortable, 'label' | 'case'>, b: Pick<Sortable, 'label' | 'case'>): number {
  return natural.compare(a.label ?? a.case, b.label ?? b.case) || (a.case < b.case ? -1 : 1);
}

function byDue(a: Pick<WorkRow, 'dueOn'>, b: Pick<WorkRow, 'dueOn'>): number {
  if (a.dueOn === b.dueOn) return 0;
  if (a.dueOn === null || b.dueOn === null) return a.dueOn === null ? 1 : -1;
  return a.dueOn < b.dueOn ? -1 : 1;
}

/** Whether something was due before this day. */
export function isOverdue({ dueOn }: Pick<WorkRow, 'dueOn'>, today: string): boolean {
  return dueOn !== null && dueOn < today;
}

/** Whether something is due on or before this day. */
export function isDueBy({ dueOn }: Pick<WorkRow, 'dueOn'>, day: string): boolean {
  return dueOn !== null && dueOn <= day;
}
