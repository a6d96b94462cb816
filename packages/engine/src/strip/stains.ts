/** Broad darkness (stains, smudges, a shadow's edge) told from strokes, which are thin. */
import { greatestAround, leastAround } from './extremes.ts';
import type { Ink } from './ink.ts';
import { PAPER } from './paper.ts';

/** Darkness of each channel that is part of something broader than a stroke, laid out as in `Ink`. */
export interface Stains {
  columns: number;
  rows: number;
  red: Uint8Array;
  green: Uint8Array;
  blue: Uint8Array;
}

/**
 * Darkness that fills a whole square of `window` places: a grey opening (J. Serra 1982, Image Analysis and
 * Mathematical Morphology), so that anything thinner in one direction is left out of it.
 */
export function stainsOf(ink: Ink, window: number): Stains {
  const { columns, rows } = ink;
  const size = { length: rows, lines: columns };
  const half = window >> 1;
  const opened = (plane: Uint8Array) => {
    const eroded = leastAround({ bytes: plane, ...size }, half, 'nothing');
    return greatestAround({ bytes: eroded, ...size }, half, 'nothing');
  };
  return { columns, rows, red: opened(ink.red), green: opened(ink.green), blue: opened(ink.blue) };
}

/**
 * The ink with stains divided out where they are lighter than `most` (0 to `PAPER`): what is broad and as dark as the
 * pen is strokes that fill the paper, and stays.
 * @param fold how many places of the ink lie along one of the stains
 */
export function withoutStains(ink: Ink, stains: Stains, fold: number, most: number): Ink {
  const { columns, rows } = ink;
  const out = { ...ink, red: ink.red.slice(), green: ink.green.slice(), blue: ink.blue.slice() };
  const rowOf = Int32Array.from({ length: rows }, (_, y) => Math.min(stains.rows - 1, Math.floor(y / fold)));
  for (let x = 0; x < columns; x++) {
    const sx = Math.min(stains.columns - 1, Math.floor(x / fold)) * stains.rows;
    for (let y = 0; y < rows; y++) {
      const s = sx + rowOf[y]!;
      const r = stains.red[s]!;
      const g = stains.green[s]!;
      const b = stains.blue[s]!;
      if (r + g + b < 12 || Math.max(r, g, b) > most) continue;
      const k = x * rows + y;
      out.red[k] = lighter(out.red[k]!, r);
      out.green[k] = lighter(out.green[k]!, g);
      out.blue[k] = lighter(out.blue[k]!, b);
    }
  }
  return out;
}

/** Brightness under a stain is the product of both: what the ink alone would leave. */
function lighter(darkness: number, stain: number): number {
  const left = PAPER - stain;
  if (left <= 0) return 0;
  const alone = PAPER - ((PAPER - darkness) * PAPER) / left;
  return Math.max(alone, 0);
}
