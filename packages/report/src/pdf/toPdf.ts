/**
 * The report as PDF: vector figures, embedded fonts, a structure tree for screen readers, bookmarks, attachments.
 *
 * pdfkit's package gives plain ES modules under both conditions: Node gets its build on streams, browsers (and
 * bundlers for them) one on a small event emitter, without polyfills. Nothing here touches a file system.
 */
import PDFDocument from 'pdfkit';
import type { Block, ReportAttachment, ReportDocument } from '../document/blocks.ts';
import type { ReportFonts } from '../fonts.ts';
import { type PdfCanvas, pdfFontNames } from '../scene/drawScene.ts';
import { blockHeight, drawBlock, headHeight } from './drawBlock.ts';
import { artifact, type Flow, oneLine, rule, setText } from './flow.ts';
import { drawLetterhead, letterheadHeight } from './letterhead.ts';

export interface PdfOptions {
  fonts: ReportFonts;
  attachments?: readonly ReportAttachment[];
}

/** `first`: top of the first page, which has no running head. */
const MARGIN = { side: 56, first: 44, top: 60, bottom: 62 };

/** The report's bytes. Same document, fonts and attachments, same bytes (within one kind of runtime). */
export async function toPdf(report: ReportDocument, options: PdfOptions): Promise<Uint8Array> {
  const created = new Date(`${report.generatedOn.slice(0, 10)}T12:00:00Z`);
  if (Number.isNaN(created.getTime()))
    throw new RangeError(
      `generatedOn is ${report.generatedOn}: write a day as year-month-day, for example 2026-05-14`,
    );
  const doc = new PDFDocument({
    size: report.paper === 'letter' ? 'LETTER' : 'A4',
    margins: { top: 0, left: MARGIN.side, right: MARGIN.side, bottom: 0 },
    pdfVersion: '1.7',
    lang: report.language,
    tagged: true,
    displayTitle: true,
    bufferPages: true,
    autoFirstPage: false,
    // No standard font at all: in the browser pdfkit has none until one is registered.
    font: '',
    info: {
      Title: report.title,
      Author: report.author,
      Subject: report.subject,
      Creator: report.producer,
      Producer: report.producer,
      CreationDate: created,
      ModDate: created,
    },
  });
  const collected = collect(doc);
  doc.registerFont(pdfFontNames.regular, options.fonts.regular as Buffer);
  doc.registerFont(pdfFontNames.semibold, options.fonts.semibold as Buffer);
  doc.registerFont(pdfFontNames.heading, options.fonts.heading as Buffer);
  doc.addPage();
  const root = doc.struct('Document', { lang: report.language });
  doc.addStructure(root);
  const flow: Flow = {
    doc,
    root,
    left: MARGIN.side,
    width: doc.page.width - 2 * MARGIN.side,
    top: MARGIN.top,
    bottom: doc.page.height - MARGIN.bottom,
    y: MARGIN.first,
    heights: new Map(),
    scale: 1,
  };
  const owner = ownersPage(flow, report);
  let chapter: PDFKit.PDFOutline | null = null;
  if (report.letterhead !== undefined) drawLetterhead(flow, report.letterhead);
  const blocks = [...report.blocks];
  for (let i = 0; i < blocks.length; i++) {
    letTableGoFirst(flow, blocks, i, report);
    const block = blocks[i]!;
    flow.scale = i < owner.blocks ? owner.scale : 1;
    drawBlock(flow, blocks, i, report);
    if (block.kind !== 'heading') continue;
    const text = `${block.number} ${block.text}`;
    if (block.level === 1) chapter = doc.outline.addItem(text);
    else (chapter ?? doc.outline).addItem(text);
  }
  root.end();
  pageFurniture(flow, report);
  for (const a of options.attachments ?? [])
    doc.file(a.bytes as Buffer, {
      name: a.name,
      type: a.mime,
      creationDate: created,
      modifiedDate: created,
      ...(a.description === undefined ? {} : { description: a.description }),
    });
  doc.end();
  return collected;
}

/**
 * Changes places of a floating figure and the table after it, where only the table fits. The figure may stand here, or
 * after the heading here, or after that and what leads to it.
 */
function letTableGoFirst(flow: Flow, blocks: Block[], i: number, report: ReportDocument): void {
  let at = i;
  if (blocks[at]!.kind === 'heading') at++;
  while (at > i && blocks[at]?.kind === 'paragraph') at++;
  const [picture, table] = [blocks[at], blocks[at + 1]];
  if (picture?.kind !== 'figure' || picture.floats !== true || table?.kind !== 'table') return;
  const fits = (from: readonly Block[]) => flow.y + headHeight(flow, from, 0, report) <= flow.bottom;
  const before = blocks.slice(i, at);
  if (fits([...before, picture]) || !fits([...before, table])) return;
  blocks[at] = table;
  blocks[at + 1] = picture;
}

/** Letters of the owner's page are set down to this share of their size, so that it stays one page. */
const LEAST_LETTERS = 0.78;

/** How many blocks the owner's page has, and the scale of letters at which they fit it. */
function ownersPage(flow: Flow, report: ReportDocument): { blocks: number; scale: number } {
  const blocks = report.blocks.findIndex(({ kind }) => kind === 'pageBreak');
  const room =
    flow.bottom - flow.y - (report.letterhead === undefined ? 0 : letterheadHeight(flow, report.letterhead));
  let scale = 1;
  for (; scale > LEAST_LETTERS; scale -= 0.02) {
    flow.scale = scale;
    const height = report.blocks.slice(0, blocks).reduce((sum, b) => sum + blockHeight(flow, b, report), 0);
    if (height <= room) break;
  }
  flow.scale = 1;
  return { blocks, scale };
}

/** Head and foot of every page, set when their number is known. */
function pageFurniture(flow: Flow, report: ReportDocument): void {
  const { doc } = flow;
  const { start, count } = doc.bufferedPageRange();
  const small = { size: 8, paint: 'secondary' } as const;
  for (let i = start; i < start + count; i++) {
    doc.switchToPage(i);
    const foot = doc.page.height - 40;
    rule(flow, foot - 7, 'rule', 0.6);
    artifact(
      flow,
      () => {
        if (i > start) {
          const firm = report.letterhead?.lines[0] ?? '';
          const share = firm === '' ? 1 : 0.6;
          setText(
            flow,
            oneLine(flow, report.caseLabel, flow.width * share, small),
            flow.left,
            30,
            flow.width,
            small,
          );
          if (firm !== '')
            setText(
              flow,
              oneLine(flow, firm, flow.width * 0.38, small),
              flow.left + flow.width * 0.6,
              30,
              flow.width * 0.4,
              { ...small, align: 'right' },
            );
        }
        setText(flow, `${report.producer} · ${report.generatedOn}`, flow.left, foot, flow.width * 0.6, small);
        setText(
          flow,
          report.words.page(i - start + 1, count),
          flow.left + flow.width * 0.6,
          foot,
          flow.width * 0.4,
          {
            ...small,
            align: 'right',
          },
        );
      },
      'Pagination',
    );
    if (i > start) rule(flow, 44, 'rule', 0.6);
  }
}

/** Gathers the document's chunks; the events are the same in Node and in the browser. */
function collect(doc: PdfCanvas): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('error', reject);
    doc.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((n, c) => n + c.length, 0));
      let at = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, at);
        at += chunk.length;
      }
      resolve(bytes);
    });
  });
}
