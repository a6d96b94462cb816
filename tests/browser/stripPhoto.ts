/** A photographed paper strip for the browser tests: printed, drawn and photographed by the simulator, truth known. */
import { packJpeg, photograph } from '../simulated/strips/photograph.ts';
import { PLAIN_PRINT, STEADY_CAMERA } from '../simulated/strips/plainStyle.ts';
import { type PrintStyle, printStrip } from '../simulated/strips/printStrip.ts';
import { simulateTrace } from '../simulated/traces/simulateTrace.ts';

/** What the needle met, mm: bark, wood, a void, wood. */
export const VOID_MM = [95, 135] as const;
/** The same of the second drilling on the sheet. */
export const SECOND_VOID_MM = [150, 190] as const;
/** Depth at the chart's right edge, mm. */
export const CHART_MM = 250;

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
    ? { ...PLAIN_PRINT, second: { colour: [0.8, 0.12, 0.1] as const, trace: needlePass(9, SECOND_VOID_MM) } }
    : PLAIN_PRINT;
  const strip = printStrip(needlePass(7, VOID_MM), CHART_MM, print as PrintStyle, 1);
  return Buffer.from(packJpeg(photograph(strip, STEADY_CAMERA, 2).image, 88));
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
