/** Draws a scene into a PDF page as vectors: the same marks, at the same places, as `toSvg` prints. */
import type PDFDocument from 'pdfkit';
import { colourOf, printTheme, type Theme } from '../theme.ts';
import type { FontFace, PathMark, Scene, SceneItem, TextMark } from './scene.ts';

/** The part of a pdfkit document that a drawing needs. */
export type PdfCanvas = InstanceType<typeof PDFDocument>;

/** Names under which the report's fonts are registered with the document. */
export const pdfFontNames: Record<FontFace, string> = {
  regular: 'text',
  semibold: 'text-semibold',
  heading: 'heading',
};

/**
 * Draws the scene with its top left corner at (x, y), in points, one px of the scene as `scale` points. The
 * document must have the three fonts of `pdfFontNames` registered. Leaves the graphics state as it was.
 */
export function drawScene(
  doc: PdfCanvas,
  scene: Scene,
  x: number,
  y: number,
  scale: number,
  theme: Theme = printTheme,
): void {
  doc.save();
  doc.translate(x, y).scale(scale);
  for (const item of scene.items) drawItem(doc, item, theme);
  doc.restore();
}

function drawItem(doc: PdfCanvas, item: SceneItem, theme: Theme): void {
  if (item.kind === 'path') drawPath(doc, item, theme);
  else if (item.kind === 'text') drawText(doc, item, theme);
  else {
    if (item.clip !== undefined) {
      doc.save();
      doc.path(item.clip).clip();
    }
    for (const inner of item.items) drawItem(doc, inner, theme);
    if (item.clip !== undefined) doc.restore();
  }
}

function drawPath(doc: PdfCanvas, mark: PathMark, theme: Theme): void {
  if (mark.d === '' || (mark.fill === undefined && mark.stroke === undefined)) return;
  doc.save();
  if (mark.opacity !== undefined) doc.opacity(mark.opacity);
  doc.path(mark.d);
  if (mark.stroke !== undefined) {
    doc.lineWidth(mark.width ?? 0.75);
    doc.lineCap(mark.cap ?? 'butt').lineJoin(mark.join ?? 'miter');
    // pdfkit takes a whole pattern here, though its types know only one length.
    if (mark.dash !== undefined) doc.dash(mark.dash as unknown as number, {});
    doc.strokeColor(colourOf(mark.stroke, theme));
  }
  if (mark.fill !== undefined) doc.fillColor(colourOf(mark.fill, theme));
  const rule = mark.evenOdd ? 'even-odd' : 'non-zero';
  if (mark.fill !== undefined && mark.stroke !== undefined) doc.fillAndStroke(undefined, undefined, rule);
  else if (mark.fill !== undefined) doc.fill(rule);
  else doc.stroke();
  doc.restore();
}

function drawText(doc: PdfCanvas, mark: TextMark, theme: Theme): void {
  doc.save();
  doc.font(pdfFontNames[mark.face]).fontSize(mark.size).fillColor(colourOf(mark.fill, theme));
  const width = doc.widthOfString(mark.text);
  const shift = mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? width / 2 : width;
  if (mark.rotateDeg) doc.rotate(mark.rotateDeg, { origin: [mark.x, mark.y] });
  doc.text(mark.text, mark.x - shift, mark.y, { lineBreak: false, baseline: 'alphabetic' });
  doc.restore();
}
