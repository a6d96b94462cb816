/** Refusing what cannot be read, in words that say what to do. */
import { InputFault } from '../faults.ts';
import type { ChartKnown, CornersPx, DepthTap, PointPx, RulerOnPhoto, StripImage } from './types.ts';

/** Photos larger than this are refused before any work is done on them. */
export const MOST_PIXELS = 100e6;
const LEAST_SIDE_PX = 48;
/** Corners may lie this far outside the photo, pixels and share of its longer side: a hand's inexactness. */
const OUTSIDE_PX = 2;
const OUTSIDE_SHARE = 0.005;
/** A chart whose shorter side has fewer pixels shows no line. */
const LEAST_CHART_PX = 24;
/** No drill goes deeper, mm: a greater number is another unit. */
const MOST_MM = 10_000;

/** @throws InputFault when a photo of this size cannot be read */
export function checkStripSize(widthPx: number, heightPx: number, where: string): void {
  if (!(Number.isInteger(widthPx) && Number.isInteger(heightPx) && widthPx > 0 && heightPx > 0)) {
    throw new InputFault('this image has no size: choose another photo', where);
  }
  if (widthPx * heightPx > MOST_PIXELS) {
    throw new InputFault(
      `this image has ${Math.round((widthPx * heightPx) / 1e6)} megapixels, and ${MOST_PIXELS / 1e6} can be read: scale it down to 12 or so, which loses nothing`,
      where,
    );
  }
  if (Math.min(widthPx, heightPx) < LEAST_SIDE_PX) {
    throw new InputFault(
      `this image is ${widthPx} × ${heightPx} pixels, too small to show a line: photograph the strip so that it fills the picture`,
      where,
    );
  }
}

/** @throws InputFault when the pixels do not match the size */
export function checkStripImage(image: StripImage, where: string): void {
  checkStripSize(image.widthPx, image.heightPx, where);
  if (image.rgba.length !== 4 * image.widthPx * image.heightPx) {
    throw new InputFault(
      `this image says ${image.widthPx} × ${image.heightPx} pixels but holds ${Math.floor(image.rgba.length / 4)}: choose another photo`,
      where,
    );
  }
}

/** @throws InputFault when the corners are no chart on this photo */
export function checkCorners(
  corners: CornersPx,
  image: { widthPx: number; heightPx: number },
  where: string,
) {
  const { widthPx, heightPx } = image;
  const beyond = OUTSIDE_PX + OUTSIDE_SHARE * Math.max(widthPx, heightPx);
  corners.forEach(([x, y], i) => {
    if (x < -beyond || y < -beyond || x > widthPx - 1 + beyond || y > heightPx - 1 + beyond) {
      throw new InputFault(
        `this corner, (${x}, ${y}), lies outside the photo of ${widthPx} × ${heightPx} pixels: give where the corner is on the photo as it is shown upright`,
        `${where}[${i}]`,
      );
    }
  });
  const turns = corners.map((_, i) => {
    const a = corners[i]!;
    const b = corners[(i + 1) % 4]!;
    const c = corners[(i + 2) % 4]!;
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
  });
  if (turns.every((turn) => turn < 0)) {
    throw new InputFault(
      "the corners run anticlockwise: give them clockwise from the chart's top left (for a chart that runs right to left, give its depths the other way round instead)",
      where,
    );
  }
  if (!turns.every((turn) => turn > 0)) {
    throw new InputFault(
      "the corners are crossed, or three lie in a line: give top left, top right, bottom right, bottom left, as the chart's own top is",
      where,
    );
  }
  const side = (i: number) => {
    const a = corners[i]!;
    const b = corners[(i + 1) % 4]!;
    return Math.hypot(b[0] - a[0], b[1] - a[1]);
  };
  const least = Math.min(side(0), side(1), side(2), side(3));
  if (least < LEAST_CHART_PX) {
    throw new InputFault(
      `the chart between these corners is only ${Math.round(least)} pixels across: check the corners, or photograph it closer`,
      where,
    );
  }
}

/**
 * What a chart file says, checked: `{"cornersPx": [[x, y] × 4], "depthMm": [left, right], "resistance": [bottom, top],
 * "taps": [{"px": [x, y], "depthMm": …} × 2], "ruler": {"px": [[x, y] × 2], "distanceMm": …, "startMm": 0,
 * "startsAt": "left"}}`, each of them optional; depth is told in one way only.
 * @param json the parsed file
 * @throws InputFault with the field at fault
 */
export function chartKnownFrom(json: unknown, where: string): ChartKnown {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    throw new InputFault(
      'a chart file is an object: {"cornersPx": [[x, y], …], "depthMm": [left, right], "resistance": [bottom, top]}',
      where,
    );
  }
  const { cornersPx, depthMm, resistance, taps, ruler } = json as Record<string, unknown>;
  const known: ChartKnown = {};
  if (cornersPx !== undefined) {
    const at = `${where}: cornersPx`;
    if (!Array.isArray(cornersPx) || cornersPx.length !== 4) {
      throw new InputFault("give four corners, clockwise from the chart's top left: [[x, y], …]", at);
    }
    known.cornersPx = cornersPx.map((corner, i) =>
      pair(corner, `${at}[${i}]`, 'x, y'),
    ) as unknown as CornersPx;
  }
  if (depthMm !== undefined) {
    known.depthMm = range(depthMm, `${where}: depthMm`, 'left, right', 1, MOST_MM, 'mm');
  }
  if (resistance !== undefined) {
    known.resistance = range(resistance, `${where}: resistance`, 'bottom, top', 0.1, 1000, 'percent');
  }
  if (taps !== undefined) {
    const at = `${where}: taps`;
    if (!Array.isArray(taps) || taps.length !== 2) {
      throw new InputFault('give two taps of known depth: [{"px": [x, y], "depthMm": 0}, {…}]', at);
    }
    known.taps = taps.map((tap, i): DepthTap => {
      const { px, depthMm: depth } = (tap ?? {}) as Record<string, unknown>;
      if (typeof depth !== 'number' || !Number.isFinite(depth)) {
        throw new InputFault('give the depth of this tap in mm', `${at}[${i}].depthMm`);
      }
      return { px: pair(px, `${at}[${i}].px`, 'x, y') as PointPx, depthMm: depth };
    }) as unknown as readonly [DepthTap, DepthTap];
  }
  if (ruler !== undefined) known.ruler = rulerFrom(ruler, `${where}: ruler`);
  const ways = (['depthMm', 'taps', 'ruler'] as const).filter((way) => known[way] !== undefined);
  if (ways.length > 1) {
    throw new InputFault(
      `the chart's depth is told twice, by ${ways.join(' and ')}: keep the one you trust`,
      where,
    );
  }
  return known;
}

function rulerFrom(value: unknown, where: string): RulerOnPhoto {
  const { px, distanceMm, startMm = 0, startsAt = 'left' } = (value ?? {}) as Record<string, unknown>;
  if (!Array.isArray(px) || px.length !== 2) {
    throw new InputFault('give two points of the ruler on the photo: [[x, y], [x, y]]', `${where}.px`);
  }
  if (typeof distanceMm !== 'number' || !(distanceMm > 0 && distanceMm <= MOST_MM)) {
    throw new InputFault(
      'give the distance between the two points in mm, for example 100',
      `${where}.distanceMm`,
    );
  }
  if (typeof startMm !== 'number' || !(Math.abs(startMm) <= MOST_MM)) {
    throw new InputFault('give the depth in mm at which the chart begins', `${where}.startMm`);
  }
  if (startsAt !== 'left' && startsAt !== 'right') {
    throw new InputFault('say at which edge depth begins: "left" or "right"', `${where}.startsAt`);
  }
  const points = px.map((point, i) => pair(point, `${where}.px[${i}]`, 'x, y')) as [PointPx, PointPx];
  return { px: points, distanceMm, startMm, startsAt };
}

function pair(value: unknown, where: string, names: string): readonly [number, number] {
  if (
    !Array.isArray(value) ||
    value.length !== 2 ||
    !value.every((v) => typeof v === 'number' && Number.isFinite(v))
  ) {
    throw new InputFault(`give two numbers, [${names}]`, where);
  }
  return [value[0] as number, value[1] as number];
}

function range(
  value: unknown,
  where: string,
  names: string,
  least: number,
  most: number,
  unit: string,
): readonly [number, number] {
  const both = pair(value, where, names);
  const span = Math.abs(both[1] - both[0]);
  if (span < least) {
    throw new InputFault(`from ${both[0]} to ${both[1]} ${unit} is no range: give [${names}]`, where);
  }
  if (Math.max(Math.abs(both[0]), Math.abs(both[1])) > most) {
    throw new InputFault(`${both[0]} to ${both[1]} is no range in ${unit}: check the unit`, where);
  }
  return both;
}
