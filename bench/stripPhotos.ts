/** Photographs of 12 megapixels of a strip that a simulator printed, numbers and all. */
import { randomFrom, type StripImage } from '@standfast/engine';
import { invented } from '../tests/simulated/strips/judge.ts';
import { photograph } from '../tests/simulated/strips/photograph.ts';
import { PLAIN_PRINT, STEADY_CAMERA } from '../tests/simulated/strips/plainStyle.ts';
import { printStrip } from '../tests/simulated/strips/printStrip.ts';

const WIDTH = 4000;
const HEIGHT = 3000;
const SEED = 12;
/** The table around the strip, as dark as the simulator's. */
const TABLE = [64, 45, 32, 255] as const;

/** The strip across the whole photo, table above and below it. */
export function printedPhoto(): StripImage {
  const strip = printStrip(invented(randomFrom(SEED), SEED), 300, PLAIN_PRINT, SEED);
  const { image } = photograph(strip, { ...STEADY_CAMERA, widthPx: WIDTH }, SEED);
  const rgba = new Uint8ClampedArray(4 * WIDTH * HEIGHT);
  for (let k = 0; k < rgba.length; k++) rgba[k] = TABLE[k & 3]!;
  const top = Math.max(0, (HEIGHT - image.heightPx) >> 1);
  rgba.set(image.rgba.subarray(0, 4 * WIDTH * Math.min(HEIGHT, image.heightPx)), 4 * WIDTH * top);
  return { widthPx: WIDTH, heightPx: HEIGHT, rgba };
}
