/** A strip made by make_strips.py, read through the engine's public door and held against its truth. */
import {
  type Chart,
  type ChartKnown,
  type CornersPx,
  homographyFrom,
  type PointPx,
  project,
  readStrip,
  type StripImage,
  type StripLine,
  settleChart,
} from '../../../packages/engine/src/strip/index.ts';

interface TrueLine {
  depthMm: number[];
  levelPct: number[];
  gapsMm: [number, number][];
}

interface TrueChart {
  cornersPx: CornersPx;
  depthMm: [number, number];
  resistance: [number, number];
  /** Unit of the numbers printed along it, or none. */
  depthNumbers: string;
  levelNumbers: string;
  /** Two marks as a person tapped them, and their depths, or where they are a ruler's how far apart they are. */
  taps: [PointPx, PointPx];
  tapsMm: [number, number] | null;
  rulerMm: number | null;
  lines: TrueLine[];
}

/** What is on a photo, as make_strips.py wrote it beside it. */
export interface StripTruth {
  style: string;
  about: string;
  seed: number;
  sizePx: [number, number];
  quality: number;
  tiltDeg: number;
  charts: TrueChart[];
}

/** How a line read lies to the line drawn. */
interface LineScore {
  /** Shift along the depth that fits best, root mean square over the quarters of the strip, mm; null where all is level. */
  depthMm: number | null;
  /** Against the true level averaged over a sample's width, root mean square, percent of full scale. */
  levelPct: number;
  /** The level alone: each quarter's shift in depth taken out, and no samples on steep strokes. */
  steadyPct: number;
  /** Share of samples further than WRONG_LEVEL_PCT from every true level within NEAR_MM of depth. */
  wrong: number;
  /** Share of the drawn line that was read; share of what was read where nothing was drawn. */
  read: number;
  invented: number;
  /** The confidence told for the line. */
  sure: number;
}

/** `right` and `wrong` where something was told, `untold` where the reader asked for it instead. */
type Told = 'right' | 'wrong' | 'untold';

export interface StripVerdict {
  truth: StripTruth;
  /** Corners and scale given; null when refused. */
  given: LineScore | null;
  /** Corners given, the scale left to the numbers printed. */
  depthNumbers: Told;
  levelNumbers: Told;
  /** Corners left to the reader: why not, or how far off the worst one is, in pixels of a photo 1,600 wide. */
  found: { offPx: number; sure: number; chart: 'right' | 'wrong' } | null;
  /** The line on the chart found, its true scale given; null when no right chart was found or no line. */
  foundLine: LineScore | null;
  /** Nothing given: whether depths and levels told for the true chart are right. */
  alone: Told;
  /** How sure the reader was of the chart when it told them. */
  aloneSure: number;
  /** Depth by two taps of a person's hand, corners given: greatest error at the chart's edges, mm. */
  tapsMm: number;
}

/** Samples where the truth moves by more than this within a sample's width either side are on a steep stroke. */
const STEEP_PCT = 8;
const WRONG_LEVEL_PCT = 5;
const NEAR_MM = 1;
/** A line is confidently wrong when it tells at least this confidence and this share of it is wrong. */
const CONFIDENT = 0.7;
const MOST_WRONG = 0.1;
/** Below this the reader itself says that the corners are to be checked. */
export const TRUSTED = 0.75;
export const NEAR_PX = 3;
const PHOTO_PX = 1600;
/** A chart is wrong when a corner is off by more than this share of the chart's longer side. */
const WRONG_CORNER = 0.03;
/** A scale is right when depth and level at the true chart's corners are within these shares of its span. */
const SCALE_DEPTH = 0.01;
const SCALE_LEVEL = 0.02;

export const isNear = (verdict: StripVerdict) => verdict.found !== null && verdict.found.offPx <= NEAR_PX;
export const isConfidentlyWrong = (line: LineScore | null) =>
  line !== null && line.sure >= CONFIDENT && line.wrong > MOST_WRONG;

/** Reads one photo in all the ways a person might have it read. */
export function judgeStrip(image: StripImage, truth: StripTruth): StripVerdict {
  const first = truth.charts[0]!;
  const { cornersPx } = first;
  const depth = settled(image, { cornersPx, resistance: first.resistance })?.chart;
  const level = settled(image, { cornersPx, depthMm: first.depthMm })?.chart;
  const tapped = settled(image, { cornersPx, resistance: first.resistance, ...tapsOf(first) })?.chart;

  // Where there are several charts, the one nearest the one found is meant; it may be told turned half round, as charts
  // whose numbers stand upright beside them are, with its scale turned too.
  const either = truth.charts.flatMap((chart) => [chart, turned(chart)]);
  const scaleGiven = settled(image, { depthMm: first.depthMm, resistance: first.resistance });
  const nearest = scaleGiven?.chart && nearestChart(scaleGiven.chart.cornersPx, either);
  const offPx = nearest ? cornersOff(scaleGiven.chart.cornersPx, nearest.cornersPx) : 0;
  const right = nearest && offPx <= WRONG_CORNER * longerSide(nearest.cornersPx);
  const alone = settled(image, {});
  const meant = alone?.chart && nearestChart(alone.chart.cornersPx, either);

  return {
    truth,
    given: scoreOf(image, first, first),
    depthNumbers: !depth ? 'untold' : depthOff(depth, first) <= SCALE_DEPTH ? 'right' : 'wrong',
    levelNumbers: !level ? 'untold' : levelOff(level, first) <= SCALE_LEVEL ? 'right' : 'wrong',
    found: nearest
      ? {
          offPx: toPhotoPx(offPx, image),
          sure: scaleGiven.sure,
          chart: right ? 'right' : 'wrong',
        }
      : null,
    foundLine: nearest && right ? scoreOf(image, scaleGiven.chart, nearest) : null,
    alone: !meant
      ? 'untold'
      : depthOff(alone.chart, meant) <= SCALE_DEPTH && levelOff(alone.chart, meant) <= SCALE_LEVEL
        ? 'right'
        : 'wrong',
    aloneSure: alone?.sure ?? 0,
    tapsMm: tapped ? depthOff(tapped, first) * Math.abs(first.depthMm[1] - first.depthMm[0]) : Number.NaN,
  };
}

function tapsOf({ taps: [a, b], tapsMm, rulerMm }: TrueChart): ChartKnown {
  if (rulerMm) return { ruler: { px: [a, b], distanceMm: rulerMm, startMm: 0, startsAt: 'left' } };
  return {
    taps: [
      { px: a, depthMm: tapsMm![0] },
      { px: b, depthMm: tapsMm![1] },
    ],
  };
}

const REFUSED = { photo: 'photo', chart: 'chart' };

/** The chart settled, and how sure; null when it was refused or the scale is wanting. */
function settled(image: StripImage, known: ChartKnown): { chart: Chart; sure: number } | null {
  return unlessRefused(() => {
    const answer = settleChart(image, known, REFUSED);
    return answer.chart && { chart: answer.chart, sure: answer.cornersFound?.sure ?? 1 };
  });
}

/** Refusals are answers; any other error is a fault of the program and is thrown on. */
function unlessRefused<T>(work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    if (error instanceof Error && error.name === 'InputFault') return null;
    throw error;
  }
}

const distance = (a: readonly number[], b: readonly number[]) => Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!);
const cornersOff = (a: CornersPx, b: CornersPx) => Math.max(...a.map((corner, i) => distance(corner, b[i]!)));
/** Pixels of this photo as pixels of one 1,600 long. */
export const toPhotoPx = (px: number, { widthPx, heightPx }: StripImage) =>
  (px * PHOTO_PX) / Math.max(widthPx, heightPx);

/** How far four corners are off the nearest chart's, whichever of them comes first. */
export function cornersOffAnyTurn(
  corners: readonly (readonly number[])[],
  charts: readonly TrueChart[],
): number {
  const turns = corners.map((_, k) => [...corners.slice(k), ...corners.slice(0, k)] as unknown as CornersPx);
  return Math.min(...charts.flatMap((chart) => turns.map((turn) => cornersOff(turn, chart.cornersPx))));
}

const longerSide = (c: CornersPx) => Math.max(distance(c[0], c[1]), distance(c[1], c[2]));

function turned(chart: TrueChart): TrueChart {
  const [a, b, c, d] = chart.cornersPx;
  const [left, right] = chart.depthMm;
  const [bottom, top] = chart.resistance;
  return { ...chart, cornersPx: [c, d, a, b], depthMm: [right, left], resistance: [top, bottom] };
}

function nearestChart(corners: CornersPx, charts: readonly TrueChart[]): TrueChart {
  return charts.reduce((best, chart) =>
    cornersOff(corners, chart.cornersPx) < cornersOff(corners, best.cornersPx) ? chart : best,
  );
}

/** Where a true chart's corners lie on a chart that was told, as shares of its width and height from its top left. */
function cornersOn(told: Chart, chart: TrueChart): [number, number][] {
  const onto = homographyFrom(told.cornersPx, [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ])!;
  return chart.cornersPx.map(([x, y]) => project(onto, x, y) as [number, number]);
}

/** Greatest error of depth and of level told at the true chart's corners, in shares of the true span. */
function depthOff(told: Chart, chart: TrueChart): number {
  const [left, right] = chart.depthMm;
  return Math.max(
    ...cornersOn(told, chart).map(([u], i) => {
      const depth = told.depthMm[0] + u * (told.depthMm[1] - told.depthMm[0]);
      return Math.abs(depth - (i === 0 || i === 3 ? left : right)) / Math.abs(right - left);
    }),
  );
}

function levelOff(told: Chart, chart: TrueChart): number {
  const [bottom, top] = chart.resistance;
  return Math.max(
    ...cornersOn(told, chart).map(([, v], i) => {
      const level = told.resistance[1] - v * (told.resistance[1] - told.resistance[0]);
      return Math.abs(level - (i < 2 ? top : bottom)) / Math.abs(top - bottom);
    }),
  );
}

function scoreOf(image: StripImage, place: { cornersPx: CornersPx }, chart: TrueChart): LineScore | null {
  const { depthMm, resistance } = chart;
  const reading = unlessRefused(() => readStrip(image, { cornersPx: place.cornersPx, depthMm, resistance }));
  // The line the reader holds likeliest: nobody chooses for it.
  return reading && lineScore(reading.lines[0]!, chart.lines);
}

/** The line read against the line drawn; of several lines drawn, the one it follows. */
export function lineScore(line: StripLine, drawn: readonly TrueLine[]): LineScore {
  return drawn.map((truth) => against(line, truth)).reduce((a, b) => (b.wrong < a.wrong ? b : a));
}

function against(line: StripLine, truth: TrueLine): LineScore {
  const depth = line.depthMm;
  const step = middle(Array.from(depth.subarray(1), (d, i) => d - depth[i]!));
  const from = truth.depthMm[0]!;
  const to = truth.depthMm.at(-1)!;
  const total = runningSum(truth.levelPct);
  const pitch = (to - from) / (truth.depthMm.length - 1);
  const sumTo = (d: number) => between(total, (d - from) / pitch);
  const mean = (d: number) =>
    (sumTo(Math.min(to, d + step / 2)) - sumTo(Math.max(from, d - step / 2))) /
    ((Math.min(to, d + step / 2) - Math.max(from, d - step / 2)) / pitch);
  const level = (d: number) => between(truth.levelPct, (d - from) / pitch);
  const drawnAt = (d: number) =>
    d >= from - 1 && d <= to + 1 && !truth.gapsMm.some(([a, b]) => d > a + 1 && d < b - 1);

  const shifts = shiftsOf(line, level, from, to);
  const all: number[] = [];
  const steady: number[] = [];
  let invented = 0;
  let wrong = 0;
  for (let i = 0; i < depth.length; i++) {
    const d = depth[i]!;
    const value = line.resistancePct[i]!;
    if (!drawnAt(d)) invented++;
    else if (d > from + step && d < to - step) {
      all.push(value - mean(d));
      const shift = shifts[Math.min(3, Math.floor((4 * (d - from)) / (to - from)))] ?? 0;
      const at = Math.min(to - step, Math.max(from + step, d + shift));
      if (Math.abs(level(at + step) - level(at - step)) <= STEEP_PCT) steady.push(value - mean(at));
      const near = truth.levelPct.slice(
        Math.max(0, Math.floor((d - NEAR_MM - from) / pitch)),
        Math.ceil((d + NEAR_MM - from) / pitch) + 1,
      );
      if (value < Math.min(...near) - WRONG_LEVEL_PCT || value > Math.max(...near) + WRONG_LEVEL_PCT) wrong++;
    }
  }
  const told = shifts.filter((shift) => shift !== null);
  return {
    depthMm: told.length ? rms(told) : null,
    levelPct: rms(all),
    steadyPct: rms(steady),
    wrong: all.length ? wrong / all.length : 1,
    read: shareRead(depth, truth, drawnAt, Math.max(2 * step, 0.6)),
    invented: invented / depth.length,
    sure: line.sure,
  };
}

/** Share of the drawn depths with a sample near. */
function shareRead(
  depth: Float64Array,
  truth: TrueLine,
  drawnAt: (d: number) => boolean,
  near: number,
): number {
  let drawn = 0;
  let read = 0;
  let k = 0;
  for (const d of truth.depthMm) {
    if (!drawnAt(d)) continue;
    drawn++;
    while (k + 1 < depth.length && Math.abs(depth[k + 1]! - d) <= Math.abs(depth[k]! - d)) k++;
    if (Math.abs(depth[k]! - d) <= near) read++;
  }
  return drawn ? read / drawn : 0;
}

const MOST_SHIFT_MM = 4;
const SHIFT_MM = 0.1;
/** Where the level moves by less than this standard deviation a shift cannot be told. */
const LEAST_MOVEMENT_PCT = 2;

/** For each quarter of the strip how much deeper the truth lies that fits best, mm; null where all is level. */
function shiftsOf(
  line: StripLine,
  level: (d: number) => number,
  from: number,
  to: number,
): (number | null)[] {
  const shifts: (number | null)[] = [null, null, null, null];
  for (let quarter = 0; quarter < 4; quarter++) {
    const a = from + ((to - from) * quarter) / 4;
    const b = from + ((to - from) * (quarter + 1)) / 4;
    const samples: [number, number][] = [];
    line.depthMm.forEach((d, i) => {
      if (d > Math.max(a, from + MOST_SHIFT_MM) && d < Math.min(b, to - MOST_SHIFT_MM))
        samples.push([d, line.resistancePct[i]!]);
    });
    if (samples.length < 20) continue;
    const mean = samples.reduce((sum, [d]) => sum + level(d), 0) / samples.length;
    if (rms(samples.map(([d]) => level(d) - mean)) < LEAST_MOVEMENT_PCT) continue;
    const cost = (shift: number) => rms(samples.map(([d, value]) => value - level(d + shift)));
    let best = 0;
    for (let shift = -MOST_SHIFT_MM; shift <= MOST_SHIFT_MM; shift += SHIFT_MM) {
      if (cost(shift) < cost(best)) best = shift;
    }
    const [before, at, after] = [cost(best - SHIFT_MM), cost(best), cost(best + SHIFT_MM)];
    const bend = before - 2 * at + after;
    shifts[quarter] = bend > 0 ? best + (SHIFT_MM * (before - after)) / (2 * bend) : best;
  }
  return shifts;
}

const rms = (values: readonly number[]) =>
  values.length ? Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length) : 0;

function middle(values: number[]): number {
  return values.sort((a, b) => a - b)[values.length >> 1] ?? 0;
}

/** The integral up to each sample, by trapezes, in samples. */
function runningSum(values: readonly number[]): number[] {
  const total = [0];
  for (let i = 1; i < values.length; i++) total.push(total[i - 1]! + (values[i - 1]! + values[i]!) / 2);
  return total;
}

/** The value at a place between samples. */
function between(values: readonly number[], place: number): number {
  const k = Math.min(values.length - 2, Math.max(0, Math.floor(place)));
  const share = Math.min(1, Math.max(0, place - k));
  return values[k]! + share * (values[k + 1]! - values[k]!);
}
