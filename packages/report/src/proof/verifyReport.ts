/** Recomputes a report from the evidence inside it and says, figure by figure and page by page, whether it stands. */
import { bagFromZip, openCase } from '@standfast/casefile';
import { type Assessment, assess, ENGINE_VERSION, InputFault } from '@standfast/engine';
import type { ReportFonts } from '../fonts.ts';
import { textOfPage } from './pageText.ts';
import {
  CASE_ATTACHMENT,
  FIGURES_ATTACHMENT,
  pdfWithCase,
  type ReportMaking,
  roundedFigures,
  sha256,
} from './provenPdf.ts';
import { attachmentsOf, catalogDict, pagesOf, readPdf } from './readPdf.ts';
import { sameDeep } from './samePdf.ts';

export interface FigureDifference {
  /** For example `safety.governing.p50`. */
  where: string;
  inReport: string;
  recomputed: string;
}

export interface PageDifference {
  page: number;
  /** Lines that stand on the page and not on the recomputed one, and the other way round; both empty: drawn otherwise. */
  inReport: string[];
  recomputed: string[];
}

export interface Verification {
  stands: boolean;
  /** Engine that made the report, and the one that recomputed it. */
  madeBy: string;
  recomputedBy: string;
  seed: number;
  draws: number;
  /** Whether the case inside is the one the report was made from, by its fingerprint. */
  caseUnchanged: boolean;
  figures: { compared: number; differing: FigureDifference[] };
  pages: { compared: number; differing: PageDifference[] };
  /** What is wrong besides figures and pages, one sentence each. */
  others: string[];
}

/** Figures of two computers may differ in the last of their six digits. */
const RELATIVE_TOLERANCE = 2e-5;

/**
 * Verifies a report.
 * @param name the file's name, for messages
 * @throws InputFault when it is no PDF of Standfast, carries no case or no figures, or its case cannot be assessed
 */
export async function verifyReport(
  bytes: Uint8Array,
  name: string,
  { fonts }: { fonts: ReportFonts },
): Promise<Verification> {
  const pdf = readPdf(bytes, name);
  const attached = attachmentsOf(pdf);
  const caseZip = attached.get(CASE_ATTACHMENT);
  const json = attached.get(FIGURES_ATTACHMENT);
  if (!caseZip)
    throw new InputFault(
      `this PDF carries no ${CASE_ATTACHMENT}, so there is nothing to recompute it from: use a report that Standfast wrote`,
      name,
    );
  if (!json)
    throw new InputFault(
      `this PDF carries no ${FIGURES_ATTACHMENT} with its figures, so it cannot be held against its case: make the report anew`,
      name,
    );
  const { recorded, making } = figuresIn(json, `${name}: ${FIGURES_ATTACHMENT}`);
  const { caseFile, engineInput, notices } = openCase(bagFromZip(caseZip, `${name}: ${CASE_ATTACHMENT}`));
  const assessed = assess(engineInput, { seed: recorded.seed, draws: recorded.draws });
  const assessment: Assessment = {
    ...assessed,
    engineVersion: recorded.engineVersion,
    notices: [...notices, ...assessed.notices],
  };
  const figures = { compared: 0, differing: [] as FigureDifference[] };
  compare(recorded, roundedFigures(assessment), '', figures);

  const { caseSha256, ...options } = making;
  const again = readPdf(await pdfWithCase({ assessment, caseFile, options }, caseZip, fonts), 'recomputed');
  const [pages, others] = [pagesOf(pdf), [] as string[]];
  const expected = pagesOf(again);
  const unlike: PageDifference[] = [];
  for (let i = 0; i < Math.max(pages.length, expected.length); i++) {
    const [has, wanted] = [pages[i], expected[i]];
    if (has && wanted && sameDeep(pdf, has, again, wanted)) continue;
    const [said, should] = [has ? textOfPage(pdf, has) : [], wanted ? textOfPage(again, wanted) : []];
    unlike.push({ page: i + 1, inReport: without(said, should), recomputed: without(should, said) });
  }
  // A letter more anywhere renumbers the letters of every page: pages that read the same are named only when none reads otherwise.
  const reading = unlike.filter((p) => p.inReport.length + p.recomputed.length > 0);
  const differing = reading.length > 0 ? reading : unlike;
  const caseUnchanged = (await sha256(caseZip)) === caseSha256;
  if (!caseUnchanged) others.push(`The ${CASE_ATTACHMENT} inside is not the one the report was made from.`);
  if (unlike.length === 0 && !sameDeep(pdf, catalogDict(pdf), again, catalogDict(again)))
    others.push('What is read aloud or used to find one’s way in the document was changed.');
  if (pdf.revised) others.push('Another program has added to this file since it was made.');
  return {
    stands: figures.differing.length + differing.length === 0 && others.length === 0,
    madeBy: recorded.engineVersion,
    recomputedBy: ENGINE_VERSION,
    seed: recorded.seed,
    draws: recorded.draws,
    caseUnchanged,
    figures,
    pages: { compared: Math.max(pages.length, expected.length), differing },
    others,
  };
}

type Recorded = { engineVersion: string; seed: number; draws: number };

function figuresIn(json: Uint8Array, where: string): { recorded: Recorded; making: ReportMaking } {
  let read: unknown;
  try {
    read = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(json));
  } catch {
    throw new InputFault('this is no JSON: the attachment was changed or damaged', where);
  }
  const { report, ...recorded } = (read ?? {}) as Recorded & { report?: ReportMaking };
  if (
    typeof recorded.engineVersion !== 'string' ||
    !Number.isInteger(recorded.seed) ||
    !Number.isInteger(recorded.draws) ||
    (report?.units !== 'metric' && report?.units !== 'us') ||
    !/^\d{4}-\d{2}-\d{2}$/.test(report.generatedOn) ||
    !['string', 'undefined'].includes(typeof report.conclusion)
  )
    throw new InputFault(
      'engine version, seed, draws or the report’s options are missing: the attachment was changed or damaged',
      where,
    );
  return { recorded, making: report };
}

/** Compares leaf by leaf. */
function compare(
  inReport: unknown,
  recomputed: unknown,
  where: string,
  found: { compared: number; differing: FigureDifference[] },
): void {
  if (isBranch(inReport) && isBranch(recomputed)) {
    for (const key of new Set([...Object.keys(inReport), ...Object.keys(recomputed)]))
      compare(inReport[key], recomputed[key], where === '' ? key : `${where}.${key}`, found);
    return;
  }
  found.compared++;
  const near =
    typeof inReport === 'number' &&
    typeof recomputed === 'number' &&
    Math.abs(inReport - recomputed) <=
      RELATIVE_TOLERANCE * Math.max(Math.abs(inReport), Math.abs(recomputed));
  if (near || inReport === recomputed) return;
  const shown = (value: unknown) =>
    value === undefined ? 'nothing' : (JSON.stringify(value) ?? '').slice(0, 120);
  found.differing.push({ where, inReport: shown(inReport), recomputed: shown(recomputed) });
}

function isBranch(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

/** Lines of one list that the other does not have, counting repeats. */
function without(lines: readonly string[], others: readonly string[]): string[] {
  const left = new Map<string, number>();
  for (const line of others) left.set(line, (left.get(line) ?? 0) + 1);
  return lines.filter((line) => {
    const count = left.get(line) ?? 0;
    left.set(line, count - 1);
    return count <= 0;
  });
}
