/** The words drawn on a page, run by run, by the fonts' own ToUnicode tables. */
import { InputFault } from '@standfast/engine';
import {
  isName,
  isStream,
  isText,
  latin,
  type PdfDict,
  type PdfFile,
  type PdfValue,
  parser,
} from './readPdf.ts';

/** Runs of text in the order in which they are drawn: one a line, as pdfkit draws them. */
export function textOfPage(file: PdfFile, page: PdfDict): string[] {
  const resources = file.get(page.get('Resources'));
  const fonts = resources instanceof Map ? file.get(resources.get('Font')) : null;
  const tables = new Map<string, Map<number, string>>();
  if (fonts instanceof Map)
    for (const [name, font] of fonts) tables.set(name, toUnicode(file, file.get(font)));
  const runs: string[] = [];
  for (const content of contentsOf(file, page)) {
    const read = parser(latin(content), 0, (what) => new InputFault(what, 'page'));
    let stack: PdfValue[] = [];
    let table = new Map<number, string>();
    while (!read.ended()) {
      const operator = read.operator();
      if (operator === null) {
        stack.push(read.value());
        continue;
      }
      if (operator === 'Tf' && isName(stack[0])) table = tables.get(stack[0].name) ?? new Map();
      if (operator === 'TJ' || operator === 'Tj') {
        const parts = Array.isArray(stack[0]) ? stack[0] : stack;
        runs.push(parts.map((part) => (isText(part) ? decoded(part.text, table) : '')).join(''));
      }
      stack = [];
    }
  }
  return runs.filter((run) => run.trim() !== '');
}

function contentsOf(file: PdfFile, page: PdfDict): Uint8Array[] {
  const contents = file.get(page.get('Contents'));
  return (Array.isArray(contents) ? contents : [contents]).flatMap((one) => {
    const stream = file.get(one);
    return isStream(stream) ? [stream.bytes] : [];
  });
}

function decoded(codes: string, table: ReadonlyMap<number, string>): string {
  let out = '';
  for (let i = 0; i + 1 < codes.length; i += 2)
    out += table.get(codes.charCodeAt(i) * 256 + codes.charCodeAt(i + 1)) ?? '\ufffd';
  return out;
}

/** Glyph code to letters, from the font's `bfrange` and `bfchar` entries. */
function toUnicode(file: PdfFile, font: PdfValue): Map<number, string> {
  const table = new Map<number, string>();
  const stream = font instanceof Map ? file.get(font.get('ToUnicode')) : null;
  if (!isStream(stream)) return table;
  const letters = (hex: string) =>
    String.fromCharCode(
      ...(hex.replace(/\s/g, '').match(/.{4}/g) ?? []).map((unit) => Number.parseInt(unit, 16)),
    );
  for (const [, from, , list] of latin(stream.bytes).matchAll(
    /<([0-9a-f]+)>\s*<([0-9a-f]+)>\s*\[([^\]]*)\]/gi,
  ))
    [...list!.matchAll(/<([0-9a-f\s]*)>/gi)].forEach(([, hex], i) => {
      table.set(Number.parseInt(from!, 16) + i, letters(hex!));
    });
  return table;
}
