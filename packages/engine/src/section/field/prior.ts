/**
 * What is believed of a section before it is drilled: a table that a person can read and change.
 *
 * The latent field g lives on the wood outline in relative polar coordinates. Wood is sound where g is above
 * `incipientBand`, incipient between 0 and the band, and without strength below 0. Each row of the table is one kind
 * of section; the drillings decide between them by the evidence (Rasmussen & Williams 2006, section 5.2).
 */

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
  /** Height of the incipient band above zero, in units of g. */
  incipientBand: number;
  /** Share of its strength that incipient wood keeps: mean and standard deviation. */
  incipientStrength: { mean: number; sd: number };
  /** Standard deviation of a measured outline radius, share of the radius, and how far around an error reaches. */
  outlineSd: number;
  outlineReachDeg: number;
  /** What wood of each kind is read as: chances of no strength, incipient, sound. The needle can also pass it by. */
  readAs: Record<'none' | 'incipient' | 'sound', readonly [none: number, incipient: number, sound: number]>;
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
      weight: 0.12,
      meanCentre: 3,
      meanEdge: 3.2,
      meanPower: 2,
      levelSd: 0.4,
      ringSd: 0.2,
      ringLength: 0.5,
      blobSd: 0.9,
      blobLength: 0.4,
      sectorSd: 0.6,
      sectorLengthDeg: 45,
      sectorLength: 0.6,
      source: FITTED,
    },
    {
      name: 'hollow, round',
      meaning: 'Heart rot that has spread evenly.',
      weight: 0.15,
      meanCentre: -4.5,
      meanEdge: 1.2,
      meanPower: 3,
      levelSd: 0.8,
      ringSd: 2.5,
      ringLength: 0.3,
      blobSd: 0.3,
      blobLength: 0.55,
      sectorSd: 0.25,
      sectorLengthDeg: 40,
      sectorLength: 0.6,
      source: FITTED,
    },
    {
      name: 'hollow, shifted',
      meaning: 'Heart rot off the middle, smooth.',
      weight: 0.08,
      meanCentre: -3.4,
      meanEdge: 3,
      meanPower: 2.7,
      levelSd: 0.6,
      ringSd: 0.5,
      ringLength: 0.6,
      blobSd: 1.4,
      blobLength: 0.75,
      sectorSd: 0.35,
      sectorLengthDeg: 50,
      sectorLength: 0.55,
      source: FITTED,
    },
    {
      name: 'hollow, ragged',
      meaning: 'Heart rot with an uneven edge.',
      weight: 0.1,
      meanCentre: -1.5,
      meanEdge: 3,
      meanPower: 1.4,
      levelSd: 0.6,
      ringSd: 0.6,
      ringLength: 0.4,
      blobSd: 1.2,
      blobLength: 0.5,
      sectorSd: 0.55,
      sectorLengthDeg: 45,
      sectorLength: 0.6,
      source: FITTED,
    },
    {
      name: 'pockets, small',
      meaning: 'Several small pockets, more of them inside.',
      weight: 0.17,
      meanCentre: 0.3,
      meanEdge: 4.2,
      meanPower: 1.5,
      levelSd: 0.3,
      ringSd: 0.35,
      ringLength: 0.4,
      blobSd: 1.7,
      blobLength: 0.33,
      sectorSd: 0.45,
      sectorLengthDeg: 60,
      sectorLength: 0.55,
      source: FITTED,
    },
    {
      name: 'pockets, large',
      meaning: 'A few pockets that run together.',
      weight: 0.1,
      meanCentre: -1,
      meanEdge: 3.4,
      meanPower: 1,
      levelSd: 0.45,
      ringSd: 0.45,
      ringLength: 0.4,
      blobSd: 0.95,
      blobLength: 0.45,
      sectorSd: 0.45,
      sectorLengthDeg: 45,
      sectorLength: 0.55,
      source: FITTED,
    },
    {
      name: 'from the side',
      meaning: 'Decay from a wound or dead bark inwards, the heart sound.',
      weight: 0.12,
      meanCentre: 4,
      meanEdge: 1,
      meanPower: 2.2,
      levelSd: 0.4,
      ringSd: 0.25,
      ringLength: 0.45,
      blobSd: 0.5,
      blobLength: 0.4,
      sectorSd: 3.5,
      sectorLengthDeg: 45,
      sectorLength: 0.7,
      source: FITTED,
    },
    {
      name: 'hollow, open',
      meaning: 'A hollow that reaches the outside somewhere.',
      weight: 0.16,
      meanCentre: -2.6,
      meanEdge: 3.4,
      meanPower: 1.3,
      levelSd: 0.45,
      ringSd: 0.6,
      ringLength: 0.35,
      blobSd: 0.65,
      blobLength: 0.5,
      sectorSd: 2.5,
      sectorLengthDeg: 50,
      sectorLength: 0.7,
      source: FITTED,
    },
  ],
  incipientBand: 0.05,
  incipientStrength: { mean: 0.45, sd: 0.2 },
  outlineSd: 0.025,
  outlineReachDeg: 40,
  readAs: { none: [0.95, 0.04, 0.01], incipient: [0.15, 0.65, 0.2], sound: [0.01, 0.03, 0.96] },
  heightReachMm: 600,
};
