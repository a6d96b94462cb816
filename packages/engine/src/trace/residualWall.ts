import type { StretchPosterior } from './semiMarkov.ts';
import type { Interval } from './types.ts';
import { STATES } from './zoneModel.ts';

/** What an edge's place is uncertain by beyond the model's own doubt, standard deviation in mm. */
const EDGE_SD_MM = 2;

/**
 * Distribution of the residual wall from the posterior over stretches: every way the first stretch of wood can begin
 * and end, with its probability, blurred by what edges are uncertain by. A first stretch that is not sound is a wall
 * of nothing.
 */
export function wallInterval(
  posterior: StretchPosterior,
  cellMm: number,
  foundMm: number,
  shiftMm: number,
): Interval {
  const sound = STATES.indexOf('sound');
  const mass: { mm: number; p: number }[] = [];
  let total = 0;
  for (const s of posterior.stretches) {
    if (s.asFirst <= 0) continue;
    const name = STATES[s.state]!;
    if (name === 'airIn' || name === 'barkIn') continue;
    const mm = s.state === sound ? Math.max(0, (s.to - s.from) * cellMm + shiftMm) : 0;
    mass.push({ mm, p: s.asFirst });
    total += s.asFirst;
  }
  if (total <= 0) return { p05: foundMm, p50: foundMm, p95: foundMm };
  const cumulative = (x: number) => {
    let sum = 0;
    for (const { mm, p } of mass)
      sum += p * (mm === 0 ? (x >= 0 ? 1 : 0) : normalBelow((x - mm) / EDGE_SD_MM));
    return sum / total;
  };
  const top = Math.max(...mass.map((m) => m.mm)) + 4 * EDGE_SD_MM;
  const point = (q: number) => {
    if (cumulative(0) >= q) return 0;
    let a = 0;
    let b = top;
    for (let i = 0; i < 40; i++) {
      const m = 0.5 * (a + b);
      if (cumulative(m) < q) a = m;
      else b = m;
    }
    return 0.5 * (a + b);
  };
  return { p05: point(0.05), p50: point(0.5), p95: point(0.95) };
}

/** Standard normal distribution function (logistic form of Bowling et al. 2009, absolute error below 2e-4). */
function normalBelow(z: number): number {
  return 1 / (1 + Math.exp(-z * (1.5976 + 0.07056 * z * z)));
}
