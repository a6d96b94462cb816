/**
 * What is believed of a section before it is drilled: a table that a person can read and change.
 *
 * The latent field g lives on the wood outline in relative polar coordinates. Wood is sound where g is above
 * `incipientBand`, incipient between 0 and the band, and without strength below 0. Each row of the table is one kind
 * of section; the drillings decide between them by the evidence (Rasmussen & Williams 2006, section 5.2).
 */

import type { SurfaceState } from '../types.ts';

/** One kind of section. All levels and standard deviations are in units of the latent field. */
export interface Scenario {
  name: string;
  /** What it stands for, in words. */
  meaning: string;
  /** Weight before the drillings; the weights need not sum to 1. */
  weight: number;
  /** Mean of g at the origin and at the cambium, joined by ρ^meanPower. */
  meanCentre: number;
  meanEdge: number;
  meanPower: number;
  /** Standard deviation of a level common to the whole section. */
  levelSd: number;
  /** Shifted as a whole to one side, and drawn out to two: standard deviations at the cambium. */
  shiftSd: number;
  ovalSd: number;
  /** The same all round: standard deviation, and correlation length in relative radius. */
  ringSd: number;
  ringLength: number;
  /** The same in every direction of the plane, as pockets and shifted hollows are. */
  blobSd: number;
  blobLength: number;
  /** Along the grain of the rings, from nothing at the origin to full at the cambium: lengths around and across. */
  sectorSd: number;
  sectorLengthDeg: number;
  sectorLength: number;
  source: string;
}

export interface FieldPrior {
  scenarios: Scenario[];
  /** Power of the evidence when scenarios are weighed: below 1, as sites of one needle are not quite independent. */
  trustInEvidence: number;
  /** Height of the incipient band above zero, in units of g. */
  incipientBand: number;
  /** Share of its strength that incipient wood keeps: mean and standard deviation. */
  incipientStrength: { mean: number; sd: number };
  /** Standard deviation of a measured outline radius, share of the radius, and how far around an error reaches. */
  outlineSd: number;
  outlineReachDeg: number;
  /** What wood of each kind is read as: chances of no strength, incipient, sound. The needle can also pass it by. */
  readAs: Record<'none' | 'incipient' | 'sound', readonly [none: number, incipient: number, sound: number]>;
  /**
   * What the surface is found to be by eye and mallet: for each finding, its chance where the wood under the bark has no
   * strength, is incipient, is sound, up to a common factor.
   */
  surfaceFoundAs: Record<SurfaceState, readonly [none: number, incipient: number, sound: number]>;
  /** Height over which what a tilted needle meets says little of the section any more, mm. */
  heightReachMm: number;
}

/** Form and first values are judgement; the numbers were then fitted to simulated sections (docs/theory/soundness.md). */
const FITTED = 'judgement, fitted to simulated sections of the tuning families';

export const FIELD_PRIOR: FieldPrior = {
  scenarios: [
    {
      name: 'sound',
      meaning: 'Little or no decay; what there is, small and anywhere.',
      weight: 0.04,
      meanCentre: 2,
      meanEdge: 2,
      meanPower: 2.2,
      levelSd: 0.55,
      shiftSd: 0.29,
      ovalSd: 0.19,
      ringSd: 0.19,
      ringLength: 0.47,
      blobSd: 0.76,
      blobLength: 0.36,
      sectorSd: 0.75,
      sectorLengthDeg: 45,
      sectorLength: 0.6,
      source: FITTED,
    },
    {
      name: 'hollow, round',
      meaning: 'Heart rot that has spread evenly.',
      weight: 0.15,
      meanCentre: -2.3,
      meanEdge: 3.6,
      meanPower: 2.3,
      levelSd: 0.5,
      shiftSd: 0.24,
      ovalSd: 0.17,
      ringSd: 5.9,
      ringLength: 0.27,
      blobSd: 0.47,
      blobLength: 0.58,
      sectorSd: 0.35,
      sectorLengthDeg: 37,
      sectorLength: 0.6,
      source: FITTED,
    },
    {
      name: 'hollow, shifted',
      meaning: 'Heart rot off the middle, smooth.',
      weight: 0.08,
      meanCentre: -2.3,
      meanEdge: 4,
      meanPower: 2,
      levelSd: 0.57,
      shiftSd: 2.2,
      ovalSd: 0.6,
      ringSd: 3.8,
      ringLength: 0.28,
      blobSd: 0.45,
      blobLength: 0.66,
      sectorSd: 0.35,
      sectorLengthDeg: 36,
      sectorLength: 0.62,
      source: FITTED,
    },
    {
      name: 'hollow, ragged',
      meaning: 'Heart rot with an uneven edge.',
      weight: 0.16,
      meanCentre: -0.51,
      meanEdge: 3.7,
      meanPower: 1.8,
      levelSd: 0.43,
      shiftSd: 1.2,
      ovalSd: 0.38,
      ringSd: 0.42,
      ringLength: 0.46,
      blobSd: 1.3,
      blobLength: 0.59,
      sectorSd: 0.63,
      sectorLengthDeg: 49,
      sectorLength: 0.75,
      source: FITTED,
    },
    {
      name: 'pockets, small',
      meaning: 'Several small pockets, more of them inside.',
      weight: 0.11,
      meanCentre: 0.05,
      meanEdge: 4.1,
      meanPower: 2,
      levelSd: 0.49,
      shiftSd: 0.23,
      ovalSd: 0.21,
      ringSd: 0.37,
      ringLength: 0.48,
      blobSd: 1.7,
      blobLength: 0.28,
      sectorSd: 0.39,
      sectorLengthDeg: 42,
      sectorLength: 0.49,
      source: FITTED,
    },
    {
      name: 'pockets, large',
      meaning: 'A few pockets that run together.',
      weight: 0.04,
      meanCentre: -0.93,
      meanEdge: 3.1,
      meanPower: 1.2,
      levelSd: 0.42,
      shiftSd: 0.2,
      ovalSd: 0.15,
      ringSd: 0.98,
      ringLength: 0.49,
      blobSd: 0.61,
      blobLength: 0.51,
      sectorSd: 0.62,
      sectorLengthDeg: 37,
      sectorLength: 0.64,
      source: FITTED,
    },
    {
      name: 'from the side',
      meaning: 'Decay from a wound or dead bark inwards, the heart sound.',
      weight: 0.15,
      meanCentre: 4.4,
      meanEdge: 1.4,
      meanPower: 1.7,
      levelSd: 0.46,
      shiftSd: 0.29,
      ovalSd: 0.2,
      ringSd: 0.32,
      ringLength: 0.49,
      blobSd: 0.46,
      blobLength: 0.51,
      sectorSd: 2.8,
      sectorLengthDeg: 49,
      sectorLength: 0.69,
      source: FITTED,
    },
    {
      name: 'hollow, open',
      meaning: 'A hollow that reaches the outside somewhere, widely.',
      weight: 0.19,
      meanCentre: -2.9,
      meanEdge: 3.3,
      meanPower: 1.4,
      levelSd: 0.38,
      shiftSd: 0.8,
      ovalSd: 0.34,
      ringSd: 0.79,
      ringLength: 0.17,
      blobSd: 0.38,
      blobLength: 0.44,
      sectorSd: 2.3,
      sectorLengthDeg: 37,
      sectorLength: 1,
      source: FITTED,
    },
    {
      name: 'from the side, narrow',
      meaning: 'Decay from the side along a narrow strip.',
      weight: 0.05,
      meanCentre: 4.1,
      meanEdge: 2.8,
      meanPower: 2,
      levelSd: 0.47,
      shiftSd: 0.22,
      ovalSd: 0.15,
      ringSd: 0.51,
      ringLength: 0.45,
      blobSd: 0.62,
      blobLength: 0.37,
      sectorSd: 2.3,
      sectorLengthDeg: 20,
      sectorLength: 0.66,
      source: FITTED,
    },
    {
      name: 'hollow, round, slit',
      meaning: 'An even hollow with a narrow opening.',
      weight: 0.02,
      meanCentre: -1.7,
      meanEdge: 2.3,
      meanPower: 2.1,
      levelSd: 0.61,
      shiftSd: 0.2,
      ovalSd: 0.15,
      ringSd: 1.3,
      ringLength: 0.48,
      blobSd: 0.45,
      blobLength: 0.57,
      sectorSd: 2.6,
      sectorLengthDeg: 23,
      sectorLength: 0.65,
      source: FITTED,
    },
  ],
  trustInEvidence: 1,
  incipientBand: 0.05,
  incipientStrength: { mean: 0.45, sd: 0.2 },
  outlineSd: 0.025,
  outlineReachDeg: 40,
  readAs: { none: [0.95, 0.04, 0.01], incipient: [0.15, 0.65, 0.2], sound: [0.01, 0.03, 0.96] },
  surfaceFoundAs: { sound: [0.2, 0.6, 1], decayed: [1, 0.5, 0.05], open: [1, 0.2, 0.02] },
  heightReachMm: 600,
};
