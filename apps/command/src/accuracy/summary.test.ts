import type { JudgedInterval, JudgedWall } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { csvRows } from '../batch/csv.ts';
import { summedUp } from './summary.ts';
import { accuracyTable } from './table.ts';
import type { SectionVerdict } from './verdict.ts';

function judged(truth: number, p50 = 0.7): JudgedInterval {
  const [p05, p95] = [p50 - 0.1, p50 + 0.1];
  return { truth, p05, p50, p95, inside: truth >= p05 && truth <= p95, error: p50 - truth };
}

const wall = (finding: JudgedWall['finding'], errorMm: number | null): JudgedWall => ({
  drillingId: 'd1',
  azimuthDeg: 0,
  readMm: 80,
  readAtLeast: false,
  trueMm: 80,
  trueAtLeast: false,
  errorMm,
  finding,
});

function verdict(truth: number, over: Partial<SectionVerdict> = {}): SectionVerdict {
  return {
    case: 'a',
    section: 's1',
    label: 'T1',
    species: 'Tilia cordata',
    invented: false,
    source: 'traced from a photo',
    drillings: 4,
    weakest: { directionDeg: 40, ...judged(truth) },
    weakestInTruth: { directionDeg: 50, ...judged(truth - 0.02) },
    insideShare: 0.5,
    soundShare: judged(0.7),
    wallsTo: 'first loss',
    walls: [],
    warnings: [],
    ...over,
  };
}

/** So many sections of cases of their own, the first `held` inside. */
const many = (of: number, held: number) =>
  Array.from({ length: of }, (_, i) => verdict(i < held ? 0.7 : 0.3, { case: `c${i}` }));

describe('summary of felled sections', () => {
  it('counts, averages and takes the middle', () => {
    const summary = summedUp([
      verdict(0.68, { walls: [wall('edge', -4), wall('edge', 10), wall('missed', 60)] }),
      verdict(0.5, { case: 'b', walls: [wall('none', null), wall('edge', 3), wall('false alarm', -90)] }),
      verdict(0.69, { case: 'c' }),
    ]);
    expect(summary).toMatchObject({ sections: 3, cases: 3, invented: 0, directionsInside: 0.5 });
    expect(summary.weakest).toMatchObject({ held: 2, of: 3 });
    expect(summary.error.mean).toBeCloseTo((0.02 + 0.2 + 0.01) / 3, 12);
    expect(summary.error.median).toBeCloseTo(0.02, 12);
    expect(summary.width.mean).toBeCloseTo(0.2, 12);
    // Missed edges and false alarms are counted and not averaged with the walls that were found.
    expect(summary.walls).toMatchObject({
      compared: 3,
      errorMm: { mean: 3, median: 3 },
      absoluteErrorMm: { median: 4 },
      bothSound: 1,
      missed: 1,
      falseAlarms: 1,
    });
  });

  it('says plainly that few mean little, and does not say so of many', () => {
    expect(summedUp(many(4, 4)).means[0]).toMatch(/^4 sections mean little: .* from 51 % to 100 %/);
    expect(summedUp(many(60, 54)).means[0]).toMatch(/^This agrees with the nine times in ten/);
  });

  it('says when the intervals hold too little or more than they promise', () => {
    expect(summedUp(many(100, 75)).means[0]).toMatch(/less often .* do not rely on them/);
    expect(summedUp(many(200, 200)).means[0]).toMatch(/more often/);
    // A bad run of few is both.
    const bad = summedUp(many(10, 3)).means.join(' ');
    expect(bad).toMatch(/mean little/);
    expect(bad).toMatch(/less often/);
  });

  it('tells invented cases and sections of one tree from evidence', () => {
    const { means, invented } = summedUp([verdict(0.7), verdict(0.7, { section: 's2', invented: true })]);
    expect(invented).toBe(1);
    expect(means.join(' ')).toMatch(/not independent/);
    expect(means.join(' ')).toMatch(/1 of the sections is from cases marked as invented: it is no evidence/);
  });

  it('writes a row for each section under one head', () => {
    const [head, ...rows] = csvRows(
      accuracyTable([
        verdict(0.68, { label: '=1+1', walls: [wall('edge', -4), wall('missed', 60)] }),
        verdict(0.5),
      ]),
    );
    expect(rows.map((row) => row.length)).toEqual([head!.length, head!.length]);
    const cell = (name: string, row = 0) => rows[row]![head!.indexOf(name)];
    expect(cell('label')).toBe("'=1+1");
    expect(cell('weakestInside')).toBe('yes');
    expect(cell('weakestInside', 1)).toBe('no');
    expect(cell('wallMeanErrorMm')).toBe('-4');
    expect(cell('wallMeanErrorMm', 1)).toBe('');
    expect(cell('wallsMissed')).toBe('1');
  });
});
