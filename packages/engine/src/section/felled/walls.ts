/** Residual walls as read from the traces against the edge that was traced on the felled section. */
import type { DrillingAssessment, JudgedWall } from '../../assessment.ts';
import { needleLine } from '../needle.ts';
import { contains } from '../ring.ts';
import type { RingMm } from '../types.ts';

/** A needle that runs steeper than this leaves the plane of the felled section, degrees (judgement). */
export const STEEPEST_DEG = 15;
/** Unsound wood shorter than this along the needle is not met, mm: about the width of the needle's tip (judgement). */
const SHORTEST_MM = 3;

export interface WallsInput {
  /** Over bark. */
  outline: RingMm;
  cambium: RingMm;
  /** Wood beyond whose edge a wall ends. */
  lost: readonly RingMm[];
  drillings: readonly DrillingAssessment[];
  /** Which edge of the trace answers to `lost`. */
  wallsTo: 'first loss' | 'no strength';
}

/** One row for each drilling that stays in the plane of the section. */
export function judgeWalls({ outline, cambium, lost, drillings, wallsTo }: WallsInput): JudgedWall[] {
  return drillings
    .filter(({ downDeg }) => Math.abs(downDeg) <= STEEPEST_DEG)
    .map((drilling) => {
      const read = wallsTo === 'first loss' ? firstLossWall(drilling) : noStrengthWall(drilling);
      const truth = trueWall(outline, cambium, lost, drilling);
      const finding = read.atLeast
        ? truth.atLeast
          ? 'none'
          : 'missed'
        : truth.atLeast
          ? 'false alarm'
          : 'edge';
      return {
        drillingId: drilling.id,
        azimuthDeg: drilling.azimuthDeg,
        readMm: read.mm,
        readAtLeast: read.atLeast,
        trueMm: truth.mm,
        trueAtLeast: truth.atLeast,
        errorMm: finding === 'none' ? null : read.mm - truth.mm,
        finding,
      };
    });
}

interface Wall {
  mm: number;
  atLeast: boolean;
}

const firstLossWall = (drilling: DrillingAssessment): Wall => ({
  mm: drilling.residualWallMm,
  atLeast: drilling.residualWallAtLeast,
});

/** Wood from the cambium to the first that the trace shows to have no strength. */
function noStrengthWall({ zones, woodFromMm }: DrillingAssessment): Wall {
  const lost = zones.find(({ kind, toMm }) => (kind === 'decayed' || kind === 'void') && toMm > woodFromMm);
  if (lost) return { mm: Math.max(0, lost.fromMm - woodFromMm), atLeast: false };
  return { mm: Math.max(0, lastWoodMm(zones) - woodFromMm), atLeast: true };
}

function lastWoodMm(zones: DrillingAssessment['zones']): number {
  const last = zones.findLast(({ kind }) => kind === 'sound' || kind === 'incipient' || kind === 'crack');
  return last?.toMm ?? 0;
}

/** From where the needle passes the cambium to the first lost wood, or as far as it was drilled through wood. */
function trueWall(
  outline: RingMm,
  cambium: RingMm,
  lost: readonly RingMm[],
  drilling: DrillingAssessment,
): Wall {
  const line = needleLine(outline, drilling, drilling.id);
  const drilledMm = (drilling.zones.at(-1)?.toMm ?? 0) - drilling.barkFromMm;
  const at = (depth: number): readonly [number, number] => [
    line.entryMm[0] + depth * line.horizontalPerDepth * line.headingUnit[0],
    line.entryMm[1] + depth * line.horizontalPerDepth * line.headingUnit[1],
  ];
  const crossings = (ring: RingMm) =>
    crossingsOf(ring, line.entryMm, line.headingUnit).map((way) => way / line.horizontalPerDepth);
  const cambiumAt = crossings(cambium).filter((depth) => depth >= 0);
  const from = cambiumAt[0] ?? 0;
  const far = cambiumAt[1] ?? line.exitDepthMm;
  const end = Math.max(from, Math.min(far, drilledMm));
  const stops = [from, ...lost.flatMap(crossings).filter((depth) => depth > from && depth < end), end].sort(
    (a, b) => a - b,
  );
  let lostFrom: number | null = null;
  for (let i = 1; i < stops.length; i++) {
    const [a, b] = [stops[i - 1]!, stops[i]!];
    const [x, y] = at((a + b) / 2);
    if (!lost.some((ring) => contains(ring, x, y))) {
      // A sliver of sound wood within lost wood does not begin the wall anew.
      if (b > a) lostFrom = null;
      continue;
    }
    lostFrom ??= a;
    if (b - lostFrom >= SHORTEST_MM) return { mm: lostFrom - from, atLeast: false };
  }
  return { mm: end - from, atLeast: true };
}

/** Ways along a ray at which it crosses a ring, mm, ascending. */
function crossingsOf(
  ring: RingMm,
  [ex, ey]: readonly [number, number],
  [hx, hy]: readonly [number, number],
): number[] {
  const ways: number[] = [];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const acrossA = (a[0] - ex) * hy - (a[1] - ey) * hx;
    const acrossB = (b[0] - ex) * hy - (b[1] - ey) * hx;
    // Half-open, so that a corner on the line counts once.
    if (acrossA > 0 === acrossB > 0) return;
    const share = acrossA / (acrossA - acrossB);
    ways.push((a[0] + share * (b[0] - a[0]) - ex) * hx + (a[1] + share * (b[1] - a[1]) - ey) * hy);
  });
  return ways.sort((a, b) => a - b);
}
