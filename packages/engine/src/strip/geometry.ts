/** How a chart lies on a photo: tilt by its corners, curl by the printed lines along its long sides. */
import { followEdge } from './foldedEdge.ts';
import { type Homography, homographyOfChart } from './homography.ts';
import { measureSide, type Side, sideOffset } from './sides.ts';
import type { CornersPx, StripImage } from './types.ts';

/** Charts are laid flat at this many columns, small ones enlarged at most twice. */
const COLUMNS = 1500;
const MOST_ENLARGED = 2;
const MOST_ROWS = 1000;
/** Rows and columns kept around the chart, so that a line on the frame is seen whole: as far as the photo reaches. */
const MOST_MARGIN = 10;
const LEAST_MARGIN = 2;
/** Paper bows by this share of its length at most; more is no longer mild. */
const MOST_BOW = 0.03;
/** Corners may be off by this much, pixels and share of the photo's longer side. */
const ENDS_PX = 2.5;
const ENDS_SHARE = 0.001;
/** A side's line is believed where it is seen along this share, and its bow where it is at least so many pixels. */
const SEEN = 0.6;
/** Seen along less than this share, or off its curve by more than this, it may be kinked. */
const WELL_SEEN = 0.85;
const MOST_SPREAD_PX = 0.3;
const LEAST_BOW_PX = 0.5;

/** How the flat chart lies on the photo. */
export interface Geometry {
  columns: number;
  rows: number;
  /** Columns and rows of the flat chart at which the chart's edges lie. */
  left: number;
  right: number;
  top: number;
  bottom: number;
  toPhoto: (column: number, row: number, out: Float64Array) => void;
  /** Photo pixels along one place of the flat chart, whole. */
  fold: number;
  /** Photo pixels down one row of the flat chart. */
  photoPxPerRow: number;
  curlPx: number;
  /** Whether an edge runs as that of folded paper does. */
  folded: boolean;
}

/** Measures how the chart lies, and lays out the flat one. */
export function geometryOf(image: StripImage, corners: CornersPx): Geometry {
  const chartToPhoto = homographyOfChart(corners) as Homography;
  const side = (i: number, j: number) =>
    Math.hypot(corners[j]![0] - corners[i]![0], corners[j]![1] - corners[i]![1]);
  const wide = Math.max(side(0, 1), side(3, 2));
  const high = Math.max(side(0, 3), side(1, 2));
  const scale = Math.min(COLUMNS / wide, MOST_ROWS / high, MOST_ENLARGED);
  const across = Math.max(16, Math.round(wide * scale));
  const down = Math.max(16, Math.round(high * scale));
  const [a, b, c, d, e, f, g, h, i] = chartToPhoto as unknown as number[];
  const margin = marginWithin(image, corners, Math.max(wide / across, high / down));
  const columns = across + 1 + 2 * margin;
  const curl = curlOf(
    image,
    corners,
    (column, v) => {
      const u = (column - margin) / across;
      const w = g! * u + h! * v + i!;
      return [(a! * u + b! * v + c!) / w, (d! * u + e! * v + f!) / w];
    },
    columns,
  );
  return {
    columns,
    rows: down + 1 + 2 * margin,
    left: margin,
    right: margin + across,
    top: margin,
    bottom: margin + down,
    fold: Math.max(1, Math.min(4, Math.round(1 / scale))),
    photoPxPerRow: high / down,
    curlPx: curl.most,
    folded: curl.folded,
    toPhoto(column, row, out) {
      const u = (column - margin) / across;
      const v = (row - margin) / down;
      const w = g! * u + h! * v + i!;
      out[0] = (a! * u + b! * v + c!) / w;
      out[1] = (d! * u + e! * v + f!) / w;
      if (curl.most > 0) {
        const k = Math.min(columns - 1, Math.round(column));
        out[0] += (1 - v) * curl.topX[k]! + v * curl.bottomX[k]!;
        out[1] += (1 - v) * curl.topY[k]! + v * curl.bottomY[k]!;
      }
    },
  };
}

/** Places around the chart that the photo still shows. */
function marginWithin(
  { widthPx, heightPx }: StripImage,
  corners: CornersPx,
  photoPxPerPlace: number,
): number {
  const room = corners.map(([x, y]) => Math.min(x, y, widthPx - 1 - x, heightPx - 1 - y));
  const places = Math.floor(Math.min(...room) / photoPxPerPlace);
  return Math.max(LEAST_MARGIN, Math.min(MOST_MARGIN, places));
}

interface Curl {
  /** Greatest offset, pixels; 0 for a chart that lies flat. */
  most: number;
  folded: boolean;
  /** Offsets on the photo of the chart's top and bottom edge from the straight chords, by column of the flat chart. */
  topX: Float64Array;
  topY: Float64Array;
  bottomX: Float64Array;
  bottomY: Float64Array;
}

/** Offset of an edge from its chord at a share of it, pixels. */
type Offset = (t: number) => number;

/** A side's bow alone: where the edges begin and end is as the corners say. */
function archOf(side: Side): Offset {
  const bow = { ...side, offset: 0, slope: 0 };
  return (t) => sideOffset(bow, t);
}

/** Offsets at evenly spaced shares, joined by straight lines. */
function joined(offsets: Float64Array): Offset {
  return (t) => {
    const place = Math.min(1, Math.max(0, t)) * (offsets.length - 1);
    const k = Math.min(offsets.length - 2, Math.floor(place));
    return offsets[k]! + (place - k) * (offsets[k + 1]! - offsets[k]!);
  };
}

/** Measures the bow of the printed lines along the chart's top and bottom. */
function curlOf(
  image: StripImage,
  corners: CornersPx,
  place: (column: number, v: number) => readonly [number, number],
  columns: number,
): Curl {
  const flat: Curl = {
    most: 0,
    folded: false,
    topX: new Float64Array(columns),
    topY: new Float64Array(columns),
    bottomX: new Float64Array(columns),
    bottomY: new Float64Array(columns),
  };
  const [topLeft, topRight, bottomRight, bottomLeft] = corners;
  const ends = ENDS_PX + ENDS_SHARE * Math.max(image.widthPx, image.heightPx);
  const measured = ([from, to]: readonly [readonly [number, number], readonly [number, number]]) => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const side = measureSide(image, from, to, MOST_BOW * length + ends, ends);
    if (side && side.seen >= WELL_SEEN && side.spread <= MOST_SPREAD_PX)
      return { from, to, length, offAt: archOf(side), folded: false };
    // An edge that lies on no arch all along may be kinked by folds.
    const followed = followEdge(image, from, to, MOST_BOW * length);
    const offAt = followed ? joined(followed) : side && side.seen >= SEEN ? archOf(side) : null;
    return { from, to, length, offAt, folded: followed !== null };
  };
  const top = measured([topLeft, topRight]);
  const bottom = measured([bottomLeft, bottomRight]);
  // A sheet bows as one: where only one edge is printed the other follows it.
  const sides = [top.offAt ?? bottom.offAt, bottom.offAt ?? top.offAt];
  let most = 0;
  [top, bottom].forEach(({ from, to, length }, v) => {
    const offAt = sides[v];
    if (!offAt) return;
    const nx = -(to[1] - from[1]) / length;
    const ny = (to[0] - from[0]) / length;
    const [xs, ys] = v === 0 ? [flat.topX, flat.topY] : [flat.bottomX, flat.bottomY];
    for (let column = 0; column < columns; column++) {
      const [x, y] = place(column, v);
      const t = ((x - from[0]) * (to[0] - from[0]) + (y - from[1]) * (to[1] - from[1])) / (length * length);
      const off = offAt(t);
      if (t >= 0 && t <= 1) most = Math.max(most, Math.abs(off));
      // Paper that rises shifts along the chart's own upright direction, which a tilt slants.
      const [topX, topY] = place(column, 0);
      const [bottomX, bottomY] = place(column, 1);
      const across = (bottomX - topX) * nx + (bottomY - topY) * ny;
      xs[column] = (off * (bottomX - topX)) / across;
      ys[column] = (off * (bottomY - topY)) / across;
    }
  });
  return most >= LEAST_BOW_PX ? { ...flat, most, folded: top.folded || bottom.folded } : flat;
}
