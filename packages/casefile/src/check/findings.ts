/**
 * What a check found: faults that stop an assessment, and notices that a reader should see.
 */
import { InputFault, type Notice } from '@standfast/engine';

export interface Findings {
  faults: InputFault[];
  notices: Notice[];
}

export function noFindings(): Findings {
  return { faults: [], notices: [] };
}

/** Adds a fault of `case.json` at a field path such as `sections[0].outline`. */
export function addFault(findings: Findings, path: string, what: string): void {
  findings.faults.push(new InputFault(what, path ? `case.json: ${path}` : 'case.json'));
}

/** Adds a notice about a place such as `sections.s1.drillings.d3`. */
export function addNotice(
  findings: Findings,
  severity: Notice['severity'],
  where: string,
  text: string,
): void {
  findings.notices.push({ severity, where, text });
}
