/**
 * Which rows of the wood tables stand for a tree: its species', its genus's, those of its kind, or all.
 */
import { dragGroupFor } from './drag.ts';
import { readName } from './names.ts';
import {
  type WoodCompressionRow,
  type WoodGreenRow,
  woodCompression,
  woodGreen,
} from './tables.generated.ts';

export type WoodRow = Readonly<WoodGreenRow>;

/** What was found for a name. */
export interface WoodMatch {
  /** `quoted`: no row in the first table, but the genus stands in the second catalogue. */
  match: 'species' | 'genus' | 'quoted' | 'kind' | 'none';
  rows: readonly WoodRow[];
  /** What the values stand for, or null when they are those of trees at large. */
  matched: string | null;
  /** Standard deviation of ln(strength) from not knowing the species. */
  logSd: number;
  genus: string | null;
  /** The second catalogue's row for the species or its genus. */
  second: Readonly<WoodCompressionRow> | null;
}

/** Least spread taken between a genus's mean and an unlisted species of it (ln): genera with five rows or more show 0.07 to 0.25. */
const LEAST_GENUS_LOG_SD = 0.15;

export const genusOf = (row: WoodRow) => row.scientific.split(' ')[0]!;

export function geometricMean(values: readonly number[]): number {
  return Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);
}

/** Standard deviation of ln(compression strength) among rows, 0 for one. */
function spreadAmong(rows: readonly WoodRow[]): number {
  if (rows.length < 2) return 0;
  const logs = rows.map((row) => Math.log(row.compParKpa));
  const mean = logs.reduce((sum, value) => sum + value, 0) / logs.length;
  return Math.sqrt(logs.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (logs.length - 1));
}

/** The rows that stand for a tree by its name as written. */
export function matchWood(species: string): WoodMatch {
  const name = readName(species);
  if (!name) {
    return {
      match: 'none',
      rows: woodGreen,
      matched: null,
      logSd: spreadAmong(woodGreen),
      genus: null,
      second: null,
    };
  }
  const { genus, binomial } = name;
  const second =
    woodCompression.find((row) => row.scientific === binomial) ??
    woodCompression.find((row) => row.scientific === genus) ??
    null;
  const own = woodGreen.filter((row) => row.scientific === binomial);
  if (own.length > 0) {
    // Where a species has two rows (old and young growth) the weaker one: planted trees grow fast.
    const weakest = own.reduce((a, b) => (b.compParKpa < a.compParKpa ? b : a));
    return { match: 'species', rows: [weakest], matched: weakest.scientific, logSd: 0, genus, second };
  }
  const kin = woodGreen.filter((row) => genusOf(row) === genus);
  if (kin.length > 0) {
    const matched = `${genus} (mean of ${kin.length})`;
    return {
      match: 'genus',
      rows: kin,
      matched,
      logSd: Math.max(LEAST_GENUS_LOG_SD, spreadAmong(kin)),
      genus,
      second,
    };
  }
  const kind = dragGroupFor(genus).kind;
  const alike = woodGreen.filter((row) => dragGroupFor(genusOf(row)).kind === kind);
  const wide = { rows: alike, logSd: spreadAmong(alike), genus, second };
  return second
    ? { match: 'quoted', matched: `${second.scientific} (second catalogue)`, ...wide }
    : { match: 'kind', matched: null, ...wide };
}
