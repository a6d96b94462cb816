/**
 * What is odd about a trace that can be read: a unit that is likely another, rows far apart.
 */
import type { Notice, Trace } from '@standfast/engine';

/** Spacings beyond these are outside what the trace table is meant for, mm. */
const FINEST_MM = 0.005;
const COARSEST_MM = 2;
/** A step this many times the median step is a gap. */
const GAP_RATIO = 20;

/** Notices about a trace, in order of importance. `place` is for example `sections.s1.drillings.d3`. */
export function traceNotices(trace: Trace, place: string): Notice[] {
  const { depthMm, resistancePct } = trace;
  const notices: Notice[] = [];
  const caution = (text: string) => notices.push({ severity: 'caution', where: place, text });
  let highest = -Infinity;
  for (const level of resistancePct) if (level > highest) highest = level;
  if (highest > 0 && highest <= 1.5) {
    caution(
      `resistance never exceeds ${highest}: it is taken in percent of full scale; if it was written as a fraction, multiply it by 100.`,
    );
  }
  if (highest > 100) {
    caution(
      `resistance reaches ${highest} % of full scale, above the top of the scale: was it converted rightly?`,
    );
  }
  const steps = depthMm.length - 1;
  if (steps < 1) return notices;
  const medianMm = medianStep(depthMm);
  if (medianMm > COARSEST_MM) {
    caution(
      `readings stand ${medianMm.toPrecision(3)} mm apart: narrow cracks and thin decay cannot be seen.`,
    );
  } else if (medianMm < FINEST_MM) {
    caution(`readings stand only ${medianMm.toPrecision(2)} mm apart: is the depth in millimetres?`);
  }
  let widest = 0;
  let widestAt = 0;
  for (let i = 0; i < steps; i++) {
    const step = depthMm[i + 1]! - depthMm[i]!;
    if (step > widest) {
      widest = step;
      widestAt = i;
    }
  }
  if (widest > GAP_RATIO * medianMm && widest > COARSEST_MM) {
    caution(
      `there are no readings between ${depthMm[widestAt]} and ${depthMm[widestAt + 1]} mm: what lies there is not known.`,
    );
  }
  return notices;
}

function medianStep(depthMm: Float64Array): number {
  // A few thousand steps spread over the trace settle the median of millions.
  const stride = Math.max(1, Math.floor((depthMm.length - 1) / 5000));
  const steps: number[] = [];
  for (let i = 0; i + 1 < depthMm.length; i += stride) steps.push(depthMm[i + 1]! - depthMm[i]!);
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1]!;
}
