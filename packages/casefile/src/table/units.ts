/** Units of tables, exact by definition (the inch is 25.4 mm by the agreement of 1959). */
import type { DepthUnit, TableColumn } from './types.ts';

export const MM_PER: Record<DepthUnit, number> = { mm: 1, cm: 10, m: 1000, inch: 25.4 };

/** What a reading in a resistance column is multiplied by to give percent of full scale. */
export function percentPer(column: Extract<TableColumn, { role: 'resistance' }>): number {
  if (column.unit === 'counts') return 100 / column.fullScale;
  return column.unit === 'fraction' ? 100 : 1;
}
