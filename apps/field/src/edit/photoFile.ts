/** What kind of picture a file is, how large, and whether it is all there: told by its bytes before it is decoded. */
import { checkStripSize, InputFault } from '@standfast/engine';

export type PhotoKind = 'jpeg' | 'png' | 'heic' | 'webp';

/** Ending of a kept photo's file name. */
export const PHOTO_ENDING: Record<PhotoKind, string> = {
  jpeg: 'jpg',
  png: 'png',
  heic: 'heic',
  webp: 'webp',
};

const NAMES: Record<PhotoKind, string> = { jpeg: 'JPEG', png: 'PNG', heic: 'HEIC', webp: 'WebP' };

/** Brands of the still pictures that are packed like films (ISO/IEC 23008-12). */
const HEIC_BRANDS = /^(heic|heix|heim|heis|hevc|mif1|msf1|avif)$/;

/**
 * The kind of a picture file.
 * @throws InputFault when it is empty, no picture, broken off, or has more pixels than can be read
 */
export function checkPhotoFile(bytes: Uint8Array, name: string): PhotoKind {
  if (bytes.length === 0) throw new InputFault('This file is empty: choose the photo of the strip.', name);
  const kind = photoKind(bytes);
  if (kind === null) {
    throw new InputFault('This is no photo that can be read: choose a JPEG, PNG or HEIC picture.', name);
  }
  // The size is looked at before anything is unpacked: a small file can hold a huge picture.
  const size = kind === 'jpeg' ? jpegSize(bytes) : kind === 'png' ? pngSize(bytes) : undefined;
  if (size === null || (kind === 'jpeg' && !hasJpegEnd(bytes)) || (kind === 'png' && !hasPngEnd(bytes))) {
    throw new InputFault(brokenPhoto(kind), name);
  }
  if (size) checkStripSize(size[0], size[1], name);
  return kind;
}

/** What to say of a picture that the browser could not decode. */
export function brokenPhoto(kind: PhotoKind): string {
  return kind === 'heic'
    ? 'This browser cannot open HEIC pictures: set the camera to JPEG (often called “most compatible”), or save the photo as JPEG.'
    : `This ${NAMES[kind]} is damaged or broken off: copy it from the camera again, or take the photo anew.`;
}

function photoKind(bytes: Uint8Array): PhotoKind | null {
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return 'jpeg';
  if (bytes[0] === 0x89 && text(bytes, 1, 4) === 'PNG') return 'png';
  if (text(bytes, 4, 8) === 'ftyp' && HEIC_BRANDS.test(text(bytes, 8, 12))) return 'heic';
  if (text(bytes, 0, 4) === 'RIFF' && text(bytes, 8, 12) === 'WEBP') return 'webp';
  return null;
}

function text(bytes: Uint8Array, from: number, to: number): string {
  return String.fromCharCode(...bytes.subarray(from, to));
}

function pngSize(bytes: Uint8Array): [number, number] | null {
  if (bytes.length < 24) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  return [view.getUint32(16), view.getUint32(20)];
}

/** Width and height from the frame header, wherever among the segments it stands. */
function jpegSize(bytes: Uint8Array): [number, number] | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 2;
  while (at + 9 <= bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at++;
      continue;
    }
    const isFrame = marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
    if (isFrame) return [view.getUint16(at + 7), view.getUint16(at + 5)];
    if (marker === 0xda) return null;
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}

/** A whole JPEG ends with its end marker, whatever a camera may have put behind it. */
function hasJpegEnd(bytes: Uint8Array): boolean {
  for (let i = bytes.length - 2; i > 0; i--) if (bytes[i] === 0xff && bytes[i + 1] === 0xd9) return true;
  return false;
}

function hasPngEnd(bytes: Uint8Array): boolean {
  return text(bytes.subarray(-12), 4, 8) === 'IEND' || text(bytes.subarray(-4096), 0, 4096).includes('IEND');
}
