/**
 * How large a recorded number can be, and how large it usually is. Outside the first it is a slip and refused;
 * outside the second it is kept and questioned. All bounds are judgement, set wide around what the trade meets, so
 * that they catch a wrong unit or a lost decimal sign and not an unusual tree.
 */

import { addFault, addNotice, type Findings } from './findings.ts';

export interface Range {
  /** A value outside these bounds is refused. */
  possible: readonly [number, number];
  /** A value outside these bounds is questioned. */
  usual: readonly [number, number];
  unit: string;
  /** What the slip probably was. */
  hint: string;
}

export const RANGES = {
  heightM: {
    // The tallest tree known stands a little under 120 m.
    possible: [0.5, 130],
    usual: [2, 60],
    unit: 'm',
    hint: 'was it measured in feet, or was the decimal sign lost?',
  },
  stemDiameterMm: {
    // The stoutest stem known is under 12 m across.
    possible: [20, 15_000],
    usual: [80, 3_000],
    unit: 'mm',
    hint: 'was it written in centimetres or inches, or is it the girth?',
  },
  crownWidthM: { possible: [0.2, 100], usual: [1, 40], unit: 'm', hint: 'was it measured in feet?' },
  leanDeg: { possible: [0, 90], usual: [0, 40], unit: 'degrees', hint: 'lean is measured from the vertical' },
  meanWindMs: {
    // Basic wind velocities of the national annexes run from about 20 to 40 m/s.
    possible: [5, 80],
    usual: [18, 45],
    unit: 'm/s',
    hint: 'EN 1991-1-4 wants the 10-minute mean in m/s, not a gust and not km/h',
  },
  gustWindMs: {
    // Three-second gusts of the ASCE 7 maps run from about 35 to 95 m/s.
    possible: [10, 150],
    usual: [30, 95],
    unit: 'm/s',
    hint: 'ASCE 7 wants the 3-second gust in m/s: 115 mph is 51.4 m/s',
  },
  sectionHeightM: { possible: [0, 100], usual: [0, 12], unit: 'm', hint: 'was it written in centimetres?' },
  barkMm: { possible: [0, 400], usual: [1, 100], unit: 'mm', hint: 'was it written in another unit?' },
  outlineAcrossMm: {
    possible: [20, 20_000],
    usual: [80, 4_000],
    unit: 'mm',
    hint: 'was it written in centimetres or inches?',
  },
  flareSizeMm: {
    possible: [10, 5_000],
    usual: [50, 1_500],
    unit: 'mm',
    hint: 'was it written in centimetres or inches?',
  },
  returnYears: {
    possible: [2, 10_000],
    usual: [10, 3_000],
    unit: 'years',
    hint: 'how often does a wind of this speed come: once in how many years?',
  },
  timeFrameYears: {
    possible: [0.1, 50],
    usual: [1, 10],
    unit: 'years',
    hint: 'a decision speaks for one to five years, as a rule',
  },
  testMomentNm: {
    possible: [100, 1e8],
    usual: [2_000, 5e6],
    unit: 'N·m',
    hint: 'was it written in kN·m, or is it the force and not the moment at the ground?',
  },
  testTiltDeg: {
    possible: [0.1, 0.5],
    usual: [0.2, 0.3],
    unit: 'degrees',
    hint: 'the relation for static load tests holds at a tilt of the root plate of 0.25 degrees',
  },
  cutDepthM: { possible: [0, 20], usual: [0.1, 3], unit: 'm', hint: 'was it written in centimetres?' },
  cutWidthDeg: {
    possible: [1, 360],
    usual: [5, 200],
    unit: 'degrees',
    hint: 'how far round the stem, seen from its middle',
  },
  cutDistanceM: {
    possible: [0, 100],
    usual: [0, 30],
    unit: 'm',
    hint: 'from the bark of the stem to the nearest point of the cut',
  },
  distanceM: {
    possible: [0, 1_000],
    usual: [0, 150],
    unit: 'm',
    hint: 'is the target within reach of the tree?',
  },
} as const satisfies Record<string, Range>;

/** `fault` or `question` with the words for it, or null when the value is usual. */
export function judgeRange(value: number, range: Range): { kind: 'fault' | 'question'; text: string } | null {
  const [least, most] = range.possible;
  if (!(value >= least && value <= most)) {
    return {
      kind: 'fault',
      text: `is ${value} ${range.unit}, outside what is possible (${least} to ${most} ${range.unit}): ${range.hint}`,
    };
  }
  const [low, high] = range.usual;
  if (value < low || value > high) {
    return {
      kind: 'question',
      text: `is ${value} ${range.unit}, which is unusual (${low} to ${high} ${range.unit} is usual): ${range.hint}`,
    };
  }
  return null;
}

/** Refuses a value that cannot be and questions one that is unusual; says nothing of one that is missing. */
export function checkRange(
  findings: Findings,
  value: number | undefined,
  range: Range,
  path: string,
  place: string,
): void {
  if (value === undefined) return;
  const verdict = judgeRange(value, range);
  if (verdict?.kind === 'fault') addFault(findings, path, verdict.text);
  if (verdict?.kind === 'question') addNotice(findings, 'caution', place, `${verdict.text}.`);
}
