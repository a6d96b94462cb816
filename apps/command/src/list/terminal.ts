/** A work list on the terminal. */
import { isOverdue, type WorkRow } from '@standfast/casefile';
import { fixed, percent } from '../terminal/numbers.ts';
import { newPage } from '../terminal/page.ts';
import { type Align, shortened } from '../terminal/text.ts';

/** Rows printed at most; the files have all. */
const SHOWN = 200;
/** Reasons told of cases that could not be assessed. */
const FAULTS_SHOWN = 10;
const NARROW = 90;

/**
 * @param rows in the order to print
 * @param total cases there are, with those that are left out for being due later
 */
export function printList(
  rows: readonly WorkRow[],
  total: number,
  due: string | undefined,
  written: string[],
  today = thisDay(),
): void {
  const page = newPage();
  const { width } = page.terminal;
  const assessed = rows.filter(({ status }) => status === 'assessed');
  const failed = rows.filter(({ status }) => status !== 'assessed');
  const overdue = assessed.filter((row) => isOverdue(row, today)).length;
  const cases = (count: number) => `${count.toLocaleString('en')} ${count === 1 ? 'case' : 'cases'}`;
  page.text(
    due === undefined
      ? `${cases(total)}: ${assessed.length} assessed, ${failed.length} not assessed.`
      : `${rows.length} of ${cases(total)} due by ${due}.`,
    'strong',
  );
  if (overdue > 0) page.text(`${overdue} overdue on ${today}.`, 'alarm');
  if (assessed.length > 0) {
    page.gap();
    const wide = width >= NARROW;
    const heads: [string, Align][] = [
      ['risk', 'left'],
      ['due', 'left'],
      ['tree', 'left'],
      ['safety (5 to 95 %)', 'left'],
      ...(wide ? ([['failure', 'left']] as [string, Align][]) : []),
      ['advice', 'left'],
    ];
    const shown = assessed.slice(0, SHOWN);
    const cells = shown.map((row) => [
      `${row.risk ?? 'no target'}${row.riskStanding === 'suggested' ? ' *' : ''}`,
      `${row.dueOn ?? '–'}${isOverdue(row, today) ? ' overdue' : ''}`,
      shortened(row.label ?? row.case, 18),
      `${fixed(row.safetyP50, 2)} (${fixed(row.safetyP05, 2)} to ${fixed(row.safetyP95, 2)})`,
      ...(wide ? [`${row.likelihoodOfFailure} ${chance(row)}`] : []),
    ]);
    const used = heads
      .slice(0, -1)
      .map(([head], i) => Math.max(head.length, ...cells.map((row) => row[i]!.length)))
      .reduce((sum, one) => sum + one + 2, 2);
    page.table(
      heads.map(([head, align]) => ({ head, align })),
      cells.map((row, i) => [...row, shortened(shown[i]!.advice ?? '–', Math.max(8, width - used))]),
    );
    if (assessed.length > SHOWN)
      page.text(`and ${(assessed.length - SHOWN).toLocaleString('en')} more; --csv writes them all`, 'quiet');
    const notes = [
      'Safety is that of the governing mode, with the bounds it lies between nine times in ten.',
    ];
    if (wide) notes.push('Failure: likelihood and the chance of it within the time frame, with bounds.');
    if (assessed.some(({ riskStanding }) => riskStanding === 'suggested'))
      notes.push('* suggested; the assessor has not said a word on it.');
    if (assessed.some(({ invented }) => invented === 'yes'))
      notes.push('There are invented trees among them.');
    page.gap();
    page.text(notes.join(' '), 'quiet');
  }
  if (failed.length > 0) {
    page.heading('Not assessed; that they are last says nothing of their trees');
    for (const row of failed.slice(0, FAULTS_SHOWN))
      page.item('!', `${row.case}${row.label ? `, ${row.label}` : ''}: ${shortened(row.faults ?? '', 240)}`);
    if (failed.length > FAULTS_SHOWN)
      page.text(
        `and ${(failed.length - FAULTS_SHOWN).toLocaleString('en')} more; --csv says why of each`,
        'quiet',
      );
  }
  if (written.length > 0) page.gap();
  for (const file of written) page.text(`Wrote ${file}`);
  page.print();
}

function chance({ chanceOfFailure, chanceP05, chanceP95 }: WorkRow): string {
  if (chanceOfFailure === null || chanceP05 === null || chanceP95 === null) return '';
  return `${percent(chanceOfFailure)} (${percent(chanceP05)} to ${percent(chanceP95)})`;
}

/** This day here, as `2026-05-14`. */
function thisDay(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
