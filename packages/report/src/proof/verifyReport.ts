/** Recomputes a report from the evidence inside it and says, figure by figure and page by page, whether it stands. */
import { bagFromZip, openCase } from '@standfast/casefile';
import { type Assessment, assess, ENGINE_VERSION, InputFault } from '@standfast/engine';
import type { ReportInput } from '../document/input.ts';
import type { ReportFonts } from '../fonts.ts';
import { attachmentIn } from '../html/toHtml.ts';
import {
  type Compared,
  compareFigures,
  differingLines,
  type FigureDifference,
  type PageDifference,
  readingOtherwise,
} from './differences.ts';
import { textOfPage } from './pageText.ts';
import {
  CASE_ATTACHMENT,
  FIGURES_ATTACHMENT,
  htmlWithCase,
  pdfWithCase,
  type ReportMaking,
  roundedFigures,
  sha256,
} from './proven.ts';
import { attachmentsOf, catalogDict, pagesOf, readPdf } from './readPdf.ts';
import { sameDeep } from './samePdf.ts';
import { compareHtml } from './verifyHtml.ts';

export type { FigureDifference, PageDifference };

export interface Verification {
  stands: boolean;
  kind: 'pdf' | 'html';
  /** Engine that made the report, and the one that recomputed it. */
  madeBy: string;
  recomputedBy: string;
  seed: number;
  draws: number;
  /** Whether the case inside is the one the report was made from, by its fingerprint. */
  caseUnchanged: boolean;
  figures: Compared<FigureDifference>;
  /** Pages of a PDF; of an HTML report its title and chapters. */
  pages: Compared<PageDifference>;
  /** What is wrong besides figures and pages, one sentence each. */
  others: string[];
}

/** What a kind of file holds inside, and how its pages compare with those made anew. */
interface Opened {
  kind: Verification['kind'];
  attached: (name: string) => Uint8Array | null;
  compare: (
    input: ReportInput,
    caseZip: Uint8Array,
    figures: Uint8Array,
    fonts: ReportFonts,
  ) => Promise<{ pages: Compared<PageDifference>; others: string[] }>;
}

/**
 * Verifies a report, PDF or HTML.
 * @param name the file's name, for messages
 * @throws InputFault when it is no report of Standfast, carries no case or no figures, or its case cannot be assessed
 */
export async function verifyReport(
  bytes: Uint8Array,
  name: string,
  { fonts }: { fonts: ReportFonts },
): Promise<Verification> {
  const opened = openReport(bytes, name);
  const caseZip = caseOf(opened, name);
  const json = opened.attached(FIGURES_ATTACHMENT);
  if (!json)
    throw new InputFault(
      `this report carries no ${FIGURES_ATTACHMENT} with its figures, so it cannot be held against its case: make the report anew`,
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
  const figures = compareFigures(recorded, roundedFigures(assessment));
  const { caseSha256, ...options } = making;
  const { pages, others } = await opened.compare({ assessment, caseFile, options }, caseZip, json, fonts);
  const caseUnchanged = (await sha256(caseZip)) === caseSha256;
  if (!caseUnchanged)
    others.unshift(`The ${CASE_ATTACHMENT} inside is not the one the report was made from.`);
  return {
    stands: figures.differing.length + pages.differing.length === 0 && others.length === 0,
    kind: opened.kind,
    madeBy: recorded.engineVersion,
    recomputedBy: ENGINE_VERSION,
    seed: recorded.seed,
    draws: recorded.draws,
    caseUnchanged,
    figures,
    pages,
    others,
  };
}

/**
 * The case that travels inside a report, as a zip.
 * @throws InputFault when it is no report, or carries no case
 */
export function caseInReport(bytes: Uint8Array, name: string): Uint8Array {
  return caseOf(openReport(bytes, name), name);
}

function openReport(bytes: Uint8Array, name: string): Opened {
  return looksLikeHtml(bytes) ? openHtml(bytes, name) : openPdf(bytes, name);
}

function caseOf(opened: Opened, name: string): Uint8Array {
  const caseZip = opened.attached(CASE_ATTACHMENT);
  if (caseZip) return caseZip;
  throw new InputFault(
    `this report carries no ${CASE_ATTACHMENT}, so there is nothing to recompute it from: use a report that Standfast wrote`,
    name,
  );
}

function openPdf(bytes: Uint8Array, name: string): Opened {
  const pdf = readPdf(bytes, name);
  const files = attachmentsOf(pdf);
  return {
    kind: 'pdf',
    attached: (wanted) => files.get(wanted) ?? null,
    async compare(input, caseZip, _figures, fonts) {
      const again = readPdf(await pdfWithCase(input, caseZip, fonts), 'recomputed');
      const [pages, expected] = [pagesOf(pdf), pagesOf(again)];
      const others: string[] = [];
      const unlike: PageDifference[] = [];
      const compared = Math.max(pages.length, expected.length);
      for (let i = 0; i < compared; i++) {
        const [has, wanted] = [pages[i], expected[i]];
        if (has && wanted && sameDeep(pdf, has, again, wanted)) continue;
        unlike.push(
          differingLines(i + 1, has ? textOfPage(pdf, has) : [], wanted ? textOfPage(again, wanted) : []),
        );
      }
      if (unlike.length === 0 && !sameDeep(pdf, catalogDict(pdf), again, catalogDict(again)))
        others.push('What is read aloud or used to find one’s way in the document was changed.');
      if (pdf.revised) others.push('Another program has added to this file since it was made.');
      return { pages: { compared, differing: readingOtherwise(unlike) }, others };
    },
  };
}

function looksLikeHtml(bytes: Uint8Array): boolean {
  return /^\uFEFF?\s*<(!doctype html|html)/i.test(new TextDecoder().decode(bytes.subarray(0, 64)));
}

function openHtml(bytes: Uint8Array, name: string): Opened {
  let html: string;
  try {
    html = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new InputFault('this HTML file is not UTF-8 text: use the file that Standfast wrote', name);
  }
  return {
    kind: 'html',
    attached: (wanted) => attachmentIn(html, wanted),
    async compare(input, caseZip, figures, fonts) {
      const again = await htmlWithCase(input, caseZip, fonts, figures);
      return { pages: compareHtml(html, again), others: [] };
    },
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
