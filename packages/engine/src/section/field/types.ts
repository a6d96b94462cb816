/**
 * The soundness field's doors: what it is conditioned on, and what its posterior holds.
 */
import type { TraceReading } from '../../trace/types.ts';
import type { NeedlePose, PointMm, RingMm, SoundnessPicture, SurfaceArc } from '../types.ts';
import type { FieldPrior } from './prior.ts';

/** One drilling as the field takes it: where the needle went, and what its trace was read as. */
export interface FieldDrilling {
  id: string;
  pose: NeedlePose;
  reading: TraceReading;
}

export interface FieldInput {
  /** Outline over bark, mm from the origin the azimuths are taken from. */
  outline: RingMm;
  /** Bark thickness, mm. */
  barkMm: number;
  drillings: FieldDrilling[];
  /** What the surface was seen to be, where it was looked at; nothing is believed of the rest. */
  surface?: readonly SurfaceArc[];
  /** The prior's table; `FIELD_PRIOR` when left out. */
  prior?: FieldPrior;
}

/** What the wood of a draw is at a point, as stored in `FieldPosterior.states`. */
export const WOOD_STATE = { none: 0, incipient: 1, sound: 2 } as const;

/**
 * The posterior by conditional simulation. A row is one draw: one whole section that the drillings allow, pushed
 * through the mechanics of the section.
 */
export interface FieldPosterior {
  draws: number;
  picture: SoundnessPicture;
  /** Directions of bending, 0, 10, …, 350 degrees. */
  directionsDeg: number[];
  /** Capacity over the same wood outline's capacity all sound: `draws` rows of 36 directions, as calibrated. */
  remaining: Float64Array;
  /** Share of the wood's area that is sound (incipient counted at its share of strength), one a draw. */
  soundShare: Float64Array;
  /** State of each node in each draw (`WOOD_STATE`): `draws` × `stateAzimuthsDeg.length` × `stateShells.length`. */
  states: Uint8Array;
  /** Azimuths of the rays of `states`, degrees, and relative radii of its nodes, 0 (origin) to 1 (cambium). */
  stateAzimuthsDeg: number[];
  stateShells: number[];
  /** Cambium radius at each of `stateAzimuthsDeg`, mm. */
  stateCambiumMm: number[];
  /** Middle of the wood, from which `stateAzimuthsDeg` and `stateShells` are taken, mm. */
  centreMm: PointMm;
  /** Chance after the drillings of each kind of section in the prior's table. */
  scenarios: { name: string; probability: number }[];
}
