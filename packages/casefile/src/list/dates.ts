/** Days of the calendar as text, `2026-05-14`: reckoned without a clock or a time zone. */

const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * The same day some months on; the last day of the month where it has no such day (31 January + 1 is 28 or 29
 * February). Part months are rounded down, so that a date never comes later than was advised.
 */
export function monthsAfter(day: string, months: number): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  const count = year * 12 + (month - 1) + Math.floor(months);
  const [thatYear, thatMonth] = [Math.floor(count / 12), ((count % 12) + 12) % 12];
  const last = thatMonth === 1 && isLeap(thatYear) ? 29 : DAYS_IN_MONTH[thatMonth]!;
  const two = (value: number) => String(value).padStart(2, '0');
  return `${String(thatYear).padStart(4, '0')}-${two(thatMonth + 1)}-${two(Math.min(date, last))}`;
}

/** Whether a text names a day that there is. */
export function isDay(text: string): boolean {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!found) return false;
  const [year, month, date] = found.slice(1).map(Number) as [number, number, number];
  const last = month === 2 && isLeap(year) ? 29 : (DAYS_IN_MONTH[month - 1] ?? 0);
  return date >= 1 && date <= last;
}

const isLeap = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
