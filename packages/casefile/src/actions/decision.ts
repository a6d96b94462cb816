/** Edits of what the assessor says of the decision and the advice. Setting a field to undefined takes it out. */
import type { CaseAdviceChoice, CaseDecision, CaseFile, CaseTargetJudgement } from '../schema/schema.ts';
import { withFields } from './places.ts';

const emptyGone = <T extends object>(value: T): T | undefined =>
  Object.keys(value).length > 0 ? value : undefined;

/** Sets fields of the decision: the likelihood of failure, who, when, a note. */
export function setDecisionFields(
  caseFile: CaseFile,
  fields: Partial<Omit<CaseDecision, 'byTarget'>>,
): CaseFile {
  const decision: CaseDecision = withFields(caseFile.decision ?? {}, fields);
  return withFields(caseFile, { decision: emptyGone(decision) });
}

/** Sets the judgement on one target, and one part of the tree where it is named; nothing left of it takes it out. */
export function setTargetJudgement(
  caseFile: CaseFile,
  target: string,
  partOfTree: CaseTargetJudgement['partOfTree'],
  fields: Partial<Omit<CaseTargetJudgement, 'target' | 'partOfTree'>>,
): CaseFile {
  const all = caseFile.decision?.byTarget ?? [];
  const at = all.findIndex((each) => each.target === target && each.partOfTree === partOfTree);
  const before: CaseTargetJudgement = all[at] ?? {
    target,
    ...(partOfTree === undefined ? {} : { partOfTree }),
  };
  const after = withFields(before, fields);
  const says = ['likelihoodOfFailure', 'likelihoodOfImpact', 'consequences'].some((name) => name in after);
  const kept = at < 0 ? [...all, after] : all.map((each, i) => (i === at ? after : each));
  const byTarget = says ? kept : kept.filter((each) => each !== after);
  const decision: CaseDecision = withFields(caseFile.decision ?? {}, {
    byTarget: byTarget.length > 0 ? byTarget : undefined,
  });
  return withFields(caseFile, { decision: emptyGone(decision) });
}

/** Sets what client and assessor make of one option of the advice; nothing left of it takes it out. */
export function setAdviceChoice(
  caseFile: CaseFile,
  option: string,
  fields: Partial<Omit<CaseAdviceChoice, 'option'>>,
): CaseFile {
  const all = caseFile.advice ?? [];
  const before = all.find((each) => each.option === option) ?? { option };
  const after = withFields(before, fields);
  const others = all.filter((each) => each.option !== option);
  const advice = Object.keys(after).length > 1 ? [...others, after] : others;
  return withFields(caseFile, { advice: advice.length > 0 ? advice : undefined });
}
