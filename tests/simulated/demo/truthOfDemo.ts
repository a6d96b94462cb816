/**
 * What the invented tree of the demonstration is really like inside: one plan of decay, from which every trace of the
 * demonstration is made, and against which an assessment of it can be judged.
 *
 * Everything here is invented. Lengths in mm, x east, y north, z up from the ground.
 */
import type { ZoneKind } from '../../../packages/engine/src/trace/types.ts';

export type Point = readonly [xMm: number, yMm: number];

/** Height of the drilled section above ground. */
export const SECTION_HEIGHT_MM = 300;
export const BARK_MM = 18;

/** The outline over bark at the section: slightly lobed above four root flares. */
export const RADII = [
  { azimuthDeg: 0, radiusMm: 548 },
  { azimuthDeg: 25, radiusMm: 583 },
  { azimuthDeg: 55, radiusMm: 541 },
  { azimuthDeg: 85, radiusMm: 534 },
  { azimuthDeg: 115, radiusMm: 569 },
  { azimuthDeg: 150, radiusMm: 531 },
  { azimuthDeg: 180, radiusMm: 538 },
  { azimuthDeg: 215, radiusMm: 577 },
  { azimuthDeg: 245, radiusMm: 549 },
  { azimuthDeg: 270, radiusMm: 529 },
  { azimuthDeg: 300, radiusMm: 560 },
  { azimuthDeg: 330, radiusMm: 537 },
];

/** Wood with no more than a quarter of its strength left, at the section's height. */
export const DECAYED: readonly Point[] = [
  [-94, -26],
  [-92, -104],
  [-104, -186],
  [-46, -262],
  [-48, -324],
  [-104, -360],
  [-182, -372],
  [-276, -356],
  [-338, -284],
  [-350, -190],
  [-306, -104],
  [-226, -44],
  [-140, -2],
];

/** The cavity inside it. */
export const VOID: readonly Point[] = [
  [-184, -166],
  [-178, -206],
  [-206, -238],
  [-246, -232],
  [-254, -192],
  [-224, -160],
];

/** Around the decayed wood the wood has begun to change over this width. */
export const INCIPIENT_MM = 24;

/** Below the section the column of decay leans towards flare f3: this far outwards for each mm down. */
const LEAN_OUT = 0.8;
const LEAN_AZIMUTH_DEG = 222;

/** What the wood is at a point inside the bark; decay has spread by `spreadMm` since the plan was drawn. */
export function kindAt(xMm: number, yMm: number, zMm: number, spreadMm = 0): ZoneKind {
  const out = LEAN_OUT * Math.max(0, SECTION_HEIGHT_MM - zMm);
  const lean = (LEAN_AZIMUTH_DEG * Math.PI) / 180;
  const point: Point = [xMm - out * Math.sin(lean), yMm - out * Math.cos(lean)];
  // The cavity is small: it ends a hand's breadth below the section.
  if (zMm > SECTION_HEIGHT_MM - 100 && inside(point, VOID)) return 'void';
  if (inside(point, DECAYED)) return 'decayed';
  const off = distanceTo(point, DECAYED) - spreadMm;
  if (spreadMm > 0 && off < 0) return 'decayed';
  return off < INCIPIENT_MM ? 'incipient' : 'sound';
}

function inside([x, y]: Point, ring: readonly Point[]): boolean {
  let odd = false;
  ring.forEach(([x1, y1], i) => {
    const [x2, y2] = ring[(i + 1) % ring.length]!;
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) odd = !odd;
  });
  return odd;
}

function distanceTo([x, y]: Point, ring: readonly Point[]): number {
  let least = Infinity;
  ring.forEach(([x1, y1], i) => {
    const [x2, y2] = ring[(i + 1) % ring.length]!;
    const along = ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / ((x2 - x1) ** 2 + (y2 - y1) ** 2);
    const t = Math.min(1, Math.max(0, along));
    least = Math.min(least, Math.hypot(x - x1 - t * (x2 - x1), y - y1 - t * (y2 - y1)));
  });
  return least;
}
