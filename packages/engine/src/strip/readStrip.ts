/** From a photographed strip to the lines on it. */
import { InputFault } from '../faults.ts';
import { checkCorners, checkStripImage } from './checkStrip.ts';
import { evenedColumns } from './evenMarks.ts';
import { filledArea } from './filledArea.ts';
import { type FoundLine, findLines } from './findLines.ts';
import { type Geometry, geometryOf } from './geometry.ts';
import { inkOf } from './ink.ts';
import { evenOutPaper, PAPER } from './paper.ts';
import { GAP, JOINED, type PenLine } from './penLine.ts';
import { printedLines } from './printedLines.ts';
import type {
  ChartFound,
  ChartScale,
  CornersPx,
  StripImage,
  StripLine,
  StripProgress,
  StripProvenance,
  StripReading,
} from './types.ts';
import { layFlat } from './warp.ts';

/** Shares of the time a reading usually takes that are over when the line begins to be followed, and when it is scaled. */
const FOLLOWING_FROM = 0.45;
const SCALING_FROM = 0.97;
/** A lone step of so much of the chart's height within three columns is an upright stroke, if beside it the line moves by less than this share of it. */
const LEAP = 0.06;
const CALM = 0.25;
const MOST_ON_STROKES = 0.03;
/** Corners found with less certainty than this are to be checked. */
const WANTS_CHECKING = 0.75;

export interface ReadStripOptions {
  /** Told as the work goes on. */
  onProgress?: StripProgress;
  /** How the corners and the scale were come by, for the provenance. Default: given. */
  cornersFound?: ChartFound;
  scaleFrom?: StripProvenance['scaleFrom'];
  /** File or photo named in faults. */
  where?: string;
}

/** Everything a reading needs, settled. */
export interface Chart extends ChartScale {
  cornersPx: CornersPx;
}

/**
 * Reads the lines on a chart whose corners and scale are known.
 * @returns the lines found, the likeliest first
 * @throws InputFault when corners or pixels make no sense, or no line can be read: nothing is ever invented
 */
export function readStrip(image: StripImage, chart: Chart, options: ReadStripOptions = {}): StripReading {
  const where = options.where ?? 'photo';
  const tell = options.onProgress ?? (() => {});
  checkStripImage(image, where);
  checkCorners(chart.cornersPx, image, 'cornersPx');
  const steps: string[] = [];

  tell(0, 'laying the chart flat');
  const geometry = geometryOf(image, chart.cornersPx);
  const { columns, rows, toPhoto, fold } = geometry;
  const flat = layFlat(image, columns, rows, toPhoto, fold);
  steps.push(`laid flat by a projective map of the corners, ${columns} × ${rows} places`);
  if (geometry.curlPx > 0) {
    const way = geometry.folded ? 'course' : 'bow';
    steps.push(`curl of up to ${geometry.curlPx.toFixed(1)} px taken out by the ${way} of its long edges`);
  }

  const area = filledArea(flat, geometry);
  tell(0.2, 'evening out shadow and paper');
  const { tooDark } = evenOutPaper(flat);
  if (tooDark) throw new InputFault('the chart is all black: photograph it in more light', where);
  steps.push('shadow and tint evened out by the brightness of the paper nearby');

  tell(0.25, 'taking out the print');
  const level = printedLines(flat, false);
  const upright = printedLines(flat, true);
  const ink = inkOf(flat, level, upright);
  const even = evenedColumns(flat, geometry, upright.middles);
  steps.push(`${upright.middles.length} upright and ${level.middles.length} level printed lines taken out`);
  if (even) steps.push('stretch along the chart undone by printed lines or ticks at even distances');

  tell(FOLLOWING_FROM, 'following the line');
  const startsAt = chart.depthMm[1] < chart.depthMm[0] ? 'right' : 'left';
  const found = area
    ? [area]
    : findLines(ink, geometry, startsAt, (share) =>
        tell(FOLLOWING_FROM + share * (SCALING_FROM - FOLLOWING_FROM), 'following the line'),
      );
  if (!found.length) {
    throw new InputFault(
      'no line of a pen was found on this chart: check that the corners are those of the chart and the line can be seen',
      where,
    );
  }
  steps.push(
    area
      ? 'no line but an area filled in one colour: its upper edge read'
      : 'pen told by colour, darkness and continuity; followed by the path of least cost',
  );
  tell(SCALING_FROM, 'scaling');
  const lines = found.map((line) => scaled(line, chart, geometry, even));
  tell(1, 'done');
  return {
    lines,
    provenance: {
      photoSizePx: [image.widthPx, image.heightPx],
      cornersPx: chart.cornersPx,
      cornersFrom: options.cornersFound?.from ?? 'given',
      cornersSure: options.cornersFound?.sure ?? 1,
      depthMm: chart.depthMm,
      resistance: chart.resistance,
      scaleFrom: options.scaleFrom ?? 'given',
      curlPx: geometry.curlPx,
      gridLines: [upright.middles.length, level.middles.length],
      steps,
    },
    warnings: warningsOf(lines, chart, options, geometry.folded && !even),
  };
}

/** @param even where each column lies along the chart once its stretch is undone; null where it is not stretched */
function scaled(found: FoundLine, chart: Chart, geometry: Geometry, even: Float64Array | null): StripLine {
  const { line, pen } = found;
  const { left, right, top, bottom, toPhoto } = geometry;
  const [fromMm, toMm] = chart.depthMm;
  const [low, high] = chart.resistance;
  const depthAt = (x: number) => fromMm + ((toMm - fromMm) * ((even ? even[x]! : x) - left)) / (right - left);
  const levelAt = (y: number) => high + ((low - high) * (y - top)) / (bottom - top);
  const backwards = toMm < fromMm;
  const seen: number[] = [];
  const gapsMm: [number, number][] = [];
  let gapFrom = -1;
  for (let i = 0; i <= right - left; i++) {
    const x = backwards ? right - i : left + i;
    if (line.state[x] === GAP) {
      if (gapFrom < 0) gapFrom = x;
      continue;
    }
    if (gapFrom >= 0) gapsMm.push([depthAt(gapFrom), depthAt(x)]);
    gapFrom = -1;
    seen.push(x);
  }
  if (gapFrom >= 0) gapsMm.push([depthAt(gapFrom), depthAt(backwards ? left : right)]);
  const plain = seen.filter((x) => !onStroke(line, x, LEAP * (bottom - top)));
  // Strokes that are many are no steps but the line's own way.
  const read = plain.length >= (1 - MOST_ON_STROKES) * seen.length ? plain : seen;
  const depthMm = Float64Array.from(read, depthAt);
  const resistancePct = Float64Array.from(read, (x) => levelAt(line.row[x]!));
  const one = Float64Array.from(read, (x) => levelAt(line.top[x]!));
  const two = Float64Array.from(read, (x) => levelAt(line.bottom[x]!));
  const confidence = Float64Array.from(read, (x) => {
    const like = Math.min(1, Math.max(0, (line.likeness[x]! - 0.3) / 0.55));
    return line.state[x] === JOINED ? 0.4 : 0.15 + 0.84 * like;
  });
  const linePx = new Float64Array(2 * read.length);
  const at = new Float64Array(2);
  read.forEach((x, i) => {
    toPhoto(x, line.row[x]!, at);
    linePx.set(at, 2 * i);
  });
  let sum = 0;
  for (const value of confidence) sum += value;
  return {
    depthMm,
    resistancePct,
    confidence,
    topPct: one.map((value, i) => Math.max(value, two[i]!)),
    bottomPct: one.map((value, i) => Math.min(value, two[i]!)),
    linePx,
    coverage: found.coverage,
    sure: sum / Math.max(1, read.length),
    penColour: [1 - pen.colour[0] / PAPER, 1 - pen.colour[1] / PAPER, 1 - pen.colour[2] / PAPER],
    penWidthPx: line.penWidth * geometry.photoPxPerRow,
    gapsMm,
  };
}

/**
 * Whether a column lies on or beside a lone upright stroke: there a hair's breadth of depth is any level, so that the
 * samples on either side say all there is.
 */
function onStroke({ row, state }: PenLine, x: number, leap: number): boolean {
  const step = (a: number) =>
    state[a] === GAP || state[a + 1] === GAP ? Number.NaN : Math.abs(row[a + 1]! - row[a]!);
  // The stroke spans up to three columns, with calm ones before and after.
  for (let a = x - 3; a <= x; a++) {
    for (let b = a; b <= a + 2 && b <= x; b++) {
      if (b + 1 < x) continue;
      let over = 0;
      for (let k = a; k <= b; k++) over += step(k);
      const calm = CALM * leap;
      if (over > leap && [a - 2, a - 1, b + 1, b + 2].every((k) => step(k) < calm)) {
        return x === a || x === b + 1 || (x > a && x <= b);
      }
    }
  }
  return false;
}

const plain = (range: readonly [number, number]) =>
  range.map((value) => String(Number(value.toFixed(1)))).join(' to ');

function warningsOf(
  lines: readonly StripLine[],
  chart: Chart,
  options: ReadStripOptions,
  stretched: boolean,
): string[] {
  const warnings: string[] = [];
  if (stretched) {
    warnings.push(
      'The paper is folded or bent, and nothing printed at even distances shows how that stretches it: depths may be off by several mm between the ends. Photograph it pressed flat.',
    );
  }
  const { cornersFound: found, scaleFrom } = options;
  if (scaleFrom === 'printed numbers') {
    const { depthMm, resistance } = chart;
    warnings.push(
      `The scale was read from the chart's printed numbers, depth ${plain(depthMm)} mm and resistance ${plain(resistance)} %: check it.`,
    );
  }
  if (found && found.sure < WANTS_CHECKING) {
    warnings.push(
      `The chart's corners were found, sure to ${Math.round(100 * found.sure)} % only: check that they lie on the chart's corners.`,
    );
  }
  if (lines.length > 1) {
    warnings.push(
      `${lines.length} lines were found on this chart: check that the one taken is the right one.`,
    );
  }
  const line = lines[0]!;
  if (line.coverage < 0.9) {
    warnings.push(
      `The line could be read along ${Math.round(100 * line.coverage)} % of the chart; the rest is left out.`,
    );
  }
  return warnings;
}
