/**
 * What a fungus found on the tree says: where it rots and how, so where to drill. Never how strong the wood is: evidence
 * that ties a fungus to failure is scarce and varies by host and climate.
 */
import type { Notice } from '../assessment.ts';
import type { SignInput } from '../case.ts';
import { statusNote } from '../reference/index.ts';
import { fungi } from '../reference/tables.generated.ts';
import { namesFungus } from './signs.ts';

/** One note for each fungus of the table that a sign names, by species or by genus. */
export function fungusNotices(signs: readonly SignInput[]): Notice[] {
  const notices: Notice[] = [];
  for (const row of fungi) {
    const index = signs.findIndex((sign) => namesFungus(sign, row.name));
    if (index < 0) continue;
    notices.push({
      severity: 'note',
      where: `signs[${index}]`,
      text: `${row.name} rots ${row.position} (${row.rot} rot): ${row.note}. It tells where to drill; no strength is computed from the name. Source: ${row.source}${statusNote(row.status)}.`,
    });
  }
  return notices;
}
