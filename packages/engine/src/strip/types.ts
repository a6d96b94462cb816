/**
 * A photographed paper strip and what reading it yields. Three coordinate systems occur, kept apart by type:
 * photo pixels (x right, y down, a pixel's centre at whole numbers), chart shares (u from the chart's left 0 to its
 * right 1, v from its top 0 to its bottom 1), and the chart's own scale (depth mm, resistance percent).
 */

/** Pixels as a decoder hands them over: four bytes a pixel (red, green, blue, alpha), row after row. */
export interface StripImage {
  widthPx: number;
  heightPx: number;
  rgba: Uint8ClampedArray | Uint8Array;
}

/** A point on the photo, pixels; the centre of the top left pixel is (0, 0). */
export type PointPx = readonly [number, number] & { readonly unit?: 'px' };

/** A point of the chart, shares of its width and height from its top left. */
export type PointOnChart = readonly [number, number] & { readonly unit?: 'chart' };

/** The chart's corners on the photo, clockwise from the chart's top left. */
export type CornersPx = readonly [PointPx, PointPx, PointPx, PointPx];

/** What the chart's edges mean. */
export interface ChartScale {
  /** Depth at the chart's left and right edge, mm. The left may be the greater (a chart that runs right to left). */
  depthMm: readonly [number, number];
  /** Resistance at the chart's bottom and top edge, percent of full scale. */
  resistance: readonly [number, number];
}

/** A point on the photo whose depth is known, tapped by a person (or read off a ruler laid beside the strip). */
export interface DepthTap {
  px: PointPx;
  depthMm: number;
}

/** Two points on the photo a known distance apart along the chart's depth: marks of a ruler laid along a strip drawn 1:1. */
export interface RulerOnPhoto {
  px: readonly [PointPx, PointPx];
  /** Distance between the two along the depth axis, mm. */
  distanceMm: number;
  /** Depth at the edge where the chart begins, mm. */
  startMm: number;
  /** The edge of least depth. */
  startsAt: 'left' | 'right';
}

/** What a person says about the chart; the rest is found. */
export interface ChartKnown {
  cornersPx?: CornersPx;
  depthMm?: readonly [number, number];
  resistance?: readonly [number, number];
  /** Two points of known depth, in place of `depthMm`. */
  taps?: readonly [DepthTap, DepthTap];
  /** Two points a known distance apart, in place of `depthMm`: for strips drawn 1:1. */
  ruler?: RulerOnPhoto;
}

/** A chart found on a photo. */
export interface ChartFound {
  cornersPx: CornersPx;
  /** How sure, 0 to 1: the share of the four edges on which a printed line was seen, and how clearly. */
  sure: number;
  from: 'frame' | 'grid' | 'axes';
}

/** One line followed across the chart: a candidate for the trace. Arrays have one entry a sample, depth ascending. */
export interface StripLine {
  /** Depth, mm, ascending. Samples where the line cannot be read are left out. */
  depthMm: Float64Array;
  /** Level, percent of full scale: the line itself, and the middle of the envelope where strokes fill the paper. */
  resistancePct: Float64Array;
  /** How sure each sample is, 0 to 1. */
  confidence: Float64Array;
  /** Highest and lowest level the pen reached at this depth, percent of full scale. */
  topPct: Float64Array;
  bottomPct: Float64Array;
  /** Where each sample lies on the photo: x, y, x, y, … pixels. */
  linePx: Float64Array;
  /** Share of the chart's width along which the line was read. */
  coverage: number;
  /** Mean confidence of what was read, 0 to 1. */
  sure: number;
  /** The pen's colour, as reflectance of red, green and blue against the paper: 0 black to 1 paper. */
  penColour: readonly [number, number, number];
  /** The pen's width, pixels of the photo. */
  penWidthPx: number;
  /** Stretches of depth left out, mm. */
  gapsMm: readonly (readonly [number, number])[];
}

/** How a reading came about: enough to do it again and to say on what it rests. */
export interface StripProvenance {
  photoSizePx: readonly [number, number];
  cornersPx: CornersPx;
  cornersFrom: 'given' | ChartFound['from'];
  /** 1 for corners that were given. */
  cornersSure: number;
  depthMm: readonly [number, number];
  resistance: readonly [number, number];
  scaleFrom: 'given' | 'taps' | 'ruler' | 'printed numbers';
  /** Greatest correction for paper that does not lie flat, pixels of the photo. */
  curlPx: number;
  /** Printed lines found and taken out: upright and level ones. */
  gridLines: readonly [number, number];
  /** What was done, in order, in words. */
  steps: readonly string[];
}

/** A strip as read. */
export interface StripReading {
  /** Lines found, the likeliest first; a person may choose another. Never empty. */
  lines: readonly StripLine[];
  provenance: StripProvenance;
  /** Anything a reader should know before relying on this reading. */
  warnings: string[];
}

/** Told while a strip is read: share done (0 to 1) and what is being done. */
export type StripProgress = (share: number, step: string) => void;
