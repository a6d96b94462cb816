/**
 * What the assessor says of the decision, as edits of the case: a word for one suggestion, its reason, all suggestions
 * at once; and which recorded judgement counts for which target.
 */
import {
  type CaseFile,
  CONSEQUENCES,
  FAILURE_LIKELIHOODS,
  IMPACT_LIKELIHOODS,
  setDecisionFields,
  setTargetJudgement,
} from '@standfast/casefile';
import type { DecisionAssessment, TargetRisk } from '@standfast/engine';
import { valueAt } from './fieldPath.ts';

export const JUDGED_WORDS = {
  likelihoodOfFailure: FAILURE_LIKELIHOODS,
  likelihoodOfImpact: IMPACT_LIKELIHOODS,
  consequences: CONSEQUENCES,
} as const;

export type JudgedField = keyof typeof JUDGED_WORDS;

/** What a judgement is on: the whole tree, or one row of the targets' risks. */
export type Subject = 'tree' | Pick<TargetRisk, 'target' | 'part'>;

export interface Said {
  value: string;
  reason: string;
}

/** Place of the recorded judgement that counts for a target and part, by the engine's own rule; -1 for none. */
function indexFor({ decision }: CaseFile, { target, part }: Exclude<Subject, 'tree'>): number {
  return (decision?.byTarget ?? []).findIndex(
    (each) => each.target === target && (each.partOfTree === undefined || each.partOfTree === part),
  );
}

/** Path of a judgement in the case; null where none is recorded that could hold it. */
export function judgementPath(caseFile: CaseFile, subject: Subject, field: JudgedField): string | null {
  if (subject === 'tree') return `decision.${field}`;
  const index = indexFor(caseFile, subject);
  return index < 0 ? null : `decision.byTarget.${index}.${field}`;
}

/** What was said, as the case has it now; null for nothing. */
export function saidOf(caseFile: CaseFile, subject: Subject, field: JudgedField): Said | null {
  const path = judgementPath(caseFile, subject, field);
  const value = path === null ? undefined : valueAt(caseFile, `${path}.value`);
  if (typeof value !== 'string') return null;
  const reason = valueAt(caseFile, `${path}.reason`);
  return { value, reason: typeof reason === 'string' ? reason : '' };
}

/** Who decides and when, unless it was written already. */
function signed(caseFile: CaseFile, today: string): CaseFile {
  const by = caseFile.decision?.by ?? caseFile.assessor?.name;
  return setDecisionFields(caseFile, {
    ...(by === undefined ? {} : { by }),
    on: caseFile.decision?.on ?? today,
  });
}

/** Says a word; its reason is kept. Null takes the judgement back. */
export function judge(
  caseFile: CaseFile,
  subject: Subject,
  field: JudgedField,
  word: string | null,
  today: string,
): CaseFile {
  const reason = saidOf(caseFile, subject, field)?.reason;
  const said = word === null ? undefined : { value: word, ...(reason ? { reason } : {}) };
  // The words come from the field's own list, which the types cannot follow through the name of the field.
  const fields = { [field]: said } as Parameters<typeof setTargetJudgement>[3];
  if (subject === 'tree') {
    const after = setDecisionFields(caseFile, fields as Parameters<typeof setDecisionFields>[1]);
    return word === null ? after : signed(after, today);
  }
  const index = indexFor(caseFile, subject);
  const part = index < 0 ? subject.part : caseFile.decision?.byTarget?.[index]?.partOfTree;
  const after = setTargetJudgement(caseFile, subject.target, part, fields);
  return word === null ? after : signed(after, today);
}

/** One suggestion that waits for the assessor's word. */
export interface Open {
  subject: Subject;
  field: JudgedField;
  suggested: string;
}

/** Every suggestion on which nothing was said yet. The whole tree's likelihood is asked once, not for each target. */
export function openSuggestions(caseFile: CaseFile, decision: DecisionAssessment): Open[] {
  const all: Open[] = [
    { subject: 'tree', field: 'likelihoodOfFailure', suggested: decision.likelihoodOfFailure.suggested },
    ...decision.targets.flatMap((row) => {
      const { target, part } = row;
      const fields: JudgedField[] = [
        ...(part === 'limb' ? ['likelihoodOfFailure' as const] : []),
        'likelihoodOfImpact',
        'consequences',
      ];
      return fields.map((field) => ({ subject: { target, part }, field, suggested: row[field].suggested }));
    }),
  ];
  return all.filter(({ subject, field }) => saidOf(caseFile, subject, field) === null);
}

/** Confirms every suggestion that waits. */
export function confirmAll(caseFile: CaseFile, decision: DecisionAssessment, today: string): CaseFile {
  return openSuggestions(caseFile, decision).reduce(
    (now, { subject, field, suggested }) => judge(now, subject, field, suggested, today),
    caseFile,
  );
}
