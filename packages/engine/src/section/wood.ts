/**
 * The wood that is left of an outline when voids are taken out of it.
 */
import { InputFault } from '../faults.ts';
import { clip } from './clip.ts';
import type { OutlineCurve } from './curve.ts';
import { outlineCurve } from './curve.ts';
import { forNearEdges } from './near-edges.ts';
import type { AreaMoments, Loop } from './polygon.ts';
import { areaMoments, loopOfCurve, loopOfRing } from './polygon.ts';
import {
  boxOf,
  contains,
  distanceToSegment,
  extentMm,
  segmentsMeet,
  signedAreaMm2,
  withoutRepeats,
} from './ring.ts';
import { rootBetween } from './root.ts';
import { shareEdges } from './shared-edges.ts';
import type { Outline, PointMm, RingMm } from './types.ts';

/** One connected piece of wood. */
export interface WoodPiece {
  solid: Loop;
  hollows: Loop[];
  moments: AreaMoments;
}

/** The wood left, in one piece or several, all pieces together in `moments` and `corners`. */
export interface Wood {
  pieces: WoodPiece[];
  moments: AreaMoments;
  /** Every corner of the wood, outer and inner, x0, y0, x1, y1, … mm. */
  corners: Float64Array;
  warnings: string[];
}

/** Corners nearer than this share of the outline's size are taken as the same. */
const SAME_SHARE = 1e-9;

/**
 * A piece that hangs by no more than a point, and whose mean thickness (twice its area over its perimeter) is below
 * this share of the square root of the outline's area, is a shred between a void's straight sides and the outline it
 * was drawn along, not wood that carries load.
 */
const SHRED_SHARE = 1e-3;

/** A wall between void and outside thinner than this share of the outline's size is worth a warning. */
const THIN_SHARE = 1e-3;

/**
 * The outline less the voids. Voids may overlap, touch, cross the outline (a void that opens to the outside) or cut
 * the wood in pieces. Circles, ellipses and radii keep their true curve wherever it still bounds the wood.
 *
 * Takes an outline and voids that are simple rings.
 *
 * @throws InputFault when no wood is left.
 */
export function woodOf(outline: Outline, voids: readonly RingMm[], where = 'voids'): Wood {
  const curve = outlineCurve(outline);
  const whole = curve
    ? loopOfCurve(curve)
    : loopOfRing(withoutRepeats((outline as { points: RingMm }).points));
  const outer = cornersOf(whole);
  const hollow = voids.map((ring) => withoutRepeats(ring));
  const warnings = hollow.flatMap((ring, i) => voidWarnings(outer, ring, `${where}[${i}]`));
  if (hollow.length === 0 || apartAndInside(outer, hollow)) {
    return gathered([{ solid: whole, hollows: hollow.map((ring) => loopOfRing(ring)) }], warnings);
  }
  const pieces = cut(whole, curve, hollow, where);
  const sizeMm = Math.sqrt(Math.abs(signedAreaMm2(outer)));
  const kept = withoutShreds(pieces, sizeMm, warnings);
  if (kept.length === 0) {
    throw new InputFault(
      'The voids take all the wood. Check that they are in mm from the outline’s origin.',
      where,
    );
  }
  return gathered(kept, warnings);
}

type Boundary = Omit<WoodPiece, 'moments'>;

function gathered(boundaries: readonly Boundary[], warnings: string[]): Wood {
  const pieces = boundaries.map((piece) => ({
    ...piece,
    moments: areaMoments([piece.solid], piece.hollows),
  }));
  const loops = pieces.flatMap((piece) => [piece.solid, ...piece.hollows]);
  const corners = new Float64Array(loops.reduce((sum, loop) => sum + loop.xy.length, 0));
  let at = 0;
  for (const loop of loops) {
    corners.set(loop.xy, at);
    at += loop.xy.length;
  }
  const moments =
    pieces.length === 1
      ? pieces[0]!.moments
      : areaMoments(
          pieces.map((piece) => piece.solid),
          pieces.flatMap((piece) => piece.hollows),
        );
  return { pieces, moments, corners, warnings };
}

function cornersOf(loop: Loop): PointMm[] {
  return Array.from(
    { length: loop.xy.length / 2 },
    (_, i): PointMm => [loop.xy[2 * i]!, loop.xy[2 * i + 1]!],
  );
}

/** Whether every void lies well inside the outline and well apart from the others, so that no cutting is needed. */
function apartAndInside(outer: RingMm, voids: readonly RingMm[]): boolean {
  const near = SAME_SHARE * extentMm(outer);
  const boxes = voids.map((ring) => boxOf(ring));
  for (let i = 0; i < boxes.length; i++) {
    for (let j = 0; j < i; j++) {
      const a = boxes[i]!;
      const b = boxes[j]!;
      const apart =
        a.minX > b.maxX + near || b.minX > a.maxX + near || a.minY > b.maxY + near || b.minY > a.maxY + near;
      if (!apart) return false;
    }
  }
  return voids.every((ring) => insideAndClear(outer, ring, near));
}

function insideAndClear(outer: RingMm, ring: RingMm, near: number): boolean {
  return contains(outer, ring[0]![0], ring[0]![1]) && wallBetween(outer, ring, near) > near;
}

/** Least distance between two rings where it is below `withinMm`, else Infinity; 0 where they meet, mm. */
function wallBetween(one: RingMm, other: RingMm, withinMm: number): number {
  let nearest = Infinity;
  forNearEdges(one, other, withinMm, (i, k) => {
    const a = one[i]!;
    const b = one[(i + 1) % one.length]!;
    const c = other[k]!;
    const d = other[(k + 1) % other.length]!;
    nearest = segmentsMeet(a, b, c, d)
      ? 0
      : Math.min(
          nearest,
          distanceToSegment(c[0], c[1], a[0], a[1], b[0], b[1]),
          distanceToSegment(d[0], d[1], a[0], a[1], b[0], b[1]),
          distanceToSegment(a[0], a[1], c[0], c[1], d[0], d[1]),
          distanceToSegment(b[0], b[1], c[0], c[1], d[0], d[1]),
        );
    return nearest === 0;
  });
  return nearest <= withinMm ? nearest : Infinity;
}

/** Cuts the voids out with exact polygon clipping, then gives the curve back to the edges that lie along it. */
function cut(
  whole: Loop,
  curve: OutlineCurve | null,
  voids: readonly PointMm[][],
  where: string,
): Boundary[] {
  const base = cornersOf(whole);
  const { ring, parameters } = curve ? withCrossings(base, curve, voids) : { ring: base, parameters: null };
  const [shared, ...sharedVoids] = shareEdges([ring, ...voids], SAME_SHARE * extentMm(base));
  const clipped = clip(shared!, sharedVoids);
  if (!clipped) {
    throw new InputFault(
      'The voids could not be cut out of the outline. Simplify them: fewer corners, no corner on top of another.',
      where,
    );
  }
  // Void corners were moved onto the outline's, never the other way, so the outline's corners can be known again.
  const order = new Map(ring.map((point, i) => [keyOf(clipped.placed(point)), i]));
  const toLoop = (corners: readonly PointMm[]): Loop => {
    const loop = loopOfRing(corners);
    if (!curve || !parameters) return loop;
    const n = corners.length;
    const arc = new Float64Array(2 * n).fill(Number.NaN);
    for (let i = 0; i < n; i++) {
      const p = order.get(keyOf(corners[i]!));
      const q = order.get(keyOf(corners[(i + 1) % n]!));
      if (p === undefined || q === undefined) continue;
      const m = ring.length;
      const forward = (p + 1) % m === q;
      if (!forward && (q + 1) % m !== p) continue;
      const low = parameters[forward ? p : q]!;
      const next = parameters[forward ? q : p]!;
      const high = next > low ? next : next + 2 * Math.PI;
      arc[2 * i] = forward ? low : high;
      arc[2 * i + 1] = forward ? high : low;
    }
    return { ...loop, arc, curve };
  };
  return clipped.pieces.map(({ outer, holes }) => ({ solid: toLoop(outer), hollows: holes.map(toLoop) }));
}

const keyOf = ([x, y]: PointMm) => `${x},${y}`;

/** The curve's corners with one more wherever a void's edge crosses the curve, so that arcs are cut where they end. */
function withCrossings(
  base: readonly PointMm[],
  curve: OutlineCurve,
  voids: readonly PointMm[][],
): { ring: PointMm[]; parameters: Float64Array } {
  const parameters = Array.from(curve.cuts);
  const n = base.length;
  for (const ring of voids) {
    forNearEdges(ring, base, 0, (k, i) => {
      const c = ring[k]!;
      const d = ring[(k + 1) % ring.length]!;
      const j = (i + 1) % n;
      if (!segmentsMeet(base[i]!, base[j]!, c, d)) return undefined;
      const to = j > 0 ? curve.cuts[j]! : curve.cuts[0]! + 2 * Math.PI;
      const off = (t: number) => {
        const [x, y] = curve.at(t);
        return (d[0] - c[0]) * (y - c[1]) - (d[1] - c[1]) * (x - c[0]);
      };
      const t = rootBetween(off, curve.cuts[i]!, to);
      if (t !== null) parameters.push(t >= 2 * Math.PI ? t - 2 * Math.PI : t);
      return undefined;
    });
  }
  parameters.sort((a, b) => a - b);
  const apart = 1e-10;
  const kept = parameters.filter((t, i) => i === 0 || t - parameters[i - 1]! > apart);
  return { ring: kept.map((t) => curve.at(t)), parameters: Float64Array.from(kept) };
}

function withoutShreds(pieces: readonly Boundary[], sizeMm: number, warnings: string[]): Boundary[] {
  if (pieces.length < 2) return [...pieces];
  const thickness = (piece: Boundary) =>
    (2 * Math.abs(signedAreaMm2(cornersOf(piece.solid)))) / perimeterMm(piece.solid);
  const kept = pieces.filter((piece) => thickness(piece) >= SHRED_SHARE * sizeMm);
  const left = pieces.length - kept.length;
  if (left > 0 && kept.length > 0) {
    warnings.push(
      `${left} shred${left > 1 ? 's' : ''} of wood thinner than ${(SHRED_SHARE * sizeMm).toPrecision(2)} mm and joined to nothing ${left > 1 ? 'were' : 'was'} left out: a void drawn along the outline leaves such. Draw it past the outline.`,
    );
  }
  return kept;
}

function perimeterMm(loop: Loop): number {
  const points = cornersOf(loop);
  return points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length]!;
    return sum + Math.hypot(q[0] - p[0], q[1] - p[1]);
  }, 0);
}

/** What a person should know of one void: that it misses the wood, or all but opens to the outside. */
function voidWarnings(outer: RingMm, ring: RingMm, where: string): string[] {
  const sizeMm = extentMm(outer);
  const nearest = wallBetween(outer, ring, THIN_SHARE * sizeMm);
  if (nearest === 0) return [];
  if (!contains(outer, ring[0]![0], ring[0]![1])) {
    if (contains(ring, outer[0]![0], outer[0]![1])) return [];
    return [
      `${where} lies outside the outline and takes no wood away. Check that it is in mm from the outline’s origin.`,
    ];
  }
  if (nearest > SAME_SHARE * sizeMm && nearest < Infinity) {
    return [
      `${where} comes within ${nearest.toPrecision(2)} mm of the outside. The wall there is counted as wood; if the void opens, draw it past the outline.`,
    ];
  }
  return [];
}
