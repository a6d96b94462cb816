/** Stretches of a line read from a strip: where samples are left out, and where they were read unsurely. */
import type { StripSamples } from '../trace/writeStripTable.ts';

/** The usual distance of samples, mm. */
export function usualStep(depthMm: Float64Array): number {
  if (depthMm.length < 2) return 0.2;
  const steps = Float64Array.from(depthMm.subarray(1), (depth, i) => depth - depthMm[i]!).sort();
  return steps[steps.length >> 1]!;
}

/** Stretches of depth whose samples a brush touched: `touched(i)` of each sample, in order. */
export function stretchesOf(depthMm: Float64Array, touched: (index: number) => boolean): [number, number][] {
  const stretches: [number, number][] = [];
  let open: [number, number] | null = null;
  for (let i = 0; i < depthMm.length; i++) {
    if (!touched(i)) open = null;
    else if (open) open[1] = depthMm[i]!;
    else {
      open = [depthMm[i]!, depthMm[i]!];
      stretches.push(open);
    }
  }
  return stretches;
}

/** Stretches without samples, mm: what is left out. A missing beginning or end of the chart does not count. */
export function gapsOf(depthMm: Float64Array): [number, number][] {
  const most = 2.5 * usualStep(depthMm);
  const gaps: [number, number][] = [];
  for (let i = 1; i < depthMm.length; i++) {
    if (depthMm[i]! - depthMm[i - 1]! > most) gaps.push([depthMm[i - 1]!, depthMm[i]!]);
  }
  return gaps;
}

/** A sample surer than this is drawn as surely read. */
export const UNSURE_BELOW = 0.5;
/** Unsure stretches nearer to each other than this are told as one, and shorter ones not at all, mm: a pen's breadth. */
const TELLING_MM = 1;

/** Stretches that were read, but unsurely, mm. */
export function unsureStretches({
  depthMm,
  confidence,
  byHand,
}: Pick<StripSamples, 'depthMm' | 'confidence'> & {
  /** 1 where a person drew the sample: seen by an eye, it does not count. */
  byHand?: Uint8Array;
}): [number, number][] {
  const joined: [number, number][] = [];
  for (const [from, to] of stretchesOf(depthMm, (i) => byHand?.[i] !== 1 && confidence[i]! < UNSURE_BELOW)) {
    const last = joined.at(-1);
    if (last && from - last[1] < TELLING_MM) last[1] = to;
    else joined.push([from, to]);
  }
  return joined.filter(([from, to]) => to - from >= TELLING_MM);
}
