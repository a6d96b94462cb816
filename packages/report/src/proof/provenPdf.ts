/** The report that proves itself: a PDF with its case and its figures attached. */
import { type ReadonlyCaseBag, zipOfBag } from '@standfast/casefile';
import type { Assessment } from '@standfast/engine';
import type { ReportInput } from '../document/input.ts';
import { reportDocument } from '../document/reportDocument.ts';
import type { ReportFonts } from '../fonts.ts';
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

/**
 * The report as PDF with `case.zip` and `assessment.json` (figures, engine version, seed, draws, report options) attached.
 * Options with words of a firm's own are not carried, so such a report cannot be rebuilt by another.
 */
export async function provenPdf(
  input: ReportInput & { bag: ReadonlyCaseBag },
  { fonts }: { fonts: ReportFonts },
): Promise<Uint8Array> {
  return pdfWithCase(input, zipOfBag(input.bag), fonts);
}

/** As `provenPdf`, from the case as it is zipped. */
export async function pdfWithCase(
  { assessment, caseFile, options }: ReportInput,
  caseZip: Uint8Array,
  fonts: ReportFonts,
): Promise<Uint8Array> {
  const caseSha256 = await sha256(caseZip);
  const { units, generatedOn, conclusion } = options;
  const making: ReportMaking = { units, generatedOn, ...(conclusion ? { conclusion } : {}), caseSha256 };
  return toPdf(reportDocument({ assessment, caseFile, options: { ...options, caseSha256 } }), {
    fonts,
    attachments: [
      {
        name: CASE_ATTACHMENT,
        bytes: caseZip,
        mime: 'application/zip',
        description: 'The case this report was made from, with its traces',
      },
      {
        name: FIGURES_ATTACHMENT,
        bytes: new TextEncoder().encode(
          JSON.stringify({ ...(roundedFigures(assessment) as object), report: making }),
        ),
        mime: 'application/json',
        description: 'The figures of this report, with engine version, seed and number of draws',
      },
    ],
  });
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
