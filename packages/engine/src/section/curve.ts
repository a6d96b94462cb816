/**
 * Smooth outlines as parametric curves, so that circles, ellipses and measured radii are integrated exactly and
 * not as many-sided polygons.
 */
import { joinRound } from './radii.ts';
import { RAD } from './ring.ts';
import type { Outline, PointMm } from './types.ts';

/** A closed smooth curve run clockwise as its parameter goes from 0 to 2π. */
export interface OutlineCurve {
  /** Point at a parameter, mm. */
  at(t: number): PointMm;
  /** Rate of change of the point, mm per radian of the parameter. */
  rate(t: number): PointMm;
  /** Parameters at which it is cut into short arcs, ascending in [0, 2π); between them it is smooth. */
  cuts: Float64Array;
}

/** Arcs a smooth outline is cut into: half a degree each. */
const ARCS = 720;

/** The curve of a smooth outline, or null for a polygon. */
export function outlineCurve(outline: Outline): OutlineCurve | null {
  switch (outline.kind) {
    case 'circle':
      return ellipseCurve(outline.diameterMm / 2, outline.diameterMm / 2, 0);
    case 'ellipse':
      return ellipseCurve(outline.longMm / 2, outline.shortMm / 2, outline.longAxisDeg * RAD);
    case 'radii':
      return radialCurve(outline.radii);
    case 'polygon':
      return null;
  }
}

/** Ellipse with its long half-axis towards the azimuth; the parameter is the eccentric angle from that axis. */
function ellipseCurve(long: number, short: number, azimuthRad: number): OutlineCurve {
  const ax = long * Math.sin(azimuthRad);
  const ay = long * Math.cos(azimuthRad);
  const bx = short * Math.cos(azimuthRad);
  const by = -short * Math.sin(azimuthRad);
  return {
    at: (t) => [ax * Math.cos(t) + bx * Math.sin(t), ay * Math.cos(t) + by * Math.sin(t)],
    rate: (t) => [bx * Math.cos(t) - ax * Math.sin(t), by * Math.cos(t) - ay * Math.sin(t)],
    cuts: evenCuts(),
  };
}

function radialCurve(radii: readonly { azimuthDeg: number; radiusMm: number }[]): OutlineCurve {
  const curve = joinRound(radii);
  // The curve bends less smoothly at its knots, so arcs must not run across one.
  const near = 1e-9;
  const cuts = [...evenCuts(), ...curve.knotsRad].sort((a, b) => a - b);
  return {
    at(t) {
      const r = curve.radius(t);
      return [r * Math.sin(t), r * Math.cos(t)];
    },
    rate(t) {
      const r = curve.radius(t);
      const dr = curve.rate(t);
      return [dr * Math.sin(t) + r * Math.cos(t), dr * Math.cos(t) - r * Math.sin(t)];
    },
    cuts: Float64Array.from(
      cuts.filter((t, i) => (i === 0 || t - cuts[i - 1]! > near) && t < 2 * Math.PI - near),
    ),
  };
}

function evenCuts(): Float64Array {
  return Float64Array.from({ length: ARCS }, (_, i) => (i * 2 * Math.PI) / ARCS);
}
