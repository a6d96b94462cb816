/**
 * Outlines that cannot be right, told before anything is computed from them.
 */
import { InputFault } from '../faults.ts';
import { outlineCurve } from './curve.ts';
import { contains, extentMm, selfCrossing, signedAreaMm2, withoutRepeats } from './ring.ts';
import type { Outline, PointMm, RingMm } from './types.ts';

/** Stems smaller or larger than this, across, are taken for a slip of units. The stoutest trunks known are near 15 m. */
const SMALLEST_STEM_MM = 30;
const LARGEST_STEM_MM = 20_000;

/** Rings of more corners than this are refused: no tracing needs them. */
const MOST_CORNERS = 20_000;

/**
 * Checks the outline of a stem's section: its shape as `checkOutlineShape`, that it is of a stem's size in
 * millimetres, and that the origin (the pith, or the point azimuths are taken from) lies inside.
 *
 * @param where the outline's field, for example `sections[0].outline`; the fault names the field below it.
 * @throws InputFault saying what is wrong and what to do.
 */
export function checkOutline(outline: Outline, where: string): void {
  checkOutlineShape(outline, where);
  const ring = roughRing(outline);
  const across = extentMm(ring);
  if (across < SMALLEST_STEM_MM) {
    throw new InputFault(
      `The outline is only ${rounded(across)} mm across. Give millimetres, not centimetres or metres.`,
      sizeField(outline, where),
    );
  }
  if (across > LARGEST_STEM_MM) {
    throw new InputFault(
      `The outline is ${rounded(across)} mm across, more than any tree. Give millimetres.`,
      sizeField(outline, where),
    );
  }
  if (!contains(ring, 0, 0)) {
    throw new InputFault(
      'The origin (0, 0) lies outside the outline, so azimuths have no meaning. Give the points from the pith, or from a point near the middle.',
      `${where}.points`,
    );
  }
}

/**
 * Checks an outline's numbers and shape at any scale and any place: finite, positive, at least three corners, not
 * crossing itself, no azimuth measured twice.
 *
 * @throws InputFault saying what is wrong and what to do.
 */
export function checkOutlineShape(outline: Outline, where: string): void {
  switch (outline.kind) {
    case 'circle':
      checkLength(outline.diameterMm, `${where}.diameterMm`, 'diameter');
      return;
    case 'ellipse':
      checkLength(outline.longMm, `${where}.longMm`, 'longest diameter');
      checkLength(outline.shortMm, `${where}.shortMm`, 'shortest diameter');
      if (!Number.isFinite(outline.longAxisDeg)) {
        throw new InputFault(
          'The direction of the long axis is not a number. Give degrees clockwise from north.',
          `${where}.longAxisDeg`,
        );
      }
      if (outline.shortMm > outline.longMm) {
        throw new InputFault(
          `The short diameter (${outline.shortMm} mm) is greater than the long one (${outline.longMm} mm). Swap them, or turn longAxisDeg by 90.`,
          `${where}.shortMm`,
        );
      }
      return;
    case 'radii':
      checkRadii(outline.radii, `${where}.radii`);
      return;
    case 'polygon':
      checkRing(outline.points, `${where}.points`, 'outline');
      return;
    default:
      throw new InputFault(
        `The kind of outline is ${JSON.stringify((outline as { kind?: unknown }).kind)}. Use circle, ellipse, radii or polygon.`,
        `${where}.kind`,
      );
  }
}

function checkLength(value: number, where: string, name: string): void {
  if (!Number.isFinite(value)) throw new InputFault(`The ${name} is not a number. Give millimetres.`, where);
  if (value <= 0) throw new InputFault(`The ${name} is ${value}. Give millimetres, more than 0.`, where);
}

function checkRadii(radii: readonly { azimuthDeg: number; radiusMm: number }[], where: string): void {
  if (radii.length === 0) {
    throw new InputFault('There are no radii. Give at least one, better eight or more.', where);
  }
  if (radii.length > MOST_CORNERS) {
    throw new InputFault(`There are ${radii.length} radii. Give at most ${MOST_CORNERS}.`, where);
  }
  const seen = new Map<number, number>();
  radii.forEach((radius, i) => {
    if (!Number.isFinite(radius.azimuthDeg)) {
      throw new InputFault(
        'The azimuth is not a number. Give degrees clockwise from north.',
        `${where}[${i}].azimuthDeg`,
      );
    }
    checkLength(radius.radiusMm, `${where}[${i}].radiusMm`, 'radius');
    // A hundredth of a degree is finer than anyone measures.
    const key = Math.round((((radius.azimuthDeg % 360) + 360) % 360) * 100) % 36_000;
    const twin = seen.get(key);
    if (twin !== undefined) {
      throw new InputFault(
        `Azimuth ${radius.azimuthDeg}° was already given in radii[${twin}]. Keep one radius for each azimuth (0 and 360 are the same).`,
        `${where}[${i}].azimuthDeg`,
      );
    }
    seen.set(key, i);
  });
}

/**
 * Checks a ring of corners joined straight: finite, three or more that differ, some breadth, not touching itself.
 *
 * @throws InputFault saying what is wrong, at which corner, and what to do.
 */
export function checkRing(points: RingMm, where: string, name: string): void {
  points.forEach((point, i) => {
    if (!Number.isFinite(point[0]) || !Number.isFinite(point[1])) {
      throw new InputFault(
        'The point is not two numbers. Give [x east, y north] in millimetres.',
        `${where}[${i}]`,
      );
    }
  });
  if (points.length > MOST_CORNERS) {
    throw new InputFault(
      `The ${name} has ${points.length} points. Simplify it to at most ${MOST_CORNERS}.`,
      where,
    );
  }
  const ring = withoutRepeats(points);
  if (ring.length < 3) {
    throw new InputFault(
      `The ${name} has ${ring.length} differing point${ring.length === 1 ? '' : 's'}. Give at least three.`,
      where,
    );
  }
  const across = extentMm(ring);
  if (Math.abs(signedAreaMm2(ring)) <= 1e-12 * across * across && isFlat(ring, across)) {
    throw new InputFault(
      `The ${name} has no breadth: its points lie on one line. Give the points all round${name === 'void' ? '; a crack needs its two sides' : ''}.`,
      where,
    );
  }
  const crossing = selfCrossing(ring);
  if (crossing) {
    const [i, j] = crossing.map((k) => placeIn(points, ring[k]!)) as [number, number];
    throw new InputFault(
      `The ${name} crosses or touches itself: the edge from point ${i} meets the edge from point ${j} (counted from 0). Give the points in order round the ${name}, each once.`,
      where,
    );
  }
}

function isFlat(ring: readonly PointMm[], across: number): boolean {
  const a = ring[0]!;
  const far = ring.reduce((p, q) =>
    Math.hypot(q[0] - a[0], q[1] - a[1]) > Math.hypot(p[0] - a[0], p[1] - a[1]) ? q : p,
  );
  const dx = far[0] - a[0];
  const dy = far[1] - a[1];
  return ring.every(
    (p) => Math.abs(dx * (p[1] - a[1]) - dy * (p[0] - a[0])) <= 1e-12 * across * Math.hypot(dx, dy),
  );
}

const placeIn = (points: RingMm, point: PointMm) =>
  points.findIndex((p) => p[0] === point[0] && p[1] === point[1]);

function roughRing(outline: Outline): RingMm {
  const curve = outlineCurve(outline);
  if (!curve) return withoutRepeats((outline as { points: RingMm }).points);
  return Array.from(curve.cuts, (t) => curve.at(t));
}

function sizeField(outline: Outline, where: string): string {
  switch (outline.kind) {
    case 'circle':
      return `${where}.diameterMm`;
    case 'ellipse':
      return `${where}.longMm`;
    case 'radii':
      return `${where}.radii`;
    case 'polygon':
      return `${where}.points`;
  }
}

const rounded = (mm: number) => (mm < 100 ? Number(mm.toPrecision(3)) : Math.round(mm));
