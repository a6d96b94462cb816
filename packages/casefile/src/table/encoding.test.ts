import { describe, expect, it } from 'vitest';
import { decodeText, guessEncoding } from './encoding.ts';

const TEXT = 'Höhe;Größe\n1;2\n';

function utf16(text: string, little: boolean, mark: boolean): Uint8Array {
  const units = [...(mark ? '\uFEFF' : ''), ...text].map((letter) => letter.charCodeAt(0));
  return Uint8Array.from(
    units.flatMap((unit) => (little ? [unit & 255, unit >> 8] : [unit >> 8, unit & 255])),
  );
}

describe('encodings', () => {
  it.each([
    ['utf-8', new TextEncoder().encode(TEXT), true],
    ['utf-8', new TextEncoder().encode(`\uFEFF${TEXT}`), true],
    ['utf-16le', utf16(TEXT, true, true), true],
    ['utf-16be', utf16(TEXT, false, true), true],
    ['utf-16le', utf16(TEXT, true, false), true],
    ['utf-16be', utf16(TEXT, false, false), true],
    ['windows-1252', Uint8Array.from(TEXT, (letter) => letter.charCodeAt(0)), false],
  ] as const)('%s', (encoding, bytes, sure) => {
    expect(guessEncoding(bytes)).toEqual({ encoding, sure });
    expect(decodeText(bytes, encoding, 'x')).toBe(TEXT);
  });
});
