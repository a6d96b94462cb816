/** The report of an assessment, as files. */
import type { CaseFile } from '@standfast/casefile';
import type { Assessment } from '@standfast/engine';
import { reportDocument, toHtml, toPdf, type Units } from '@standfast/report';
import { loadFonts } from '@standfast/report/node';

export interface ReportWanted {
  assessment: Assessment;
  caseFile: CaseFile;
  units: Units;
  /** Day the report is made, `2026-05-14`. */
  generatedOn: string;
}

export async function pdfReport(wanted: ReportWanted): Promise<Uint8Array> {
  return toPdf(documentOf(wanted), { fonts: await loadFonts(import.meta.url) });
}

export async function htmlReport(wanted: ReportWanted): Promise<Uint8Array> {
  return new TextEncoder().encode(toHtml(documentOf(wanted), { fonts: await loadFonts(import.meta.url) }));
}

function documentOf({ assessment, caseFile, units, generatedOn }: ReportWanted) {
  return reportDocument({ assessment, caseFile, options: { units, generatedOn } });
}
