/** Photos of the evidence, text that the assessor added, and the signature, on paper. */
import type { Block, PhotoItem } from '../document/blocks.ts';
import type { Picture } from '../picture/picture.ts';
import { colourOf, printTheme } from '../theme.ts';
import {
  artifact,
  element,
  ensure,
  type Flow,
  rule,
  setText,
  type TextLook,
  tagged,
  textHeight,
} from './flow.ts';

type Of<K extends Block['kind']> = Extract<Block, { kind: K }>;

const CAPTION: TextLook = { size: 8.6, lineGap: -0.6 };
const FACTS: TextLook = { size: 7.4, lineGap: -0.6, paint: 'secondary' };
const MISSING: TextLook = { face: 'semibold', size: 8.6, paint: 'alarm' };
const GAP = 16;
/** Photos are at most so high, points: two rows of upright ones stand on a page. */
const MOST_HEIGHT = 236;
const FRAME = 54;

const columnWidth = (flow: Flow) => (flow.width - GAP) / 2;

/** Size of a picture within a box, in its own proportions, points. */
export function fitted({ widthPx, heightPx }: Picture, width: number, height: number): [number, number] {
  const scale = Math.min(width / widthPx, height / heightPx);
  return [widthPx * scale, heightPx * scale];
}

function captionOf(item: PhotoItem, word: string): string {
  return `${word} ${item.number}.  ${item.caption}`;
}

function pictureHeight(flow: Flow, item: PhotoItem): number {
  return item.picture === null ? FRAME : fitted(item.picture, columnWidth(flow), MOST_HEIGHT)[1];
}

export function photosHeight(flow: Flow, { items }: Of<'photos'>, word: string): number {
  const width = columnWidth(flow);
  return (
    Math.max(...items.map((item) => pictureHeight(flow, item))) +
    5 +
    Math.max(
      ...items.map(
        (item) =>
          textHeight(flow, captionOf(item, word), width, CAPTION) +
          textHeight(flow, item.facts, width, FACTS) +
          2,
      ),
    ) +
    14
  );
}

export function drawPhotos(flow: Flow, block: Of<'photos'>, word: string): void {
  const height = photosHeight(flow, block, word);
  const width = columnWidth(flow);
  const below = flow.y + Math.max(...block.items.map((item) => pictureHeight(flow, item))) + 5;
  block.items.forEach((item, i) => {
    const x = flow.left + i * (width + GAP);
    drawPhoto(flow, item, x, width, below, word);
  });
  flow.y += height;
}

function drawPhoto(flow: Flow, item: PhotoItem, x: number, width: number, below: number, word: string): void {
  const { picture } = item;
  if (picture === null)
    artifact(flow, () => {
      flow.doc.save();
      flow.doc
        .rect(x, below - 5 - FRAME, width, FRAME)
        .lineWidth(0.6)
        .dash(3, { space: 3 })
        .strokeColor(colourOf('secondary', printTheme))
        .stroke();
      flow.doc.restore();
    });
  else {
    const [w, h] = fitted(picture, width, MOST_HEIGHT);
    const y = below - 5 - h;
    tagged(flow, flow.root, 'Figure', () => drawPicture(flow, picture, x, y, w, h), {
      alt: captionOf(item, word),
      bbox: [x, y, x + w, y + h],
      placement: 'Block',
    });
  }
  const caption = captionOf(item, word);
  tagged(flow, flow.root, 'Caption', () => {
    setText(flow, caption, x, below, width, CAPTION);
    const at = below + textHeight(flow, caption, width, CAPTION) + 2;
    setText(flow, item.facts, x, at, width, picture === null ? { ...MISSING, size: FACTS.size } : FACTS);
  });
}

/** Draws a picture upright into a box of its own proportions. Must be called within `tagged` or `artifact`. */
export function drawPicture(
  flow: Flow,
  { bytes }: Picture,
  x: number,
  y: number,
  w: number,
  h: number,
): void {
  flow.doc.image(bytes as Buffer, x, y, { width: w, height: h });
}

const ADDED_TITLE: TextLook = { face: 'semibold', size: 8.6, paint: 'accent' };
const BODY: TextLook = { size: 9.6, lineGap: -0.2 };
const INSET = 12;

function pieceHeight(flow: Flow, text: string): number {
  return textHeight(flow, text, flow.width - INSET, BODY) + 4;
}

export function additionHeight(flow: Flow, { title, paragraphs }: Of<'addition'>): number {
  return (
    textHeight(flow, title, flow.width - INSET, ADDED_TITLE) +
    3 +
    paragraphs.reduce((sum, text) => sum + pieceHeight(flow, text), 0) +
    8
  );
}

/** Title and the first paragraph stand together; further ones may go on overleaf. */
export function additionHead(flow: Flow, { title, paragraphs }: Of<'addition'>): number {
  return (
    textHeight(flow, title, flow.width - INSET, ADDED_TITLE) + 3 + pieceHeight(flow, paragraphs[0] ?? '')
  );
}

export function drawAddition(flow: Flow, { title, paragraphs }: Of<'addition'>): void {
  const x = flow.left + INSET;
  const width = flow.width - INSET;
  const bar = (height: number) =>
    artifact(flow, () => {
      flow.doc.save();
      flow.doc.rect(flow.left, flow.y, 2, height).fill(colourOf('accent', printTheme));
      flow.doc.restore();
    });
  const box = element(flow, flow.root, 'Note');
  const head = textHeight(flow, title, width, ADDED_TITLE) + 3;
  bar(head);
  tagged(flow, box, 'P', () => setText(flow, title, x, flow.y, width, ADDED_TITLE));
  flow.y += head;
  for (const text of paragraphs) {
    const height = pieceHeight(flow, text);
    ensure(flow, height);
    bar(height);
    tagged(flow, box, 'P', () => setText(flow, text, x, flow.y, width, BODY));
    flow.y += height;
  }
  box.end();
  flow.y += 8;
}

const TERM: TextLook = { face: 'semibold', size: 8.6, paint: 'secondary' };
const TERM_WIDTH = 92;
const LINE = 30;
/** Room of a signature's image: about 70 by 22 mm. */
const IMAGE: [number, number] = [198, 62];

function lineHeight({ image }: Of<'signature'>['lines'][number]): number {
  return image === undefined ? LINE : Math.max(LINE, fitted(image, ...IMAGE)[1] + 10);
}

export function signatureHeight(flow: Flow, { statement, lines }: Of<'signature'>): number {
  return (
    textHeight(flow, statement, flow.width, BODY) +
    12 +
    lines.reduce((sum, line) => sum + lineHeight(line), 0) +
    8
  );
}

export function drawSignature(flow: Flow, { statement, lines }: Of<'signature'>): void {
  tagged(flow, flow.root, 'P', () => setText(flow, statement, flow.left, flow.y, flow.width, BODY));
  flow.y += textHeight(flow, statement, flow.width, BODY) + 12;
  const width = flow.width - TERM_WIDTH - 120;
  const x = flow.left + TERM_WIDTH;
  for (const line of lines) {
    const { label, value, image, alarm } = line;
    const height = lineHeight(line);
    const base = flow.y + height - 6;
    tagged(flow, flow.root, 'P', () => {
      setText(flow, label, flow.left, base - 15, TERM_WIDTH, TERM);
      const look: TextLook = alarm ? { ...BODY, face: 'semibold', paint: 'alarm' } : BODY;
      if (value !== '') setText(flow, value, x, base - 16, width, look);
    });
    if (image !== undefined) {
      const [w, h] = fitted(image, ...IMAGE);
      const y = base - h - 1;
      tagged(flow, flow.root, 'Figure', () => drawPicture(flow, image, x + 4, y, w, h), {
        alt: label,
        bbox: [x + 4, y, x + 4 + w, y + h],
        placement: 'Block',
      });
    }
    rule(flow, base, 'secondary', 0.6, x, width);
    flow.y += height;
  }
  flow.y += 8;
}
