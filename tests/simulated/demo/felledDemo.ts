/**
 * The demonstration's tree as if it had been felled and its section traced: invented, from the plan of decay behind its
 * traces (truth.json), as a person would trace it, corner by corner. For tests; the demonstration itself is not felled.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

type Point = readonly [xMm: number, yMm: number];

const truth = JSON.parse(readFileSync(join(import.meta.dirname, 'truth.json'), 'utf8')) as {
  sectionId: string;
  incipientWidthMm: number;
  decayedMm: Point[];
};

/** Corners sharper than this are cut off where the tracing is moved outwards, as shares of the width. */
const SHARPEST = 1.3;

/** A ring traced so far outside another: corners moved along their bisector, sharp ones cut off. */
function movedOut(ring: readonly Point[], widthMm: number): Point[] {
  const turning = ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  const out = (a: Point, b: Point): Point => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) * Math.sign(turning);
    return [(b[1] - a[1]) / length, (a[0] - b[0]) / length];
  };
  return ring.flatMap((at, i): Point[] => {
    const before = out(ring[(i + ring.length - 1) % ring.length]!, at);
    const after = out(at, ring[(i + 1) % ring.length]!);
    const along = 1 + before[0] * after[0] + before[1] * after[1];
    const reach = Math.sqrt(2 / along);
    const step = (n: Point, by: number): Point => [
      Math.round(at[0] + by * n[0]),
      Math.round(at[1] + by * n[1]),
    ];
    if (reach > SHARPEST) return [step(before, widthMm), step(after, widthMm)];
    return [step([(before[0] + after[0]) / along, (before[1] + after[1]) / along], widthMm)];
  });
}

/** Section of the demonstration that was traced, and what stands under its `felled`. */
export const FELLED_DEMO = {
  sectionId: truth.sectionId,
  felled: {
    note: 'Invented, from the plan behind the simulated traces.',
    source: 'invented with the demonstration',
    unsound: [truth.decayedMm.map(([x, y]): [number, number] => [x, y])],
    incipient: [movedOut(truth.decayedMm, truth.incipientWidthMm).map(([x, y]): [number, number] => [x, y])],
  },
};
