/**
 * What is believed of a section before it is drilled: a table that a person can read and change.
 *
 * The latent field g lives on the wood outline in relative polar coordinates. Wood is sound where g is above
 * `incipientBand`, incipient between 0 and the band, and without strength below 0. Each row of the table is one kind
 * of section; the drillings decide between them by the evidence (Rasmussen & Williams 2006, section 5.2).
 *
 * The tables are field-scenarios.csv, field-evidence.csv and field-numbers.csv in reference/, each row with its standing.
 */
import { fieldEvidence, fieldNumbers, fieldScenarios } from '../../reference/tables.generated.ts';
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
  /** Share of the weight for which relative radii are those of the outline without its lobes (rounded.ts). */
  roundedShare: number;
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

/** The chances of one row of the table of evidence. */
function chances(evidence: 'wood' | 'surface', name: string): readonly [number, number, number] {
  const row = fieldEvidence.find((r) => r.evidence === evidence && r.name === name);
  if (!row) throw new Error(`no row "${evidence}, ${name}" in field-evidence.csv`);
  return [row.none, row.incipient, row.sound];
}

function numberNamed(name: string): number {
  const row = fieldNumbers.find((r) => r.name === name);
  if (!row) throw new Error(`no row "${name}" in field-numbers.csv`);
  return row.value;
}

export const FIELD_PRIOR: FieldPrior = {
  scenarios: [...fieldScenarios],
  trustInEvidence: numberNamed('trust in evidence'),
  incipientBand: numberNamed('incipient band'),
  incipientStrength: {
    mean: numberNamed('incipient strength mean'),
    sd: numberNamed('incipient strength sd'),
  },
  outlineSd: numberNamed('outline sd'),
  outlineReachDeg: numberNamed('outline reach'),
  readAs: {
    none: chances('wood', 'none'),
    incipient: chances('wood', 'incipient'),
    sound: chances('wood', 'sound'),
  },
  surfaceFoundAs: {
    sound: chances('surface', 'sound'),
    decayed: chances('surface', 'decayed'),
    open: chances('surface', 'open'),
  },
  heightReachMm: numberNamed('height reach'),
};
