/** Which drilling of the later visit repeats which of the earlier one. */
import type { NeedlePose } from '../section/types.ts';

/** A drilling with the height of its place above ground; a flare's is unknown and left out. */
export interface PlacedDrilling extends NeedlePose {
  id: string;
}

/** How far a repeat may lie from the first and still be one: degrees round the stem, and of heading and fall. */
export const MATCH_TOLERANCE = { azimuthDeg: 12, offRadialDeg: 12, downDeg: 12 } as const;

/** Angle from one direction to another the short way, degrees, 0 to 180. */
export function apartDeg(a: number, b: number): number {
  const turn = Math.abs(a - b) % 360;
  return Math.min(turn, 360 - turn);
}

/** How unlike two needles are: 0 the same, above 1 in any of the three outside the tolerance. */
function unlikeness(a: NeedlePose, b: NeedlePose): number {
  const shares = [
    apartDeg(a.azimuthDeg, b.azimuthDeg) / MATCH_TOLERANCE.azimuthDeg,
    apartDeg(a.offRadialDeg, b.offRadialDeg) / MATCH_TOLERANCE.offRadialDeg,
    apartDeg(a.downDeg, b.downDeg) / MATCH_TOLERANCE.downDeg,
  ];
  return Math.max(...shares) > 1 ? Number.POSITIVE_INFINITY : shares.reduce((sum, share) => sum + share, 0);
}

/**
 * Pairs of one place, closest first, each drilling once; of equals the one with the same id. What is left over on either
 * side has no partner.
 *
 * @returns indices into `earlier` and `later`.
 */
export function matchDrillings(
  earlier: readonly PlacedDrilling[],
  later: readonly PlacedDrilling[],
): { pairs: [number, number][]; onlyEarlier: number[]; onlyLater: number[] } {
  const candidates = earlier.flatMap((a, i) =>
    later.flatMap((b, j) => {
      const far = unlikeness(a, b);
      return Number.isFinite(far) ? [{ i, j, far, sameId: a.id === b.id ? 0 : 1 }] : [];
    }),
  );
  candidates.sort((p, q) => p.far - q.far || p.sameId - q.sameId || p.i - q.i || p.j - q.j);
  const pairs: [number, number][] = [];
  const takenEarlier = new Set<number>();
  const takenLater = new Set<number>();
  for (const { i, j } of candidates) {
    if (takenEarlier.has(i) || takenLater.has(j)) continue;
    takenEarlier.add(i);
    takenLater.add(j);
    pairs.push([i, j]);
  }
  pairs.sort((p, q) => p[1] - q[1]);
  return {
    pairs,
    onlyEarlier: earlier.map((_, i) => i).filter((i) => !takenEarlier.has(i)),
    onlyLater: later.map((_, j) => j).filter((j) => !takenLater.has(j)),
  };
}
