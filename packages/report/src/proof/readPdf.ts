/**
 * A small reader of PDFs as pdfkit writes them: classic cross-reference tables (with later revisions appended), objects in
 * the clear, streams plain or FlateDecode (ISO 32000-1, 7.3 and 7.5). Anything else is refused with a message.
 */
import { InputFault } from '@standfast/engine';
import { unzlibSync } from 'fflate';

export interface PdfName {
  name: string;
}
export interface PdfRef {
  ref: number;
}
/** A string's bytes, as characters 0 to 255. */
export interface PdfText {
  text: string;
}
export interface PdfStream {
  dict: PdfDict;
  /** Decoded. */
  bytes: Uint8Array;
}
export type PdfDict = Map<string, PdfValue>;
export type PdfValue =
  | null
  | boolean
  | number
  | PdfName
  | PdfRef
  | PdfText
  | PdfValue[]
  | PdfDict
  | PdfStream;

export interface PdfFile {
  trailer: PdfDict;
  /** The object behind a reference, or the value itself. */
  get(value: PdfValue | undefined): PdfValue;
  /** Whether something was appended after the file was first written. */
  revised: boolean;
}

const SPACE = /[\0\t\n\f\r ]/;
const DELIMITER = /[\0\t\n\f\r ()<>[\]{}/%]/;
/** A stream unpacked may be so large at most; more is no report of ours. */
const MOST_BYTES = 512e6;
/** Revisions appended one after the other at most. */
const MOST_REVISIONS = 100;

export const isName = (v: PdfValue | undefined): v is PdfName => isPlain(v) && 'name' in v;
export const isRef = (v: PdfValue | undefined): v is PdfRef => isPlain(v) && 'ref' in v;
export const isText = (v: PdfValue | undefined): v is PdfText => isPlain(v) && 'text' in v;
export const isStream = (v: PdfValue | undefined): v is PdfStream => isPlain(v) && 'dict' in v;

function isPlain(v: PdfValue | undefined): v is PdfName | PdfRef | PdfText | PdfStream {
  return typeof v === 'object' && v !== null && !Array.isArray(v) && !(v instanceof Map);
}

/**
 * Opens a PDF.
 * @throws InputFault when it is no PDF, or not one as Standfast writes them
 */
export function readPdf(bytes: Uint8Array, name: string): PdfFile {
  const text = latin(bytes);
  const fault = (what: string) => new InputFault(what, name);
  if (!text.startsWith('%PDF-')) throw fault('this is not a PDF: give the PDF that Standfast wrote');
  const start = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(text.slice(-200));
  if (!start) throw fault('this PDF is cut off: get a whole copy of the report');
  const offsets = new Map<number, number>();
  const objects = new Map<number, PdfValue>();
  let trailer: PdfDict | null = null;
  let at: PdfValue | undefined = Number(start[1]);
  let revisions = 0;
  while (typeof at === 'number') {
    if (++revisions > MOST_REVISIONS) throw fault('this PDF’s cross-reference table runs in a circle');
    const table = readTable(text, at, offsets);
    if (table === null)
      throw fault(
        'this PDF was written anew by another program, so it cannot be held against its evidence: use the file that Standfast wrote',
      );
    trailer ??= table;
    at = table.get('Prev');
  }
  if (trailer === null) throw fault('this PDF has no trailer');
  if (trailer.has('Encrypt')) throw fault('this PDF is encrypted: use the file that Standfast wrote');
  const file: PdfFile = {
    trailer,
    revised: revisions > 1,
    get(value) {
      for (let hops = 0; isRef(value) && hops < 20; hops++) value = object(value.ref);
      return value ?? null;
    },
  };
  function object(id: number): PdfValue {
    const known = objects.get(id);
    if (known !== undefined) return known;
    const offset = offsets.get(id);
    const head = offset === undefined ? null : /^\s*(\d+) (\d+) obj\b/.exec(text.slice(offset, offset + 40));
    if (offset === undefined || !head || Number(head[1]) !== id) return null;
    objects.set(id, null);
    const reader = parser(text, offset + head[0].length, fault);
    let value = reader.value();
    if (value instanceof Map && reader.word('stream')) {
      const from = reader.at() + (text[reader.at()] === '\r' ? 2 : 1);
      const length = file.get(value.get('Length'));
      if (typeof length !== 'number' || from + length > bytes.length) throw fault(`object ${id} is cut off`);
      value = { dict: value, bytes: unpacked(value, bytes.subarray(from, from + length), id) };
    }
    objects.set(id, value);
    return value;
  }
  function unpacked(dict: PdfDict, raw: Uint8Array, id: number): Uint8Array {
    const filter = dict.get('Filter');
    if (filter === undefined) return raw;
    const first = Array.isArray(filter) && filter.length === 1 ? filter[0] : filter;
    // A picture is compared as it is packed: a JPEG, or the rows of a PNG.
    const subtype = dict.get('Subtype');
    const packedPicture = isName(first) && (first.name === 'DCTDecode' || dict.has('DecodeParms'));
    if (packedPicture && isName(subtype) && subtype.name === 'Image') return raw;
    if (!isName(first) || first.name !== 'FlateDecode' || dict.has('DecodeParms'))
      throw fault(`object ${id} is packed in a way that Standfast does not write`);
    try {
      const out = unzlibSync(raw);
      if (out.length > MOST_BYTES) throw new Error('too large');
      return out;
    } catch {
      throw fault(`object ${id} is damaged and cannot be unpacked`);
    }
  }
  return file;
}

/** Reads one cross-reference table; entries already there are newer and stay. Null where there is none. */
function readTable(text: string, at: number, offsets: Map<number, number>): PdfDict | null {
  if (!text.startsWith('xref', at)) return null;
  const end = text.indexOf('trailer', at);
  if (end < 0) return null;
  const words = text
    .slice(at + 4, end)
    .trim()
    .split(/\s+/);
  let i = 0;
  while (i + 1 < words.length) {
    const [first, count] = [Number(words[i]), Number(words[i + 1])];
    i += 2;
    for (let k = 0; k < count && i + 2 < words.length; k++, i += 3)
      if (!offsets.has(first + k)) offsets.set(first + k, words[i + 2] === 'n' ? Number(words[i]) : -1);
  }
  const dict = parser(text, end + 7, (what) => new InputFault(what, 'trailer')).value();
  return dict instanceof Map ? dict : null;
}

/** Reads values one after the other. */
export function parser(text: string, start: number, fault: (what: string) => InputFault) {
  let i = start;
  const skip = () => {
    for (;;) {
      while (i < text.length && SPACE.test(text[i]!)) i++;
      if (text[i] !== '%') return;
      while (i < text.length && text[i] !== '\n' && text[i] !== '\r') i++;
    }
  };
  const word = (wanted: string) => {
    skip();
    if (!text.startsWith(wanted, i)) return false;
    i += wanted.length;
    return true;
  };
  const until = (): string => {
    const from = i;
    while (i < text.length && !DELIMITER.test(text[i]!)) i++;
    return text.slice(from, i);
  };
  function value(depth = 0): PdfValue {
    skip();
    if (depth > 100 || i >= text.length) throw fault('this PDF is damaged: a value has no end');
    if (word('<<')) {
      const dict: PdfDict = new Map();
      while (!word('>>')) {
        const key = value(depth + 1);
        if (!isName(key)) throw fault('this PDF is damaged: a dictionary has a key that is no name');
        dict.set(key.name, value(depth + 1));
      }
      return dict;
    }
    if (word('[')) {
      const list: PdfValue[] = [];
      while (!word(']')) list.push(value(depth + 1));
      return list;
    }
    if (text[i] === '/') {
      i++;
      return {
        name: until().replace(/#([0-9a-f]{2})/gi, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16))),
      };
    }
    if (text[i] === '(') return { text: literal() };
    if (text[i] === '<') {
      const end = text.indexOf('>', i);
      if (end < 0) throw fault('this PDF is damaged: a string has no end');
      const hex = text.slice(i + 1, end).replace(/\s+/g, '');
      i = end + 1;
      return { text: fromHex(hex) };
    }
    const ref = /^(\d+) (\d+) R(?![\w])/.exec(text.slice(i, i + 30));
    if (ref) {
      i += ref[0].length;
      return { ref: Number(ref[1]) };
    }
    const bare = until();
    if (bare === 'true' || bare === 'false') return bare === 'true';
    if (bare === 'null') return null;
    const number = Number(bare);
    if (bare === '' || Number.isNaN(number))
      throw fault(`this PDF is damaged: "${bare || text[i]}" is no value`);
    return number;
  }
  function literal(): string {
    let out = '';
    let open = 0;
    for (i++; i < text.length; i++) {
      const c = text[i]!;
      if (c === '\\') {
        const octal = /^[0-7]{1,3}/.exec(text.slice(i + 1, i + 4));
        if (octal) {
          out += String.fromCharCode(Number.parseInt(octal[0], 8) & 255);
          i += octal[0].length;
          continue;
        }
        const next = text[++i] ?? '';
        out += { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f', '\n': '' }[next] ?? next;
      } else if (c === ')' && open === 0) {
        i++;
        return out;
      } else {
        if (c === '(') open++;
        if (c === ')') open--;
        out += c;
      }
    }
    throw fault('this PDF is damaged: a string has no end');
  }
  /** An operator of a content stream, or null where a value follows. */
  function operator(): string | null {
    skip();
    const found = /^[A-Za-z'"][A-Za-z0-9*'"]*/.exec(text.slice(i, i + 12));
    if (!found || /^(true|false|null)$/.test(found[0])) return null;
    i += found[0].length;
    return found[0];
  }
  const ended = () => {
    skip();
    return i >= text.length;
  };
  return { value: () => value(), word, operator, ended, at: () => i };
}

function fromHex(hex: string): string {
  let out = '';
  for (let i = 0; i < hex.length; i += 2)
    out += String.fromCharCode(Number.parseInt(hex.slice(i, i + 2).padEnd(2, '0'), 16));
  return out;
}

/** Bytes as characters 0 to 255. */
export function latin(bytes: Uint8Array): string {
  let out = '';
  for (let i = 0; i < bytes.length; i += 32768) out += String.fromCharCode(...bytes.subarray(i, i + 32768));
  return out;
}

/** A text string of a PDF: UTF-16 with its mark, else one byte a letter. */
export function wordsOf(value: PdfText): string {
  if (!value.text.startsWith('\u00fe\u00ff')) return value.text;
  let out = '';
  for (let i = 2; i + 1 < value.text.length; i += 2)
    out += String.fromCharCode(value.text.charCodeAt(i) * 256 + value.text.charCodeAt(i + 1));
  return out;
}

const catalogOf = (file: PdfFile) => file.get(file.trailer.get('Root'));

/** The files attached, by name. */
export function attachmentsOf(file: PdfFile): Map<string, Uint8Array> {
  const found = new Map<string, Uint8Array>();
  const catalog = catalogOf(file);
  const names = catalog instanceof Map ? file.get(catalog.get('Names')) : null;
  if (names instanceof Map) walk(file.get(names.get('EmbeddedFiles')), 0);
  return found;
  function walk(node: PdfValue, depth: number): void {
    if (!(node instanceof Map) || depth > 20) return;
    const kids = file.get(node.get('Kids'));
    if (Array.isArray(kids)) for (const kid of kids) walk(file.get(kid), depth + 1);
    const list = file.get(node.get('Names'));
    if (!Array.isArray(list)) return;
    for (let i = 0; i + 1 < list.length; i += 2) {
      const name = file.get(list[i]);
      const spec = file.get(list[i + 1]);
      const ef = spec instanceof Map ? file.get(spec.get('EF')) : null;
      const stream = ef instanceof Map ? file.get(ef.get('F')) : null;
      if (isText(name) && isStream(stream)) found.set(wordsOf(name), stream.bytes);
    }
  }
}

/** The pages in their order. */
export function pagesOf(file: PdfFile): PdfDict[] {
  const pages: PdfDict[] = [];
  const catalog = catalogOf(file);
  if (catalog instanceof Map) walk(file.get(catalog.get('Pages')), 0);
  return pages;
  function walk(node: PdfValue, depth: number): void {
    if (!(node instanceof Map) || depth > 20) return;
    const kids = file.get(node.get('Kids'));
    if (Array.isArray(kids)) for (const kid of kids) walk(file.get(kid), depth + 1);
    else pages.push(node);
  }
}

/** The catalog, with all that hangs from it but the pages' own content. */
export function catalogDict(file: PdfFile): PdfDict {
  const catalog = catalogOf(file);
  return catalog instanceof Map ? catalog : new Map();
}
