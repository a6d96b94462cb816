/** A photographed paper strip for the browser tests: printed, drawn and photographed by the simulator, truth known. */
import { type CameraStyle, packJpeg, photograph } from '../simulated/strips/photograph.ts';
import { type PrintStyle, printStrip } from '../simulated/strips/printStrip.ts';
import { simulateTrace } from '../simulated/traces/simulateTrace.ts';

/** What the needle met, mm: bark, wood, a void, wood. */
export const VOID_MM = [95, 135] as const;
/** The same of the second drilling on the sheet. */
export const SECOND_VOID_MM = [150, 190] as const;
/** Depth at the chart's right edge, mm. */
export const CHART_MM = 250;

const PRINT: PrintStyle = {
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
const CAMERA: CameraStyle = {
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

function needlePass(seed: number, voidMm: readonly [number, number]) {
  return simulateTrace({
    seed,
    spacingMm: 0.25,
    noiseSdPct: 0.6,
    stretches: [
      { kind: 'bark', lengthMm: 14 },
      { kind: 'sound', lengthMm: voidMm[0] - 14 },
      { kind: 'void', lengthMm: voidMm[1] - voidMm[0] },
      { kind: 'sound', lengthMm: 220 - voidMm[1] },
    ],
  }).trace;
}

/** The photo as a JPEG; with `second` a red line of another drilling is on the same sheet. */
export function stripPhoto({ second = false } = {}): Buffer {
  const print = second
    ? { ...PRINT, second: { colour: [0.8, 0.12, 0.1] as const, trace: needlePass(9, SECOND_VOID_MM) } }
    : PRINT;
  const strip = printStrip(needlePass(7, VOID_MM), CHART_MM, print as PrintStyle, 1);
  return Buffer.from(packJpeg(photograph(strip, CAMERA, 2).image, 88));
}

/** The same picture bytes with an EXIF tag that says how the camera was held (CIPA DC-008, tag 0x0112). */
export function heldAs(jpeg: Buffer, orientation: number): Buffer {
  const tiff = [
    0x4d,
    0x4d,
    0,
    42,
    0,
    0,
    0,
    8,
    0,
    1,
    0x01,
    0x12,
    0,
    3,
    0,
    0,
    0,
    1,
    0,
    orientation,
    0,
    0,
    0,
    0,
    0,
    0,
  ];
  const body = [0x45, 0x78, 0x69, 0x66, 0, 0, ...tiff];
  const length = body.length + 2;
  const segment = Buffer.from([0xff, 0xe1, length >> 8, length & 255, ...body]);
  return Buffer.concat([jpeg.subarray(0, 2), segment, jpeg.subarray(2)]);
}
