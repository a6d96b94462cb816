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

const JUDGEMENT = 'judgement';

export const FIELD_PRIOR: FieldPrior = {
  scenarios: [
    {
      name: 'sound',
      weight: 1,
      meanCentre: 2.5,
      meanEdge: 3,
      meanPower: 2,
      levelSd: 0.3,
      ringSd: 0.2,
      ringLength: 0.5,
      blobSd: 0.8,
      blobLength: 0.3,
      sectorSd: 0.5,
      sectorLengthDeg: 40,
      sectorLength: 0.5,
      source: JUDGEMENT,
    },
    {
      name: 'central, even',
      weight: 1,
      meanCentre: -1.5,
      meanEdge: 1.5,
      meanPower: 2,
      levelSd: 0.8,
      ringSd: 0.5,
      ringLength: 0.5,
      blobSd: 0.3,
      blobLength: 0.6,
      sectorSd: 0.2,
      sectorLengthDeg: 60,
      sectorLength: 0.7,
      source: JUDGEMENT,
    },
    {
      name: 'central, shifted',
      weight: 1,
      meanCentre: -1,
      meanEdge: 1.5,
      meanPower: 2,
      levelSd: 0.8,
      ringSd: 0.4,
      ringLength: 0.5,
      blobSd: 0.9,
      blobLength: 0.6,
      sectorSd: 0.3,
      sectorLengthDeg: 60,
      sectorLength: 0.7,
      source: JUDGEMENT,
    },
    {
      name: 'central, ragged',
      weight: 1,
      meanCentre: -1,
      meanEdge: 1.5,
      meanPower: 2,
      levelSd: 0.7,
      ringSd: 0.4,
      ringLength: 0.4,
      blobSd: 0.8,
      blobLength: 0.3,
      sectorSd: 0.4,
      sectorLengthDeg: 40,
      sectorLength: 0.5,
      source: JUDGEMENT,
    },
    {
      name: 'pockets',
      weight: 1,
      meanCentre: 1,
      meanEdge: 1.5,
      meanPower: 1,
      levelSd: 0.4,
      ringSd: 0.2,
      ringLength: 0.4,
      blobSd: 1,
      blobLength: 0.25,
      sectorSd: 0.3,
      sectorLengthDeg: 40,
      sectorLength: 0.4,
      source: JUDGEMENT,
    },
    {
      name: 'from the side',
      weight: 1,
      meanCentre: 1.5,
      meanEdge: 1,
      meanPower: 1,
      levelSd: 0.4,
      ringSd: 0.2,
      ringLength: 0.4,
      blobSd: 0.5,
      blobLength: 0.4,
      sectorSd: 1.4,
      sectorLengthDeg: 45,
      sectorLength: 0.6,
      source: JUDGEMENT,
    },
    {
      name: 'open cavity',
      weight: 1,
      meanCentre: -1.2,
      meanEdge: 1.2,
      meanPower: 2,
      levelSd: 0.6,
      ringSd: 0.4,
      ringLength: 0.5,
      blobSd: 0.5,
      blobLength: 0.4,
      sectorSd: 1.3,
      sectorLengthDeg: 45,
      sectorLength: 0.8,
      source: JUDGEMENT,
    },
  ],
  incipientBand: 0.05,
  incipientStrength: { mean: 0.45, sd: 0.2 },
  outlineSd: 0.025,
  outlineReachDeg: 40,
  readAs: { none: [0.95, 0.04, 0.01], incipient: [0.15, 0.65, 0.2], sound: [0.01, 0.03, 0.96] },
  heightReachMm: 600,
};
