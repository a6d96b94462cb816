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

export function isWebp(bytes: Uint8Array): boolean {
  return textAt(bytes, 0, 4) === 'RIFF' && textAt(bytes, 8, 12) === 'WEBP';
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

/**
 * Width and height of a WebP, px, from its first chunk: lossy, lossless or extended (RFC 9649, sections 2.5 to 2.7);
 * null where the file ends before them.
 */
export function webpSize(bytes: Uint8Array): [number, number] | null {
  if (bytes.length < 30) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  switch (textAt(bytes, 12, 16)) {
    case 'VP8 ':
      return [view.getUint16(26, true) & 0x3fff, view.getUint16(28, true) & 0x3fff];
    case 'VP8L': {
      const bits = view.getUint32(21, true);
      return [(bits & 0x3fff) + 1, ((bits >>> 14) & 0x3fff) + 1];
    }
    case 'VP8X': {
      // Three bytes each, one less than the side.
      const side = (at: number) => 1 + (view.getUint32(at, true) & 0xffffff);
      return [side(24), 1 + (view.getUint32(26, true) >>> 8)];
    }
    default:
      return null;
  }
}

/** Whether a WebP is whole: as long as its head says. */
export function hasWebpEnd(bytes: Uint8Array): boolean {
  return (
    bytes.length >= 12 && new DataView(bytes.buffer, bytes.byteOffset).getUint32(4, true) + 8 <= bytes.length
  );
}

/** Whether a JPEG is whole: it ends with its end marker, whatever a camera may have put behind it. */
export function hasJpegEnd(bytes: Uint8Array): boolean {
  for (let i = bytes.length - 2; i > 0; i--) if (bytes[i] === 0xff && bytes[i + 1] === 0xd9) return true;
  return false;
}
