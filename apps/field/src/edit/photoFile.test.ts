import { InputFault } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { checkPhotoFile } from './photoFile.ts';

/** The least of a PNG that tells its size: signature, header chunk, end chunk. */
function png(width: number, height: number): Uint8Array {
  const bytes = new Uint8Array(45);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  const view = new DataView(bytes.buffer);
  view.setUint32(16, width);
  view.setUint32(20, height);
  bytes.set([0x49, 0x45, 0x4e, 0x44], 37);
  return bytes;
}

/** A JPEG of one frame header, with the end marker or broken off before it. */
function jpeg(width: number, height: number, whole = true): Uint8Array {
  const bytes = [0xff, 0xd8, 0xff, 0xe0, 0, 4, 0, 0, 0xff, 0xc0, 0, 17, 8];
  bytes.push(height >> 8, height & 255, width >> 8, width & 255, 3, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
  return Uint8Array.from(whole ? [...bytes, 0xff, 0xd9] : bytes);
}

const letters = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

describe('a photo as a file', () => {
  it('tells the kind by the bytes, not by the name', () => {
    expect(checkPhotoFile(png(800, 600), 'a.jpg')).toBe('png');
    expect(checkPhotoFile(jpeg(4000, 3000), 'b.png')).toBe('jpeg');
    expect(checkPhotoFile(letters('\0\0\0\x18ftypheic'), 'c')).toBe('heic');
  });

  it.each([
    ['an empty file', new Uint8Array(0), /empty/],
    ['a table', letters('depth_mm,resistance\n0,1\n'), /no photo/],
    ['a film', letters('\0\0\0\x18ftypmp42'), /no photo/],
    ['a broken-off JPEG', jpeg(4000, 3000, false), /damaged or broken off/],
    ['a broken-off PNG', png(800, 600).subarray(0, 30), /damaged or broken off/],
    ['200 megapixels', png(20000, 10000), /200 megapixels/],
    ['one pixel', png(1, 1), /too small/],
  ])('refuses %s in words that say why', (_, bytes, words) => {
    expect(() => checkPhotoFile(bytes, 'strip')).toThrow(InputFault);
    expect(() => checkPhotoFile(bytes, 'strip')).toThrow(words);
  });
});
