import { type CaseFile, newCase } from '@standfast/casefile';
import { sampleAssessment } from '@standfast/report';
import { describe, expect, it } from 'vitest';
import { confirmAll, judge, judgementPath, openSuggestions, saidOf } from './judgements.ts';

const TODAY = '2026-06-18';
const { decision } = sampleAssessment();
const row = decision.targets[0]!;
const caseFile: CaseFile = {
  ...newCase(),
  assessor: { name: 'A. Vane' },
  targets: decision.targets.map(({ target }) => ({ what: target })),
};

describe('the assessor’s word', () => {
  it('is kept with its reason, who said it and when', () => {
    const once = judge(caseFile, 'tree', 'likelihoodOfFailure', 'probable', TODAY);
    expect(once.decision).toEqual({
      likelihoodOfFailure: { value: 'probable' },
      by: 'A. Vane',
      on: TODAY,
    });
    const reasoned: CaseFile = {
      ...once,
      decision: { ...once.decision, likelihoodOfFailure: { value: 'probable', reason: 'Soil moved.' } },
    };
    const again = judge(reasoned, 'tree', 'likelihoodOfFailure', 'imminent', '2026-07-01');
    expect(saidOf(again, 'tree', 'likelihoodOfFailure')).toEqual({
      value: 'imminent',
      reason: 'Soil moved.',
    });
    expect(again.decision?.on).toBe(TODAY);
  });

  it('on a target stands with that target and part', () => {
    const said = judge(caseFile, row, 'consequences', 'minor', TODAY);
    expect(judgementPath(said, row, 'consequences')).toBe('decision.byTarget.0.consequences');
    expect(said.decision?.byTarget).toEqual([
      { target: row.target, partOfTree: row.part, consequences: { value: 'minor' } },
    ]);
    const other = {
      target: row.target,
      part: row.part === 'limb' ? ('whole tree' as const) : ('limb' as const),
    };
    expect(saidOf(said, other, 'consequences')).toBeNull();
    const back = judge(said, row, 'consequences', null, TODAY);
    expect(back.decision?.byTarget).toBeUndefined();
  });

  it('changes a judgement that was recorded for all parts where that one counts', () => {
    const forAll: CaseFile = {
      ...caseFile,
      decision: { byTarget: [{ target: row.target, consequences: { value: 'severe' } }] },
    };
    const said = judge(forAll, row, 'consequences', 'minor', TODAY);
    expect(said.decision?.byTarget).toEqual([{ target: row.target, consequences: { value: 'minor' } }]);
  });

  it('can confirm every suggestion at once, and leaves what was said', () => {
    const said = judge(caseFile, row, 'consequences', 'negligible', TODAY);
    const all = confirmAll(said, decision, TODAY);
    expect(openSuggestions(all, decision)).toEqual([]);
    expect(saidOf(all, row, 'consequences')?.value).toBe('negligible');
    expect(saidOf(all, row, 'likelihoodOfImpact')?.value).toBe(row.likelihoodOfImpact.suggested);
    expect(saidOf(all, 'tree', 'likelihoodOfFailure')?.value).toBe(decision.likelihoodOfFailure.suggested);
  });
});
