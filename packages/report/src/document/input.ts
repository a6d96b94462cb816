/** What a report is made from. */

import type { CaseFile } from '@standfast/casefile';
import type { Assessment } from '@standfast/engine';
import type { Units } from '../units.ts';
import type { ReportWords } from '../words/en.ts';

/** The case as it was recorded. */
export type ReportCase = CaseFile;

export interface ReportOptions {
  units: Units;
  /** Day the report is made, `2026-05-14`; passed in, so that the same input gives the same report. */
  generatedOn: string;
  /** What the assessor concludes, in their own words; printed beside what the figures suggest, never instead. */
  conclusion?: string;
  /** Fingerprint of the case attached to the report, SHA-256 in hexadecimal; printed in the annex. */
  caseSha256?: string;
  /** Another language, or a firm's own wording. Default English. */
  words?: ReportWords;
}

export interface ReportInput {
  assessment: Assessment;
  caseFile: ReportCase;
  options: ReportOptions;
}
