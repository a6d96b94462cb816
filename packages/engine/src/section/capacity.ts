/**
 * Bending capacity of a section by direction: general (unsymmetric) elastic bending.
 */
import { InputFault } from '../faults.ts';
import type { AreaMoments } from './polygon.ts';
import { areaMoments, loopOfRing } from './polygon.ts';
import { RAD } from './ring.ts';
import type { RingMm } from './types.ts';
import { woodOf } from './wood.ts';

/** Directions at which capacity is given: 0, 10, … 350 degrees clockwise from north. */
export const DIRECTIONS_DEG: readonly number[] = Array.from({ length: 36 }, (_, k) => 10 * k);

/** J⁻¹ of the centroidal second-moment matrix J = [[∫x², ∫xy], [∫xy, ∫y²]], as [xx, xy, yy], mm⁻⁴. */
export function inverseSecondMoments(moments: AreaMoments): [xx: number, xy: number, yy: number] {
  const { ixxMm4, iyyMm4, ixyMm4 } = moments;
  const determinant = ixxMm4 * iyyMm4 - ixyMm4 * ixyMm4;
  if (!(determinant > 1e-14 * (ixxMm4 + iyyMm4) ** 2)) {
    throw new InputFault('The wood left is too thin to bend: it has no breadth.', 'section');
  }
  return [ixxMm4 / determinant, -ixyMm4 / determinant, iyyMm4 / determinant];
}

/**
 * Section modulus for bending towards each of the 36 directions, mm³: the bending moment per unit of the greatest
 * fibre stress, tension or compression, over the points given.
 *
 * For a moment that bends the stem towards the unit vector u (east, north) about the axis square to it, plane
 * sections stay plane and σ(r) = u · J⁻¹ (r − c) per unit moment, with c the centroid and J the centroidal
 * second-moment matrix (unsymmetric bending: Timoshenko & Goodier; Young & Budynas, Roark's Formulas, ch. 8, from
 * memory). Stress is linear in r, so its extremes lie at corners of the wood.
 *
 * @param xy corners of the wood, x0, y0, x1, y1, … mm; only those that can be extreme are needed.
 */
export function modulusByDirection(moments: AreaMoments, xy: Float64Array): Float64Array {
  const [jxx, jxy, jyy] = inverseSecondMoments(moments);
  const [cx, cy] = moments.centroidMm;
  const modulus = new Float64Array(36);
  // Towards d and towards d + 180° the same stresses change sign.
  for (let k = 0; k < 18; k++) {
    const sin = Math.sin(10 * k * RAD);
    const cos = Math.cos(10 * k * RAD);
    const gx = sin * jxx + cos * jxy;
    const gy = sin * jxy + cos * jyy;
    const base = gx * cx + gy * cy;
    let high = -Infinity;
    let low = Infinity;
    for (let i = 0; i < xy.length; i += 2) {
      const s = gx * xy[i]! + gy * xy[i + 1]!;
      if (s > high) high = s;
      if (s < low) low = s;
    }
    modulus[k] = 1 / Math.max(high - base, base - low);
    modulus[k + 18] = modulus[k]!;
  }
  return modulus;
}

/**
 * Section modulus by direction (0, 10, … 350 degrees) of a ring of wood joined straight, less voids, mm³. Fast when
 * there are no voids; with voids that overlap or open to the outside the polygons are cut exactly first.
 *
 * @throws InputFault when the voids leave no wood.
 */
export function ringModulusByDirection(ring: RingMm, voids: readonly RingMm[] = []): Float64Array {
  if (voids.length === 0) {
    const loop = loopOfRing(ring);
    return modulusByDirection(areaMoments([loop], []), loop.xy);
  }
  const wood = woodOf({ kind: 'polygon', points: [...ring] }, voids);
  return modulusByDirection(wood.moments, wood.corners);
}
