/** A plain framed chart on a pale grid with a dark blue pen, and a steady camera: for tests that are not of the reading. */
import type { CameraStyle } from './photograph.ts';
import type { PrintStyle } from './printStrip.ts';

export const PLAIN_PRINT: PrintStyle = {
  pxPerMm: 4,
  chartHeightPx: 300,
  paper: [0.97, 0.97, 0.95],
  grid: { colour: [0.8, 0.85, 0.8], everyMm: 10, everyPct: 10, width: 1.2, heavy: 5 },
  frame: { colour: [0.1, 0.1, 0.1], width: 2, sides: 'all' },
  pen: { colour: [0.1, 0.15, 0.4], width: 3, opacity: 1 },
  labels: true,
  title: false,
  fade: 0,
  gaps: [],
  handwriting: null,
  coffee: false,
  second: null,
};

export const STEADY_CAMERA: CameraStyle = {
  widthPx: 1500,
  tiltDeg: 8,
  swingDeg: 5,
  turnDeg: 2,
  shadow: 0.2,
  light: [1, 1, 0.96],
  blurPx: 0.6,
  noise: 1.5,
  jpegQuality: null,
  creases: 0,
  curl: 0,
};
