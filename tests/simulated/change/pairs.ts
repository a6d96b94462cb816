/** Many pairs of drillings with known change, compared, and how often the intervals and verdicts held. */
import { compareDrilling } from '../../../packages/engine/src/change/compareDrilling.ts';
import type { FrontVerdict } from '../../../packages/engine/src/change/types.ts';
import { randomFrom } from '../../../packages/engine/src/random.ts';
import { readTraces } from '../../../packages/engine/src/trace/index.ts';
import type { Interval } from '../../../packages/engine/src/trace/types.ts';
import { RING_FAMILIES, type RingFamily, simulatePair } from './simulatePair.ts';

/** Movements of the front that are tried, mm. */
export const MOVEMENTS_MM = [0, 5, 15, 40] as const;

export interface PairResult {
  family: RingFamily;
  movedMm: number;
  years: number;
  /** Whether both readings met the first front; where not, there is no movement to judge. */
  compared: boolean;
  frontInside: boolean;
  growthInside: boolean;
  wallInside: boolean;
  frontError: number;
  growthError: number;
  frontWidth: number;
  growthWidth: number;
  matchedChance: number;
  verdict: FrontVerdict;
}

const inside = ({ p05, p95 }: Interval, truth: number) => p05 <= truth && truth <= p95;

/** Compares one simulated pair. */
export function judgePair(family: RingFamily, movedMm: number, seed: number): PairResult {
  const years = 2 + (seed % 7);
  const { earlier, later, truth } = simulatePair({ seed, family, years, frontMovedMm: movedMm });
  const [then] = readTraces([{ id: 'then', trace: earlier.trace, barkMm: earlier.barkMm }]);
  const [now] = readTraces([{ id: 'now', trace: later.trace, barkMm: later.barkMm }]);
  const result = compareDrilling(
    { trace: earlier.trace, reading: then! },
    { trace: later.trace, reading: now! },
    { years, recordedOffsetMm: 0 },
    randomFrom(seed),
    1000,
  );
  const front = result.frontMm;
  const wall = result.wallDifferenceMm;
  return {
    family,
    movedMm,
    years,
    compared: front !== null,
    frontInside: front !== null && inside(front, truth.frontMovedMm),
    growthInside: inside(result.growthMm, truth.growthMm),
    wallInside: wall !== null && inside(wall, truth.wallDifferenceMm),
    frontError: front === null ? Number.NaN : front.p50 - truth.frontMovedMm,
    growthError: result.growthMm.p50 - truth.growthMm,
    frontWidth: front === null ? Number.NaN : front.p95 - front.p05,
    growthWidth: result.growthMm.p95 - result.growthMm.p05,
    matchedChance: result.alignment.matchedChance,
    verdict: result.verdict,
  };
}

/** `count` pairs of every family and movement, seeds from `fromSeed` on. */
export function studyPairs(count: number, fromSeed: number): PairResult[] {
  const out: PairResult[] = [];
  let seed = fromSeed;
  for (const family of RING_FAMILIES)
    for (const moved of MOVEMENTS_MM)
      for (let k = 0; k < count; k++) out.push(judgePair(family, moved, seed++));
  return out;
}

export interface Held {
  pairs: number;
  compared: number;
  frontHeld: number;
  growthHeld: number;
  wallHeld: number;
  frontError: number;
  growthError: number;
  frontWidth: number;
  growthWidth: number;
  matched: number;
  moved: number;
  notMoved: number;
  cannotTell: number;
}

const median = (values: number[]) => {
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
  return sorted.length === 0 ? Number.NaN : sorted[Math.floor(sorted.length / 2)]!;
};

/** Shares and middles over a set of results. */
export function heldOf(results: readonly PairResult[]): Held {
  const compared = results.filter((r) => r.compared);
  const share = (of: readonly PairResult[], yes: (r: PairResult) => boolean) =>
    of.length === 0 ? Number.NaN : of.filter(yes).length / of.length;
  return {
    pairs: results.length,
    compared: compared.length,
    frontHeld: share(compared, (r) => r.frontInside),
    growthHeld: share(results, (r) => r.growthInside),
    wallHeld: share(compared, (r) => r.wallInside),
    frontError: median(compared.map((r) => Math.abs(r.frontError))),
    growthError: median(results.map((r) => Math.abs(r.growthError))),
    frontWidth: median(compared.map((r) => r.frontWidth)),
    growthWidth: median(results.map((r) => r.growthWidth)),
    matched: share(results, (r) => r.matchedChance >= 0.8),
    moved: share(results, (r) => r.verdict === 'moved'),
    notMoved: share(results, (r) => r.verdict === 'not moved'),
    cannotTell: share(results, (r) => r.verdict === 'cannot tell'),
  };
}
