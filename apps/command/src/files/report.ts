/** The report of an assessment, as files. */
import {
  type CaseFile,
  type CaseReport,
  type Firm,
  type ReadonlyCaseBag,
  saveCase,
  withFirm,
} from '@standfast/casefile';
import type { Assessment } from '@standfast/engine';
import { provenHtml, provenPdf, reducePhotos, type Units } from '@standfast/report';
import { loadFonts } from '@standfast/report/node';
import { shrinkPhoto } from './shrink.ts';

/** How the report is to read, beside what the case says. */
export interface ReportWishes {
  /** Said on the command line, so it counts before what case and firm say. */
  units?: Units;
  paper?: CaseReport['paper'];
  language?: CaseReport['language'];
  wording?: CaseReport['wording'];
  signedOn?: string;
  /** Fills what the case leaves out. */
  firm?: Firm;
}

/** A case as it travels inside its report. */
export interface CaseToReport {
  caseFile: CaseFile;
  /** The case's own files. */
  bag: ReadonlyCaseBag;
}

/** The case with these wishes written into it, and its photos small enough: the report is made from it alone. */
export async function caseToReport(
  { caseFile, bag }: CaseToReport,
  { units, paper, language, wording, signedOn, firm }: ReportWishes,
): Promise<CaseToReport> {
  let made: CaseToReport = firm ? withFirm(caseFile, bag, firm) : { caseFile, bag };
  if (units ?? paper ?? language ?? wording ?? signedOn) {
    const { report = {} } = made.caseFile;
    const changed: CaseFile = {
      ...made.caseFile,
      report: {
        ...report,
        ...(units ? { units } : {}),
        ...(paper ? { paper } : {}),
        ...(language ? { language } : {}),
        ...(wording ? { wording } : {}),
        ...(signedOn ? { signature: { ...report.signature, signedOn } } : {}),
      },
    };
    made = { caseFile: changed, bag: saveCase(changed, made.bag) };
  }
  return reducePhotos(made.caseFile, made.bag, shrinkPhoto);
}

/** The reports wanted, as bytes. `generatedOn`: day the report is made, `2026-05-14`. */
export async function reportBytes(
  kind: 'pdf' | 'html',
  { caseFile, bag }: CaseToReport,
  assessment: Assessment,
  generatedOn: string,
): Promise<Uint8Array> {
  const input = { assessment, caseFile, bag, options: { units: 'metric' as const, generatedOn } };
  const fonts = { fonts: await loadFonts(import.meta.url) };
  return kind === 'pdf' ? provenPdf(input, fonts) : new TextEncoder().encode(await provenHtml(input, fonts));
}
