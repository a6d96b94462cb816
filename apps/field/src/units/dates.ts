/** Days as a person reads them. */
import { reportWords } from '@standfast/report';

/** `2026-05-14` as `14 May 2026`; anything else as it is. */
export function dateText(day: string): string {
  const [, year, month, date] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day) ?? [];
  const name = reportWords.months[Number(month) - 1];
  return name === undefined ? day : `${Number(date)} ${name} ${year}`;
}
