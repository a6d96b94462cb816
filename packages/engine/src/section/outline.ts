/**
 * The stem's outline, however it was measured, as a ring of points, and its radius by azimuth.
 */
import { InputFault } from '../faults.ts';
import { outlineCurve } from './curve.ts';
import { integrateLoop, loopOfCurve } from './polygon.ts';
import { RAD, signedAreaMm2, withoutRepeats } from './ring.ts';
import type { Outline, PointMm, RingMm } from './types.ts';

/**
 * The outline as a ring, in the order of ascending azimuth for smooth outlines (720 points, more for radii off
 * the half degrees). The corners of a smooth outline lie on the curve enlarged about the origin so that the ring
 * has the curve's exact area: then its second moments are right to 1e-9 and its radii and section moduli to 1e-5
 * (a many-sided polygon with corners on the curve would be 2.5e-5 short in second moment at this fineness). Where
 * more is wanted, `sectionProperties` integrates the curve itself.
 *
 * Takes an outline that `checkOutline` passes.
 */
export function outlineRing(outline: Outline): RingMm {
  if (outline.kind === 'polygon') return withoutRepeats(outline.points);
  const curve = outlineCurve(outline)!;
  const onCurve = Array.from(curve.cuts, (t) => curve.at(t));
  const exact = Math.abs(integrateLoop(loopOfCurve(curve), 0, 0)[0]!);
  const scale = Math.sqrt(exact / Math.abs(signedAreaMm2(onCurve)));
  return onCurve.map(([x, y]): PointMm => [x * scale, y * scale]);
}

/**
 * Distance from the origin to the ring by azimuth (degrees clockwise from north), mm. Where the ray meets the ring
 * more than once, the outermost meeting counts.
 *
 * @throws InputFault when the ray does not meet the ring (the origin lies outside it).
 */
export function outlineRadius(ring: RingMm): (azimuthDeg: number) => number {
  const buckets = edgesByAzimuth(ring);
  return (azimuthDeg) => {
    const az = ((azimuthDeg % 360) + 360) % 360;
    const sin = Math.sin(az * RAD);
    const cos = Math.cos(az * RAD);
    let radius = -Infinity;
    for (const i of buckets[Math.min(buckets.length - 1, Math.floor((az / 360) * buckets.length))]!) {
      radius = Math.max(radius, rayMeets(ring[i]!, ring[(i + 1) % ring.length]!, sin, cos));
    }
    if (!(radius > 0)) {
      throw new InputFault(
        `A line from the origin towards ${azimuthDeg}° does not meet the outline. Give the outline's coordinates from a point inside it.`,
        'outline',
      );
    }
    return radius;
  };
}

/** Edges that each sector of azimuth may meet, with a hair of overlap so that no ray slips between two edges. */
function edgesByAzimuth(ring: RingMm): number[][] {
  const count = Math.max(16, Math.min(720, ring.length));
  const buckets: number[][] = Array.from({ length: count }, () => []);
  const azimuth = (p: PointMm) => (Math.atan2(p[0], p[1]) / (2 * Math.PI)) * count;
  const hair = 1e-6;
  for (let i = 0; i < ring.length; i++) {
    const a = azimuth(ring[i]!);
    let turn = azimuth(ring[(i + 1) % ring.length]!) - a;
    if (turn > count / 2) turn -= count;
    if (turn < -count / 2) turn += count;
    const from = Math.floor(Math.min(a, a + turn) - hair);
    const to = Math.floor(Math.max(a, a + turn) + hair);
    for (let k = from; k <= to && k < from + count; k++) buckets[((k % count) + count) % count]!.push(i);
  }
  return buckets;
}

/** Distance from the origin along (sin, cos) to the segment a–b, or −Infinity when it is missed. */
function rayMeets(a: PointMm, b: PointMm, sin: number, cos: number): number {
  // Offsets across the ray (left positive) and along it.
  const acrossA = a[1] * sin - a[0] * cos;
  const acrossB = b[1] * sin - b[0] * cos;
  const alongA = a[0] * sin + a[1] * cos;
  const alongB = b[0] * sin + b[1] * cos;
  const hair = 1e-12 * (Math.abs(alongA) + Math.abs(alongB) + Math.abs(acrossA) + Math.abs(acrossB));
  if (Math.min(acrossA, acrossB) > hair || Math.max(acrossA, acrossB) < -hair) return -Infinity;
  if (Math.abs(acrossA - acrossB) <= hair) return Math.max(alongA, alongB);
  const share = Math.max(0, Math.min(1, acrossA / (acrossA - acrossB)));
  return alongA + share * (alongB - alongA);
}
