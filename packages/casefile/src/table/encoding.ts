/**
 * From bytes to text. Spreadsheets and drills write UTF-8, UTF-16 or the old Western European code page.
 */
import { InputFault } from '@standfast/engine';
import type { Encoding } from './types.ts';

/** Bytes looked at to tell an encoding. */
const SAMPLE_BYTES = 64 * 1024;

/** Longest text that a browser or Node holds as one string, with room to spare. */
const LONGEST_TEXT = 400 * 1024 * 1024;

/** The likely encoding of a text, and whether the bytes settle it. */
export function guessEncoding(bytes: Uint8Array): { encoding: Encoding; sure: boolean } {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) return { encoding: 'utf-8', sure: true };
  if (a === 0xff && b === 0xfe) return { encoding: 'utf-16le', sure: true };
  if (a === 0xfe && b === 0xff) return { encoding: 'utf-16be', sure: true };
  const sample = bytes.subarray(0, SAMPLE_BYTES);
  let zerosEven = 0;
  let zerosOdd = 0;
  sample.forEach((byte, i) => {
    if (byte === 0) i % 2 === 0 ? zerosEven++ : zerosOdd++;
  });
  // Latin text in UTF-16 without a mark has a zero in every other byte.
  if (zerosOdd > sample.length / 4) return { encoding: 'utf-16le', sure: zerosEven === 0 };
  if (zerosEven > sample.length / 4) return { encoding: 'utf-16be', sure: zerosOdd === 0 };
  return isUtf8(bytes) ? { encoding: 'utf-8', sure: true } : { encoding: 'windows-1252', sure: false };
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    const decoder = new TextDecoder('utf-8', { fatal: true });
    for (let from = 0; from < bytes.length; from += 1 << 20) {
      decoder.decode(bytes.subarray(from, from + (1 << 20)), { stream: true });
    }
    decoder.decode();
    return true;
  } catch {
    return false;
  }
}

/**
 * The text, without a byte order mark.
 *
 * @throws InputFault when it is longer than can be held.
 */
export function decodeText(bytes: Uint8Array, encoding: Encoding, where: string): string {
  if (bytes.length > LONGEST_TEXT) {
    throw new InputFault(
      'the table is too long to be imported in one piece: write it with the header depth_mm,resistance, which is read in a stream, or split it',
      where,
    );
  }
  return new TextDecoder(encoding).decode(bytes);
}
