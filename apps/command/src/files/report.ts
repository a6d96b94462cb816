/** The report of an assessment, as files. */
import type { CaseFile, ReadonlyCaseBag } from '@standfast/casefile';
import type { Assessment } from '@standfast/engine';
import { provenPdf, reportDocument, toHtml, type Units } from '@standfast/report';
import { loadFonts } from '@standfast/report/node';

export interface ReportWanted {
  assessment: Assessment;
  caseFile: CaseFile;
  /** The case's own files, which travel inside the PDF. */
  bag: ReadonlyCaseBag;
  units: Units;
  /** Day the report is made, `2026-05-14`. */
  generatedOn: string;
}

export async function pdfReport(wanted: ReportWanted): Promise<Uint8Array> {
  const { assessment, caseFile, bag, units, generatedOn } = wanted;
  const options = { units, generatedOn };
  return provenPdf({ assessment, caseFile, options, bag }, { fonts: await loadFonts(import.meta.url) });
}

export async function htmlReport(wanted: ReportWanted): Promise<Uint8Array> {
  return new TextEncoder().encode(toHtml(documentOf(wanted), { fonts: await loadFonts(import.meta.url) }));
}

function documentOf({ assessment, caseFile, units, generatedOn }: ReportWanted) {
  return reportDocument({ assessment, caseFile, options: { units, generatedOn } });
}
