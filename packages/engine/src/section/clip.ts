/**
 * Rings cut out of a ring with polyclip-ts, checked by scanning, with ways out when coinciding corners tangle it.
 */
import { difference, union } from 'polyclip-ts';
import { extentMm, signedAreaMm2, withoutRepeats } from './ring.ts';
import { scanAreaMm2 } from './scan-area.ts';
import type { PointMm, RingMm } from './types.ts';

/** What is left: pieces, each an outer ring and the rings of its holes. */
export interface Clipped {
  pieces: { outer: PointMm[]; holes: PointMm[][] }[];
  /** What was done to each corner before cutting: nothing, or rounding to a grid. */
  placed: (point: PointMm) => PointMm;
}

type Rings = [number, number][][];
type Pieces = Rings[];

/**
 * Ways to the same result. On random sections with many coinciding corners the first cannot finish 1 time in 200, and
 * others have been seen to finish wrong, so each result is checked.
 */
const WAYS: readonly ((outer: Rings, rings: readonly Rings[]) => Pieces)[] = [
  (outer, rings) => difference(outer, ...rings),
  (outer, rings) => rings.reduce<Pieces>((left, ring) => difference(left, ring), [outer]),
  (outer, rings) => rings.reduceRight<Pieces>((left, ring) => difference(left, ring), [outer]),
  (outer, rings) =>
    difference(
      outer,
      rings.reduce<Pieces>((all, ring) => union(all, ring), []),
    ),
];

/** Grids tried in turn, as shares of the outline's size: none, then finer than any measure. */
const GRID_SHARES = [0, 2 ** -40, 2 ** -33, 2 ** -27];

/** Clipping and scanning must give the same area to this share of the outline's. */
const SAME_AREA_SHARE = 1e-10;

/**
 * `outer` less all of `rings`. Exact on the corners as given; only where the clipping cannot finish in any order are the
 * corners first rounded to a grid of 1e-12, else 1e-10, else 1e-8 of the outline's size. Every result is held against the
 * area found by scanning, and null is returned rather than a result that fails it.
 */
export function clip(outer: RingMm, rings: readonly RingMm[]): Clipped | null {
  const size = 2 ** Math.ceil(Math.log2(extentMm(outer)));
  const area = scanAreaMm2(outer, rings);
  const sides = [outer, ...rings].reduce((sum, ring) => sum + ring.length, 0);
  for (const share of GRID_SHARES) {
    const grid = share * size;
    // Rounding may move each side by the grid along a length of at most the outline's size.
    const allowed = SAME_AREA_SHARE * size * size + sides * grid * size;
    const placed = (point: PointMm): PointMm =>
      grid === 0 ? point : [Math.round(point[0] / grid) * grid, Math.round(point[1] / grid) * grid];
    const polygon = (ring: RingMm): Rings => [withoutRepeats(ring.map(placed)).map(([x, y]) => [x, y])];
    const from = polygon(outer);
    const taken = rings.map(polygon).filter(([ring]) => ring!.length >= 3);
    for (const way of WAYS) {
      const pieces = attempt(() => way(from, taken));
      if (pieces && Math.abs(areaOf(pieces) - area) <= allowed) {
        return {
          pieces: pieces.map(([first, ...others]) => ({
            outer: withoutRepeats(first!),
            holes: others.map((hole) => withoutRepeats(hole)),
          })),
          placed,
        };
      }
    }
  }
  return null;
}

/** The pieces, or null where the clipping cannot finish: another order, or a coarser grid, may part what this could not. */
function attempt(way: () => Pieces): Pieces | null {
  try {
    return way();
  } catch {
    return null;
  }
}

function areaOf(pieces: Pieces): number {
  return pieces.reduce(
    (sum, piece) =>
      sum + piece.reduce((of, ring, k) => of + (k === 0 ? 1 : -1) * Math.abs(signedAreaMm2(ring)), 0),
    0,
  );
}
