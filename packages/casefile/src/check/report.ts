/** How the report is to read: what can be printed, and signatures and additions that say who and when. */
import type { CaseFile } from '../schema/schema.ts';
import { addFault, addNotice, type Findings } from './findings.ts';

/** Lines of a letterhead that fit above the title. */
const MOST_LETTERHEAD_LINES = 6;
const LONGEST_LETTERHEAD_LINE = 160;
/** Characters of one addition: some pages. */
const LONGEST_ADDITION = 20_000;

export function checkReport(findings: Findings, { report, visitedOn, assessor }: CaseFile): void {
  if (report === undefined) return;
  const lines = report.letterhead?.lines ?? [];
  if (lines.length > MOST_LETTERHEAD_LINES)
    addFault(
      findings,
      'report.letterhead.lines',
      `has ${lines.length} lines: at most ${MOST_LETTERHEAD_LINES} fit above the report's title`,
    );
  lines.forEach((line, i) => {
    if (line.length > LONGEST_LETTERHEAD_LINE)
      addFault(
        findings,
        `report.letterhead.lines[${i}]`,
        `has ${line.length} characters: at most ${LONGEST_LETTERHEAD_LINE} fit on a line`,
      );
  });
  const { signature } = report;
  if (signature?.signedOn !== undefined && visitedOn !== undefined && signature.signedOn < visitedOn)
    addNotice(
      findings,
      'caution',
      'report.signature.signedOn',
      `the report is signed on ${signature.signedOn}, before the visit on ${visitedOn}: is the date right?`,
    );
  (report.added ?? []).forEach(({ text, by }, i) => {
    if (text.length > LONGEST_ADDITION)
      addFault(
        findings,
        `report.added[${i}].text`,
        `has ${text.length} characters: at most ${LONGEST_ADDITION} can be added in one place`,
      );
    if (by === undefined && assessor?.name === undefined)
      addNotice(
        findings,
        'caution',
        `report.added[${i}]`,
        'text was added to the report without saying by whom: name the assessor.',
      );
  });
}
