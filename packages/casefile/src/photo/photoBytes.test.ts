import { describe, expect, it } from 'vitest';
import { hasJpegEnd, isJpeg, isPng, jpegSize, pngSize } from './photoBytes.ts';

/** A JPEG's segments: start, an application segment, a frame of 300 × 200, start of the scan, end. */
const JPEG = Uint8Array.from([
  0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xc0, 0, 11, 8, 0, 200, 1, 44, 1, 1, 17, 0, 0xff, 0xda, 0, 2, 7,
  0xff, 0xd9,
]);
const PNG = Uint8Array.from([
  0x89, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82, 0, 0, 1, 44, 0, 0, 0, 200, 8, 6,
]);

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

  it('tell no size where the file ends before it', () => {
    expect(jpegSize(JPEG.subarray(0, 12))).toBeNull();
    expect(pngSize(PNG.subarray(0, 20))).toBeNull();
  });

  it('tell whether a JPEG is whole', () => {
    expect(hasJpegEnd(JPEG)).toBe(true);
    expect(hasJpegEnd(JPEG.subarray(0, -1))).toBe(false);
  });
});
