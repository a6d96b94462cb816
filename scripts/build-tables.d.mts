/** How a row of a reference table is known, with what each word means. */
export const STATUSES: Record<string, string>;

/** Reads one table; throws with file and line for a row without a source or a number that is none. */
export function readTable(
  file: string,
  text: string,
): {
  columns: { name: string; property: string; kind: 'text' | 'number' | 'number?' }[];
  rows: (Record<string, string | number> & { source: string; status: string })[];
};

/** The typed module for tables given as [file name, text] pairs, in any order. */
export function tablesModule(files: readonly [string, string][]): string;

/** Reads a folder's tables and writes the module when it differs; returns how many tables there are. */
export function buildTables(folder: string, target: string): number;
