/**
 * The 90 % interval of remaining strength on simulated sections of families that were not used for tuning. Readings
 * come straight from the truth with blurred edges, and the surface was looked at, so that the field is judged and not the trace reader; the study
 * (`npm run accuracy sections`) goes through simulated traces.
 */
import { describe, expect, it } from 'vitest';
import { baselineWidth, coverageOf, judgeSection } from './judge.ts';
import { JUDGING_FAMILIES } from './trueSection.ts';

const PER_FAMILY = 12;
const DRAWS = 200;
const SEED = 300_000;
/** Aim, and three standard errors of a mean over 108 sections whose own shares scatter by 0.27. */
const AIM = 0.9;
const BAND = 3 * (0.27 / Math.sqrt(9 * PER_FAMILY));

describe('interval of remaining strength on sections never seen', () => {
  const rows = Object.keys(JUDGING_FAMILIES).flatMap((family, f) =>
    Array.from({ length: PER_FAMILY }, (_, k) =>
      judgeSection(
        family,
        SEED + 1000 * f + k,
        { drillings: [4, 6, 8][k % 3]!, readings: 'zones', lookedAround: true },
        DRAWS,
      ),
    ).flat(),
  );

  it('holds the truth in nine of ten, within the statistical band', () => {
    const { sections, covered } = coverageOf(rows);
    expect(sections).toBeGreaterThanOrEqual(100);
    expect(Math.abs(covered - AIM)).toBeLessThan(BAND);
  });

  it('is centred', () => {
    expect(Math.abs(coverageOf(rows).bias)).toBeLessThan(0.03);
  });

  it('is much narrower than an interval from walls joined straight that holds as many', () => {
    const { covered, width } = coverageOf(rows);
    expect(width).toBeLessThan(0.6 * baselineWidth(rows, 'walls joined straight', covered));
    expect(width).toBeLessThan(0.4 * baselineWidth(rows, 'smallest wall', covered));
  });
});
