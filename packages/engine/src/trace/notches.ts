import { type ConditionedTrace, FINE_STEP_MM, quantile } from './conditionTrace.ts';

/** Widest notch looked for, mm at half its depth; and how far off its shoulders are taken, mm. */
const WIDEST_MM = 6;
const SHOULDER_FROM_MM = 3;
const SHOULDER_TO_MM = 8;
/** Least depth of a crack, as a share of the level around it over the floor. */
const LEAST_DEPTH = 0.4;

/** Least level of its shoulders, as a share of the sound level: in rot and in voids no crack can be told. */
const LEAST_SHOULDER = 0.5;

/** A narrow fall in level with full recovery that may be a crack. */
export interface Notch {
  fromMm: number;
  toMm: number;
  /** Depth as a share of its shoulders' level over the floor. */
  depth: number;
  /** Log odds that it is a crack and not the ring pattern or noise. */
  logOdds: number;
}

/**
 * Find narrow notches on the fine grid, before anything is smoothed. A crack drops most of the way to the floor, has
 * both shoulders, and stands alone: notches that are one of many alike are the ring pattern (deep earlywood).
 *
 * @param floorPct idle level and friction on the fine grid's cells (one value a cell).
 */
export function findNotches(
  c: ConditionedTrace,
  floorPct: Float64Array,
  scatterPct: Float64Array,
  soundPct: number,
): Notch[] {
  const y = c.finePct;
  const n = y.length;
  const perCell = n / c.gridMm.length;
  const near = Math.round(SHOULDER_FROM_MM / FINE_STEP_MM);
  const far = Math.round(SHOULDER_TO_MM / FINE_STEP_MM);
  const sum = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) sum[i + 1] = sum[i]! + y[i]!;
  const mean = (a: number, b: number) => (sum[b]! - sum[a]!) / (b - a);
  const typical = quantile(scatterPct, 0.6);
  const found: Notch[] = [];
  const depths: number[] = [];
  for (let i = near + 4; i < n - near - 4; i++) {
    // A least value of its neighbourhood.
    if (y[i]! > y[i - 1]! || y[i]! >= y[i + 1]!) continue;
    const left = mean(Math.max(0, i - far), i - near);
    const right = mean(i + near + 1, Math.min(n, i + far + 1));
    const shoulder = Math.min(left, right);
    const cell = Math.min(floorPct.length - 1, Math.floor(i / perCell));
    const floor = floorPct[cell]!;
    const height = shoulder - floor;
    const drop = shoulder - y[i]!;
    if (
      height < LEAST_SHOULDER * soundPct ||
      drop < 0.25 * height ||
      drop < 3 * c.readingNoisePct * Math.sqrt(Math.min(1, c.spacingMm / 0.5))
    )
      continue;
    const half = shoulder - 0.5 * drop;
    let a = i;
    let b = i;
    while (a > 0 && y[a - 1]! < half) a--;
    while (b < n - 1 && y[b + 1]! < half) b++;
    if ((b - a + 1) * FINE_STEP_MM > WIDEST_MM) continue;
    const last = found.at(-1);
    const depth = Math.min(1.1, drop / height);
    if (last && c.fineMm[a]! - last.toMm < 1.5) {
      if (depth > last.depth) {
        found[found.length - 1] = notchAt(c, a, b, depth, drop, typical);
        depths[depths.length - 1] = depth;
      }
      continue;
    }
    found.push(notchAt(c, a, b, depth, drop, typical));
    depths.push(depth);
  }
  // How many others are about as deep: the ring pattern repeats, a crack does not.
  for (const notch of found) {
    const alike = depths.filter((d) => d > 0.72 * notch.depth).length - 1;
    notch.logOdds -= 5 * Math.max(0, alike - 1);
  }
  return found.filter((f) => f.depth > LEAST_DEPTH && f.logOdds > -4);
}

function notchAt(
  c: ConditionedTrace,
  a: number,
  b: number,
  depth: number,
  drop: number,
  scatter: number,
): Notch {
  return {
    fromMm: c.fineMm[a]! - FINE_STEP_MM / 2,
    toMm: c.fineMm[b]! + FINE_STEP_MM / 2,
    depth,
    logOdds: Math.min(24, 40 * (depth - 0.5), 5 * (drop / Math.max(scatter, 0.3) - 3)) + 4,
  };
}
