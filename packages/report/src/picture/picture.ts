/** A picture of the case as it can be printed: what kind it is, how large, which way up, and whether it is whole. */
import { hasJpegEnd, isJpeg, isPng, jpegSize, photoOrientation, pngSize, textAt } from '@standfast/casefile';
import { unzlibSync } from 'fflate';

export interface Picture {
  kind: 'jpeg' | 'png';
  bytes: Uint8Array;
  /** As it is looked at, upright. */
  widthPx: number;
  heightPx: number;
}

/** A picture with more pixels than this is not decoded. */
const MOST_PIXELS = 100e6;

/** The picture in some bytes; null for another kind than JPEG and PNG, and for one that is broken off or damaged. */
export function pictureOf(bytes: Uint8Array): Picture | null {
  if (isJpeg(bytes)) {
    const size = jpegSize(bytes);
    if (!size || !hasJpegEnd(bytes)) return null;
    const turned = photoOrientation(bytes) > 4;
    return sized('jpeg', bytes, turned ? [size[1], size[0]] : size);
  }
  if (isPng(bytes) && isWholePng(bytes)) return sized('png', bytes, pngSize(bytes));
  return null;
}

function sized(kind: Picture['kind'], bytes: Uint8Array, size: [number, number] | null): Picture | null {
  if (!size || size[0] < 1 || size[1] < 1 || size[0] * size[1] > MOST_PIXELS) return null;
  return { kind, bytes, widthPx: size[0], heightPx: size[1] };
}

/** Whether a PNG's pixels are all there: its chunks follow one another to the end and unpack to as many bytes as it says. */
function isWholePng(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const parts: Uint8Array[] = [];
  let header: { width: number; height: number; bits: number; colour: number; laced: boolean } | null = null;
  let at = 8;
  while (at + 12 <= bytes.length) {
    const length = view.getUint32(at);
    const type = textAt(bytes, at + 4, at + 8);
    const body = bytes.subarray(at + 8, at + 8 + length);
    if (body.length < length) return false;
    if (type === 'IHDR' && length === 13)
      header = {
        width: view.getUint32(at + 8),
        height: view.getUint32(at + 12),
        bits: body[8]!,
        colour: body[9]!,
        laced: body[12] === 1,
      };
    if (type === 'IDAT') parts.push(body);
    if (type === 'IEND') break;
    at += 12 + length;
  }
  if (!header || parts.length === 0 || header.width * header.height > MOST_PIXELS) return false;
  const channels = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 }[header.colour];
  if (channels === undefined || ![1, 2, 4, 8, 16].includes(header.bits)) return false;
  const least = header.height * (1 + Math.ceil((header.width * header.bits * channels) / 8));
  try {
    const unpacked = unzlibSync(joined(parts));
    return header.laced ? unpacked.length >= least - header.height : unpacked.length === least;
  } catch {
    return false;
  }
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((n, part) => n + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
