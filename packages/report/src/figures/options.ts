/** What every figure takes. Colours are not among it: a scene names paints, `toSvg` and `drawScene` take the theme. */
import type { Units } from '../units.ts';

export interface FigureOptions {
  /** Width of the drawing, px (points on paper). */
  width: number;
  units: Units;
  /** Size of ordinary labels, px. Default 10. */
  textSize?: number;
}

/** A straight axis: data from `domain[0]` to `domain[1]` stand at px from `range[0]` to `range[1]`. */
export interface AxisMap {
  domain: readonly [number, number];
  range: readonly [number, number];
  /** Equal ratios of the data stand equally far apart. */
  logarithmic?: boolean;
}

export function toPx(axis: AxisMap, value: number): number {
  if (axis.logarithmic === true) return toPx(logOf(axis), Math.log(value));
  const [d0, d1] = axis.domain;
  const [r0, r1] = axis.range;
  return r0 + ((value - d0) / (d1 - d0)) * (r1 - r0);
}

export function toData(axis: AxisMap, px: number): number {
  if (axis.logarithmic === true) return Math.exp(toData(logOf(axis), px));
  const [d0, d1] = axis.domain;
  const [r0, r1] = axis.range;
  return d0 + ((px - r0) / (r1 - r0)) * (d1 - d0);
}

/** The straight axis of the logarithms. */
function logOf({ domain, range }: AxisMap): AxisMap {
  return { domain: [Math.log(domain[0]), Math.log(domain[1])], range };
}

/** A plan of the section: x east and y north in mm, north up. */
export interface PlanMap {
  /** Where the section's origin stands, px. */
  centre: readonly [number, number];
  pxPerMm: number;
}

export function planToPx(map: PlanMap, xMm: number, yMm: number): [number, number] {
  return [map.centre[0] + xMm * map.pxPerMm, map.centre[1] - yMm * map.pxPerMm];
}

export function planToData(map: PlanMap, x: number, y: number): [xMm: number, yMm: number] {
  return [(x - map.centre[0]) / map.pxPerMm, (map.centre[1] - y) / map.pxPerMm];
}

/** A compass rose: azimuths clockwise from north (up), a value along the radius. */
export interface RoseMap {
  centre: readonly [number, number];
  /** Value to distance from the centre, px. */
  radius: AxisMap;
}

export function roseToPx(map: RoseMap, directionDeg: number, value: number): [number, number] {
  const r = toPx(map.radius, value);
  const a = (directionDeg * Math.PI) / 180;
  return [map.centre[0] + r * Math.sin(a), map.centre[1] - r * Math.cos(a)];
}

export function roseToData(map: RoseMap, x: number, y: number): { directionDeg: number; value: number } {
  const [dx, dy] = [x - map.centre[0], map.centre[1] - y];
  const directionDeg = ((Math.atan2(dx, dy) * 180) / Math.PI + 360) % 360;
  return { directionDeg, value: toData(map.radius, Math.hypot(dx, dy)) };
}
