/** The scale of a strip drawn 1:1 from a ruler laid along it, or from any two points a known distance apart. */
import { InputFault } from '../faults.ts';
import { homographyOfChart, inverseHomography, project } from './homography.ts';
import type { CornersPx, PointPx, RulerOnPhoto } from './types.ts';

/** Points nearer than this share of the chart's length cannot set its scale. */
const LEAST_SHARE = 0.05;

/** Where photo points lie along a chart, 0 at its left edge and 1 at its right; null when the corners are no chart. */
export function sharesAlong(corners: CornersPx, points: readonly PointPx[]): number[] | null {
  const chartToPhoto = homographyOfChart(corners);
  if (!chartToPhoto) return null;
  const toChart = inverseHomography(chartToPhoto);
  return points.map(([x, y]) => project(toChart, x, y)[0]);
}

/**
 * Whether two places along a chart, as shares of its length, lie far enough apart to tell its scale.
 */
export const farEnough = (u: number, v: number): boolean => Math.abs(v - u) >= LEAST_SHARE;

/**
 * Depths at a chart's left and right edge from two points a known distance apart along it.
 * @throws InputFault when they lie too close together, or the distance is none
 */
export function depthByRuler(
  corners: CornersPx,
  { px, distanceMm, startMm, startsAt }: RulerOnPhoto,
  where: string,
): readonly [number, number] {
  const [u, v] = sharesAlong(corners, px) ?? [];
  if (u === undefined || v === undefined) throw new InputFault('the corners are no chart', where);
  if (!farEnough(u, v)) {
    throw new InputFault(
      'the two points lie too close together along the chart to tell its scale: choose two farther apart, along the depth axis',
      where,
    );
  }
  if (!(distanceMm > 0))
    throw new InputFault('the distance between the two points must be above 0 mm', where);
  const endMm = startMm + distanceMm / Math.abs(v - u);
  return startsAt === 'left' ? [startMm, endMm] : [endMm, startMm];
}
