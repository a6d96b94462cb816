/** The chart on the photo: from photo pixels to depth and level and back, and the order of its corners. */
import {
  type ChartScale,
  type CornersPx,
  homographyFrom,
  inverseHomography,
  type PointPx,
  project,
} from '@standfast/engine';

export interface OnScale {
  depthMm: number;
  levelPct: number;
}

export interface ChartMap {
  toScale(px: PointPx): OnScale;
  toPhoto(at: OnScale): PointPx;
}

const UNIT_SQUARE = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
] as const;

/** Null when the corners make no four-sided figure. */
export function chartMap(corners: CornersPx, { depthMm, resistance }: ChartScale): ChartMap | null {
  const onto = homographyFrom(UNIT_SQUARE, corners);
  if (!onto) return null;
  const back = inverseHomography(onto);
  const [left, right] = depthMm;
  const [bottom, top] = resistance;
  return {
    toScale([x, y]) {
      const [u, v] = project(back, x, y);
      return { depthMm: left + u * (right - left), levelPct: top + v * (bottom - top) };
    },
    toPhoto(at) {
      return project(onto, (at.depthMm - left) / (right - left), (at.levelPct - top) / (bottom - top));
    },
  };
}

/** The same four points, with the chart's top left moved on by one: for a chart that stands on its side. */
export function turnedCorners([a, b, c, d]: CornersPx): CornersPx {
  return [d, a, b, c];
}

/** Corners to begin with where none were found: a broad box in the middle of the photo. */
export function cornersToBeginWith(widthPx: number, heightPx: number): CornersPx {
  const [x0, x1] = [0.1 * widthPx, 0.9 * widthPx];
  const [y0, y1] = [0.25 * heightPx, 0.75 * heightPx];
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}

/** A point between two: share 0 is the first. */
export function between([ax, ay]: PointPx, [bx, by]: PointPx, share: number): PointPx {
  return [ax + share * (bx - ax), ay + share * (by - ay)];
}

/** The corners with one of them moved. */
export function withCorner(corners: CornersPx, index: number, to: PointPx): CornersPx {
  return corners.map((corner, i) => (i === index ? to : corner)) as unknown as CornersPx;
}
