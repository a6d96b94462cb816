/** Time between two days as people write them, without a clock. */
const DAYS_A_YEAR = 365.2425;

/** Days from 1 March of year 0 in the Gregorian calendar (the algorithm of Fliegel and Van Flandern 1968, rearranged). */
function dayNumber(iso: string): number | null {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  if (!found) return null;
  const month = Number(found[2]);
  const before = month < 3 ? 1 : 0;
  const y = Number(found[1]) - before;
  const m = month + 12 * before - 3;
  return (
    365 * y +
    Math.floor(y / 4) -
    Math.floor(y / 100) +
    Math.floor(y / 400) +
    Math.floor((153 * m + 2) / 5) +
    Number(found[3])
  );
}

/** Years from one day to another (`2026-05-14`), negative when it is before; null where either is missing or no day. */
export function yearsBetween(earlier: string | undefined, later: string | undefined): number | null {
  const from = earlier === undefined ? null : dayNumber(earlier);
  const to = later === undefined ? null : dayNumber(later);
  return from === null || to === null ? null : (to - from) / DAYS_A_YEAR;
}
