/** By when something is due, counted in months from the visit. */
import { type Context, longDate } from './context.ts';

/** The day so many months on, `2026-05-14`; the last of the month where it has no such day. Null for no date. */
export function monthsOn(date: string, months: number): string | null {
  const found = /^(\d{4})-(\d{2})-(\d{2})/.exec(date);
  if (!found) return null;
  const [year, month, day] = [Number(found[1]), Number(found[2]) - 1 + months, Number(found[3])];
  const lastDay = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
  return new Date(Date.UTC(year, month, Math.min(day, lastDay))).toISOString().slice(0, 10);
}

/** `at once`, `by 18 September 2026`, or `within 3 months of the visit` where its day was not recorded. */
export function dueInWords({ c, w }: Context, months: number): string {
  if (months === 0) return w.options.atOnce;
  const day = monthsOn(c.visitedOn ?? '', months);
  return day === null ? w.options.within(months) : w.options.by(longDate(day, w.months));
}
