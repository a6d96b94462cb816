/** The firm above the title of the first page: logo at the left, lines at the right. */
import type { ReportDocument } from '../document/blocks.ts';
import { drawPicture, fitted } from './drawEvidence.ts';
import { type Flow, setText, type TextLook, tagged, textHeight } from './flow.ts';

type Letterhead = NonNullable<ReportDocument['letterhead']>;

const FIRST: TextLook = { face: 'semibold', size: 9.2, align: 'right' };
const LINE: TextLook = { size: 8.2, paint: 'secondary', align: 'right', lineGap: -0.6 };
/** Room of the logo: about 63 by 17 mm. */
const LOGO: [number, number] = [180, 48];
const BELOW = 12;

const lookOf = (i: number) => (i === 0 ? FIRST : LINE);

function linesWidth(flow: Flow, { logo }: Letterhead): number {
  return logo === null ? flow.width : flow.width - LOGO[0] - 16;
}

export function letterheadHeight(flow: Flow, letterhead: Letterhead): number {
  const width = linesWidth(flow, letterhead);
  const lines = letterhead.lines.reduce((sum, line, i) => sum + textHeight(flow, line, width, lookOf(i)), 0);
  const logo = letterhead.logo === null ? 0 : fitted(letterhead.logo, ...LOGO)[1];
  return Math.max(lines, logo) + BELOW;
}

export function drawLetterhead(flow: Flow, letterhead: Letterhead): void {
  const { logo, lines, logoText } = letterhead;
  const width = linesWidth(flow, letterhead);
  const height = letterheadHeight(flow, letterhead);
  if (logo !== null) {
    const [w, h] = fitted(logo, ...LOGO);
    tagged(flow, flow.root, 'Figure', () => drawPicture(flow, logo, flow.left, flow.y, w, h), {
      alt: logoText,
      bbox: [flow.left, flow.y, flow.left + w, flow.y + h],
      placement: 'Block',
    });
  }
  let y = flow.y;
  lines.forEach((line, i) => {
    const at = y;
    tagged(flow, flow.root, 'P', () =>
      setText(flow, line, flow.left + flow.width - width, at, width, lookOf(i)),
    );
    y += textHeight(flow, line, width, lookOf(i));
  });
  flow.y += height;
}
