/** Photos as files: JPEG, PNG and WebP to pixels the right way up, and pixels to PNG. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import {
  hasJpegEnd,
  hasWebpEnd,
  isJpeg,
  isPng,
  isWebp,
  jpegSize,
  photoOrientation,
  pngSize,
  textAt,
  webpSize,
} from '@standfast/casefile';
import { checkStripSize, InputFault, type StripImage } from '@standfast/engine';

type PhotoKind = 'jpeg' | 'png' | 'webp';

const NAMES: Record<PhotoKind, string> = { jpeg: 'JPEG', png: 'PNG', webp: 'WebP' };
const SIZES = { jpeg: jpegSize, png: pngSize, webp: webpSize };
const DECODERS = { jpeg: decodeJpeg, png: decodePng, webp: decodeWebp };

/** What the first bytes of other pictures are, and what to do with them. */
const OTHERS: { name: string; matches: (bytes: Uint8Array) => boolean }[] = [
  { name: 'a HEIC picture', matches: (b) => textAt(b, 4, 8) === 'ftyp' },
  { name: 'a TIFF picture', matches: (b) => textAt(b, 0, 4) === 'II*\0' || textAt(b, 0, 4) === 'MM\0*' },
  { name: 'a GIF picture', matches: (b) => textAt(b, 0, 3) === 'GIF' },
  { name: 'a BMP picture', matches: (b) => textAt(b, 0, 2) === 'BM' },
  { name: 'a PDF', matches: (b) => textAt(b, 0, 4) === '%PDF' },
];

/**
 * Decodes a photo and turns it upright.
 * @throws InputFault when it is no JPEG, PNG or WebP, is broken off, or has more pixels than can be read
 */
export async function decodePhoto(bytes: Uint8Array, file: string): Promise<StripImage> {
  const kind = photoKind(bytes);
  if (!kind) {
    const other = OTHERS.find(({ matches }) => matches(bytes));
    throw new InputFault(
      bytes.length === 0
        ? 'this file is empty: choose the photo of the strip'
        : `this is ${other?.name ?? 'no picture'}: save the photo as JPEG or PNG`,
      file,
    );
  }
  // The size is looked at before anything is unpacked: a small file can hold a huge picture.
  const size = SIZES[kind](bytes);
  if (!size) throw new InputFault(broken(kind), file);
  checkStripSize(size[0], size[1], file);
  return DECODERS[kind](bytes, file);
}

/** What the file holds by its bytes, whatever its name; null for anything that is not read here. */
function photoKind(bytes: Uint8Array): PhotoKind | null {
  if (isJpeg(bytes)) return 'jpeg';
  if (isPng(bytes)) return 'png';
  return isWebp(bytes) ? 'webp' : null;
}

/** Bytes of a PNG file. */
export async function encodePng({ widthPx, heightPx, rgba }: StripImage): Promise<Uint8Array> {
  const { PNG } = (await import('pngjs')).default;
  const png = new PNG({ width: widthPx, height: heightPx });
  png.data = Buffer.from(rgba.buffer, rgba.byteOffset, rgba.byteLength);
  return PNG.sync.write(png);
}

async function decodeJpeg(bytes: Uint8Array, file: string): Promise<StripImage> {
  const { default: jpeg } = await import('jpeg-js');
  if (!hasJpegEnd(bytes)) throw new InputFault(broken('jpeg'), file);
  try {
    const { width, height, data } = jpeg.decode(bytes, {
      useTArray: true,
      tolerantDecoding: false,
      maxMemoryUsageInMB: 4096,
      maxResolutionInMP: 200,
    });
    return turned({ widthPx: width, heightPx: height, rgba: data }, photoOrientation(bytes));
  } catch (error) {
    throw new InputFault(`${broken('jpeg')} (${error instanceof Error ? error.message : error})`, file);
  }
}

async function decodePng(bytes: Uint8Array, file: string): Promise<StripImage> {
  const { PNG } = (await import('pngjs')).default;
  try {
    const { width, height, data } = PNG.sync.read(Buffer.from(bytes));
    const image = onWhite({ widthPx: width, heightPx: height, rgba: new Uint8Array(data) });
    return turned(image, photoOrientation(bytes));
  } catch (error) {
    throw new InputFault(`${broken('png')} (${error instanceof Error ? error.message : error})`, file);
  }
}

/** By libwebp, compiled to WebAssembly; its code lies beside its package's own. */
async function decodeWebp(bytes: Uint8Array, file: string): Promise<StripImage> {
  if (!hasWebpEnd(bytes)) throw new InputFault(broken('webp'), file);
  const { default: decode, init } = await import('@jsquash/webp/decode.js');
  const code = createRequire(import.meta.url).resolve('@jsquash/webp/codec/dec/webp_dec.wasm');
  // The package's types forget that a compiled module may be handed over.
  await (init as (code: WebAssembly.Module) => Promise<void>)(
    await WebAssembly.compile(await readFile(code)),
  );
  try {
    const { width, height, data } = await decode(new Uint8Array(bytes).buffer);
    return onWhite({ widthPx: width, heightPx: height, rgba: new Uint8Array(data.buffer) });
  } catch (error) {
    const moving = textAt(bytes, 12, 16) === 'VP8X' && (bytes[20]! & MOVING) !== 0;
    if (moving)
      throw new InputFault('this WebP is a film of several pictures: save one of them as a photo', file);
    throw new InputFault(`${broken('webp')} (${error instanceof Error ? error.message : error})`, file);
  }
}

/** The flag of a WebP that holds several pictures (RFC 9649, section 2.7). */
const MOVING = 0b10;

const broken = (kind: PhotoKind) =>
  `this ${NAMES[kind]} is damaged or broken off: copy it from the camera again`;

/** See-through places show white paper. */
function onWhite(image: StripImage): StripImage {
  const { rgba } = image;
  for (let p = 0; p < rgba.length; p += 4) {
    const alpha = rgba[p + 3]! / 255;
    if (alpha === 1) continue;
    for (let c = 0; c < 3; c++) rgba[p + c] = 255 + alpha * (rgba[p + c]! - 255);
    rgba[p + 3] = 255;
  }
  return image;
}

/** The picture as the camera saw it upright. */
export function turned(image: StripImage, orientation: number): StripImage {
  if (orientation < 2 || orientation > 8) return image;
  const { widthPx: w, heightPx: h } = image;
  const quarter = orientation >= 5;
  const from = new Uint32Array(image.rgba.buffer, image.rgba.byteOffset, w * h);
  const to = new Uint32Array(w * h);
  const width = quarter ? h : w;
  const height = quarter ? w : h;
  // Column and row of the stored picture that a place of the upright one shows.
  const source: Record<number, (x: number, y: number) => number> = {
    2: (x, y) => y * w + (w - 1 - x),
    3: (x, y) => (h - 1 - y) * w + (w - 1 - x),
    4: (x, y) => (h - 1 - y) * w + x,
    5: (x, y) => x * w + y,
    6: (x, y) => (h - 1 - x) * w + y,
    7: (x, y) => (h - 1 - x) * w + (w - 1 - y),
    8: (x, y) => x * w + (w - 1 - y),
  };
  const pick = source[orientation]!;
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) to[y * width + x] = from[pick(x, y)]!;
  return { widthPx: width, heightPx: height, rgba: new Uint8Array(to.buffer) };
}
