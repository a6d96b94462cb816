/** Evening out shadow and the paper's tint. */
import type { FlatChart } from './warp.ts';

/** Byte that stands for bare paper once evened out; brighter places have room above it. */
export const PAPER = 200;

const PLACES = 16;
const ONE = 1 << PLACES;

const TILE = 32;
/** Share of a tile's pixels darker than what is taken as its paper: lines and strokes fill less than this. */
const PAPER_SHARE = 0.7;
/** Paper darker than this tells nothing apart, bytes. */
const BLACK = 12;

/**
 * Divides each channel by the local brightness of the paper, so that bare paper is `PAPER` everywhere. The paper is
 * the 70 % point of brightness of each tile, with tiles that strokes have filled lifted to their neighbours (a grey
 * closing of the tiles), smoothed and joined bilinearly. Works in place.
 * @returns median brightness of the paper before, 0 to 255; below `BLACK` there is nothing to read
 */
export function evenOutPaper(chart: FlatChart): { brightness: number; tooDark: boolean } {
  const brightness: number[] = [];
  for (const plane of [chart.red, chart.green, chart.blue]) brightness.push(evenOutPlane(chart, plane));
  const brightest = Math.max(...brightness);
  return { brightness: brightest, tooDark: brightest < BLACK };
}

function evenOutPlane({ columns, rows }: FlatChart, plane: Uint8Array): number {
  const across = Math.max(1, Math.ceil(columns / TILE));
  const down = Math.max(1, Math.ceil(rows / TILE));
  let tiles: Float64Array = new Float64Array(across * down);
  const counts = new Uint32Array(256);
  for (let j = 0; j < down; j++) {
    for (let i = 0; i < across; i++) {
      counts.fill(0);
      const right = Math.min(columns, (i + 1) * TILE);
      const bottom = Math.min(rows, (j + 1) * TILE);
      let total = 0;
      for (let y = j * TILE; y < bottom; y += 2) {
        for (let x = i * TILE + ((y >> 1) & 1); x < right; x += 2) {
          counts[plane[y * columns + x]!]!++;
          total++;
        }
      }
      tiles[j * across + i] = pointOf(counts, total * PAPER_SHARE);
    }
  }
  const middle = [...tiles].sort((a, b) => a - b)[tiles.length >> 1]!;
  tiles = overNeighbours(tiles, across, down, Math.max);
  tiles = overNeighbours(tiles, across, down, Math.min);
  tiles = smoothed(tiles, across, down);

  // Gains in parts of `ONE`: whole numbers are quick.
  const gain = new Int32Array(columns);
  for (let y = 0; y < rows; y++) {
    const v = Math.min(down - 1, Math.max(0, (y + 0.5) / TILE - 0.5));
    const j = Math.min(down - 1, Math.floor(v));
    const below = Math.min(down - 1, j + 1);
    const fy = v - j;
    // Along the row the paper is joined linearly between tile centres.
    let previous = tiles[j * across]! * (1 - fy) + tiles[below * across]! * fy;
    let x = 0;
    for (let i = 0; i <= across; i++) {
      const k = Math.min(across - 1, i);
      const next = tiles[j * across + k]! * (1 - fy) + tiles[below * across + k]! * fy;
      const end = Math.min(columns, i * TILE + TILE / 2);
      const from = i * TILE - TILE / 2;
      for (; x < end; x++) {
        const paper = previous + ((next - previous) * (x + 0.5 - from)) / TILE;
        gain[x] = (ONE * PAPER) / Math.max(paper, 4);
      }
      previous = next;
    }
    const row = y * columns;
    for (let c = 0; c < columns; c++) {
      plane[row + c] = Math.min((Math.imul(plane[row + c]!, gain[c]!) + ONE / 2) >> PLACES, 255);
    }
  }
  return middle;
}

function overNeighbours(
  tiles: Float64Array,
  across: number,
  down: number,
  choose: (a: number, b: number) => number,
): Float64Array {
  const out = new Float64Array(tiles.length);
  for (let j = 0; j < down; j++) {
    for (let i = 0; i < across; i++) {
      let best = tiles[j * across + i]!;
      for (let y = Math.max(0, j - 1); y <= Math.min(down - 1, j + 1); y++) {
        for (let x = Math.max(0, i - 1); x <= Math.min(across - 1, i + 1); x++) {
          best = choose(best, tiles[y * across + x]!);
        }
      }
      out[j * across + i] = best;
    }
  }
  return out;
}

function smoothed(tiles: Float64Array, across: number, down: number): Float64Array {
  const out = new Float64Array(tiles.length);
  for (let j = 0; j < down; j++) {
    for (let i = 0; i < across; i++) {
      let sum = 0;
      let weight = 0;
      for (let y = Math.max(0, j - 1); y <= Math.min(down - 1, j + 1); y++) {
        for (let x = Math.max(0, i - 1); x <= Math.min(across - 1, i + 1); x++) {
          const w = (y === j ? 2 : 1) * (x === i ? 2 : 1);
          sum += w * tiles[y * across + x]!;
          weight += w;
        }
      }
      out[j * across + i] = sum / weight;
    }
  }
  return out;
}

/** Smallest value with at least `wanted` counts at or below it. */
export function pointOf(counts: Uint32Array, wanted: number): number {
  let seen = 0;
  for (let value = 0; value < counts.length; value++) {
    seen += counts[value]!;
    if (seen >= wanted && seen > 0) return value;
  }
  return counts.length - 1;
}
