/** A simulated strip read and held against its truth. */
import { type Random, randomFrom } from '../../../packages/engine/src/random.ts';
import {
  findChart,
  readStrip,
  type StripLine,
  type StripReading,
} from '../../../packages/engine/src/strip/index.ts';
import type { CornersPx } from '../../../packages/engine/src/strip/types.ts';
import { readTraces } from '../../../packages/engine/src/trace/index.ts';
import type { Trace, TraceReading } from '../../../packages/engine/src/trace/types.ts';
import { simulateTrace, type TraceStretch } from '../traces/simulateTrace.ts';
import { photograph } from './photograph.ts';
import { printStrip } from './printStrip.ts';
import type { StripStyle } from './styles.ts';

export interface StripScore {
  /** Depth error: root mean square over quarters of the strip of the shift that fits best, mm. */
  depthMm: number;
  /** Level error against the trace averaged over a sample's width, root mean square, percent of full scale. */
  levelPct: number;
  /** The same without the samples on an upright stroke, where a hair's breadth of depth is any level. */
  steadyPct: number;
  /** Share of the true line's length that was read, and share of what was read where there is no line. */
  read: number;
  invented: number;
  /** Share of the depth where the pen wrote at which the zones read from the strip are those read from the true trace. */
  zonesAgree: number;
  /** Share of the depth where the pen did not write that the reading leaves out; null where it wrote all along. */
  gapsLeftOut: number | null;
  /** Greatest distance of a corner found from the true one, pixels; null when no chart was found. */
  cornersPx: number | null;
  cornersSure: number;
  /** Mean confidence told. */
  sure: number;
}

const STEEP_PCT = 8;

/** Stretches where the pen does not write, shares of the trace's length. */
type Gaps = readonly (readonly [number, number])[];

type Samples = Pick<StripLine, 'depthMm' | 'resistancePct'>;

/** A tree's trace: bark, sound wood, a cavity with decay around it, sound wood. */
export function invented(random: Random, seed: number): Trace {
  const u = () => random.uniform();
  const stretches: TraceStretch[] = [
    { kind: 'air', lengthMm: 4 + 6 * u() },
    { kind: 'bark', lengthMm: 8 + 12 * u() },
    { kind: 'sound', lengthMm: 70 + 50 * u() },
    { kind: 'incipient', lengthMm: 20, edgeMm: 12 },
    { kind: 'decayed', lengthMm: 25 + 20 * u(), edgeMm: 4 },
    { kind: 'void', lengthMm: 20 + 30 * u() },
    { kind: 'sound', lengthMm: 40 + 30 * u() },
  ];
  return simulateTrace({
    seed,
    stretches,
    soundLevelPct: 35 + 30 * u(),
    rings: u() < 0.5 ? 'diffuse' : 'conifer',
    ringMm: 3 + 3 * u(),
    ringContrast: 0.08 + 0.15 * u(),
    noiseSdPct: 0.4,
    spacingMm: 0.2,
  }).trace;
}

export interface Judged {
  score: StripScore;
  reading: StripReading;
  line: StripLine;
}

/**
 * Prints, photographs and reads one strip.
 * @param givenCorners whether the true corners are handed over; else they are found
 */
export function judgeStrip(style: StripStyle, seed: number, givenCorners = true, widthPx?: number): Judged {
  const random = randomFrom(seed);
  const trace = invented(random.fork('trace'), seed);
  const other = invented(random.fork('other'), seed + 1);
  const print = style.print(random.fork('print'), other);
  const camera = style.camera(random.fork('camera'));
  const lengthMm = Math.ceil(((1 + style.beyond) * trace.depthMm.at(-1)!) / 10 + 0.5) * 10;
  const strip = printStrip(trace, lengthMm, print, seed);
  const photo = photograph(strip, { ...camera, widthPx: widthPx ?? camera.widthPx }, seed);
  const found = findChart(photo.image);
  const truth = photo.cornersPx as unknown as CornersPx;
  const reading = readStrip(photo.image, {
    cornersPx: givenCorners || !found ? truth : found.cornersPx,
    depthMm: strip.depthMm,
    resistance: strip.resistance as [number, number],
  });
  // Where there are two lines a person chooses; here the nearer one is taken.
  const scored = reading.lines.map((line) => ({ line, off: levelError(line, trace).levelPct }));
  const { line } = scored.sort((a, b) => a.off - b.off)[0]!;
  const cornersPx = found
    ? Math.max(...found.cornersPx.map(([x, y], i) => Math.hypot(x - truth[i]![0], y - truth[i]![1])))
    : null;
  return {
    reading,
    line,
    score: {
      ...levelError(line, trace),
      depthMm: depthError(line, trace),
      ...coverage(line, trace, print.gaps),
      zonesAgree: zonesAgree(line, trace, print.gaps),
      gapsLeftOut: gapsLeftOut(line, trace, print.gaps),
      cornersPx,
      cornersSure: found?.sure ?? 0,
      sure: line.sure,
    },
  };
}

export function levelError(line: Samples, trace: Trace): { levelPct: number; steadyPct: number } {
  const { depthMm, resistancePct } = line;
  const step = usualStep(depthMm);
  let sum = 0;
  let steady = 0;
  let calm = 0;
  for (let i = 0; i < depthMm.length; i++) {
    const d = depthMm[i]!;
    const e = resistancePct[i]! - meanAround(trace, d, step);
    sum += e * e;
    const slope = Math.abs(at(trace, d + step) - at(trace, d - step));
    if (slope > STEEP_PCT) continue;
    steady += e * e;
    calm++;
  }
  return { levelPct: Math.sqrt(sum / depthMm.length), steadyPct: Math.sqrt(steady / Math.max(1, calm)) };
}

export function depthError(line: Samples, trace: Trace): number {
  const { depthMm, resistancePct } = line;
  const n = depthMm.length;
  const parts = 4;
  let sum = 0;
  for (let part = 0; part < parts; part++) {
    let best = Number.POSITIVE_INFINITY;
    let shift = 0;
    for (let trial = -3; trial <= 3; trial += 0.02) {
      let off = 0;
      for (let i = Math.floor((part * n) / parts); i < Math.floor(((part + 1) * n) / parts); i++) {
        off += Math.min(25, Math.abs(resistancePct[i]! - at(trace, depthMm[i]! + trial)));
      }
      if (off < best) {
        best = off;
        shift = trial;
      }
    }
    sum += shift * shift;
  }
  return Math.sqrt(sum / parts);
}

function coverage(line: StripLine, trace: Trace, gaps: Gaps) {
  const end = trace.depthMm.at(-1)!;
  const step = usualStep(line.depthMm);
  const inGap = (d: number) =>
    d > end + 1 || gaps.some(([a, b]) => d > a * end + GAP_ENDS_MM && d < b * end - GAP_ENDS_MM);
  let wrong = 0;
  for (const d of line.depthMm) if (inGap(d)) wrong++;
  const drawn = end * (1 - gaps.reduce((sum, [a, b]) => sum + b - a, 0));
  return {
    read: Math.min(1, ((line.depthMm.length - wrong) * step) / drawn),
    invented: wrong / line.depthMm.length,
  };
}

/** A gap's ends are left aside by this much, mm: the pen's width rounds them. */
const GAP_ENDS_MM = 1;

function gapsLeftOut(line: StripLine, trace: Trace, gaps: Gaps): number | null {
  const end = trace.depthMm.at(-1)!;
  let left = 0;
  let all = 0;
  for (const [a, b] of gaps) {
    for (let d = a * end + GAP_ENDS_MM; d < b * end - GAP_ENDS_MM; d += 0.1) {
      all++;
      if (line.gapsMm.some(([from, to]) => d >= from && d <= to)) left++;
    }
  }
  return all ? left / all : null;
}

/** Inside a gap nothing was read, so that no zone told there can be right or wrong by the line: it is scored outside. */
function zonesAgree(line: StripLine, trace: Trace, gaps: Gaps): number {
  const [mine] = readTraces([
    { id: 'read', trace: { depthMm: line.depthMm, resistancePct: line.resistancePct } },
  ]);
  const [theirs] = readTraces([{ id: 'true', trace }]);
  const kindAt = (reading: TraceReading, d: number) =>
    reading.zones.find((zone) => d >= zone.fromMm && d < zone.toMm)?.kind;
  let same = 0;
  let all = 0;
  const end = trace.depthMm.at(-1)!;
  for (let d = 1; d < end - 1; d += 0.5) {
    if (gaps.some(([a, b]) => d >= a * end && d <= b * end)) continue;
    all++;
    if (kindAt(mine!, d) === kindAt(theirs!, d)) same++;
  }
  return same / all;
}

function usualStep(depthMm: Float64Array): number {
  const steps = Array.from(depthMm.subarray(1), (d, i) => d - depthMm[i]!).sort((a, b) => a - b);
  return steps[steps.length >> 1]!;
}

function at({ depthMm, resistancePct }: Trace, d: number): number {
  const step = depthMm[1]! - depthMm[0]!;
  const u = Math.min(depthMm.length - 1.001, Math.max(0, (d - depthMm[0]!) / step));
  const i = Math.floor(u);
  return resistancePct[i]! + (u - i) * (resistancePct[i + 1]! - resistancePct[i]!);
}

function meanAround(trace: Trace, d: number, width: number): number {
  let sum = 0;
  const parts = 5;
  for (let i = 0; i < parts; i++) sum += at(trace, d + width * ((i + 0.5) / parts - 0.5));
  return sum / parts;
}
