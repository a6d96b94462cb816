/** Tables on paper: rows never split, and the heading row stands again on each further page. */
import type { Block } from '../document/blocks.ts';
import {
  element,
  type Flow,
  newPage,
  rule,
  type StructureElement,
  setText,
  type TextLook,
  tagged,
  textHeight,
} from './flow.ts';

type Table = Extract<Block, { kind: 'table' }>;

const CAPTION: TextLook = { face: 'semibold', size: 8.8 };
const HEAD: TextLook = { face: 'semibold', size: 8.2, lineGap: -1, paint: 'secondary' };
const CELL: TextLook = { size: 8.6, lineGap: -1 };
const FIRST: TextLook = { ...CELL, face: 'semibold' };
const GAP = 8;
const PAD = 2.2;

/** Height of caption, heading row and the first rows (two, or as many as asked for). */
export function tableHead(flow: Flow, table: Table, word: string, rows = 2): number {
  const heads = table.columns.map((c) => c.title);
  return (
    captionHeight(flow, table, word) +
    rowHeight(flow, table, heads, true) +
    table.rows.slice(0, rows).reduce((h, r) => h + rowHeight(flow, table, r, false), 0) +
    4
  );
}

function captionText(table: Table, word: string): string {
  return `${word} ${table.number}.  ${table.caption}`;
}

function captionHeight(flow: Flow, table: Table, word: string): number {
  return textHeight(flow, captionText(table, word), flow.width, CAPTION) + 4;
}

function look(column: number, head: boolean): TextLook {
  return head ? HEAD : column === 0 ? FIRST : CELL;
}

function widths(flow: Flow, table: Table): number[] {
  const sum = table.columns.reduce((s, c) => s + c.share, 0);
  return table.columns.map((c) => (flow.width * c.share) / sum);
}

function rowHeight(flow: Flow, table: Table, cells: readonly string[], head: boolean): number {
  const wide = widths(flow, table);
  return Math.max(...cells.map((cell, i) => textHeight(flow, cell, wide[i]! - GAP, look(i, head)))) + 2 * PAD;
}

export function drawTable(flow: Flow, table: Table, words: { table: string; continued: string }): void {
  const parent = element(flow, flow.root, 'Table', { title: table.caption });
  const caption = captionText(table, words.table);
  tagged(flow, parent, 'Caption', () => setText(flow, caption, flow.left, flow.y, flow.width, CAPTION));
  flow.y += captionHeight(flow, table, words.table);
  const head = element(flow, parent, 'THead');
  drawRow(
    flow,
    table,
    head,
    table.columns.map((c) => c.title),
    true,
  );
  head.end();
  const body = element(flow, parent, 'TBody');
  for (const row of table.rows) {
    if (flow.y + rowHeight(flow, table, row, false) > flow.bottom) {
      newPage(flow);
      repeatHead(flow, table, `${caption} (${words.continued})`);
    }
    drawRow(flow, table, body, row, false);
  }
  body.end();
  parent.end();
}

function drawRow(
  flow: Flow,
  table: Table,
  parent: StructureElement,
  cells: readonly string[],
  head: boolean,
): void {
  const wide = widths(flow, table);
  const height = rowHeight(flow, table, cells, head);
  const row = element(flow, parent, 'TR');
  let x = flow.left;
  cells.forEach((cell, i) => {
    const type = head || i === 0 ? 'TH' : 'TD';
    const options = head ? { scope: 'Column' } : i === 0 ? { scope: 'Row' } : {};
    const at = x;
    tagged(
      flow,
      row,
      type,
      () =>
        setText(flow, cell, at, flow.y + PAD, wide[i]! - GAP, {
          ...look(i, head),
          align: table.columns[i]!.align === 'end' ? 'right' : 'left',
        }),
      options,
    );
    x += wide[i]!;
  });
  row.end();
  flow.y += height;
  rule(flow, flow.y, head ? 'ink' : 'rule', head ? 0.8 : 0.5);
}

/** The heading row again at the top of a page, as page furniture: it was read out once already. */
function repeatHead(flow: Flow, table: Table, caption: string): void {
  const wide = widths(flow, table);
  const heads = table.columns.map((c) => c.title);
  flow.doc.markContent('Artifact', { type: 'Pagination' });
  setText(flow, caption, flow.left, flow.y, flow.width, CAPTION);
  flow.y += textHeight(flow, caption, flow.width, CAPTION) + 4;
  let x = flow.left;
  heads.forEach((title, i) => {
    setText(flow, title, x, flow.y + PAD, wide[i]! - GAP, {
      ...HEAD,
      align: table.columns[i]!.align === 'end' ? 'right' : 'left',
    });
    x += wide[i]!;
  });
  flow.doc.endMarkedContent();
  flow.y += rowHeight(flow, table, heads, true);
  rule(flow, flow.y, 'ink', 0.8);
}
