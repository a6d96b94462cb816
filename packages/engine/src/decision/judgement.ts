/** What is suggested, beside what the assessor says. */
import type { Judged, Notice } from '../assessment.ts';
import type { JudgementInput } from '../case.ts';
import { InputFault } from '../faults.ts';

/**
 * Puts the assessor's word beside the suggested one. Another word than the suggested counts only with a reason.
 *
 * @param scale the words there are
 * @param where the field, for messages
 * @param notices gets a notice when an override has no reason
 * @throws InputFault for a word that is not on the scale
 */
export function judged<Word extends string>(
  scale: readonly Word[],
  suggested: Word,
  input: JudgementInput<Word> | undefined,
  where: string,
  notices: Notice[],
): Judged<Word> {
  if (!input) return { suggested, assessor: null, reason: null, taken: suggested, standing: 'suggested' };
  if (!scale.includes(input.value)) {
    throw new InputFault(
      `"${String(input.value)}" is not known here; use one of ${scale.join(', ')}.`,
      `${where}.value`,
    );
  }
  const reason = input.reason?.trim() || null;
  if (input.value === suggested) {
    return { suggested, assessor: input.value, reason, taken: suggested, standing: 'confirmed' };
  }
  if (reason === null) {
    notices.push({
      severity: 'serious',
      where,
      text: `The assessor wrote "${input.value}" where "${suggested}" is suggested, without a reason. An override counts only with a reason: the suggestion stands until one is given.`,
    });
    return { suggested, assessor: input.value, reason, taken: suggested, standing: 'override refused' };
  }
  return { suggested, assessor: input.value, reason, taken: input.value, standing: 'overridden' };
}
