/** The assessor's word on the decision: about targets that are there, and with reasons. */
import type { CaseFile } from '../schema/schema.ts';
import { addNotice, type Findings } from './findings.ts';
import { checkRange, RANGES } from './ranges.ts';

export function checkDecision(findings: Findings, { timeFrameYears, decision, targets }: CaseFile): void {
  checkRange(findings, timeFrameYears, RANGES.timeFrameYears, 'timeFrameYears', 'timeFrameYears');
  const seen = new Set<string>();
  targets.forEach(({ what }, i) => {
    if (seen.has(what) && (decision?.byTarget ?? []).some(({ target }) => target === what)) {
      addNotice(
        findings,
        'caution',
        `targets[${i}]`,
        `two targets are called ${JSON.stringify(what)}: a judgement on that name counts for both.`,
      );
    }
    seen.add(what);
  });
}
