/** The page as it fills: where the next block goes, when a new page begins, and how marks are tagged. */
import type { PdfCanvas } from '../scene/drawScene.ts';
import { pdfFontNames } from '../scene/drawScene.ts';
import type { FontFace } from '../scene/scene.ts';
import { colourOf, type Paint, printTheme } from '../theme.ts';

/** A node of the PDF's structure tree: what a screen reader walks. */
export type StructureElement = ReturnType<PdfCanvas['struct']>;

export interface Flow {
  doc: PdfCanvas;
  root: StructureElement;
  left: number;
  width: number;
  top: number;
  bottom: number;
  /** Where the next block starts. */
  y: number;
  /** Heights of texts already measured: blocks are measured several times before they are drawn. */
  heights: Map<string, number>;
  /** Letters are set this much smaller or larger than their looks say. */
  scale: number;
}

export interface TextLook {
  face?: FontFace;
  size: number;
  paint?: Paint;
  lineGap?: number;
  align?: 'left' | 'right' | 'center';
  /** A line through the letters. */
  strike?: boolean;
}

/** Starts a new page. */
export function newPage(flow: Flow): void {
  flow.doc.addPage();
  flow.y = flow.top;
}

/** Starts a new page unless this much height is left on the present one. */
export function ensure(flow: Flow, height: number): void {
  if (flow.y > flow.top && flow.y + height > flow.bottom) newPage(flow);
}

/** Height of a text set to a width, points. */
export function textHeight(flow: Flow, text: string, width: number, look: TextLook): number {
  const key = `${flow.scale} ${look.face ?? 'regular'} ${look.size} ${look.lineGap ?? 0} ${width} ${text}`;
  const known = flow.heights.get(key);
  if (known !== undefined) return known;
  set(flow, look);
  const height = flow.doc.heightOfString(text === '' ? ' ' : text, { width, lineGap: look.lineGap ?? 0 });
  flow.heights.set(key, height);
  return height;
}

/** Sets a text at a place. Must be called within `tagged` or `artifact`. */
export function setText(flow: Flow, text: string, x: number, y: number, width: number, look: TextLook): void {
  set(flow, look);
  flow.doc.text(text, x, y, {
    width,
    lineGap: look.lineGap ?? 0,
    align: look.align ?? 'left',
    ...(look.strike ? { strike: true } : {}),
  });
}

function set({ doc, scale }: Flow, look: TextLook): void {
  doc
    .font(pdfFontNames[look.face ?? 'regular'])
    .fontSize(look.size * scale)
    .fillColor(colourOf(look.paint ?? 'ink', printTheme));
}

/** Adds an empty structure element below a parent, to be filled with `tagged`; end it when done. */
export function element(
  flow: Flow,
  parent: StructureElement,
  type: string,
  options: object = {},
): StructureElement {
  const made = flow.doc.struct(type, options);
  parent.add(made);
  return made;
}

/** Draws as one tagged piece of content below a parent. */
export function tagged(
  flow: Flow,
  parent: StructureElement,
  type: string,
  draw: () => void,
  options: object = {},
): void {
  parent.add(flow.doc.struct(type, options, [draw]));
}

/** Draws what carries no meaning of its own (rules, grounds, page furniture), so that readers skip it. */
export function artifact(flow: Flow, draw: () => void, type: 'Layout' | 'Pagination' = 'Layout'): void {
  flow.doc.markContent('Artifact', { type });
  draw();
  flow.doc.endMarkedContent();
}

/** A straight rule, as an artifact. */
export function rule(
  flow: Flow,
  y: number,
  paint: Paint,
  width: number,
  x = flow.left,
  length = flow.width,
): void {
  artifact(flow, () => {
    flow.doc.save();
    flow.doc
      .moveTo(x, y)
      .lineTo(x + length, y)
      .lineWidth(width)
      .strokeColor(colourOf(paint, printTheme))
      .stroke();
    flow.doc.restore();
  });
}

/** The text cut to what fits one line of a width. */
export function oneLine(flow: Flow, text: string, width: number, look: TextLook): string {
  set(flow, look);
  if (flow.doc.widthOfString(text) <= width) return text;
  let most = text.length;
  while (most > 0 && flow.doc.widthOfString(`${text.slice(0, most)}…`) > width) most--;
  return `${text.slice(0, most).trimEnd()}…`;
}
