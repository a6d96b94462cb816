/**
 * The field's own frame: relative polar coordinates about the middle of the wood. A point at relative radius ρ and
 * angle θ (radians clockwise from north) lies at ρ times the cambium's radius there.
 */
import type { PointMm, RingMm } from '../types.ts';

/** Rays around the frame; a multiple of 36, so that a turn by 10 degrees maps rays on rays. */
export const RAYS = 72;

export interface FieldFrame {
  /** Middle of the wood, mm. */
  centreMm: PointMm;
  /** Cambium radius at each of `FINE` even angles, mm. */
  fine: Float64Array;
  /** Cambium radius at each of `RAYS` even angles, mm. */
  rays: Float64Array;
}

const FINE = 720;

/** Frame of a cambium ring. Where a ray meets the ring several times (deep folds) the farthest counts. */
export function fieldFrame(cambium: RingMm): FieldFrame {
  const centreMm = centroid(cambium);
  const fine = new Float64Array(FINE);
  for (let k = 0; k < FINE; k++) fine[k] = farthestCrossing(cambium, centreMm, (2 * Math.PI * k) / FINE);
  const step = FINE / RAYS;
  const rays = Float64Array.from({ length: RAYS }, (_, k) => fine[k * step]!);
  return { centreMm, fine, rays };
}

/** Cambium radius at an angle, mm. */
export function frameRadius(frame: FieldFrame, angleRad: number): number {
  const turn = angleRad / (2 * Math.PI);
  const x = (turn - Math.floor(turn)) * FINE;
  const k = Math.floor(x);
  const f = x - k;
  return frame.fine[k % FINE]! * (1 - f) + frame.fine[(k + 1) % FINE]! * f;
}

/** Relative radius and angle (radians clockwise from north) of a point of the section. */
export function toFrame(frame: FieldFrame, point: PointMm): { rho: number; angleRad: number } {
  const dx = point[0] - frame.centreMm[0];
  const dy = point[1] - frame.centreMm[1];
  const angleRad = Math.atan2(dx, dy);
  return { rho: Math.hypot(dx, dy) / frameRadius(frame, angleRad), angleRad };
}

function centroid(ring: RingMm): PointMm {
  let twice = 0;
  let x = 0;
  let y = 0;
  for (let i = 0; i < ring.length; i++) {
    const [x0, y0] = ring[i]!;
    const [x1, y1] = ring[(i + 1) % ring.length]!;
    const cross = x0 * y1 - x1 * y0;
    twice += cross;
    x += (x0 + x1) * cross;
    y += (y0 + y1) * cross;
  }
  return [x / (3 * twice), y / (3 * twice)];
}

function farthestCrossing(ring: RingMm, centre: PointMm, angleRad: number): number {
  const ux = Math.sin(angleRad);
  const uy = Math.cos(angleRad);
  let farthest = 0;
  for (let i = 0; i < ring.length; i++) {
    const ax = ring[i]![0] - centre[0];
    const ay = ring[i]![1] - centre[1];
    const next = ring[(i + 1) % ring.length]!;
    const ex = next[0] - centre[0] - ax;
    const ey = next[1] - centre[1] - ay;
    const denominator = ux * ey - uy * ex;
    if (Math.abs(denominator) < 1e-12) continue;
    const along = (ax * ey - ay * ex) / denominator;
    const share = (ax * uy - ay * ux) / denominator;
    if (share >= -1e-9 && share <= 1 + 1e-9 && along > farthest) farthest = along;
  }
  return farthest;
}
