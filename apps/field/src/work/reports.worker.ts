/** The report, off the page's thread: its fonts and pages are heavy. */

import regularUrl from '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url';
import semiboldUrl from '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf?url';
import headingUrl from '@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf?url';
import { bagFromZip, type CaseFile, openCase, zipOfBag } from '@standfast/casefile';
import { type Assessment, InputFault } from '@standfast/engine';
import {
  caseInReport,
  htmlWithCase,
  type Passage,
  passagesOf,
  pdfWithCase,
  type ReportFonts,
  reducePhotos,
  reportDocument,
  toHtml,
  type Units,
  type Verification,
  verifyReport,
  withEvidence,
} from '@standfast/report';
import { expose, transfer } from 'comlink';
import { shrinkPhoto } from './shrinkPhoto.ts';

export interface ReportJob {
  assessment: Assessment;
  caseFile: CaseFile;
  units: Units;
  /** The day, `2026-05-14`. */
  generatedOn: string;
}

/** What came of verifying a report, or why it could not be. */
export type VerifyOutcome = { ok: true; found: Verification } | { ok: false; message: string };

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

/** The report as it will read, with its passages. */
export interface ReportPreview {
  html: string;
  passages: Passage[];
}

/**
 * The case that travels inside the report, its photos small enough. What is noticed on opening it is read from that very case, as
 * a verifier will read it.
 */
async function inside(job: ReportJob, caseZip: Uint8Array) {
  const whole = bagFromZip(caseZip, 'case.zip');
  const { bag } = await reducePhotos(openCase(whole).caseFile, whole, shrinkPhoto);
  const zip = bag === whole ? caseZip : zipOfBag(bag);
  const { caseFile, notices } = openCase(bag);
  const assessment = { ...job.assessment, notices: [...notices, ...job.assessment.notices] };
  return { input: inputOf({ ...job, caseFile, assessment }), zip };
}

const api = {
  /** As it will read, with the pictures handed in; without the case inside. */
  async preview(job: ReportJob, pictures: ReadonlyMap<string, Uint8Array>): Promise<ReportPreview> {
    const report = reportDocument(await withEvidence(inputOf(job), pictures));
    return { html: toHtml(report, { fonts: await fonts() }), passages: passagesOf(report) };
  },
  /** The HTML file, with the whole case and its figures inside it, so that it can be verified. */
  async html(job: ReportJob, caseZip: Uint8Array): Promise<string> {
    const { input, zip } = await inside(job, caseZip);
    return htmlWithCase(input, zip, await fonts());
  },
  /** The PDF, with the same inside. */
  async pdf(job: ReportJob, caseZip: Uint8Array): Promise<Uint8Array> {
    const { input, zip } = await inside(job, caseZip);
    const bytes = await pdfWithCase(input, zip, await fonts());
    return transfer(bytes, [bytes.buffer]);
  },
  /** Recomputes a report from the case inside it, as `standfast verify` does. */
  async verify(bytes: Uint8Array, name: string): Promise<VerifyOutcome> {
    try {
      return { ok: true, found: await verifyReport(bytes, name, { fonts: await fonts() }) };
    } catch (thrown) {
      if (thrown instanceof InputFault) return { ok: false, message: thrown.what };
      return { ok: false, message: thrown instanceof Error ? thrown.message : String(thrown) };
    }
  },
  /** The case inside a report, as a zip; null where there is none. */
  caseInside(bytes: Uint8Array, name: string): Uint8Array | null {
    try {
      return caseInReport(bytes, name);
    } catch {
      return null;
    }
  },
};

export type ReportsApi = typeof api;

expose(api);
