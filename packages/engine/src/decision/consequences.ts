/** Consequences taken where the assessor stated none, by what the target is (target-kinds.csv). */
import type { PartOfTree, TargetInput } from '../case.ts';
import { statusNote } from '../reference/index.ts';
import { targetKinds } from '../reference/tables.generated.ts';
import { CONSEQUENCES, type Consequences } from './words.ts';

/** The suggested consequences, and why. A target of no known kind is taken as severe (tree) or significant (limb). */
export function consequencesOf(
  target: TargetInput,
  part: PartOfTree,
): { suggested: Consequences; basis: string } {
  if (target.consequence) {
    return {
      suggested: target.consequence,
      basis: `The consequences were recorded as ${target.consequence}.`,
    };
  }
  const row = targetKinds.find((each) => new RegExp(`\\b(${each.pattern})`, 'i').test(target.what));
  const word = row
    ? part === 'limb'
      ? row.limb
      : row.wholeTree
    : part === 'limb'
      ? 'significant'
      : 'severe';
  const suggested = CONSEQUENCES.find((each) => each === word);
  if (!suggested) throw new Error(`target-kinds.csv: "${word}" is no consequence`);
  return {
    suggested,
    basis: row
      ? `The consequences were not stated; taken as ${suggested} for ${row.meaning} (${row.source}${statusNote(row.status)}).`
      : `The consequences were not stated and the target is of no kind known here; taken as ${suggested}, on the safe side.`,
  };
}
