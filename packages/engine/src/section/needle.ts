/**
 * The needle's true line through the section.
 */
import { InputFault } from '../faults.ts';
import { outlineRadius } from './outline.ts';
import { RAD } from './ring.ts';
import type { NeedlePose, PointMm, RingMm } from './types.ts';

/** Where a needle runs. At depth s along it the tip is over entry + s · horizontalPerDepth · heading. */
export interface NeedleLine {
  /** Where it enters the outline over bark, mm. */
  entryMm: PointMm;
  /** Unit vector of its heading seen from above. */
  headingUnit: PointMm;
  /** Horizontal way per depth along the needle: the cosine of the down angle. */
  horizontalPerDepth: number;
  /** Depth along the needle at which it first leaves the outline again, mm. */
  exitDepthMm: number;
}

/**
 * The line of a needle set at a pose on an outline over bark: entry at the outermost point of the outline at the
 * pose's azimuth from the origin, heading towards the origin turned clockwise (seen from above) by `offRadialDeg`,
 * `downDeg` below the horizontal.
 *
 * @throws InputFault when the pose is not a number, points away from the wood or straight down.
 */
export function needleLine(ring: RingMm, pose: NeedlePose, where = 'drilling'): NeedleLine {
  for (const field of ['azimuthDeg', 'offRadialDeg', 'downDeg'] as const) {
    if (!Number.isFinite(pose[field])) {
      throw new InputFault(`${field} is not a number. Give degrees.`, `${where}.${field}`);
    }
  }
  if (Math.abs(pose.downDeg) >= 89) {
    throw new InputFault(
      `downDeg is ${pose.downDeg}: such a needle does not cross the section. Give degrees below the horizontal, less than 89.`,
      `${where}.downDeg`,
    );
  }
  const radius = outlineRadius(ring)(pose.azimuthDeg);
  const azimuth = pose.azimuthDeg * RAD;
  const bearing = azimuth + Math.PI + pose.offRadialDeg * RAD;
  const entry: PointMm = [radius * Math.sin(azimuth), radius * Math.cos(azimuth)];
  const heading: PointMm = [Math.sin(bearing), Math.cos(bearing)];
  const reach = firstExit(ring, entry, heading, radius);
  if (reach === null) {
    throw new InputFault(
      `A needle set at ${pose.azimuthDeg}° and turned ${pose.offRadialDeg}° off the radial does not enter the stem. offRadialDeg is the needle's heading, clockwise from the line to the pith seen from above.`,
      `${where}.offRadialDeg`,
    );
  }
  const horizontalPerDepth = Math.cos(pose.downDeg * RAD);
  return {
    entryMm: entry,
    headingUnit: heading,
    horizontalPerDepth,
    exitDepthMm: reach / horizontalPerDepth,
  };
}

/** Horizontal distance from the entry to where the heading first leaves the ring, or null when it never enters. */
function firstExit(ring: RingMm, entry: PointMm, heading: PointMm, size: number): number | null {
  const [hx, hy] = heading;
  // Passings of the line in front of the entry, with the side the ring comes from.
  const passings: number[] = [];
  const n = ring.length;
  for (let i = 0; i < n; i++) {
    const a = ring[i]!;
    const b = ring[(i + 1) % n]!;
    const acrossA = (a[0] - entry[0]) * hy - (a[1] - entry[1]) * hx;
    const acrossB = (b[0] - entry[0]) * hy - (b[1] - entry[1]) * hx;
    // Half-open, so that a corner on the line counts once.
    if (acrossA > 0 === acrossB > 0) continue;
    const share = acrossA / (acrossA - acrossB);
    const x = a[0] + share * (b[0] - a[0]) - entry[0];
    const y = a[1] + share * (b[1] - a[1]) - entry[1];
    passings.push(x * hx + y * hy);
  }
  // The entry itself lies on the ring and may come out a hair either side of nought.
  const hair = 1e-9 * size;
  const ahead = passings.filter((s) => s > hair).sort((p, q) => p - q);
  return ahead.length % 2 === 1 ? ahead[0]! : null;
}
