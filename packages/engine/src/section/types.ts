/**
 * The section of a stem: its outline as measured, as a polygon, and what is known of its soundness.
 *
 * Coordinates: x east, y north, mm, from the outline's origin (the pith where it is known).
 * Azimuths: degrees clockwise from north, so a point at azimuth a and radius r is (r sin a, r cos a).
 */
import type { Interval } from '../trace/types.ts';

/** A point of the section plane, mm: [x east, y north]. */
export type PointMm = readonly [xMm: number, yMm: number];

/** A closed ring of points; the last joins the first. Either turning sense. */
export type RingMm = readonly PointMm[];

/** The stem's outline over bark, however it was measured. */
export type Outline =
  | { kind: 'circle'; diameterMm: number }
  | { kind: 'ellipse'; longMm: number; shortMm: number; longAxisDeg: number }
  /** Radii from the origin, over bark, joined smoothly all round. */
  | { kind: 'radii'; radii: { azimuthDeg: number; radiusMm: number }[] }
  /** Corners joined by straight lines. */
  | { kind: 'polygon'; points: PointMm[] };

/** Where a needle goes in, and how. */
export interface NeedlePose {
  /** Where on the outline it enters, degrees clockwise from north. */
  azimuthDeg: number;
  /** Heading off the radial to the origin, degrees clockwise seen from above. */
  offRadialDeg: number;
  /** Degrees below the horizontal. */
  downDeg: number;
}

/** What the stem's surface can be found to be, by eye and mallet. */
export const SURFACE_STATES = ['sound', 'decayed', 'open'] as const;
/** `sound`: bark alive and firm, or wood that a probe does not enter; `decayed`: wood soft to a probe; `open`: a hollow seen from outside. */
export type SurfaceState = (typeof SURFACE_STATES)[number];

/** A stretch of the surface that was looked at, clockwise from `fromDeg` to `toDeg` as azimuths from the origin. */
export interface SurfaceArc {
  fromDeg: number;
  toDeg: number;
  state: SurfaceState;
}

/** A value for a load that bends the stem towards a compass direction. */
export interface DirectionalInterval extends Interval {
  directionDeg: number;
}

/**
 * The soundness field as drawn: mean and standard deviation on a polar mesh that follows the wood's outline.
 * Cell (i, j) lies in direction `azimuthsDeg[i]` from the wood's centre, at `shells[j]` of the way from it to the cambium.
 */
export interface SoundnessPicture {
  /** Centre of the wood, from which directions and radii are taken, mm: [x east, y north] from the outline's origin. */
  centreMm: PointMm;
  azimuthsDeg: number[];
  /** Relative radii of the cell centres, ascending, 0 (centre) to 1 (cambium). */
  shells: number[];
  /** Distance of the cambium from the centre in each direction, mm. */
  cambiumMm: number[];
  /** Mean soundness, 0 to 1, `azimuthsDeg.length` rows of `shells.length`. */
  mean: number[];
  /** Standard deviation of soundness, same shape. */
  sd: number[];
}
