/** A picture of the case as it can be printed: what kind it is, how large, which way up, and whether it is whole. */
import { hasJpegEnd, isJpeg, isPng, jpegSize, pngSize, textAt } from '@standfast/casefile';
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
    const turned = jpegOrientation(bytes) > 4;
    return sized('jpeg', bytes, turned ? [size[1], size[0]] : size);
  }
  if (isPng(bytes) && isWholePng(bytes)) return sized('png', bytes, pngSize(bytes));
  return null;
}

function sized(kind: Picture['kind'], bytes: Uint8Array, size: [number, number] | null): Picture | null {
  if (!size || size[0] < 1 || size[1] < 1 || size[0] * size[1] > MOST_PIXELS) return null;
  return { kind, bytes, widthPx: size[0], heightPx: size[1] };
}

/** How a JPEG is to be turned, 1 to 8 as Exif has it (tag 0x0112 of the first directory); 1 where it does not say. */
export function jpegOrientation(bytes: Uint8Array): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 2;
  while (at + 4 <= bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1]!;
    if (marker === 0xda) return 1;
    const length = view.getUint16(at + 2);
    if (marker === 0xe1 && textAt(bytes, at + 4, at + 8) === 'Exif')
      return exifOrientation(bytes.subarray(at + 10, at + 2 + length));
    at += 2 + length;
  }
  return 1;
}

function exifOrientation(tiff: Uint8Array): number {
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  const little = textAt(tiff, 0, 2) === 'II';
  if (tiff.length < 8) return 1;
  const directory = view.getUint32(4, little);
  if (directory + 2 > tiff.length) return 1;
  const count = view.getUint16(directory, little);
  for (let i = 0; i < count; i++) {
    const entry = directory + 2 + 12 * i;
    if (entry + 12 > tiff.length) return 1;
    if (view.getUint16(entry, little) !== 0x0112) continue;
    const value = view.getUint16(entry + 8, little);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
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
