/** What a report is made from. */

import type { CaseFile, ReadonlyCaseBag } from '@standfast/casefile';
import type { Assessment } from '@standfast/engine';
import type { Units } from '../units.ts';

/** The case as it was recorded. */
export type ReportCase = CaseFile;

export interface ReportOptions {
  /** Taken where the case does not say (`report.units`). */
  units: Units;
  /** Day the report is made, `2026-05-14`; passed in, so that the same input gives the same report. */
  generatedOn: string;
  /** What the assessor concludes, in their own words; printed beside what the figures suggest, never instead. */
  conclusion?: string;
  /** Fingerprint of the case attached to the report, SHA-256 in hexadecimal; printed in the annex. */
  caseSha256?: string;
  /** SHA-256 of the case's pictures by path, in hexadecimal; printed under the photos. */
  fingerprints?: ReadonlyMap<string, string>;
}

export interface ReportInput {
  assessment: Assessment;
  caseFile: ReportCase;
  options: ReportOptions;
  /** The case's files: logo, signature and photos are printed from them. */
  files?: ReadonlyCaseBag;
}
