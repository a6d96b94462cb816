/** The report that proves itself: a PDF or an HTML file with its case and its figures inside. */
import { bagFromZip, type ReadonlyCaseBag, zipOfBag } from '@standfast/casefile';
import type { Assessment } from '@standfast/engine';
import type { ReportAttachment } from '../document/blocks.ts';
import type { ReportInput } from '../document/input.ts';
import { reportDocument } from '../document/reportDocument.ts';
import type { ReportFonts } from '../fonts.ts';
import { toHtml } from '../html/toHtml.ts';
import { toPdf } from '../pdf/toPdf.ts';

export const CASE_ATTACHMENT = 'case.zip';
export const FIGURES_ATTACHMENT = 'assessment.json';

/** What else than the case decides how the report reads. Kept in `assessment.json` under `report`. */
export interface ReportMaking {
  units: 'metric' | 'us';
  generatedOn: string;
  conclusion?: string;
  /** SHA-256 of the attached case, in hexadecimal; printed in the annex too. */
  caseSha256: string;
}

/** Digits kept of a figure in `assessment.json`, as on the command line. */
const SIGNIFICANT_DIGITS = 6;
/** Files of a case that are looked at, not read: their fingerprints are printed. */
const PICTURES = /\.(jpe?g|png|heic|webp|gif|tiff?)$/i;

/**
 * The report as PDF with `case.zip` and `assessment.json` (figures, engine version, seed, draws, report options) attached.
 * Language and wording are the case's own, so another rebuilds the report from the case alone.
 */
export async function provenPdf(
  input: ReportInput & { bag: ReadonlyCaseBag },
  { fonts }: { fonts: ReportFonts },
): Promise<Uint8Array> {
  return pdfWithCase(input, zipOfBag(input.bag), fonts);
}

/** The report as an HTML file with the same inside, as links that save them. */
export async function provenHtml(
  input: ReportInput & { bag: ReadonlyCaseBag },
  { fonts }: { fonts: ReportFonts },
): Promise<string> {
  return htmlWithCase(input, zipOfBag(input.bag), fonts);
}

/** As `provenPdf`, from the case as it is zipped. */
export async function pdfWithCase(
  input: ReportInput,
  caseZip: Uint8Array,
  fonts: ReportFonts,
): Promise<Uint8Array> {
  const evident = await withEvidence(input, bagFromZip(caseZip, CASE_ATTACHMENT), caseZip);
  return toPdf(reportDocument(evident), { fonts, attachments: attachmentsOf(evident, caseZip) });
}

/**
 * As `provenHtml`, from the case as it is zipped.
 * @param figures the bytes of `assessment.json` where they are there already, for verifying
 */
export async function htmlWithCase(
  input: ReportInput,
  caseZip: Uint8Array,
  fonts: ReportFonts,
  figures?: Uint8Array,
): Promise<string> {
  const evident = await withEvidence(input, bagFromZip(caseZip, CASE_ATTACHMENT), caseZip);
  return toHtml(reportDocument(evident), { fonts, attachments: attachmentsOf(evident, caseZip, figures) });
}

/** The input with the case's files and their fingerprints, so that pictures are printed; and of the zipped case, if given. */
export async function withEvidence(
  { assessment, caseFile, options }: ReportInput,
  files: ReadonlyCaseBag,
  caseZip?: Uint8Array,
): Promise<ReportInput> {
  const fingerprints = new Map<string, string>();
  for (const [path, bytes] of files)
    if (PICTURES.test(path)) fingerprints.set(path.toLowerCase(), await sha256(bytes));
  return {
    assessment,
    caseFile,
    files,
    options: {
      ...options,
      fingerprints,
      ...(caseZip === undefined ? {} : { caseSha256: await sha256(caseZip) }),
    },
  };
}

function attachmentsOf(
  { assessment, options }: ReportInput,
  caseZip: Uint8Array,
  figures?: Uint8Array,
): ReportAttachment[] {
  const { units, generatedOn, conclusion, caseSha256 = '' } = options;
  const report: ReportMaking = { units, generatedOn, ...(conclusion ? { conclusion } : {}), caseSha256 };
  return [
    {
      name: CASE_ATTACHMENT,
      bytes: caseZip,
      mime: 'application/zip',
      description: 'The case this report was made from, with its traces',
    },
    {
      name: FIGURES_ATTACHMENT,
      bytes:
        figures ??
        new TextEncoder().encode(JSON.stringify({ ...(roundedFigures(assessment) as object), report })),
      mime: 'application/json',
      description: 'The figures of this report, with engine version, seed and number of draws',
    },
  ];
}

export async function sha256(bytes: Uint8Array): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', new Uint8Array(bytes)));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The assessment as JSON has it, numbers to six significant digits. */
export function roundedFigures(assessment: Assessment): unknown {
  return JSON.parse(
    JSON.stringify(assessment, (_, value: unknown) =>
      typeof value === 'number' && !Number.isInteger(value)
        ? Number(value.toPrecision(SIGNIFICANT_DIGITS))
        : value,
    ),
  );
}
