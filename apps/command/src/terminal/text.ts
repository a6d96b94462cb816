/** Laying out text in columns. */
import { stripVTControlCharacters } from 'node:util';

const graphemes = new Intl.Segmenter(undefined, { granularity: 'grapheme' });

/** Columns a text takes, colours aside. */
export function widthOf(text: string): number {
  let width = 0;
  for (const _ of graphemes.segment(stripVTControlCharacters(text))) width++;
  return width;
}

export type Align = 'left' | 'right';

export function padded(text: string, width: number, align: Align): string {
  const fill = ' '.repeat(Math.max(0, width - widthOf(text)));
  return align === 'left' ? text + fill : fill + text;
}

/**
 * A table in columns two spaces apart, headed, without rules.
 * @param columns heading and alignment of each
 * @param rows cells as text
 */
export function table(columns: { head: string; align: Align }[], rows: string[][]): string[] {
  const all = [columns.map(({ head }) => head), ...rows];
  const widths = columns.map((_, i) => Math.max(...all.map((row) => widthOf(row[i] ?? ''))));
  return all.map((row) =>
    columns
      .map(({ align }, i) => padded(row[i] ?? '', widths[i]!, align))
      .join('  ')
      .trimEnd(),
  );
}

/** Breaks a text into lines no wider than `width`, following lines indented by `indent`. */
export function wrapped(text: string, width: number, indent = ''): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = line ? `${line} ${word}` : lines.length ? indent + word : word;
    if (widthOf(longer) > width && line) {
      lines.push(line);
      line = indent + word;
    } else line = longer;
  }
  if (line) lines.push(line);
  return lines;
}

/** The text, cut to so many columns with a sign where it is longer. */
export function shortened(text: string, width: number): string {
  if (widthOf(text) <= width) return text;
  const letters = Array.from(graphemes.segment(text), ({ segment }) => segment);
  return `${letters
    .slice(0, Math.max(0, width - 1))
    .join('')
    .trimEnd()}…`;
}
