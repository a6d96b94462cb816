/** The report, off the page's thread: its fonts and pages are heavy. */

import regularUrl from '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url';
import semiboldUrl from '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf?url';
import headingUrl from '@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf?url';
import { bagFromZip, type CaseFile, openCase } from '@standfast/casefile';
import type { Assessment } from '@standfast/engine';
import { pdfWithCase, type ReportFonts, reportDocument, toHtml, type Units } from '@standfast/report';
import { expose, transfer } from 'comlink';

export interface ReportJob {
  assessment: Assessment;
  caseFile: CaseFile;
  units: Units;
  /** The day, `2026-05-14`. */
  generatedOn: string;
}

async function fetched(url: string): Promise<Uint8Array> {
  const answer = await fetch(new URL(url, self.location.href));
  if (!answer.ok) throw new Error(`The report's letters could not be loaded (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}

let loading: Promise<ReportFonts> | null = null;

/** The fonts, once; a failed attempt is made again the next time. */
function fonts(): Promise<ReportFonts> {
  loading ??= Promise.all([regularUrl, semiboldUrl, headingUrl].map(fetched))
    .then(([regular, semibold, heading]) => ({
      regular: regular!,
      semibold: semibold!,
      heading: heading!,
    }))
    .catch((thrown: unknown) => {
      loading = null;
      throw thrown;
    });
  return loading;
}

function inputOf({ assessment, caseFile, units, generatedOn }: ReportJob) {
  const conclusion = caseFile.notes?.trim();
  return { assessment, caseFile, options: { units, generatedOn, ...(conclusion ? { conclusion } : {}) } };
}

const api = {
  async html(job: ReportJob): Promise<string> {
    return toHtml(reportDocument(inputOf(job)), { fonts: await fonts() });
  },
  /**
   * The PDF, with the whole case and its figures inside it, so that it can be verified. What is noticed on opening the
   * case is read from the very case that goes along, as a verifier will read it.
   */
  async pdf(job: ReportJob, caseZip: Uint8Array): Promise<Uint8Array> {
    const { caseFile, notices } = openCase(bagFromZip(caseZip, 'case.zip'));
    const assessment = { ...job.assessment, notices: [...notices, ...job.assessment.notices] };
    const input = inputOf({ ...job, caseFile, assessment });
    const bytes = await pdfWithCase(input, caseZip, await fonts());
    return transfer(bytes, [bytes.buffer]);
  },
};

export type ReportsApi = typeof api;

expose(api);
