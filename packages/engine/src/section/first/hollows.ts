/**
 * The hollows of a stem's outline: where it is drawn in between lobes, and between root flares.
 */
import { outlineRadius } from '../outline.ts';
import { RAD } from '../ring.ts';
import type { RingMm } from '../types.ts';
import { apart, signedTurn, wrap } from './turn.ts';

export interface Hollow {
  azimuthDeg: number;
  /** Between which flares, where it lies between recorded ones. */
  between: [string, string] | null;
  /** How far the outline is drawn in there, share of the mean radius; 0 where only the flares speak of it. */
  depth: number;
}

/** Harmonics that are size (0), an origin off the middle (1) and an oval (2); what is left are lobes. */
const NOT_LOBES = [0, 1, 2];
/** An outline drawn in by less than this share of its radius is within what it is measured to (judgement). */
const LEAST_DEPTH = 0.02;
/** Flares further apart than this have a plain side of the stem between them and no hollow (judgement), degrees. */
const NEIGHBOURS_DEG = 150;
/** Hollows nearer than this are one, degrees. */
const SAME_DEG = 20;

/** How far an outline's radius departs from a shifted oval, share of its mean radius, at each whole degree. */
export function lobes(outline: RingMm): Float64Array {
  const radius = outlineRadius(outline);
  const radii = Float64Array.from({ length: 360 }, (_, deg) => radius(deg));
  const mean = radii.reduce((sum, r) => sum + r, 0) / 360;
  const left = radii.slice();
  for (const order of NOT_LOBES) {
    let cos = 0;
    let sin = 0;
    for (let deg = 0; deg < 360; deg++) {
      cos += radii[deg]! * Math.cos(order * deg * RAD);
      sin += radii[deg]! * Math.sin(order * deg * RAD);
    }
    const scale = order === 0 ? 1 / 360 : 2 / 360;
    for (let deg = 0; deg < 360; deg++) {
      left[deg]! -= scale * (cos * Math.cos(order * deg * RAD) + sin * Math.sin(order * deg * RAD));
    }
  }
  return left.map((r) => r / mean);
}

/** The hollows of the outline and those between neighbouring flares, each once, in order of azimuth. */
export function hollowsOf(outline: RingMm, flares: readonly { id: string; azimuthDeg: number }[]): Hollow[] {
  const shape = lobes(outline);
  const ordered = [...flares].sort((a, b) => wrap(a.azimuthDeg) - wrap(b.azimuthDeg));
  const gaps =
    ordered.length < 2 ? [] : ordered.map((flare, i) => [flare, ordered[(i + 1) % ordered.length]!] as const);
  const between = (azimuthDeg: number): [string, string] | null => {
    const gap = gaps.find(([a, b]) => wrap(azimuthDeg - a.azimuthDeg) < wrap(b.azimuthDeg - a.azimuthDeg));
    return gap ? [gap[0].id, gap[1].id] : null;
  };
  const found: Hollow[] = [];
  for (let deg = 0; deg < 360; deg++) {
    const here = shape[deg]!;
    const lowest = here < shape[(deg + 359) % 360]! && here <= shape[(deg + 1) % 360]!;
    if (lowest && here <= -LEAST_DEPTH) found.push({ azimuthDeg: deg, between: between(deg), depth: -here });
  }
  // The deepest of neighbours that are one hollow.
  found.sort((a, b) => b.depth - a.depth || a.azimuthDeg - b.azimuthDeg);
  const kept = found.filter(
    (hollow, i) =>
      !found.slice(0, i).some((deeper) => apart(deeper.azimuthDeg, hollow.azimuthDeg) < SAME_DEG),
  );
  for (const [a, b] of gaps) {
    const gap = wrap(b.azimuthDeg - a.azimuthDeg);
    const middle = wrap(a.azimuthDeg + gap / 2);
    const inside = kept.some(({ azimuthDeg }) => {
      const along = wrap(azimuthDeg - a.azimuthDeg);
      return along > 0 && along < gap && Math.abs(signedTurn(middle, azimuthDeg)) < gap / 3;
    });
    if (gap <= NEIGHBOURS_DEG && gap > SAME_DEG && !inside) {
      kept.push({ azimuthDeg: Math.round(middle), between: [a.id, b.id], depth: 0 });
    }
  }
  return kept.sort((a, b) => a.azimuthDeg - b.azimuthDeg);
}

/** Whether an outline is lobed: drawn in at more than one place. */
export function isLobed(hollows: readonly Hollow[]): boolean {
  return hollows.filter(({ depth }) => depth > 0).length > 1;
}
