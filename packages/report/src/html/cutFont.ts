/**
 * Cuts a TrueType font down to given letters and wraps it as WOFF 1.0 (W3C Recommendation, 2012).
 *
 * Glyph numbers stay as they are, so that every other table stays true: outlines of glyphs that are not needed are
 * emptied, tables of layout features (kerning apart) are left out, and what remains packs small.
 */
import { zlibSync } from 'fflate';

/** Tables a browser needs to draw plain text. */
const KEPT = new Set([
  'cmap',
  'cvt ',
  'fpgm',
  'glyf',
  'head',
  'hhea',
  'hmtx',
  'loca',
  'maxp',
  'name',
  'OS/2',
  'post',
  'prep',
]);

interface Table {
  tag: string;
  bytes: Uint8Array;
}

/**
 * The font with only the letters' outlines, as a WOFF file.
 *
 * @throws RangeError when the bytes are no TrueType font.
 */
export function cutFont(font: Uint8Array, letters: ReadonlySet<number>): Uint8Array {
  const tables = readTables(font);
  const find = (tag: string) => {
    const found = tables.find((t) => t.tag === tag);
    if (!found) throw new RangeError(`The font has no ${tag.trim()} table: give a TrueType font.`);
    return found.bytes;
  };
  const longOffsets = view(find('head')).getInt16(50) === 1;
  const count = view(find('maxp')).getUint16(4);
  const loca = readLoca(find('loca'), count, longOffsets);
  const glyphs = withParts(glyphsOf(find('cmap'), letters), find('glyf'), loca);
  const outlines = cutOutlines(find('glyf'), loca, glyphs);
  const kept = tables
    .filter((t) => KEPT.has(t.tag))
    .map((t) => {
      if (t.tag === 'glyf') return { tag: t.tag, bytes: outlines.glyf };
      if (t.tag === 'loca') return { tag: t.tag, bytes: outlines.loca };
      // Version 3 of `post` leaves out the glyphs' names; offsets are long now.
      if (t.tag === 'post')
        return { tag: t.tag, bytes: patched(t.bytes.slice(0, 32), (v) => v.setUint32(0, 0x00030000)) };
      if (t.tag === 'head') return { tag: t.tag, bytes: patched(t.bytes.slice(), (v) => v.setInt16(50, 1)) };
      return t;
    });
  return woff(kept, view(font).getUint32(0));
}

function view(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function patched(bytes: Uint8Array, change: (v: DataView) => void): Uint8Array {
  change(view(bytes));
  return bytes;
}

function readTables(font: Uint8Array): Table[] {
  const v = view(font);
  if (font.length < 12 || (v.getUint32(0) !== 0x00010000 && v.getUint32(0) !== 0x74727565))
    throw new RangeError('These bytes are no TrueType font.');
  return Array.from({ length: v.getUint16(4) }, (_, i) => {
    const at = 12 + 16 * i;
    const tag = String.fromCharCode(...font.subarray(at, at + 4));
    const offset = v.getUint32(at + 8);
    return { tag, bytes: font.subarray(offset, offset + v.getUint32(at + 12)) };
  });
}

function readLoca(bytes: Uint8Array, count: number, long: boolean): number[] {
  const v = view(bytes);
  return Array.from({ length: count + 1 }, (_, i) => (long ? v.getUint32(4 * i) : 2 * v.getUint16(2 * i)));
}

/** Glyph numbers of the letters, by a format 12 or format 4 subtable of `cmap`; glyph 0 always. */
function glyphsOf(cmap: Uint8Array, letters: ReadonlySet<number>): Set<number> {
  const v = view(cmap);
  const glyphs = new Set([0]);
  for (let i = 0; i < v.getUint16(2); i++) {
    const at = v.getUint32(4 + 8 * i + 4);
    const format = v.getUint16(at);
    if (format === 12) {
      for (let g = 0; g < v.getUint32(at + 12); g++) {
        const [first, last, glyph] = [0, 4, 8].map((o) => v.getUint32(at + 16 + 12 * g + o)) as [
          number,
          number,
          number,
        ];
        for (const letter of letters)
          if (letter >= first && letter <= last) glyphs.add(glyph + letter - first);
      }
    } else if (format === 4) {
      const segments = v.getUint16(at + 6) / 2;
      for (let s = 0; s < segments; s++) {
        const end = v.getUint16(at + 14 + 2 * s);
        const start = v.getUint16(at + 16 + 2 * (segments + s));
        const delta = v.getUint16(at + 16 + 2 * (2 * segments + s));
        const rangeAt = at + 16 + 2 * (3 * segments + s);
        const range = v.getUint16(rangeAt);
        for (const letter of letters) {
          if (letter < start || letter > end) continue;
          const raw = range === 0 ? letter : v.getUint16(rangeAt + range + 2 * (letter - start));
          if (raw !== 0) glyphs.add((raw + delta) & 0xffff);
        }
      }
    }
  }
  return glyphs;
}

/** The glyphs with all those they are composed of. */
function withParts(glyphs: Set<number>, glyf: Uint8Array, loca: readonly number[]): Set<number> {
  const v = view(glyf);
  for (const glyph of glyphs) {
    const at = loca[glyph]!;
    if (loca[glyph + 1]! - at < 10 || v.getInt16(at) >= 0) continue;
    let part = at + 10;
    for (;;) {
      const flags = v.getUint16(part);
      // A set is walked on to what is added during the walk, so parts of parts are found too.
      glyphs.add(v.getUint16(part + 2));
      if ((flags & 0x20) === 0) break;
      part += 4 + (flags & 1 ? 4 : 2) + (flags & 8 ? 2 : flags & 0x40 ? 4 : flags & 0x80 ? 8 : 0);
    }
  }
  return glyphs;
}

function cutOutlines(
  glyf: Uint8Array,
  loca: readonly number[],
  glyphs: ReadonlySet<number>,
): { glyf: Uint8Array; loca: Uint8Array } {
  const offsets = new Uint8Array(4 * loca.length);
  const v = view(offsets);
  const kept: Uint8Array[] = [];
  let at = 0;
  for (let g = 0; g + 1 < loca.length; g++) {
    v.setUint32(4 * g, at);
    if (!glyphs.has(g)) continue;
    const outline = glyf.subarray(loca[g]!, loca[g + 1]!);
    kept.push(outline);
    at += outline.length;
  }
  v.setUint32(4 * (loca.length - 1), at);
  const bytes = new Uint8Array(at);
  let put = 0;
  for (const outline of kept) {
    bytes.set(outline, put);
    put += outline.length;
  }
  return { glyf: bytes, loca: offsets };
}

function checksum(bytes: Uint8Array): number {
  let sum = 0;
  for (let i = 0; i < bytes.length; i += 4)
    sum =
      (sum +
        (((bytes[i]! << 24) |
          ((bytes[i + 1] ?? 0) << 16) |
          ((bytes[i + 2] ?? 0) << 8) |
          (bytes[i + 3] ?? 0)) >>>
          0)) >>>
      0;
  return sum;
}

const padded = (n: number) => (n + 3) & ~3;

function woff(tables: readonly Table[], flavor: number): Uint8Array {
  const entries = tables.map((t) => {
    const packed = zlibSync(t.bytes, { level: 9 });
    return { ...t, stored: packed.length < t.bytes.length ? packed : t.bytes };
  });
  const head = 44 + 20 * entries.length;
  const total = head + entries.reduce((n, e) => n + padded(e.stored.length), 0);
  const out = new Uint8Array(total);
  const v = view(out);
  v.setUint32(0, 0x774f4646);
  v.setUint32(4, flavor);
  v.setUint32(8, total);
  v.setUint16(12, entries.length);
  v.setUint32(16, 12 + 16 * entries.length + entries.reduce((n, e) => n + padded(e.bytes.length), 0));
  v.setUint16(20, 1);
  let at = head;
  entries.forEach((e, i) => {
    const entry = 44 + 20 * i;
    for (let k = 0; k < 4; k++) out[entry + k] = e.tag.charCodeAt(k);
    v.setUint32(entry + 4, at);
    v.setUint32(entry + 8, e.stored.length);
    v.setUint32(entry + 12, e.bytes.length);
    v.setUint32(entry + 16, checksum(e.bytes));
    out.set(e.stored, at);
    at += padded(e.stored.length);
  });
  return out;
}
