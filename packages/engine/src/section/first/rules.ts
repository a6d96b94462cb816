/** The rules of a first drilling, from drilling-rules.csv: the number in each, its words and where it is from. */
import { statusNote } from '../../reference/index.ts';
import { type DrillingRulesRow, drillingRules } from '../../reference/tables.generated.ts';

const byName = new Map(drillingRules.map((row) => [row.name, row]));

function rule(name: string): Readonly<DrillingRulesRow> {
  const row = byName.get(name);
  if (!row) throw new Error(`no rule named "${name}" in drilling-rules.csv`);
  return row;
}

/** The number of a rule. */
export function ruleValue(name: string): number {
  const { value } = rule(name);
  if (value === undefined) throw new Error(`the rule "${name}" in drilling-rules.csv has no number`);
  return value;
}

/** A rule as it is shown. */
export function ruleInWords(name: string): { text: string; source: string } {
  const { text, source, status } = rule(name);
  return { text, source: source + statusNote(status) };
}
