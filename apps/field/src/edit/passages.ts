/** Edits of what the assessor struck and added in the report. */
import type { CaseAddedText, CaseFile, CaseReport } from '@standfast/casefile';

function withReport(caseFile: CaseFile, change: (report: CaseReport) => CaseReport): CaseFile {
  const report = Object.fromEntries(
    Object.entries(change(caseFile.report ?? {})).filter(
      ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
    ),
  ) as CaseReport;
  const { report: _before, ...rest } = caseFile;
  return Object.keys(report).length > 0 ? { ...rest, report } : rest;
}

/** Strikes a passage, or lets it stand again. */
export function strikePassage(caseFile: CaseFile, key: string, struck: boolean): CaseFile {
  return withReport(caseFile, (report) => {
    const others = (report.struck ?? []).filter((one) => one !== key);
    return { ...report, struck: struck ? [...others, key] : others };
  });
}

/** Adds text after a passage. */
export function addText(caseFile: CaseFile, added: CaseAddedText): CaseFile {
  return withReport(caseFile, (report) => ({ ...report, added: [...(report.added ?? []), added] }));
}

/** Takes an addition out again. */
export function removeText(caseFile: CaseFile, index: number): CaseFile {
  return withReport(caseFile, (report) => ({
    ...report,
    added: (report.added ?? []).filter((_, i) => i !== index),
  }));
}
