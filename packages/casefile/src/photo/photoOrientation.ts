/** Which way up a camera held a photo, from its EXIF tag (CIPA DC-008, tag 0x0112). */
import { isJpeg, isPng } from './photoBytes.ts';

/**
 * The way up of a JPEG or a PNG; other pictures say nothing of it that browsers heed.
 * @returns 1 as stored; 2 mirrored; 3 half turn; 4 mirrored half turn; 5 to 8 quarter turns; 1 when nothing is said
 */
export function photoOrientation(bytes: Uint8Array): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    if (isJpeg(bytes)) return jpegOrientation(view);
    if (isPng(bytes)) return pngOrientation(view);
  } catch (error) {
    // A header that points outside the file says nothing.
    if (!(error instanceof RangeError)) throw error;
  }
  return 1;
}

function jpegOrientation(view: DataView): number {
  let at = 2;
  while (at + 4 <= view.byteLength) {
    const marker = view.getUint16(at);
    const length = view.getUint16(at + 2);
    // Segments end where the picture's data start.
    if (marker >> 8 !== 0xff || marker === 0xffda || length < 2) return 1;
    if (marker === 0xffe1 && view.getUint32(at + 4) === 0x45786966) return tiffOrientation(view, at + 10);
    at += 2 + length;
  }
  return 1;
}

/** Of a PNG's chunks, eXIf (PNG, third edition, section 11.3.4.5). */
function pngOrientation(view: DataView): number {
  const [eXIf, IEND] = [0x65584966, 0x49454e44];
  let at = 8;
  while (at + 8 <= view.byteLength) {
    const kind = view.getUint32(at + 4);
    if (kind === eXIf) return tiffOrientation(view, at + 8);
    if (kind === IEND) return 1;
    at += 12 + view.getUint32(at);
  }
  return 1;
}

function tiffOrientation(view: DataView, start: number): number {
  const little = view.getUint16(start) === 0x4949;
  const directory = start + view.getUint32(start + 4, little);
  const entries = view.getUint16(directory, little);
  for (let i = 0; i < entries; i++) {
    const entry = directory + 2 + 12 * i;
    if (view.getUint16(entry, little) !== 0x0112) continue;
    const value = view.getUint16(entry + 8, little);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}
