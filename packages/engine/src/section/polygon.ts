/**
 * Area, first and second moments of plane regions from their boundary (Green's theorem).
 */
import type { OutlineCurve } from './curve.ts';
import type { RingMm } from './types.ts';

/**
 * A closed boundary: corners and, for each edge from corner i to the next, either a straight line or an arc of the
 * outline's curve.
 */
export interface Loop {
  /** x0, y0, x1, y1, … mm. */
  xy: Float64Array;
  /** For edge i the curve's parameters at its ends, arc[2i] and arc[2i+1]; NaN where the edge is straight. */
  arc: Float64Array | null;
  curve: OutlineCurve | null;
}

/** A boundary of straight edges. */
export function loopOfRing(ring: RingMm): Loop {
  const xy = new Float64Array(2 * ring.length);
  for (let i = 0; i < ring.length; i++) {
    xy[2 * i] = ring[i]![0];
    xy[2 * i + 1] = ring[i]![1];
  }
  return { xy, arc: null, curve: null };
}

/** The whole of a smooth curve as a boundary. */
export function loopOfCurve(curve: OutlineCurve): Loop {
  const n = curve.cuts.length;
  const xy = new Float64Array(2 * n);
  const arc = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    const [x, y] = curve.at(curve.cuts[i]!);
    xy[2 * i] = x;
    xy[2 * i + 1] = y;
    arc[2 * i] = curve.cuts[i]!;
    arc[2 * i + 1] = i + 1 < n ? curve.cuts[i + 1]! : curve.cuts[0]! + 2 * Math.PI;
  }
  return { xy, arc, curve };
}

/** Abscissae and weights on [0, 1] of Gauss's five-point rule (Abramowitz & Stegun 1964, table 25.4). */
const GAUSS = [
  [0.5, 0.28444444444444444],
  [0.5 - 0.26923465505284155, 0.23931433524968324],
  [0.5 + 0.26923465505284155, 0.23931433524968324],
  [0.5 - 0.453089922969332, 0.11846344252809454],
  [0.5 + 0.453089922969332, 0.11846344252809454],
] as const;

/**
 * Integrals over the region inside a boundary, about the point (x0, y0):
 * [∫dA, ∫x dA, ∫y dA, ∫x² dA, ∫y² dA, ∫xy dA], with the sign of the boundary's sense (positive counter-clockwise).
 *
 * Each is a sum over edges of fans of triangles from (x0, y0): with w = x dy − y dx, the integrals are
 * ½∮w, ⅓∮xw, ⅓∮yw, ¼∮x²w, ¼∮y²w, ¼∮xyw (Green's theorem; for straight edges this is the usual shoelace form,
 * for example Steger 1996, On the calculation of arbitrary moments of polygons, from memory). Arcs are integrated by
 * five-point Gauss on each half degree, exact to rounding.
 */
export function integrateLoop(loop: Loop, x0: number, y0: number): Float64Array {
  const { xy, arc, curve } = loop;
  const n = xy.length / 2;
  let s = 0;
  let sx = 0;
  let sy = 0;
  let sxx = 0;
  let syy = 0;
  let sxy = 0;
  for (let i = 0; i < n; i++) {
    if (curve && arc && !Number.isNaN(arc[2 * i]!)) {
      const from = arc[2 * i]!;
      const span = arc[2 * i + 1]! - from;
      for (const [share, weight] of GAUSS) {
        const t = from + share * span;
        const point = curve.at(t);
        const rate = curve.rate(t);
        const x = point[0] - x0;
        const y = point[1] - y0;
        const w = (x * rate[1] - y * rate[0]) * span * weight;
        s += w / 2;
        sx += (x * w) / 3;
        sy += (y * w) / 3;
        sxx += (x * x * w) / 4;
        syy += (y * y * w) / 4;
        sxy += (x * y * w) / 4;
      }
      continue;
    }
    const j = i + 1 < n ? i + 1 : 0;
    const ax = xy[2 * i]! - x0;
    const ay = xy[2 * i + 1]! - y0;
    const bx = xy[2 * j]! - x0;
    const by = xy[2 * j + 1]! - y0;
    const w = ax * (by - ay) - ay * (bx - ax);
    s += w / 2;
    sx += (w * (ax + bx)) / 6;
    sy += (w * (ay + by)) / 6;
    sxx += (w * (ax * ax + ax * bx + bx * bx)) / 12;
    syy += (w * (ay * ay + ay * by + by * by)) / 12;
    sxy += (w * (2 * ax * ay + ax * by + bx * ay + 2 * bx * by)) / 24;
  }
  return Float64Array.of(s, sx, sy, sxx, syy, sxy);
}

/** Area, centroid and second moments of area about the centroid. */
export interface AreaMoments {
  areaMm2: number;
  centroidMm: [xMm: number, yMm: number];
  /** ∫ y² dA about the centroid. */
  ixxMm4: number;
  /** ∫ x² dA about the centroid. */
  iyyMm4: number;
  /** ∫ xy dA about the centroid. */
  ixyMm4: number;
}

/**
 * Moments of a region given as boundaries in any sense, each added or taken away as a whole: `solid` less `hollow`.
 * Hollows must lie inside solids and apart from each other. Integrated twice, the second time about the centroid
 * found the first time, so that a far-off origin costs no digits.
 */
export function areaMoments(solid: readonly Loop[], hollow: readonly Loop[]): AreaMoments {
  const all = (x0: number, y0: number) => {
    const total = new Float64Array(6);
    const take = (loops: readonly Loop[], part: number) => {
      for (const loop of loops) {
        const sums = integrateLoop(loop, x0, y0);
        const sign = sums[0]! < 0 ? -part : part;
        for (let k = 0; k < 6; k++) total[k]! += sign * sums[k]!;
      }
    };
    take(solid, 1);
    take(hollow, -1);
    return total;
  };
  const startX = solid[0]!.xy[0]!;
  const startY = solid[0]!.xy[1]!;
  const rough = all(startX, startY);
  const x0 = startX + rough[1]! / rough[0]!;
  const y0 = startY + rough[2]! / rough[0]!;
  const [area, sx, sy, xx, yy, xy] = all(x0, y0) as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return {
    areaMm2: area,
    centroidMm: [x0 + sx / area, y0 + sy / area],
    ixxMm4: yy - (sy * sy) / area,
    iyyMm4: xx - (sx * sx) / area,
    ixyMm4: xy - (sx * sy) / area,
  };
}
