/** stand-in until the engine's own is exported */
import type { NeedlePose, RingMm } from '@standfast/engine';
export function needleLine(ring: RingMm, pose: NeedlePose) {
  const az = (pose.azimuthDeg * Math.PI) / 180;
  const [ux, uy] = [Math.sin(az), Math.cos(az)];
  let r = 0;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [ax, ay] = ring[j]!;
    const [bx, by] = ring[i]!;
    const den = ux * (by - ay) - uy * (bx - ax);
    if (den === 0) continue;
    const t = (ax * (by - ay) - ay * (bx - ax)) / den;
    const s = Math.abs(bx - ax) > Math.abs(by - ay) ? (t * ux - ax) / (bx - ax) : (t * uy - ay) / (by - ay);
    if (t > 0 && s >= -1e-9 && s <= 1 + 1e-9) r = Math.max(r, t);
  }
  const h = az + Math.PI + (pose.offRadialDeg * Math.PI) / 180;
  return {
    entryMm: [r * ux, r * uy] as const,
    headingUnit: [Math.sin(h), Math.cos(h)] as const,
    horizontalPerDepth: Math.cos((pose.downDeg * Math.PI) / 180),
    exitDepthMm: 2 * r,
  };
}
