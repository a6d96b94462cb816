import { describe, expect, it } from 'vitest';
import { hasJpegEnd, hasWebpEnd, isJpeg, isPng, isWebp, jpegSize, pngSize, webpSize } from './photoBytes.ts';

/** A JPEG's segments: start, an application segment, a frame of 300 × 200, start of the scan, end. */
const JPEG = Uint8Array.from([
  0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xc0, 0, 11, 8, 0, 200, 1, 44, 1, 1, 17, 0, 0xff, 0xda, 0, 2, 7,
  0xff, 0xd9,
]);
const PNG = Uint8Array.from([
  0x89, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82, 0, 0, 1, 44, 0, 0, 0, 200, 8, 6,
]);

/** The head of a WebP of 300 × 200 by the kind of its first chunk, with the bytes that follow the chunk's length. */
const webp = (kind: string, ...body: number[]) =>
  Uint8Array.from([
    ...[0x52, 0x49, 0x46, 0x46, 22, 0, 0, 0, 0x57, 0x45, 0x42, 0x50],
    ...[...kind].map((letter) => letter.charCodeAt(0)),
    ...[10, 0, 0, 0],
    ...body,
  ]);
const LOSSY = webp('VP8 ', 0, 0, 0, 0x9d, 1, 0x2a, 44, 1, 200, 0);
// 14 bits of 299, 14 bits of 199, from the lowest.
const LOSSLESS = webp('VP8L', 0x2f, 0x2b, 0xc1, 0x31, 0, 0, 0, 0, 0, 0);
const EXTENDED = webp('VP8X', 0, 0, 0, 0, 43, 1, 0, 199, 0, 0);

describe('the bytes of a picture', () => {
  it('tell its kind', () => {
    expect([isJpeg(JPEG), isPng(JPEG)]).toEqual([true, false]);
    expect([isJpeg(PNG), isPng(PNG)]).toEqual([false, true]);
    expect([isJpeg(new Uint8Array()), isPng(new Uint8Array())]).toEqual([false, false]);
  });

  it('tell its size, also within a larger buffer', () => {
    expect(jpegSize(JPEG)).toEqual([300, 200]);
    expect(pngSize(PNG)).toEqual([300, 200]);
    const larger = new Uint8Array(100);
    larger.set(JPEG, 40);
    expect(jpegSize(larger.subarray(40, 40 + JPEG.length))).toEqual([300, 200]);
  });

  it('tell the size of each kind of WebP, and whether it is whole', () => {
    expect([LOSSY, LOSSLESS, EXTENDED].map(isWebp)).toEqual([true, true, true]);
    expect([LOSSY, LOSSLESS, EXTENDED].map(webpSize)).toEqual([
      [300, 200],
      [300, 200],
      [300, 200],
    ]);
    expect([webpSize(LOSSY.subarray(0, 29)), webpSize(webp('ALPH', 0, 0, 0, 0, 0, 0, 0, 0, 0, 0))]).toEqual([
      null,
      null,
    ]);
    expect([hasWebpEnd(LOSSY), hasWebpEnd(LOSSY.subarray(0, -1))]).toEqual([true, false]);
  });

  it('tell no size where the file ends before it', () => {
    expect(jpegSize(JPEG.subarray(0, 12))).toBeNull();
    expect(pngSize(PNG.subarray(0, 20))).toBeNull();
  });

  it('tell whether a JPEG is whole', () => {
    expect(hasJpegEnd(JPEG)).toBe(true);
    expect(hasJpegEnd(JPEG.subarray(0, -1))).toBe(false);
  });
});
