/** Numbers printed on a chart's margin. */
import { PAPER } from '../paper.ts';
import type { FlatChart } from '../warp.ts';
import { GLYPH_HIGH, GLYPH_WIDE, GLYPHS } from './glyphs.ts';

/** A whole number as printed, and the middle of its box. */
export interface PrintedNumber {
  value: number;
  column: number;
  row: number;
  /** Height of its digits, rows. */
  height: number;
}

interface Blob {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Likeness (correlation) a digit must have, and its lead over the next other digit. */
const LIKE = 0.72;
const LEAD = 0.02;
/** A blurred digit is less like any, but must then be far more like one than the next. */
const BLURRED = 0.58;
const CLEAR_LEAD = 0.13;
/** Ink paler than this share of the darkest is none. */
const PALEST = 0.3;
const LEAST_HEIGHT = 6;
/** Digits run together are at most so many heights wide; a single one is narrower than the second number. */
const MOST_RUN = 4;
const SINGLE = 1.05;
const USUAL_WIDTH = 0.7;

/**
 * Reads whole numbers on a laid-flat and evened-out piece of paper. Anything that is not plainly made of digits only
 * is left out.
 */
export function printedNumbers(chart: FlatChart): PrintedNumber[] {
  const dark = darkness(chart);
  const blobs = blobsOf(dark, chart.columns, chart.rows);
  const numbers: PrintedNumber[] = [];
  for (const word of wordsOf(blobs, Math.min(chart.rows, chart.columns))) {
    let text = '';
    for (const blob of word) {
      for (const piece of parted(dark, chart.columns, blob))
        text += digitOf(dark, chart.columns, piece) ?? '?';
    }
    if (!/^\d{1,4}$/.test(text) || (text.length > 1 && text.startsWith('0'))) continue;
    const first = word[0]!;
    const last = word.at(-1)!;
    numbers.push({
      value: Number(text),
      column: (first.left + last.right) / 2,
      row: (Math.min(...word.map((b) => b.top)) + Math.max(...word.map((b) => b.bottom))) / 2,
      height: Math.max(...word.map((b) => b.bottom - b.top + 1)),
    });
  }
  return numbers;
}

/** How many pieces of print, at least so many rows high and clear of the edges, lie on a laid-flat and evened-out piece of paper. */
export function piecesOfPrint(chart: FlatChart, leastHeight: number): number {
  const blobs = blobsOf(darkness(chart), chart.columns, chart.rows);
  return blobs.filter(({ top, bottom }) => bottom - top + 1 >= leastHeight).length;
}

/** Darkness of the darkest channel, as shares of the darkest print around. */
function darkness({ columns, rows, red, green, blue }: FlatChart): Float32Array {
  const out = new Float32Array(columns * rows);
  const lacking = new Uint8Array(columns * rows);
  const counts = new Uint32Array(256);
  for (let k = 0; k < out.length; k++) {
    const value = Math.max(0, PAPER - Math.min(Math.min(red[k]!, green[k]!), blue[k]!));
    lacking[k] = value;
    counts[value]!++;
  }
  let seen = 0;
  let most = 255;
  while (most > 1 && seen < 0.004 * out.length) seen += counts[most--]!;
  if (most < 24) return out;
  const shares = Float32Array.from(counts, (_, value) => Math.min(1, value / most));
  for (let k = 0; k < out.length; k++) out[k] = shares[lacking[k]!]!;
  return out;
}

/**
 * Connected pieces of ink (eight neighbours) darker than half of what each is at its darkest: grey numbers beside a
 * black frame are as wide as their strokes.
 */
function blobsOf(dark: Float32Array, columns: number, rows: number): Blob[] {
  const seen = new Uint8Array(dark.length);
  const blobs: Blob[] = [];
  for (let start = 0; start < dark.length; start++) {
    if (seen[start] || dark[start]! < PALEST) continue;
    const places = joinedPlaces(dark, columns, rows, start, PALEST, seen, 1);
    let peak = 0;
    for (const k of places) peak = Math.max(peak, dark[k]!);
    const half = Math.max(PALEST, 0.5 * Math.min(1, peak));
    for (const k of places) {
      if (seen[k] === 2 || dark[k]! < half) continue;
      const blob = { left: columns, right: 0, top: rows, bottom: 0 };
      for (const p of joinedPlaces(dark, columns, rows, k, half, seen, 2)) {
        const x = p % columns;
        const y = (p - x) / columns;
        blob.left = Math.min(blob.left, x);
        blob.right = Math.max(blob.right, x);
        blob.top = Math.min(blob.top, y);
        blob.bottom = Math.max(blob.bottom, y);
      }
      // What reaches the edge is a tick of the chart, or the paper's end.
      const inside = blob.left > 0 && blob.top > 0 && blob.right < columns - 1 && blob.bottom < rows - 1;
      if (inside) blobs.push(blob);
    }
  }
  return blobs;
}

/** Places at least so dark that hang together with one of them, by flood fill; each is marked as seen. */
function joinedPlaces(
  dark: Float32Array,
  columns: number,
  rows: number,
  start: number,
  least: number,
  seen: Uint8Array,
  mark: 1 | 2,
): number[] {
  const places = [start];
  seen[start] = mark;
  for (let i = 0; i < places.length; i++) {
    const k = places[i]!;
    const x = k % columns;
    const y = (k - x) / columns;
    for (let v = Math.max(0, y - 1); v <= Math.min(rows - 1, y + 1); v++) {
      for (let u = Math.max(0, x - 1); u <= Math.min(columns - 1, x + 1); u++) {
        const n = v * columns + u;
        if (seen[n]! >= mark || dark[n]! < least) continue;
        seen[n] = mark;
        places.push(n);
      }
    }
  }
  return places;
}

/** Pieces of like height side by side. Small specks within a word spoil it, for they may be decimal points. */
function wordsOf(blobs: Blob[], side: number): Blob[][] {
  const high = (blob: Blob) => blob.bottom - blob.top + 1;
  const wide = (blob: Blob) => blob.right - blob.left + 1;
  const tall = blobs
    .filter((b) => high(b) >= LEAST_HEIGHT && high(b) < 0.6 * side && wide(b) < MOST_RUN * high(b))
    .sort((a, b) => a.left - b.left);
  const words: Blob[][] = [];
  for (const blob of tall) {
    const word = words.find((w) => {
      const last = w.at(-1)!;
      const height = Math.max(high(last), high(blob));
      return (
        Math.abs(last.top - blob.top) < 0.25 * height &&
        Math.abs(last.bottom - blob.bottom) < 0.25 * height &&
        blob.left - last.right < 0.55 * height &&
        blob.left > last.left
      );
    });
    if (word) word.push(blob);
    else words.push([blob]);
  }
  return words.filter((word) => {
    const height = Math.max(...word.map(high));
    const left = word[0]!.left - 0.5 * height;
    const right = word.at(-1)!.right + 0.5 * height;
    const top = Math.min(...word.map((b) => b.top));
    const bottom = Math.max(...word.map((b) => b.bottom));
    return !blobs.some(
      (b) =>
        high(b) < 0.5 * height &&
        !word.some((digit) => within(b, digit)) &&
        wide(b) < height &&
        high(b) * wide(b) > 0.01 * height * height &&
        b.left < right &&
        b.right > left &&
        b.top < bottom + 1 &&
        b.bottom > top - 1,
    );
  });
}

/** A dotted zero's dot belongs to it. */
const within = (inner: Blob, outer: Blob) =>
  inner.left > outer.left &&
  inner.right < outer.right &&
  inner.top > outer.top &&
  inner.bottom < outer.bottom;

/** Digits that a blur has run together, parted where the ink between them is least. */
function parted(dark: Float32Array, columns: number, blob: Blob): Blob[] {
  const high = blob.bottom - blob.top + 1;
  const wide = blob.right - blob.left + 1;
  if (wide <= SINGLE * high) return [blob];
  const count = Math.max(2, Math.round(wide / (USUAL_WIDTH * high)));
  const ink = (x: number) => {
    let sum = 0;
    for (let y = blob.top; y <= blob.bottom; y++) sum += dark[y * columns + x]!;
    return sum;
  };
  const pieces: Blob[] = [];
  let left = blob.left;
  for (let part = 1; part <= count; part++) {
    let cut = blob.right + 1;
    if (part < count) {
      const expected = blob.left + Math.round((wide * part) / count);
      const reach = Math.round(0.16 * high);
      cut = expected;
      for (let x = expected - reach; x <= expected + reach; x++) if (ink(x) < ink(cut)) cut = x;
    }
    pieces.push({ ...blob, left, right: Math.max(left, cut - 1) });
    left = cut + 1;
  }
  return pieces;
}

/** The digit a piece of ink is, null when it is none or not clear which. */
function digitOf(dark: Float32Array, columns: number, blob: Blob): string | null {
  const best = new Map<string, number>();
  // Between two widths on the mesh either may be the glyph's: thin sides of a 0 half a cell off are like no 0.
  const width = (GLYPH_HIGH * (blob.right - blob.left + 1)) / (blob.bottom - blob.top + 1);
  for (const cells of new Set([Math.floor(width), Math.ceil(width)])) {
    const mesh = meshed(dark, columns, blob, Math.max(1, Math.min(GLYPH_WIDE, cells)));
    for (const { digit, cells: glyph } of glyphs()) {
      let like = 0;
      for (let k = 0; k < mesh.length; k++) like += mesh[k]! * glyph[k]!;
      if (like > (best.get(digit) ?? -1)) best.set(digit, like);
    }
  }
  const [first, second] = [...best].sort((a, b) => b[1] - a[1]);
  if (!first) return null;
  const lead = first[1] - (second?.[1] ?? 0);
  return (first[1] >= LIKE && lead >= LEAD) || (first[1] >= BLURRED && lead >= CLEAR_LEAD) ? first[0] : null;
}

/** The piece on the glyphs' mesh: as high as the mesh, so many cells wide, in the middle; mean 0 and length 1. */
function meshed(dark: Float32Array, columns: number, blob: Blob, cells: number): Float64Array {
  const high = blob.bottom - blob.top + 1;
  const wide = blob.right - blob.left + 1;
  const start = (GLYPH_WIDE - cells) >> 1;
  const mesh = new Float64Array(GLYPH_WIDE * GLYPH_HIGH);
  const parts = 4;
  for (let j = 0; j < GLYPH_HIGH; j++) {
    for (let i = 0; i < cells; i++) {
      let sum = 0;
      for (let v = 0; v < parts; v++) {
        const y = blob.top + Math.min(high - 1, Math.floor(((j + (v + 0.5) / parts) * high) / GLYPH_HIGH));
        for (let u = 0; u < parts; u++) {
          const x = blob.left + Math.min(wide - 1, Math.floor(((i + (u + 0.5) / parts) * wide) / cells));
          sum += dark[y * columns + x]!;
        }
      }
      mesh[j * GLYPH_WIDE + start + i] = sum / (parts * parts);
    }
  }
  return unit(mesh);
}

function unit(values: Float64Array): Float64Array {
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  const off = values.map((v) => v - mean);
  const length = Math.hypot(...off) || 1;
  return off.map((v) => v / length);
}

let prepared: { digit: string; cells: Float64Array }[] | null = null;

function glyphs() {
  prepared ??= GLYPHS.map(([digit, cells]) => ({
    digit,
    cells: unit(Float64Array.from(cells, (cell) => Number.parseInt(cell, 16))),
  }));
  return prepared;
}
