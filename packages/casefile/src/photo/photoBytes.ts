/** What the bytes of a picture file say of it before it is decoded: its size, and whether it is all there. */

/** Bytes read as text, one character each; past the file's end there is none. */
export function textAt(bytes: Uint8Array, from: number, to: number): string {
  return String.fromCharCode(...bytes.subarray(from, to));
}

export function isJpeg(bytes: Uint8Array): boolean {
  return bytes[0] === 0xff && bytes[1] === 0xd8;
}

export function isPng(bytes: Uint8Array): boolean {
  return bytes[0] === 0x89 && textAt(bytes, 1, 4) === 'PNG';
}

/** Width and height of a PNG, px; null where the file ends before them. */
export function pngSize(bytes: Uint8Array): [number, number] | null {
  if (bytes.length < 24) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  return [view.getUint32(16), view.getUint32(20)];
}

/** Width and height of a JPEG, px, from its frame header, wherever among the segments it stands; null without one. */
export function jpegSize(bytes: Uint8Array): [number, number] | null {
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

/** Whether a JPEG is whole: it ends with its end marker, whatever a camera may have put behind it. */
export function hasJpegEnd(bytes: Uint8Array): boolean {
  for (let i = bytes.length - 2; i > 0; i--) if (bytes[i] === 0xff && bytes[i + 1] === 0xd9) return true;
  return false;
}
