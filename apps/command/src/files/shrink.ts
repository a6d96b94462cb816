/** A photo made smaller for a report: decoded, turned upright, averaged down, packed as JPEG. */
import { InputFault } from '@standfast/engine';
import { decodePhoto } from '../strip/photo.ts';

const QUALITY = 82;

/** The photo as a JPEG with no side longer than `longestPx`; null where it cannot be decoded. */
export async function shrinkPhoto(
  bytes: Uint8Array,
  longestPx: number,
  path: string,
): Promise<Uint8Array | null> {
  try {
    const { widthPx, heightPx, rgba } = await decodePhoto(bytes, path);
    const factor = Math.min(1, longestPx / Math.max(widthPx, heightPx));
    const width = Math.max(1, Math.round(widthPx * factor));
    const height = Math.max(1, Math.round(heightPx * factor));
    const data = averaged(rgba, widthPx, heightPx, width, height);
    const { default: jpeg } = await import('jpeg-js');
    return new Uint8Array(jpeg.encode({ width, height, data }, QUALITY).data);
  } catch (error) {
    // A photo that is damaged travels as it is; the report says that it is not printed.
    if (error instanceof InputFault) return null;
    throw error;
  }
}

/** Each pixel the mean of those that it stands for. */
function averaged(rgba: ArrayLike<number>, w: number, h: number, width: number, height: number): Uint8Array {
  const out = new Uint8Array(width * height * 4);
  for (let y = 0; y < height; y++) {
    const [top, bottom] = span(y, height, h);
    for (let x = 0; x < width; x++) {
      const [left, right] = span(x, width, w);
      let [r, g, b] = [0, 0, 0];
      for (let j = top; j < bottom; j++)
        for (let p = 4 * (j * w + left), end = 4 * (j * w + right); p < end; p += 4) {
          r += rgba[p]!;
          g += rgba[p + 1]!;
          b += rgba[p + 2]!;
        }
      const count = (bottom - top) * (right - left);
      const at = 4 * (y * width + x);
      out[at] = Math.round(r / count);
      out[at + 1] = Math.round(g / count);
      out[at + 2] = Math.round(b / count);
      out[at + 3] = 255;
    }
  }
  return out;
}

/** The stretch of the large picture that a place of the small one stands for. */
function span(i: number, small: number, large: number): [number, number] {
  const from = Math.floor((i * large) / small);
  return [from, Math.max(from + 1, Math.floor(((i + 1) * large) / small))];
}
