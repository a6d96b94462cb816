/**
 * Styles of strips and of photos of them. The reader was tuned on the tuning styles only; figures are told on the
 * judging styles, with other colours, widths, grids and disturbances, and other seeds.
 */
import type { Random } from '../../../packages/engine/src/random.ts';
import type { Trace } from '../../../packages/engine/src/trace/types.ts';
import type { CameraStyle } from './photograph.ts';
import type { PrintStyle } from './printStrip.ts';

export interface StripStyle {
  name: string;
  about: string;
  /** Clean strips are held to tighter bounds. */
  hard: boolean;
  print: (random: Random, other: Trace) => PrintStyle;
  camera: (random: Random) => CameraStyle;
  /** How far the chart runs on beyond where the pen stopped, share of the trace's length. */
  beyond: number;
}

const between = (random: Random, a: number, b: number) => a + (b - a) * random.uniform();

const plainPrint: PrintStyle = {
  pxPerMm: 4.5,
  chartHeightPx: 330,
  paper: [0.97, 0.97, 0.95],
  grid: { colour: [0.8, 0.84, 0.8], everyMm: 10, everyPct: 10, width: 1.2, heavy: 5 },
  frame: { colour: [0.12, 0.12, 0.12], width: 2, sides: 'all' },
  pen: { colour: [0.1, 0.15, 0.4], width: 3, opacity: 1 },
  labels: true,
  title: true,
  fade: 0,
  gaps: [],
  handwriting: null,
  coffee: false,
  second: null,
};

const plainCamera: CameraStyle = {
  widthPx: 1600,
  tiltDeg: 0,
  swingDeg: 0,
  turnDeg: 0,
  shadow: 0.1,
  light: [1, 1, 0.96],
  blurPx: 0.6,
  noise: 1.5,
  jpegQuality: 88,
  creases: 0,
  curl: 0,
};

const tilted = (random: Random): Partial<CameraStyle> => ({
  tiltDeg: between(random, -20, 20),
  swingDeg: between(random, -15, 15),
  turnDeg: between(random, -6, 6),
});

const style = (
  name: string,
  about: string,
  hard: boolean,
  print: (random: Random, other: Trace) => Partial<PrintStyle>,
  camera: (random: Random) => Partial<CameraStyle>,
  beyond = 0,
): StripStyle => ({
  name,
  about,
  hard,
  print: (random, other) => ({ ...plainPrint, ...print(random, other) }),
  camera: (random) => ({ ...plainCamera, ...camera(random) }),
  beyond,
});

export const TUNING_STYLES: StripStyle[] = [
  style(
    'plain',
    'dark blue pen on a light green grid',
    false,
    () => ({}),
    () => ({}),
  ),
  style(
    'red on grey',
    'thin red pen, grey grid',
    false,
    () => ({
      pen: { colour: [0.8, 0.15, 0.1], width: 2, opacity: 1 },
      grid: { colour: [0.5, 0.5, 0.5], everyMm: 10, everyPct: 10, width: 1, heavy: 0 },
    }),
    () => ({}),
  ),
  style(
    'black on black',
    'thick black pen on a thin black grid',
    false,
    () => ({
      pen: { colour: [0.05, 0.05, 0.05], width: 5, opacity: 1 },
      grid: { colour: [0.05, 0.05, 0.05], everyMm: 20, everyPct: 20, width: 1.5, heavy: 0 },
    }),
    (random) => tilted(random),
  ),
  style(
    'pale wax',
    'pale pen on yellowish paper, grain and shadow',
    true,
    () => ({
      pen: { colour: [0.72, 0.72, 0.7], width: 3, opacity: 1 },
      paper: [0.88, 0.87, 0.8],
      grid: { colour: [0.8, 0.78, 0.72], everyMm: 5, everyPct: 10, width: 1, heavy: 0 },
    }),
    () => ({ noise: 3, shadow: 0.3 }),
  ),
  style(
    'everything',
    'handwriting, coffee, fade, a gap, creases, tilt, shadow, JPEG 50',
    true,
    () => ({
      handwriting: { colour: [0.15, 0.15, 0.2], count: 2 },
      coffee: true,
      fade: 0.4,
      gaps: [[0.5, 0.56]],
    }),
    () => ({
      tiltDeg: 20,
      swingDeg: 12,
      turnDeg: 4,
      shadow: 0.5,
      noise: 4,
      jpegQuality: 50,
      creases: 2,
      blurPx: 1,
    }),
  ),
  style(
    'bowed',
    'curled sheet at a tilt',
    true,
    () => ({}),
    () => ({ curl: -0.02, tiltDeg: 20, turnDeg: 3, swingDeg: -10 }),
  ),
  style(
    'black on sepia',
    'black pen of 2 to 4 px on a fine sepia grid',
    false,
    (random) => ({
      pen: { colour: [0.08, 0.07, 0.07], width: between(random, 2, 4), opacity: 1 },
      grid: { colour: [0.93, 0.8, 0.64], everyMm: 5, everyPct: 5, width: 1, heavy: 5 },
    }),
    () => ({}),
  ),
  style(
    'navy on pink',
    'navy pen on a pink grid, tilted',
    false,
    (random) => ({
      pen: { colour: [0.08, 0.1, 0.28], width: between(random, 2, 4), opacity: 1 },
      grid: { colour: [0.97, 0.76, 0.8], everyMm: 4, everyPct: 4, width: 1, heavy: 5 },
      chartHeightPx: 400,
    }),
    (random) => tilted(random),
  ),
  style(
    'black on teal, no frame',
    'black pen on a teal grid whose outer lines are like the inner ones',
    false,
    () => ({
      pen: { colour: [0.1, 0.1, 0.1], width: 2.5, opacity: 1 },
      grid: { colour: [0.55, 0.8, 0.78], everyMm: 5, everyPct: 10, width: 1.2, heavy: 0 },
      frame: null,
    }),
    (random) => tilted(random),
  ),
  style(
    'brown on lilac, finest',
    'brown pen on a grid of 2 mm, frame in the grid’s own colour',
    false,
    () => ({
      pen: { colour: [0.3, 0.18, 0.1], width: 3, opacity: 1 },
      grid: { colour: [0.85, 0.8, 0.95], everyMm: 2, everyPct: 2.5, width: 1, heavy: 5 },
      frame: { colour: [0.6, 0.5, 0.75], width: 2, sides: 'all' },
    }),
    () => ({}),
  ),
  style(
    'form with a table',
    'boxes to fill in above, a ruled table as wide as the chart below',
    false,
    () => ({
      pen: { colour: [0.1, 0.1, 0.12], width: 2.5, opacity: 1 },
      grid: { colour: [0.7, 0.82, 0.72], everyMm: 10, everyPct: 20, width: 1, heavy: 0 },
      around: [
        { kind: 'boxes', side: 'above', colour: [0.15, 0.15, 0.15], span: [0, 1], parts: 5, rowPx: 30 },
        { kind: 'table', side: 'below', colour: [0.15, 0.15, 0.15], span: [0, 1], parts: 4, rowPx: 28 },
      ],
    }),
    (random) => tilted(random),
  ),
  style(
    'band and bracket',
    'a band of filled boxes below, as wide as the chart, a measure above, words about',
    false,
    () => ({
      pen: { colour: [0.1, 0.12, 0.15], width: 3, opacity: 1 },
      grid: { colour: [0.85, 0.85, 0.82], everyMm: 50, everyPct: 20, width: 1, heavy: 0 },
      chartHeightPx: 240,
      around: [
        { kind: 'words', side: 'above', colour: [0.1, 0.1, 0.1], span: [0, 0.8], parts: 2, rowPx: 24 },
        { kind: 'bracket', side: 'above', colour: [0.1, 0.1, 0.1], span: [0.1, 1], parts: 1, rowPx: 18 },
        {
          kind: 'band',
          side: 'below',
          colour: [0.1, 0.1, 0.1],
          span: [0, 1],
          parts: 2,
          rowPx: 60,
          fills: [
            [0.93, 0.9, 0.85],
            [0.72, 0.69, 0.65],
          ],
        },
        { kind: 'words', side: 'below', colour: [0.1, 0.1, 0.1], span: [0, 1], parts: 3, rowPx: 24 },
      ],
    }),
    () => ({}),
  ),
  style(
    'tinted ground, bands',
    'chart on a tinted ground without a grid, bands above and below',
    false,
    () => ({
      pen: { colour: [0.5, 0.1, 0.1], width: 3, opacity: 1 },
      ground: [0.9, 0.92, 0.95],
      grid: null,
      chartHeightPx: 260,
      around: [
        {
          kind: 'band',
          side: 'above',
          colour: [0.3, 0.3, 0.3],
          span: [0, 1],
          parts: 5,
          rowPx: 34,
          fills: [
            [0.95, 0.85, 0.6],
            [0.8, 0.9, 0.75],
            [0.9, 0.7, 0.7],
          ],
        },
        {
          kind: 'band',
          side: 'below',
          colour: [0.2, 0.2, 0.2],
          span: [0, 1],
          parts: 1,
          rowPx: 70,
          fills: [[0.75, 0.8, 0.9]],
        },
      ],
    }),
    (random) => tilted(random),
  ),
  style(
    'green on rose, boxes',
    'dark green pen on a rose grid without a frame; boxes as wide as the chart or less above and below, a measure over it',
    false,
    (random) => ({
      pen: { colour: [0.05, 0.3, 0.12], width: between(random, 2, 4), opacity: 1 },
      grid: { colour: [0.95, 0.7, 0.72], everyMm: 5, everyPct: 5, width: 1.2, heavy: 4 },
      frame: null,
      chartHeightPx: between(random, 240, 320) | 0,
      around: [
        {
          kind: 'boxes',
          side: 'above',
          colour: [0.15, 0.1, 0.1],
          span: [0, between(random, 0.6, 1)],
          parts: random.uniform() < 0.5 ? 2 : 4,
          rowPx: 36,
        },
        { kind: 'bracket', side: 'above', colour: [0.1, 0.1, 0.1], span: [0, 0.9], parts: 1, rowPx: 22 },
        { kind: 'boxes', side: 'below', colour: [0.15, 0.1, 0.1], span: [0, 1], parts: 3, rowPx: 54 },
      ],
    }),
    (random) => tilted(random),
  ),
  style(
    'long chart, red on grey',
    'dark red pen on a grey grid in a black frame; the chart runs on for half the length of the trace',
    false,
    (random) => ({
      pen: { colour: [0.45, 0.08, 0.1], width: between(random, 2.5, 3.5), opacity: 1 },
    }),
    () => ({}),
    0.5,
  ),
  style(
    'broad marker',
    'pen of 6 to 8 px on a thin grid',
    false,
    (random) => ({
      pen: { colour: [0.2, 0.1, 0.3], width: between(random, 6, 8), opacity: 1 },
      grid: { colour: [0.85, 0.85, 0.8], everyMm: 20, everyPct: 25, width: 1, heavy: 0 },
    }),
    () => ({}),
  ),
];

export const JUDGING_STYLES: StripStyle[] = [
  style(
    'black on orange',
    'black pen of 2 to 4 px on an orange grid',
    false,
    (random) => ({
      pen: { colour: [0.06, 0.06, 0.07], width: between(random, 2, 4), opacity: 1 },
      grid: { colour: [0.98, 0.8, 0.62], everyMm: 5, everyPct: 5, width: 1, heavy: 4 },
    }),
    () => ({}),
  ),
  style(
    'green pen',
    'green pen of 3 to 5 px, blue grid, no frame',
    false,
    (random) => ({
      pen: { colour: [0.1, 0.5, 0.25], width: between(random, 3, 5), opacity: 1 },
      grid: { colour: [0.72, 0.82, 0.95], everyMm: 10, everyPct: 20, width: 1.5, heavy: 0 },
      frame: null,
    }),
    () => ({}),
  ),
  style(
    'thick, no grid',
    'pen of 6 to 8 px, frame only',
    false,
    (random) => ({
      pen: { colour: [0.15, 0.15, 0.15], width: between(random, 6, 8), opacity: 1 },
      grid: null,
    }),
    () => ({}),
  ),
  style(
    'long chart',
    'black pen, a blue grid in a black frame; the chart runs on for 40 % of the length of the trace',
    false,
    (random) => ({
      pen: { colour: [0.08, 0.08, 0.1], width: between(random, 2.5, 3.5), opacity: 1 },
      grid: { colour: [0.7, 0.8, 0.92], everyMm: 10, everyPct: 10, width: 1.2, heavy: 5 },
    }),
    (random) => tilted(random),
    0.4,
  ),
  style(
    'violet, dotted grid',
    'violet pen on a dashed grey grid',
    false,
    () => ({
      pen: { colour: [0.4, 0.1, 0.5], width: 2.5, opacity: 1 },
      grid: { colour: [0.55, 0.55, 0.55], everyMm: 20, everyPct: 10, width: 1.2, heavy: 0, dash: [3, 5] },
    }),
    () => ({}),
  ),
  style(
    'carbon grey',
    'see-through grey pen, grey grid, slight tilt',
    true,
    (random) => ({
      pen: { colour: [0.35, 0.35, 0.37], width: 3, opacity: between(random, 0.55, 0.75) },
      grid: { colour: [0.82, 0.82, 0.82], everyMm: 10, everyPct: 10, width: 1.2, heavy: 5 },
    }),
    (random) => ({ ...tilted(random), noise: 3 }),
  ),
  style(
    'thermal fade',
    'black line that fades by 60 to 70 % along the strip',
    true,
    (random) => ({
      pen: { colour: [0.1, 0.1, 0.12], width: 3.5, opacity: 0.95 },
      fade: between(random, 0.6, 0.7),
      grid: { colour: [0.9, 0.86, 0.86], everyMm: 10, everyPct: 25, width: 1, heavy: 0 },
    }),
    (random) => ({ ...tilted(random), noise: 2.5, shadow: 0.25 }),
  ),
  style(
    'steep tilt',
    'tilt of 25 to 30 degrees, swing of 20, strong shadow',
    true,
    () => ({}),
    (random) => ({
      tiltDeg: (random.uniform() < 0.5 ? -1 : 1) * between(random, 25, 30),
      swingDeg: between(random, -20, 20),
      turnDeg: between(random, -8, 8),
      shadow: 0.6,
      noise: 3,
    }),
  ),
  style(
    'blurred, JPEG 40',
    'out of focus by 1.6 px, JPEG quality 40',
    true,
    () => ({ pen: { colour: [0.15, 0.15, 0.45], width: 4, opacity: 1 } }),
    (random) => ({ ...tilted(random), blurPx: 1.6, jpegQuality: 40, noise: 4 }),
  ),
  style(
    'creased and bowed',
    'four creases, curl of 1.5 %',
    true,
    () => ({ grid: { colour: [0.85, 0.7, 0.7], everyMm: 10, everyPct: 10, width: 1.2, heavy: 2 } }),
    (random) => ({ ...tilted(random), creases: 4, curl: 0.015 * (random.uniform() < 0.5 ? -1 : 1) }),
  ),
  style(
    'wax paper',
    'pen 12 to 18 % darker than grey paper',
    true,
    (random) => {
      const dark = between(random, 0.12, 0.18);
      return {
        paper: [0.8, 0.8, 0.78],
        pen: { colour: [0.8 - dark, 0.8 - dark, 0.79 - dark], width: 3.5, opacity: 1 },
        grid: { colour: [0.76, 0.76, 0.73], everyMm: 10, everyPct: 10, width: 1, heavy: 0 },
        frame: { colour: [0.55, 0.55, 0.53], width: 2, sides: 'all' },
      };
    },
    () => ({ noise: 2.5, shadow: 0.2 }),
  ),
  style(
    'written over',
    'three scrawls in blue over a black line',
    true,
    () => ({
      pen: { colour: [0.05, 0.05, 0.05], width: 3, opacity: 1 },
      handwriting: { colour: [0.15, 0.2, 0.6], count: 3 },
    }),
    (random) => tilted(random),
  ),
  style(
    'coffee',
    'ring of a cup over a red line',
    true,
    () => ({ pen: { colour: [0.75, 0.12, 0.12], width: 3, opacity: 1 }, coffee: true }),
    (random) => ({ ...tilted(random), shadow: 0.3 }),
  ),
  style(
    'pen lifts',
    'two gaps, one of 8 % of the strip',
    true,
    () => ({
      gaps: [
        [0.3, 0.33],
        [0.62, 0.7],
      ],
    }),
    (random) => tilted(random),
  ),
  style(
    'two drillings',
    'a second line in another colour on the same chart',
    true,
    (_random, other) => ({
      pen: { colour: [0.1, 0.12, 0.45], width: 3, opacity: 1 },
      second: { colour: [0.75, 0.15, 0.1], trace: other },
    }),
    (random) => tilted(random),
  ),
  style(
    'black on green, full sheet',
    'black pen on a fine green grid; words and a table above, a band of colours below',
    false,
    (random) => ({
      pen: { colour: [0.07, 0.08, 0.08], width: between(random, 2, 4), opacity: 1 },
      grid: { colour: [0.7, 0.9, 0.72], everyMm: 5, everyPct: 4, width: 1, heavy: 5 },
      around: [
        { kind: 'words', side: 'above', colour: [0.1, 0.1, 0.1], span: [0.1, 0.7], parts: 2, rowPx: 22 },
        { kind: 'table', side: 'above', colour: [0.2, 0.2, 0.25], span: [0, 1], parts: 3, rowPx: 26 },
        {
          kind: 'band',
          side: 'below',
          colour: [0.15, 0.15, 0.15],
          span: [0, 1],
          parts: 4,
          rowPx: 48,
          fills: [
            [0.8, 0.72, 0.6],
            [0.95, 0.9, 0.75],
            [0.6, 0.75, 0.85],
          ],
        },
      ],
    }),
    (random) => tilted(random),
  ),
  style(
    'maroon on blue, boxes',
    'maroon pen on a blue grid without a frame; boxes above and below, a measure over the chart',
    false,
    (random) => ({
      pen: { colour: [0.35, 0.05, 0.12], width: between(random, 2, 4), opacity: 1 },
      grid: { colour: [0.6, 0.74, 0.94], everyMm: 4, everyPct: 5, width: 1.2, heavy: 5 },
      frame: null,
      chartHeightPx: 280,
      around: [
        { kind: 'boxes', side: 'above', colour: [0.1, 0.1, 0.3], span: [0, 0.9], parts: 3, rowPx: 40 },
        { kind: 'bracket', side: 'above', colour: [0.1, 0.1, 0.1], span: [0, 0.85], parts: 1, rowPx: 20 },
        { kind: 'boxes', side: 'below', colour: [0.1, 0.1, 0.3], span: [0, 1], parts: 2, rowPx: 60 },
      ],
    }),
    (random) => tilted(random),
  ),
];
