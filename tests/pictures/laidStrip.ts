/**
 * Photographed strips laid out in the ways that charts come: left to right, right to left, upright; with numbers, or
 * without and a ruler laid along them. Printed and photographed by the simulator, so that the truth is known.
 */
import type { CornersPx, PointPx, StripImage, Trace } from '@standfast/engine';
import { blankSheet, drawStroke, drawText, type Sheet } from '../simulated/strips/canvas.ts';
import { depthError, levelError } from '../simulated/strips/judge.ts';
import { type CameraStyle, packJpeg, photograph } from '../simulated/strips/photograph.ts';
import { PLAIN_PRINT, STEADY_CAMERA } from '../simulated/strips/plainStyle.ts';
import { type PrintedStrip, type PrintStyle, printStrip } from '../simulated/strips/printStrip.ts';
import { simulateTrace } from '../simulated/traces/simulateTrace.ts';

export type Laid = 'left to right' | 'right to left' | 'upright';

export interface LaidStrip {
  image: StripImage;
  jpeg: Uint8Array;
  trace: Trace;
  /** Clockwise from the chart's own top left. */
  cornersPx: CornersPx;
  /** Depth at the chart's own left and right edge, mm. */
  depthMm: readonly [number, number];
  /** Where a mark of the ruler lies on the photo. */
  rulerAt: (mm: number) => PointPx;
}

/** How well a strip must be read: the bounds for clean strips, mm of depth and percent of full scale. */
export const CLEAN = { depthMm: 0.5, levelPct: 1 } as const;

const CHART_MM = 240;
const MARGIN_PX = 60;
/** The ruler lies this far below the chart, its zero this far beyond the chart's left edge. */
const RULER_BELOW_PX = 34;
const RULER_ZERO_MM = 7.5;
const SEED = 31;

const PRINT: PrintStyle = { ...PLAIN_PRINT, labels: false };
const CAMERA: CameraStyle = { ...STEADY_CAMERA, widthPx: 1400, tiltDeg: 6 };

export function laidStrip(laid: Laid, { numbers = false, ruler = false } = {}): LaidStrip {
  const { trace } = simulateTrace({
    seed: SEED,
    spacingMm: 0.25,
    noiseSdPct: 0.6,
    stretches: [
      { kind: 'air', lengthMm: 6 },
      { kind: 'bark', lengthMm: 12 },
      { kind: 'sound', lengthMm: 72 },
      { kind: 'void', lengthMm: 35 },
      { kind: 'sound', lengthMm: 85 },
    ],
  });
  const drawn = printStrip(trace, CHART_MM, PRINT, SEED);
  if (ruler) layRuler(drawn.sheet);
  const strip = asLaid(drawn, laid);
  if (numbers) printNumbers(strip, laid);
  const widthPx = laid === 'upright' ? 620 : CAMERA.widthPx;
  const { image, toPhoto } = photograph(strip, { ...CAMERA, widthPx }, SEED);
  /** Shares of the chart as its own reader sees it, to the photo. */
  const own = (u: number, v: number): PointPx => (laid === 'upright' ? toPhoto(1 - v, u) : toPhoto(u, v));
  const backwards = laid === 'right to left';
  return {
    image,
    jpeg: packJpeg(image, 90),
    trace,
    cornersPx: [own(0, 0), own(1, 0), own(1, 1), own(0, 1)],
    depthMm: backwards ? [CHART_MM, 0] : [0, CHART_MM],
    rulerAt: (mm) => {
      const u = (RULER_ZERO_MM + mm) / CHART_MM;
      return own(backwards ? 1 - u : u, 1 + RULER_BELOW_PX / PRINT.chartHeightPx);
    },
  };
}

/** How far a trace that was read lies from the true one. */
export function offTruth(
  read: { depthMm: ArrayLike<number>; resistance: ArrayLike<number> },
  truth: Trace,
): { depthMm: number; levelPct: number } {
  const line = {
    depthMm: Float64Array.from(read.depthMm),
    resistancePct: Float64Array.from(read.resistance),
  };
  return { depthMm: depthError(line, truth), levelPct: levelError(line, truth).levelPct };
}

/** The sheet as a chart that runs the other way, or stands upright with its depth downwards. */
function asLaid(strip: PrintedStrip, laid: Laid): PrintedStrip {
  const { width, height } = strip.sheet;
  if (laid === 'left to right') return strip;
  const across = CHART_MM * PRINT.pxPerMm;
  const mirrored = laid === 'right to left';
  const sheet = mirrored
    ? rearranged(strip.sheet, width, height, (x, y) => [width - 1 - x, y])
    : rearranged(strip.sheet, height, width, (x, y) => [y, height - 1 - x]);
  // A sheet of an even number of pixels has its middle between two of them: what is mirrored moves by one.
  const [right, bottom] = mirrored
    ? [width - 1 - MARGIN_PX, MARGIN_PX + PRINT.chartHeightPx]
    : [height - 1 - MARGIN_PX, MARGIN_PX + across];
  const left = right - (mirrored ? across : PRINT.chartHeightPx);
  const corners: [number, number][] = [
    [left, MARGIN_PX],
    [right, MARGIN_PX],
    [right, bottom],
    [left, bottom],
  ];
  return { ...strip, sheet, corners };
}

/** A sheet of this size whose every pixel comes from a place of another. */
function rearranged(
  from: Sheet,
  width: number,
  height: number,
  source: (x: number, y: number) => readonly [number, number],
): Sheet {
  const to = blankSheet(width, height, [1, 1, 1]);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [sx, sy] = source(x, y);
      const k = 3 * (sy * from.width + sx);
      to.reflect.set(from.reflect.subarray(k, k + 3), 3 * (y * width + x));
    }
  }
  return to;
}

/** A ruler along the bottom of the sheet: a mark each 5 mm, a longer one each 10 mm, no numbers. */
function layRuler(sheet: Sheet): void {
  const y = MARGIN_PX + PRINT.chartHeightPx + RULER_BELOW_PX;
  const xAt = (mm: number) => MARGIN_PX + (RULER_ZERO_MM + mm) * PRINT.pxPerMm;
  const colour = [0.25, 0.2, 0.12] as const;
  drawStroke(sheet, { path: [xAt(-2), y, xAt(220), y], width: 1.2, colour });
  for (let mm = 0; mm <= 220; mm += 5) {
    const length = mm % 10 === 0 ? 16 : 9;
    drawStroke(sheet, { path: [xAt(mm), y, xAt(mm), y + length], width: 1, colour });
  }
}

/** Numbers at every 40 mm and 20 %, the way up that a reader of the sheet expects. */
function printNumbers({ sheet, corners }: PrintedStrip, laid: Laid): void {
  const ink = PRINT.frame!.colour;
  const [left, top] = corners[0]!;
  const [right, bottom] = corners[2]!;
  for (let mm = 0; mm <= CHART_MM; mm += 40) {
    const along = mm / CHART_MM;
    if (laid === 'upright') {
      drawText(sheet, String(mm), left - 8, top + along * (bottom - top) - 6.5, 13, ink, 'right');
    } else {
      const share = laid === 'right to left' ? 1 - along : along;
      drawText(sheet, String(mm), left + share * (right - left), bottom + 10, 13, ink, 'middle');
    }
  }
  for (let pct = 0; pct <= 100; pct += 20) {
    if (laid === 'upright') {
      drawText(sheet, String(pct), left + (pct / 100) * (right - left), bottom + 10, 13, ink, 'middle');
    } else
      drawText(sheet, String(pct), left - 8, bottom - (pct / 100) * (bottom - top) - 6.5, 13, ink, 'right');
  }
}
