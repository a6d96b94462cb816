import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import { describe, expect, it } from 'vitest';
import { cutFont } from './cutFont.ts';

const path = createRequire(import.meta.url).resolve(
  '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
);
const whole = new Uint8Array(readFileSync(path));
const letters = new Set([...'Łukasz Ωé'].map((c) => c.codePointAt(0)!));

interface OpenedFont {
  glyphForCodePoint(code: number): { advanceWidth: number; path: { commands: unknown[] } };
}

/** The font as pdfkit's own reader (which knows WOFF) opens it. */
function opened(bytes: Uint8Array): OpenedFont {
  const doc = new PDFDocument();
  doc.font(bytes as Buffer);
  return (doc as unknown as { _font: { font: OpenedFont } })._font.font;
}

describe('cutFont', () => {
  const cut = cutFont(whole, letters);
  const [before, after] = [opened(whole), opened(cut)];

  it('keeps the outlines of the letters asked for, parts of composed letters among them', () => {
    for (const letter of letters)
      expect(after.glyphForCodePoint(letter).path.commands).toEqual(
        before.glyphForCodePoint(letter).path.commands,
      );
  });

  it('empties the others and keeps their widths', () => {
    const q = 'Q'.codePointAt(0)!;
    expect(after.glyphForCodePoint(q).path.commands).toEqual([]);
    expect(after.glyphForCodePoint(q).advanceWidth).toBe(before.glyphForCodePoint(q).advanceWidth);
  });

  it('is a small part of the whole', () => {
    expect(cut.length).toBeLessThan(whole.length / 8);
  });

  it('refuses what is no font', () => {
    expect(() => cutFont(new Uint8Array(40), letters)).toThrow('no TrueType font');
  });
});
