/** PNGs of the kinds that scanners and picture programs make: 16 bits a channel, and paper cut out of its ground. */
import type { StripImage } from '@standfast/engine';
import pngjs from 'pngjs';

const { PNG } = pngjs;

/** The picture with 16 bits a channel. */
export function deepPng({ widthPx, heightPx, rgba }: StripImage): Uint8Array {
  const png = new PNG({ width: widthPx, height: heightPx });
  // Each value stands in both bytes: 255 of 255 is 65,535 of 65,535.
  png.data = Buffer.from(Uint16Array.from(rgba, (value) => 257 * value).buffer);
  return PNG.sync.write(png, { bitDepth: 16, inputColorType: 6, colorType: 6 });
}

/** The picture with its bright places see-through and black beneath, as a program leaves paper that was cut out. */
export function seeThrough(image: StripImage): StripImage {
  const rgba = new Uint8ClampedArray(image.rgba);
  for (let p = 0; p < rgba.length; p += 4) {
    const [r, g, b] = [rgba[p]!, rgba[p + 1]!, rgba[p + 2]!];
    const alpha = 1 - Math.min(r, g, b) / 255;
    // Over white this is the picture again: channel = 255 + alpha × (ink − 255).
    for (const [c, value] of [r, g, b].entries()) rgba[p + c] = alpha === 0 ? 0 : 255 + (value - 255) / alpha;
    rgba[p + 3] = 255 * alpha;
  }
  return { ...image, rgba };
}
