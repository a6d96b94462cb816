/**
 * Walls as the trade's rules take them, measured towards the pith, from walls measured along the needle.
 */
import { InputFault } from '../faults.ts';
import { needleLine } from './needle.ts';
import { RAD } from './ring.ts';
import type { NeedlePose, PointMm, RingMm } from './types.ts';

/** The residual wall one drilling measured. */
export interface DrilledWall extends NeedlePose {
  id: string;
  /** Sound wood between the cambium and the first unsound wood, mm along the needle. */
  residualWallMm: number;
  /** The needle met no unsound wood: the wall is this thick or thicker. */
  atLeast: boolean;
}

/** A wall measured towards the origin. */
export interface RadialWall {
  id: string;
  /** Azimuth of its inner end, degrees. */
  azimuthDeg: number;
  /** From the cambium to its inner end, mm, not beyond the origin. */
  wallMm: number;
  /** The true wall is this thick or thicker. */
  atLeast: boolean;
}

/**
 * A drilled wall as a wall towards the origin (the pith): the inner end is the place of the drilled sound wood nearest
 * the origin, so that needles off the radial, tilted down, or gone past the pith are honoured. For a circle of radius R
 * and a needle β off the radial that meets a cavity of radius r this turns the path R cos β − √(r² − R² sin² β) back
 * into R − r. The wall begins at the outline's cambium: the trace's own depth of the wood's start holds any stand-off of
 * the drill and the bark's local thickness, and is not counted as wood or as missing wood.
 *
 * @param cambiumRadius from `outlineRadius` of the cambium.
 * @throws InputFault when the wall is not a number of 0 or more, or the needle misses the stem.
 */
export function radialWall(
  outline: RingMm,
  barkMm: number,
  cambiumRadius: (azimuthDeg: number) => number,
  wall: DrilledWall,
): RadialWall {
  if (!Number.isFinite(wall.residualWallMm) || wall.residualWallMm < 0) {
    throw new InputFault(
      `The residual wall is ${wall.residualWallMm}. Give millimetres, 0 or more.`,
      `${wall.id}.residualWallMm`,
    );
  }
  const line = needleLine(outline, wall, wall.id);
  const [ex, ey] = line.entryMm;
  const [hx, hy] = line.headingUnit;
  // Bark is crossed aslant, so its path is longer than its thickness.
  const slant = Math.max(0.2, Math.cos(wall.offRadialDeg * RAD)) * line.horizontalPerDepth;
  const from = (barkMm / slant) * line.horizontalPerDepth;
  const to = from + wall.residualWallMm * line.horizontalPerDepth;
  const nearestPith = -(ex * hx + ey * hy);
  const reach = Math.max(from, Math.min(to, nearestPith));
  const end: PointMm = [ex + reach * hx, ey + reach * hy];
  const toPith = Math.hypot(end[0], end[1]);
  // At the pith itself any azimuth will do; the entry's is the natural one.
  const azimuthDeg = toPith > 1e-6 ? Math.atan2(end[0], end[1]) / RAD : wall.azimuthDeg;
  return {
    id: wall.id,
    azimuthDeg: ((azimuthDeg % 360) + 360) % 360,
    wallMm: Math.max(0, cambiumRadius(azimuthDeg) - toPith),
    // Decay met past the place nearest the pith says nothing against the wall on this side.
    atLeast: wall.atLeast || to > nearestPith,
  };
}
