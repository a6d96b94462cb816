/** Each kind of block on paper: how high it is, how much of it must stand together, and its drawing. */
import type { Block, ReportDocument } from '../document/blocks.ts';
import { drawScene } from '../scene/drawScene.ts';
import { colourOf, type Paint, printTheme } from '../theme.ts';
import {
  additionHead,
  additionHeight,
  drawAddition,
  drawPhotos,
  drawSignature,
  photosHeight,
  signatureHeight,
} from './drawEvidence.ts';
import { drawTable, tableHead } from './drawTable.ts';
import {
  artifact,
  element,
  ensure,
  type Flow,
  newPage,
  rule,
  setText,
  type TextLook,
  tagged,
  textHeight,
} from './flow.ts';

const LOOK = {
  title: { face: 'heading', size: 21, lineGap: 0 },
  subtitle: { size: 12.5, paint: 'secondary' },
  heading1: { face: 'heading', size: 15.5 },
  heading2: { face: 'semibold', size: 11 },
  body: { size: 9.6, lineGap: -0.2 },
  small: { size: 8.4, lineGap: -0.4, paint: 'secondary' },
  term: { face: 'semibold', size: 8.6, paint: 'secondary' },
  fact: { size: 9.2, lineGap: -0.6 },
  caption: { size: 8.6, lineGap: -0.6, paint: 'secondary' },
  calloutTitle: { face: 'semibold', size: 9.4 },
  keyLabel: { face: 'semibold', size: 8.2, paint: 'secondary' },
  keyValue: { face: 'heading', size: 19 },
  keyInterval: { face: 'semibold', size: 8.8 },
  mark: { face: 'semibold', size: 8.2, paint: 'accent' },
  keyNote: { size: 7.8, paint: 'secondary', lineGap: -0.8 },
} satisfies Record<string, TextLook>;

const AFTER = 8;
const AFTER_TABLE = 15;
/** How much of what a paragraph leads to is kept with it at most, points. */
const LEAD = 320;
const FACT_TERM = 62;
const DEFINITION_TERM = 112;
const CALLOUT_INSET = 12;

const SEVERITY: Record<'note' | 'caution' | 'serious', { bar: Paint; ground: Paint }> = {
  note: { bar: 'accent', ground: 'tint' },
  caution: { bar: 'ink', ground: 'tint' },
  serious: { bar: 'alarm', ground: 'alarmTint' },
};

/** Height that must be left on the page for a block to begin there. */
export function headHeight(flow: Flow, blocks: readonly Block[], i: number, doc: ReportDocument): number {
  const block = blocks[i];
  if (block === undefined || block.kind === 'pageBreak') return 0;
  switch (block.kind) {
    case 'heading':
      return blockHeight(flow, block, doc) + headHeight(flow, blocks, i + 1, doc);
    case 'table':
      return tableHead(flow, block, doc.words.table);
    case 'list':
      return itemHeight(flow, block.items[0] ?? '') + 4;
    case 'definitions':
      return block.layout === 'facts' || block.items[0] === undefined
        ? blockHeight(flow, block, doc)
        : definitionHeight(flow, block.items[0], block.layout);
    case 'figure': {
      // With the blocks that belong to it, where they all fit one page.
      let together = blockHeight(flow, block, doc);
      for (let k = 1; k <= (block.keep ?? 0) && blocks[i + k]; k++)
        together += blockHeight(flow, blocks[i + k]!, doc);
      if (block.scene.height >= TALL)
        return (
          LEAST_SCALE * figureScale(flow, block) * block.scene.height + captionHeight(flow, block, doc) + 8
        );
      return together <= flow.bottom - flow.top ? together : blockHeight(flow, block, doc);
    }
    case 'addition':
      return additionHead(flow, block);
    case 'paragraph':
      // A paragraph that leads to a figure or a table stays with its beginning where that is small; one that goes with the
      // figure before it does not.
      return (
        blockHeight(flow, block, doc) +
        (isKept(blocks, i) ? 0 : Math.min(LEAD, leadInto(flow, blocks, i + 1, doc)))
      );
    default:
      return Math.min(blockHeight(flow, block, doc), flow.bottom - flow.top);
  }
}

/** Whether the block before is a figure that keeps this one with it. */
function isKept(blocks: readonly Block[], i: number): boolean {
  const before = blocks[i - 1];
  return before?.kind === 'figure' && (before.keep ?? 0) > 0;
}

function leadInto(flow: Flow, blocks: readonly Block[], i: number, doc: ReportDocument): number {
  const next = blocks[i];
  return next?.kind === 'table' || next?.kind === 'figure' || next?.kind === 'photos'
    ? headHeight(flow, blocks, i, doc)
    : 0;
}

/** Whole height of a block with what marks it as struck, points. */
export function blockHeight(flow: Flow, block: Block, doc: ReportDocument): number {
  return plainHeight(flow, block, doc) + markHeight(flow, block, doc);
}

function markOf(block: Block, doc: ReportDocument): string {
  return block.struck === undefined ? '' : doc.words[block.struck];
}

function markHeight(flow: Flow, block: Block, doc: ReportDocument): number {
  return block.struck === undefined ? 0 : textHeight(flow, markOf(block, doc), flow.width, LOOK.mark) + 3;
}

function drawMark(flow: Flow, block: Block, doc: ReportDocument): void {
  tagged(flow, flow.root, 'P', () =>
    setText(flow, markOf(block, doc), flow.left, flow.y, flow.width, LOOK.mark),
  );
  flow.y += markHeight(flow, block, doc);
}

function plainHeight(flow: Flow, block: Block, doc: ReportDocument): number {
  switch (block.kind) {
    case 'title':
      return 90;
    case 'heading':
      return block.level === 1
        ? 16 + textHeight(flow, headingText(block), flow.width, LOOK.heading1) + 8
        : 8 + textHeight(flow, headingText(block), flow.width, LOOK.heading2) + 5;
    case 'paragraph':
      return textHeight(flow, block.text, flow.width, paragraphLook(block)) + AFTER;
    case 'list':
      return block.items.reduce((h, item) => h + itemHeight(flow, item), 0) + AFTER - 4;
    case 'keyFigures':
      return keyHeight(flow, block) + AFTER + 6;
    case 'figure':
      return figureScale(flow, block) * block.scene.height + 5 + captionHeight(flow, block, doc) + AFTER + 4;
    case 'table':
      return tableHead(flow, block, doc.words.table, block.rows.length) + AFTER_TABLE;
    case 'callout':
      return calloutHeight(flow, block) + AFTER;
    case 'definitions':
      return block.layout === 'facts'
        ? factRows(flow, block).reduce((h, r) => h + r.height, 0) + AFTER
        : block.items.reduce((h, d) => h + definitionHeight(flow, d, block.layout), 0) + AFTER;
    case 'signature':
      return signatureHeight(flow, block);
    case 'photos':
      return photosHeight(flow, block, doc.words.photo);
    case 'addition':
      return additionHeight(flow, block);
    case 'pageBreak':
      return 0;
  }
}

/** Draws block `i`, starting a new page first where it would not begin well on this one. */
export function drawBlock(flow: Flow, blocks: readonly Block[], i: number, doc: ReportDocument): void {
  const block = blocks[i]!;
  ensure(flow, headHeight(flow, blocks, i, doc));
  if (block.struck === 'struck') drawMark(flow, block, doc);
  drawPlain(flow, block, doc);
  if (block.struck === 'kept') drawMark(flow, block, doc);
}

function drawPlain(flow: Flow, block: Block, doc: ReportDocument): void {
  switch (block.kind) {
    case 'pageBreak':
      if (flow.y > flow.top) newPage(flow);
      break;
    case 'title':
      drawTitle(flow, block);
      break;
    case 'heading':
      drawHeading(flow, block);
      break;
    case 'paragraph': {
      const look = paragraphLook(block);
      tagged(flow, flow.root, 'P', () => setText(flow, block.text, flow.left, flow.y, flow.width, look));
      flow.y += textHeight(flow, block.text, flow.width, look) + AFTER;
      break;
    }
    case 'list':
      drawList(flow, block);
      break;
    case 'keyFigures':
      drawKeyFigures(flow, block);
      break;
    case 'figure':
      drawFigure(flow, block, doc);
      break;
    case 'table':
      drawTable(flow, block, doc.words);
      flow.y += AFTER_TABLE;
      break;
    case 'callout':
      drawCallout(flow, block);
      break;
    case 'definitions':
      if (block.layout === 'facts') drawFacts(flow, block);
      else drawDefinitions(flow, block);
      break;
    case 'signature':
      drawSignature(flow, block);
      break;
    case 'photos':
      drawPhotos(flow, block, doc.words.photo);
      break;
    case 'addition':
      drawAddition(flow, block);
      break;
  }
}

type Of<K extends Block['kind']> = Extract<Block, { kind: K }>;

function paragraphLook(block: Of<'paragraph'>): TextLook {
  return struckLook(block, block.tone === 'small' ? LOOK.small : LOOK.body);
}

/** Struck text stays legible under its line. */
function struckLook(block: Block, look: TextLook): TextLook {
  return block.struck === 'struck' ? { ...look, strike: true, paint: 'secondary' } : look;
}

function headingText(block: Of<'heading'>): string {
  return `${block.number}   ${block.text}`;
}

function drawTitle(flow: Flow, block: Of<'title'>): void {
  rule(flow, flow.y, 'ink', 1.6);
  flow.y += 12;
  tagged(flow, flow.root, 'H1', () => setText(flow, block.text, flow.left, flow.y, flow.width, LOOK.title));
  flow.y += textHeight(flow, block.text, flow.width, LOOK.title) + 2;
  tagged(flow, flow.root, 'P', () =>
    setText(flow, block.subtitle, flow.left, flow.y, flow.width, LOOK.subtitle),
  );
  flow.y += textHeight(flow, block.subtitle, flow.width, LOOK.subtitle) + 8;
  if (block.marker !== undefined) {
    const marker = block.marker;
    const look: TextLook = { face: 'semibold', size: 9.2, paint: 'alarm' };
    tagged(flow, flow.root, 'P', () => setText(flow, marker, flow.left, flow.y, flow.width, look));
    flow.y += textHeight(flow, marker, flow.width, look) + 6;
  }
  rule(flow, flow.y, 'rule', 0.8);
  flow.y += 10;
}

function drawHeading(flow: Flow, block: Of<'heading'>): void {
  const first = block.level === 1;
  const look = first ? LOOK.heading1 : LOOK.heading2;
  if (first) {
    if (flow.y > flow.top) rule(flow, flow.y + 6, 'rule', 0.8);
    flow.y += flow.y > flow.top ? 16 : 0;
  } else flow.y += 8;
  tagged(
    flow,
    flow.root,
    first ? 'H2' : 'H3',
    () => setText(flow, headingText(block), flow.left, flow.y, flow.width, look),
    {
      title: block.text,
    },
  );
  flow.y += textHeight(flow, headingText(block), flow.width, look) + (first ? 8 : 5);
}

function itemHeight(flow: Flow, item: string): number {
  return textHeight(flow, item, flow.width - 14, LOOK.body) + 4;
}

function drawList(flow: Flow, block: Of<'list'>): void {
  const list = element(flow, flow.root, 'L');
  for (const item of block.items) {
    ensure(flow, itemHeight(flow, item));
    const entry = element(flow, list, 'LI');
    tagged(flow, entry, 'Lbl', () => setText(flow, '–', flow.left, flow.y, 12, LOOK.body));
    tagged(flow, entry, 'LBody', () =>
      setText(flow, item, flow.left + 14, flow.y, flow.width - 14, struckLook(block, LOOK.body)),
    );
    entry.end();
    flow.y += itemHeight(flow, item);
  }
  list.end();
  flow.y += AFTER - 4;
}

function keyHeight(flow: Flow, block: Of<'keyFigures'>): number {
  const w = flow.width / block.items.length - 12;
  const label = Math.max(...block.items.map((k) => textHeight(flow, k.label, w, LOOK.keyLabel)));
  return Math.max(
    ...block.items.map(
      (k) =>
        label +
        textHeight(flow, k.value, w, LOOK.keyValue) +
        textHeight(flow, k.interval, w, LOOK.keyInterval) +
        textHeight(flow, k.note ?? '', w, LOOK.keyNote) +
        16,
    ),
  );
}

function drawKeyFigures(flow: Flow, block: Of<'keyFigures'>): void {
  const each = flow.width / block.items.length;
  const height = keyHeight(flow, block);
  const label = Math.max(...block.items.map((k) => textHeight(flow, k.label, each - 12, LOOK.keyLabel)));
  rule(flow, flow.y, 'ink', 0.9);
  block.items.forEach((k, i) => {
    const x = flow.left + i * each + (i === 0 ? 0 : 6);
    const w = each - 12;
    if (i > 0)
      artifact(flow, () => {
        flow.doc.save();
        flow.doc
          .moveTo(x - 6, flow.y + 6)
          .lineTo(x - 6, flow.y + height - 4)
          .lineWidth(0.6)
          .strokeColor(colourOf('rule', printTheme))
          .stroke();
        flow.doc.restore();
      });
    let y = flow.y + 7;
    tagged(flow, flow.root, 'P', () => {
      setText(flow, k.label, x, y, w, LOOK.keyLabel);
      y += label + 1;
      setText(flow, k.value, x, y, w, LOOK.keyValue);
      y += textHeight(flow, k.value, w, LOOK.keyValue) - 1;
      setText(flow, k.interval, x, y, w, LOOK.keyInterval);
      y += textHeight(flow, k.interval, w, LOOK.keyInterval) + 2;
      if (k.note !== undefined) setText(flow, k.note, x, y, w, LOOK.keyNote);
    });
  });
  flow.y += height;
  rule(flow, flow.y, 'ink', 0.9);
  flow.y += AFTER + 6;
}

/** A tall figure may be made this much smaller to stand on a page already begun. Traces keep their common scale. */
const LEAST_SCALE = 0.74;
const TALL = 300;

/** Figures are drawn in points one to one, and made smaller only where they would not fit the page. */
function figureScale(flow: Flow, block: Of<'figure'>): number {
  const room = flow.bottom - flow.top - 60;
  return Math.min(1, flow.width / block.scene.width, room / block.scene.height);
}

/** The scale at which a figure stands on what is left of the page, or its full scale where a new page is needed. */
function scaleHere(flow: Flow, block: Of<'figure'>, doc: ReportDocument): number {
  const full = figureScale(flow, block);
  if (block.scene.height < TALL) return full;
  const room = flow.bottom - flow.y - captionHeight(flow, block, doc) - 6;
  const fitting = room / block.scene.height;
  return fitting >= full ? full : fitting >= full * LEAST_SCALE ? fitting : full;
}

function captionOf(block: Of<'figure'>, doc: ReportDocument): string {
  return `${doc.words.figure} ${block.number}.  ${block.caption}`;
}

function captionHeight(flow: Flow, block: Of<'figure'>, doc: ReportDocument): number {
  return textHeight(flow, captionOf(block, doc), flow.width, LOOK.caption);
}

function drawFigure(flow: Flow, block: Of<'figure'>, doc: ReportDocument): void {
  const scale = scaleHere(flow, block, doc);
  const { scene } = block;
  const [w, h] = [scene.width * scale, scene.height * scale];
  const x = flow.left + (flow.width - w) / 2;
  const [y, left, width] = [flow.y, flow.left, flow.width];
  tagged(flow, flow.root, 'Figure', () => drawScene(flow.doc, scene, x, y, scale), {
    alt: `${scene.title}. ${scene.description}`,
    bbox: [x, y, x + w, y + h],
    placement: 'Block',
  });
  const below = y + h + 5;
  tagged(flow, flow.root, 'Caption', () =>
    setText(flow, captionOf(block, doc), left, below, width, LOOK.caption),
  );
  flow.y = below + captionHeight(flow, block, doc) + AFTER + 4;
}

function calloutHeight(flow: Flow, block: Of<'callout'>): number {
  const w = flow.width - 2 * CALLOUT_INSET;
  return (
    14 + textHeight(flow, block.title, w, LOOK.calloutTitle) + 2 + textHeight(flow, block.text, w, LOOK.body)
  );
}

function drawCallout(flow: Flow, block: Of<'callout'>): void {
  const height = calloutHeight(flow, block);
  const { bar, ground } = SEVERITY[block.severity];
  const [x, w] = [flow.left + CALLOUT_INSET, flow.width - 2 * CALLOUT_INSET];
  artifact(flow, () => {
    flow.doc.save();
    flow.doc.rect(flow.left, flow.y, flow.width, height).fill(colourOf(ground, printTheme));
    flow.doc.rect(flow.left, flow.y, 3.5, height).fill(colourOf(bar, printTheme));
    flow.doc.restore();
  });
  const titleLook: TextLook = { ...LOOK.calloutTitle, paint: block.severity === 'serious' ? 'alarm' : 'ink' };
  const box = element(flow, flow.root, 'Note');
  tagged(flow, box, 'P', () => setText(flow, block.title, x, flow.y + 7, w, titleLook));
  const below = flow.y + 9 + textHeight(flow, block.title, w, LOOK.calloutTitle);
  tagged(flow, box, 'P', () => setText(flow, block.text, x, below, w, LOOK.body));
  box.end();
  flow.y += height + AFTER;
}

interface FactRow {
  facts: { term: string; text: string; x: number; width: number }[];
  height: number;
}

/** Facts two by two; one that is too long for half the width has a row of its own. */
function factRows(flow: Flow, block: Of<'definitions'>): FactRow[] {
  const half = flow.width / 2;
  const rows: FactRow[] = [];
  let open: FactRow | null = null;
  for (const { term, text } of block.items) {
    const narrow = half - FACT_TERM - 10;
    const isLong = textHeight(flow, text, narrow, LOOK.fact) > textHeight(flow, 'x', narrow, LOOK.fact) * 1.5;
    const width = isLong ? flow.width - FACT_TERM : narrow;
    const height = textHeight(flow, text, width, LOOK.fact) + 1.5;
    if (open !== null && !isLong) {
      open.facts.push({ term, text, x: flow.left + half, width });
      open.height = Math.max(open.height, height);
      open = null;
    } else {
      const row: FactRow = { facts: [{ term, text, x: flow.left, width }], height };
      rows.push(row);
      open = isLong ? null : row;
    }
  }
  return rows;
}

function drawFacts(flow: Flow, block: Of<'definitions'>): void {
  const list = element(flow, flow.root, 'L');
  for (const row of factRows(flow, block)) {
    for (const { term, text, x, width } of row.facts) {
      const entry = element(flow, list, 'LI');
      tagged(flow, entry, 'Lbl', () => setText(flow, term, x, flow.y + 0.6, FACT_TERM - 6, LOOK.term));
      tagged(flow, entry, 'LBody', () => setText(flow, text, x + FACT_TERM, flow.y, width, LOOK.fact));
      entry.end();
    }
    flow.y += row.height;
  }
  list.end();
  flow.y += AFTER;
}

/** A list of definitions, or of short answers, which are set closer. */
function definitionLook(layout: Of<'definitions'>['layout']): { term: number; text: TextLook; gap: number } {
  return layout === 'answers'
    ? { term: FACT_TERM, text: LOOK.fact, gap: 3 }
    : { term: DEFINITION_TERM, text: LOOK.body, gap: 5 };
}

function definitionHeight(
  flow: Flow,
  { term, text }: { term: string; text: string },
  layout: Of<'definitions'>['layout'],
): number {
  const look = definitionLook(layout);
  return (
    Math.max(
      textHeight(flow, text, flow.width - look.term, look.text),
      textHeight(flow, term, look.term - 10, LOOK.term),
    ) + look.gap
  );
}

function drawDefinitions(flow: Flow, block: Of<'definitions'>): void {
  const look = definitionLook(block.layout);
  const list = element(flow, flow.root, 'L');
  for (const item of block.items) {
    const height = definitionHeight(flow, item, block.layout);
    ensure(flow, height);
    const entry = element(flow, list, 'LI');
    tagged(flow, entry, 'Lbl', () =>
      setText(flow, item.term, flow.left, flow.y + 0.6, look.term - 10, LOOK.term),
    );
    tagged(flow, entry, 'LBody', () =>
      setText(flow, item.text, flow.left + look.term, flow.y, flow.width - look.term, look.text),
    );
    entry.end();
    flow.y += height;
  }
  list.end();
  flow.y += AFTER;
}
