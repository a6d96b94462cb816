/** Settling what a chart is from what a person said and what the photo shows. */
import { InputFault } from '../faults.ts';
import { axesMadeWhole } from './axes.ts';
import { checkCorners, checkStripImage } from './checkStrip.ts';
import { chartAndAxes } from './findChart.ts';
import { type PrintedScale, printedScale, printedUpright } from './numbers/readAxes.ts';
import type { Chart, ReadStripOptions } from './readStrip.ts';
import { depthByRuler, farEnough, sharesAlong } from './ruler.ts';
import { standsUpright } from './standsUpright.ts';
import type { ChartFound, ChartKnown, CornersPx, DepthTap, StripImage, StripProgress } from './types.ts';

/** A chart found with less certainty than this is not read: its corners must be given. */
const LEAST_SURE = 0.5;
/** Two axes do not tell where a chart ends; with numbers along both that agree they do, though their lines are to be checked. */
const AXES_WITH_NUMBERS = 0.7;
/** A figure without numbers beside two axes with a line over them is the chart with this share of its certainty. */
const AXES_BESIDE = 0.5;
/** Of the time it takes to see a chart, what goes into its corners; the rest goes into its numbers. */
const SHARE_OF_FINDING = 0.6;

/** A chart ready to be read, or, where its scale is not known, what is still to be said. */
export type ChartSettled =
  | ({ chart: Chart } & Pick<ReadStripOptions, 'cornersFound' | 'scaleFrom'>)
  | { chart: null; cornersPx: CornersPx; cornersFound?: ChartFound; missing: ('depthMm' | 'resistance')[] };

/**
 * Takes corners and scale as given, and finds what is not: corners by the chart's frame or grid, depths by
 * two taps or a ruler, and what is then still missing by the numbers printed along the chart.
 * @param where the photo, and the chart file, as named in faults
 * @throws InputFault when the photo shows no chart and no corners were given, or taps and corners make no sense
 */
export function settleChart(
  image: StripImage,
  known: ChartKnown,
  where: { photo: string; chart: string },
): ChartSettled {
  checkStripImage(image, where.photo);
  let cornersPx = known.cornersPx;
  let cornersFound: ChartFound | undefined;
  let printed: PrintedScale | null = null;
  if (cornersPx) checkCorners(cornersPx, image, `${where.chart}: cornersPx`);
  else {
    const found = chartSeen(image, where.photo);
    cornersFound = found.chart;
    cornersPx = found.chart.cornersPx;
    printed = found.printed;
  }
  const given =
    known.depthMm ??
    (known.taps && depthByTaps(cornersPx, known.taps, `${where.chart}: taps`)) ??
    (known.ruler && depthByRuler(cornersPx, known.ruler, `${where.chart}: ruler`));
  if (!given || !known.resistance) printed ??= printedScale(image, cornersPx);
  const depthMm = given ?? printed?.depthMm;
  const resistance = known.resistance ?? printed?.resistance;
  if (depthMm && resistance) {
    const told = known.depthMm ? 'given' : known.taps ? 'taps' : 'ruler';
    const scaleFrom = !given || !known.resistance ? 'printed numbers' : told;
    return { chart: { cornersPx, depthMm, resistance }, cornersFound, scaleFrom };
  }
  const missing: ('depthMm' | 'resistance')[] = [];
  if (!depthMm) missing.push('depthMm');
  if (!resistance) missing.push('resistance');
  return { chart: null, cornersPx, cornersFound, missing };
}

/** A chart seen on a photo, the way up that its numbers can be read, and what they say. */
export interface ChartSeen {
  chart: ChartFound;
  /** Null where no numbers could be read; then the corners are as the photo shows them. */
  printed: PrintedScale | null;
}

/**
 * Looks for a chart by its frame or grid, and for its scale in the numbers printed along it.
 * @param onProgress told the share done before each step, by what the steps usually take
 * @returns null when no chart is to be seen
 */
export function seeChart(image: StripImage, onProgress: StripProgress = () => {}): ChartSeen | null {
  const { chart: found, axes } = chartAndAxes(image, (share, step) =>
    onProgress(SHARE_OF_FINDING * share, step),
  );
  if (!found) return null;
  const whole = (): ChartSeen | null => {
    const cornersPx = axes && axesMadeWhole(image, axes.cornersPx);
    const printed = cornersPx && printedScale(image, cornersPx);
    return cornersPx && printed?.depthMm && printed.resistance
      ? { chart: { cornersPx, sure: AXES_WITH_NUMBERS, from: 'axes' }, printed }
      : null;
  };
  const [a, b, c, d] = found.cornersPx;
  const upright = standsUpright(found.cornersPx);
  const turns: CornersPx[] = upright
    ? [
        [b, c, d, a],
        [d, a, b, c],
      ]
    : [
        [a, b, c, d],
        [c, d, a, b],
      ];
  const rest = (1 - SHARE_OF_FINDING) / (turns.length + (upright ? 1 : 0));
  if (found.from === 'axes') {
    onProgress(SHARE_OF_FINDING, 'reading the printed numbers');
    const seen = whole();
    if (seen) return seen;
  }
  for (const [i, cornersPx] of turns.entries()) {
    onProgress(SHARE_OF_FINDING + i * rest, 'reading the printed numbers');
    const printed = printedScale(image, cornersPx);
    if (printed.depthMm || printed.resistance) return { chart: { ...found, cornersPx }, printed };
  }
  if (upright) {
    // Drawn upright rather than photographed on its side: depth runs down the photo, or up it.
    onProgress(1 - rest, 'reading the printed numbers');
    const printed = printedUpright(image, found.cornersPx);
    // Both, or it might as well be a chart on its side with a table beside it.
    if (printed.depthMm && printed.resistance)
      return { chart: { ...found, cornersPx: [b, c, d, a] }, printed };
  }
  // What was found bears no numbers: axes beside or within it may.
  const seen = found.from === 'axes' ? null : whole();
  if (seen || !axes?.apart) return seen ?? { chart: found, printed: null };
  // Which of the two is the chart cannot be told without numbers.
  return { chart: { ...found, sure: AXES_BESIDE * found.sure }, printed: null };
}

/** The chart seen, or why it cannot be relied on. */
function chartSeen(image: StripImage, where: string): ChartSeen {
  const seen = seeChart(image);
  if (!seen) {
    throw new InputFault(
      'no frame or grid of a chart was found: give its four corners in a chart file, {"cornersPx": [[x, y] × 4 clockwise from the chart\'s top left], "depthMm": [left, right], "resistance": [bottom, top]}',
      where,
    );
  }
  const { chart, printed } = seen;
  if (chart.sure < LEAST_SURE) {
    throw new InputFault(
      `something like a chart was seen, but sure to ${Math.round(100 * chart.sure)} % only: give its four corners in a chart file (cornersPx, clockwise from the chart's top left)`,
      where,
    );
  }
  if (!printed && standsUpright(chart.cornersPx)) {
    const corners = chart.cornersPx.map(([x, y]) => `[${x.toFixed(1)}, ${y.toFixed(1)}]`).join(', ');
    throw new InputFault(
      `the chart found is taller than wide, so it lies on its side, and which end is its top is not known: give its corners in a chart file, cornersPx clockwise from the chart's own top left; on the photo they are, from the photo's top left, ${corners}`,
      where,
    );
  }
  return seen;
}

/** Depths at a chart's left and right edge from two points of known depth on it. */
export function depthByTaps(
  corners: CornersPx,
  [a, b]: readonly [DepthTap, DepthTap],
  where: string,
): readonly [number, number] {
  const [u, v] = sharesAlong(corners, [a.px, b.px]) ?? [];
  if (u === undefined || v === undefined) throw new InputFault('the corners are no chart', where);
  if (!farEnough(u, v) || a.depthMm === b.depthMm) {
    throw new InputFault(
      'the taps lie too close together along the chart to tell its scale: choose two farther apart, of different depth',
      where,
    );
  }
  const perShare = (b.depthMm - a.depthMm) / (v - u);
  const left = a.depthMm - u * perShare;
  return [left, left + perShare];
}
