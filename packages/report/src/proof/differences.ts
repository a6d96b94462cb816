/** Where two reports differ: figures leaf by leaf, and lines of text. */
export interface FigureDifference {
  /** For example `safety.governing.p50`. */
  where: string;
  inReport: string;
  recomputed: string;
}

export interface PageDifference {
  /** Page of a PDF, or part of an HTML report (its title first, then its chapters), from 1. */
  page: number;
  /** Lines that stand on the page and not on the recomputed one, and the other way round; both empty: drawn otherwise. */
  inReport: string[];
  recomputed: string[];
}

export interface Compared<Difference> {
  compared: number;
  differing: Difference[];
}

/** Figures of two computers may differ in the last of their six digits. */
const RELATIVE_TOLERANCE = 2e-5;

/** Compares leaf by leaf. */
export function compareFigures(
  inReport: unknown,
  recomputed: unknown,
  where = '',
  found: Compared<FigureDifference> = { compared: 0, differing: [] },
): Compared<FigureDifference> {
  if (isBranch(inReport) && isBranch(recomputed)) {
    for (const key of new Set([...Object.keys(inReport), ...Object.keys(recomputed)]))
      compareFigures(inReport[key], recomputed[key], where === '' ? key : `${where}.${key}`, found);
    return found;
  }
  found.compared++;
  const near =
    typeof inReport === 'number' &&
    typeof recomputed === 'number' &&
    Math.abs(inReport - recomputed) <=
      RELATIVE_TOLERANCE * Math.max(Math.abs(inReport), Math.abs(recomputed));
  if (near || inReport === recomputed) return found;
  const shown = (value: unknown) =>
    value === undefined ? 'nothing' : (JSON.stringify(value) ?? '').slice(0, 120);
  found.differing.push({ where, inReport: shown(inReport), recomputed: shown(recomputed) });
  return found;
}

function isBranch(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

/** What each of two texts says that the other does not. */
export function differingLines(
  page: number,
  said: readonly string[],
  should: readonly string[],
): PageDifference {
  return { page, inReport: without(said, should), recomputed: without(should, said) };
}

/** Lines of one list that the other does not have, counting repeats. */
function without(lines: readonly string[], others: readonly string[]): string[] {
  const left = new Map<string, number>();
  for (const line of others) left.set(line, (left.get(line) ?? 0) + 1);
  return lines.filter((line) => {
    const count = left.get(line) ?? 0;
    left.set(line, count - 1);
    return count <= 0;
  });
}

/** A letter more anywhere renumbers the letters of every page: pages that read the same are named only when none reads otherwise. */
export function readingOtherwise(unlike: readonly PageDifference[]): PageDifference[] {
  const reading = unlike.filter((p) => p.inReport.length + p.recomputed.length > 0);
  return reading.length > 0 ? reading : [...unlike];
}
