/** A chart printer and a drill's pen: a strip on a sheet, its truth known to the last digit. Seeded. */
import { type Random, randomFrom } from '../../../packages/engine/src/random.ts';
import type { Trace } from '../../../packages/engine/src/trace/types.ts';
import { blankSheet, type Colour, drawStroke, drawText, fillBox, type Sheet } from './canvas.ts';
import { heightOf, type OtherPrint, printOther } from './otherPrint.ts';

export interface PrintStyle {
  /** Sheet pixels along 1 mm of depth, and over the whole level range. */
  pxPerMm: number;
  chartHeightPx: number;
  paper: Colour;
  grid: {
    colour: Colour;
    everyMm: number;
    everyPct: number;
    width: number;
    /** A heavier line at each so many-th one; 0 for none. */
    heavy: number;
    dash?: readonly [number, number];
  } | null;
  frame: { colour: Colour; width: number; sides: 'all' | 'axes' } | null;
  pen: { colour: Colour; width: number; opacity: number };
  labels: boolean;
  title: boolean;
  /** Thermal paper: opacity of the pen falls along the chart by this share. */
  fade: number;
  /** Stretches of depth (shares of the whole) where the pen does not write. */
  gaps: readonly (readonly [number, number])[];
  /** Someone's writing in this colour across the line, so many scrawls. */
  handwriting: { colour: Colour; count: number } | null;
  /** Ring of a cup: brown, see-through. */
  coffee: boolean;
  /** A second line of another drilling, of this colour. */
  second: { colour: Colour; trace: Trace } | null;
  /** The colour of the chart's own ground, where it is printed on a tint. */
  ground?: Colour;
  /** What else is printed on the sheet. */
  around?: readonly OtherPrint[];
}

export interface PrintedStrip {
  sheet: Sheet;
  /** Corners of the chart on the sheet, clockwise from top left. */
  corners: [number, number][];
  depthMm: [number, number];
  resistance: [number, number];
}

const MARGIN_PX = 60;
/** Numbers and title leave this much of the margin free. */
const CLEAR_PX = 26;

/** Prints a chart from depth 0 to `lengthMm` and level 0 to 100 %, and draws the trace on it. */
export function printStrip(trace: Trace, lengthMm: number, style: PrintStyle, seed: number): PrintedStrip {
  const random = randomFrom(seed);
  const across = Math.round(lengthMm * style.pxPerMm);
  const down = style.chartHeightPx;
  const around = style.around ?? [];
  const extra = (side: OtherPrint['side']) =>
    around.filter((other) => other.side === side).reduce((sum, other) => sum + heightOf(other), 0);
  const above = extra('above');
  const sheet = blankSheet(
    across + 2 * MARGIN_PX,
    down + 2 * MARGIN_PX + above + extra('below'),
    style.paper,
  );
  const left = MARGIN_PX;
  const top = MARGIN_PX + above;
  const right = left + across;
  const bottom = top + down;
  const xAt = (mm: number) => left + (across * mm) / lengthMm;
  const yAt = (pct: number) => bottom - (down * pct) / 100;

  if (style.ground) fillBox(sheet, [left, top, right, bottom], style.ground);
  if (style.grid) {
    const { colour, everyMm, everyPct, width, heavy, dash } = style.grid;
    let n = 0;
    for (let mm = 0; mm <= lengthMm + 1e-9; mm += everyMm) {
      const w = heavy && n++ % heavy === 0 ? 2 * width : width;
      drawStroke(sheet, { path: [xAt(mm), top, xAt(mm), bottom], width: w, colour, dash });
    }
    n = 0;
    for (let pct = 0; pct <= 100 + 1e-9; pct += everyPct) {
      const w = heavy && n++ % heavy === 0 ? 2 * width : width;
      drawStroke(sheet, { path: [left, yAt(pct), right, yAt(pct)], width: w, colour, dash });
    }
  }
  if (style.frame) {
    const { colour, width, sides } = style.frame;
    const path = [left, top, left, bottom, right, bottom];
    if (sides === 'all') path.push(right, top, left, top);
    drawStroke(sheet, { path, width, colour });
  }
  if (style.labels) {
    const ink: Colour = style.frame?.colour ?? [0.25, 0.25, 0.28];
    const step = niceStep(lengthMm / 6);
    for (let mm = 0; mm <= lengthMm + 1e-9; mm += step) {
      drawStroke(sheet, { path: [xAt(mm), bottom, xAt(mm), bottom + 5], width: 1.5, colour: ink });
      drawText(sheet, String(mm), xAt(mm), bottom + 10, 13, ink, 'middle');
    }
    for (let pct = 0; pct <= 100; pct += 20) {
      drawStroke(sheet, { path: [left - 5, yAt(pct), left, yAt(pct)], width: 1.5, colour: ink });
      drawText(sheet, String(pct), left - 8, yAt(pct) - 6.5, 13, ink, 'right');
    }
  }
  if (style.title) drawText(sheet, 'Tree T12 4 mm', left + across * 0.3, top - 40, 18, [0.2, 0.2, 0.22]);

  const next = { above: CLEAR_PX / 2, below: bottom + MARGIN_PX - CLEAR_PX / 2 };
  for (const other of around) {
    printOther(sheet, other, left, right, next[other.side], random.fork(`other ${other.kind}`));
    next[other.side] += heightOf(other);
  }

  if (style.second)
    drawTrace(sheet, style.second.trace, xAt, yAt, {
      ...style,
      pen: { ...style.pen, colour: style.second.colour },
    });
  drawTrace(sheet, trace, xAt, yAt, style);

  if (style.handwriting) {
    for (let i = 0; i < style.handwriting.count; i++) {
      scrawl(
        sheet,
        random,
        left + across * (0.15 + 0.6 * random.uniform()),
        top + down * (0.2 + 0.5 * random.uniform()),
        down * 0.22,
        style.handwriting.colour,
      );
    }
  }
  if (style.coffee)
    cupRing(sheet, random, left + across * (0.3 + 0.4 * random.uniform()), top + down * 0.5, down * 0.55);
  return {
    sheet,
    corners: [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    depthMm: [0, lengthMm],
    resistance: [0, 100],
  };
}

function drawTrace(
  sheet: Sheet,
  trace: Trace,
  xAt: (mm: number) => number,
  yAt: (pct: number) => number,
  { pen, fade, gaps }: PrintStyle,
): void {
  const { depthMm, resistancePct } = trace;
  const x0 = xAt(depthMm[0]!);
  const x1 = xAt(depthMm.at(-1)!);
  const blank = (mm: number) =>
    gaps.some(([a, b]) => {
      const share = mm / depthMm.at(-1)!;
      return share >= a && share <= b;
    });
  let path: number[] = [];
  const put = () => {
    if (path.length) {
      drawStroke(sheet, {
        path,
        width: pen.width,
        colour: pen.colour,
        opacity: (x) => pen.opacity * (1 - (fade * (x - x0)) / (x1 - x0)),
      });
    }
    path = [];
  };
  for (let i = 0; i < depthMm.length; i++) {
    if (blank(depthMm[i]!)) put();
    else path.push(xAt(depthMm[i]!), yAt(resistancePct[i]!));
  }
  put();
}

function niceStep(wanted: number): number {
  const power = 10 ** Math.floor(Math.log10(wanted));
  return [1, 2, 5, 10].map((m) => m * power).find((step) => step >= wanted)!;
}

/** Loops and slants such as a ballpoint makes. */
function scrawl(sheet: Sheet, random: Random, x: number, y: number, size: number, colour: Colour): void {
  const path: number[] = [];
  const letters = 5;
  for (let t = 0; t <= letters * 12; t++) {
    const a = (t / 12) * 2 * Math.PI;
    const tall = random.uniform() < 0.02 ? 1.4 : 1;
    path.push(
      x + size * (0.5 * (t / 12) + 0.22 * Math.sin(a)),
      y + size * 0.5 * tall * Math.cos(a + 0.7 * Math.sin(a / 2)),
    );
  }
  drawStroke(sheet, { path, width: 2.2, colour });
}

function cupRing(sheet: Sheet, random: Random, x: number, y: number, radius: number): void {
  const path: number[] = [];
  const start = random.uniform() * 6;
  for (let a = start; a < start + 5.2; a += 0.05)
    path.push(x + radius * Math.cos(a), y + radius * Math.sin(a));
  drawStroke(sheet, { path, width: radius * 0.12, colour: [0.55, 0.4, 0.25], opacity: 0.35 });
  drawStroke(sheet, { path, width: radius * 0.03, colour: [0.5, 0.35, 0.2], opacity: 0.4 });
}
