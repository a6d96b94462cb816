/** What kind of picture a file is, how large, and whether it is all there: told by its bytes before it is decoded. */
import {
  hasJpegEnd,
  hasWebpEnd,
  isJpeg,
  isPng,
  isWebp,
  jpegSize,
  pngSize,
  textAt,
  webpSize,
} from '@standfast/casefile';
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

/** How a file's size and its being whole are looked up; of a HEIC's neither is told before it is decoded. */
const LOOKS: Record<
  PhotoKind,
  { size: (bytes: Uint8Array) => [number, number] | null | undefined; whole: (bytes: Uint8Array) => boolean }
> = {
  jpeg: { size: jpegSize, whole: hasJpegEnd },
  png: { size: pngSize, whole: hasPngEnd },
  webp: { size: webpSize, whole: hasWebpEnd },
  heic: { size: () => undefined, whole: () => true },
};

/** Brands of the still pictures that are packed like films (ISO/IEC 23008-12). */
const HEIC_BRANDS = /^(heic|heix|heim|heis|hevc|mif1|msf1|avif)$/;

/**
 * The kind of a picture file.
 * @throws InputFault when it is empty, no picture, broken off, or has more pixels than can be read
 */
export function checkPhotoFile(bytes: Uint8Array, name: string): PhotoKind {
  if (bytes.length === 0) throw new InputFault('This file is empty: choose the photo again.', name);
  const kind = photoKind(bytes);
  if (kind === null) {
    throw new InputFault(
      'This is no photo that can be read: choose a JPEG, PNG, WebP or HEIC picture.',
      name,
    );
  }
  // The size is looked at before anything is unpacked: a small file can hold a huge picture.
  const { size, whole } = LOOKS[kind];
  const pixels = size(bytes);
  if (pixels === null || !whole(bytes)) {
    throw new InputFault(brokenPhoto(kind), name);
  }
  if (pixels) checkStripSize(pixels[0], pixels[1], name);
  return kind;
}

/** What to say of a picture that the browser could not decode. */
export function brokenPhoto(kind: PhotoKind): string {
  return kind === 'heic'
    ? 'This browser cannot open HEIC pictures: set the camera to JPEG (often called “most compatible”), or save the photo as JPEG.'
    : `This ${NAMES[kind]} is damaged or broken off: copy it from the camera again, or take the photo anew.`;
}

function photoKind(bytes: Uint8Array): PhotoKind | null {
  if (isJpeg(bytes)) return 'jpeg';
  if (isPng(bytes)) return 'png';
  if (textAt(bytes, 4, 8) === 'ftyp' && HEIC_BRANDS.test(textAt(bytes, 8, 12))) return 'heic';
  return isWebp(bytes) ? 'webp' : null;
}

function hasPngEnd(bytes: Uint8Array): boolean {
  return (
    textAt(bytes.subarray(-12), 4, 8) === 'IEND' || textAt(bytes.subarray(-4096), 0, 4096).includes('IEND')
  );
}
