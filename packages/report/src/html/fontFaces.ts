/** The report's fonts inside the HTML file, cut down to the letters that stand in it. */
import type { ReportFonts } from '../fonts.ts';
import { base64 } from './base64.ts';
import { cutFont } from './cutFont.ts';

/** `@font-face` rules with the fonts as data. */
export function fontFaces(fonts: ReportFonts, text: string): string {
  const letters = new Set<number>();
  for (const letter of text) letters.add(letter.codePointAt(0)!);
  const rule = (family: string, weight: number, bytes: Uint8Array) =>
    `@font-face{font-family:'${family}';font-weight:${weight};font-display:block;` +
    `src:url(data:font/woff;base64,${base64(cutFont(bytes, letters))}) format('woff')}\n`;
  return (
    rule('Source Sans 3', 400, fonts.regular) +
    rule('Source Sans 3', 600, fonts.semibold) +
    rule('Source Serif 4', 600, fonts.heading)
  );
}
