import { readFileSync } from 'node:fs';
import { type Assessment, assess } from '@standfast/engine';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoBag } from '../node/demoBag.ts';
import { openCase } from '../openCase.ts';
import type { CaseFile } from '../schema/schema.ts';
import { LIST_COLUMNS } from './columns.ts';
import { listCsvHead, listCsvLine } from './csv.ts';
import { monthsAfter } from './dates.ts';
import { featureScanner } from './features.ts';
import { listGeoJson } from './geoJson.ts';
import { treeOfFeature } from './inventory.ts';
import { byDueThenRisk, byRiskThenDue, isDueBy, isOverdue } from './order.ts';
import { assessedWorkRow, unassessedRow, type WorkRow } from './workRow.ts';

let caseFile: CaseFile;
let assessment: Assessment;
let row: WorkRow;
beforeAll(async () => {
  const opened = openCase(await demoBag());
  caseFile = opened.caseFile;
  assessment = assess(opened.engineInput, { draws: 200 });
  row = assessedWorkRow('demo', caseFile, assessment);
});

describe('a row of the work list', () => {
  it('says what the assessment says, each figure with its interval', () => {
    const { governing } = assessment.safety;
    expect(row.safetyP05).toBeCloseTo(governing.p05, 4);
    expect(row.safetyP50).toBeCloseTo(governing.p50, 4);
    expect(row.safetyP95).toBeCloseTo(governing.p95, 4);
    expect(row.risk).toBe(assessment.decision.overall.risk);
    expect(row.riskSuggested).toBe(assessment.decision.overall.suggestedRisk);
    expect(row.chanceP05).toBeLessThanOrEqual(row.chanceP95!);
    expect(row.reinspectionDueOn).toBe(
      monthsAfter(caseFile.visitedOn!, assessment.advice.reinspection.months),
    );
    expect(row.dueOn).toBe([row.adviceDueOn, row.reinspectionDueOn].filter(Boolean).sort()[0]);
    expect(row.invented).toBe('yes');
  });

  it('takes what the assessor chose and confirmed, and keeps what was suggested', () => {
    const changed: Assessment = structuredClone(assessment);
    const [first, second] = changed.advice.options as [
      Assessment['advice']['options'][number],
      Assessment['advice']['options'][number],
    ];
    for (const option of changed.advice.options) option.chosen = null;
    Object.assign(first, { chosen: false, priority: 'first' });
    Object.assign(second, { chosen: true, dueOn: '2026-07-01', what: 'Do this', priority: 'possible' });
    expect(assessedWorkRow('x', caseFile, changed)).toMatchObject({
      advice: 'Do this',
      adviceStanding: 'chosen',
      advicePriority: 'possible',
      adviceDueOn: '2026-07-01',
      dueOn: '2026-07-01',
    });
    second.chosen = false;
    const suggested = assessedWorkRow('x', caseFile, changed);
    expect(suggested.adviceStanding === 'chosen').toBe(false);
    expect(suggested.advice).not.toBe(first.what);

    const { overall, targets } = changed.decision;
    const target = targets.find((each) => each.target === overall.target && each.part === overall.part)!;
    for (const word of [target.likelihoodOfFailure, target.likelihoodOfImpact, target.consequences])
      word.standing = 'confirmed';
    expect(assessedWorkRow('x', caseFile, changed).riskStanding).toBe('confirmed');
    target.consequences.standing = 'suggested';
    expect(assessedWorkRow('x', caseFile, changed).riskStanding).toBe('confirmed in part');
    target.likelihoodOfImpact.standing = 'overridden';
    expect(assessedWorkRow('x', caseFile, changed).riskStanding).toBe('overridden');
  });

  it('has no due date without a visit date, and no place from half a position', () => {
    const { visitedOn: _, ...undated } = caseFile;
    const without = assessedWorkRow('x', { ...undated, place: { latitude: 52 } }, assessment);
    expect([without.dueOn, without.reinspectionDueOn, without.latitude]).toEqual([null, null, null]);
    expect(
      unassessedRow('x', { ...caseFile, place: { latitude: 95, longitude: 9 } }, []).longitude,
    ).toBeNull();
  });

  it('of a case that could not be assessed says why, in one line', () => {
    const faults = Array.from({ length: 8 }, (_, i) => `fault ${i}\nhere`);
    const failed = unassessedRow('x', null, faults);
    expect(failed.faults).toMatch(/^fault 0 here \| .*fault 4 here \| and 3 more$/);
    expect(failed.status).toBe('not assessed');
  });
});

describe('order', () => {
  const of = (change: Partial<WorkRow>): WorkRow => ({ ...row, ...change });
  it('is by risk, then due date, then label as people count; what is not assessed is last', () => {
    const rows = [
      of({ label: 'T10', risk: 'low', dueOn: '2026-01-01' }),
      of({ label: 'later', risk: 'high', dueOn: '2027-01-01' }),
      of({ label: 'undated', risk: 'high', dueOn: null }),
      of({ label: 'T2', risk: 'low', dueOn: '2026-01-01' }),
      unassessedRow('u', null, ['x']),
      of({ label: 'no target', risk: null, dueOn: '2025-01-01' }),
      of({ label: 'worst', risk: 'extreme', dueOn: '2029-01-01' }),
    ];
    const labels = (sorted: WorkRow[]) => sorted.map(({ label, case: name }) => label ?? name);
    expect(labels(rows.toSorted(byRiskThenDue))).toEqual([
      'worst',
      'later',
      'undated',
      'T2',
      'T10',
      'no target',
      'u',
    ]);
    expect(labels(rows.toSorted(byDueThenRisk)).slice(0, 3)).toEqual(['no target', 'T2', 'T10']);
  });

  it('knows what is overdue and what is due', () => {
    expect(isOverdue({ dueOn: '2026-05-01' }, '2026-05-01')).toBe(false);
    expect(isOverdue({ dueOn: '2026-04-30' }, '2026-05-01')).toBe(true);
    expect(isDueBy({ dueOn: '2026-05-01' }, '2026-05-01')).toBe(true);
    expect(isDueBy({ dueOn: null }, '2026-05-01')).toBe(false);
  });
});

describe('out and in again', () => {
  it('keeps coordinates to 1e-7 of a degree', () => {
    const degrees = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(degrees(180), degrees(90)), { minLength: 1, maxLength: 5 }), (places) => {
        const text = listGeoJson(places.map(([longitude, latitude]) => ({ ...row, longitude, latitude })));
        const scanner = featureScanner('list');
        const trees = scanner.push(text).map((feature) => treeOfFeature(feature, 'list'));
        scanner.end();
        trees.forEach((tree, i) => {
          expect(Math.abs(tree.longitude - places[i]![0])).toBeLessThan(1e-7);
          expect(Math.abs(tree.latitude - places[i]![1])).toBeLessThan(1e-7);
        });
        expect(trees.length).toBe(places.length);
      }),
    );
  });

  it('is a FeatureCollection by RFC 7946: points with longitude first, null where there is no position', () => {
    const text = listGeoJson([{ ...row, longitude: -73.9, latitude: 40.7 }, unassessedRow('u', null, ['x'])]);
    const read = JSON.parse(text);
    expect(read.type).toBe('FeatureCollection');
    expect(read.features[0].geometry).toEqual({ type: 'Point', coordinates: [-73.9, 40.7] });
    expect(read.features[0].properties.safetyP05).toBe(row.safetyP05);
    expect(read.features[1].geometry).toBeNull();
    expect('crs' in read).toBe(false);
    expect(JSON.parse(listGeoJson([])).features).toEqual([]);
  });

  it('writes as many cells as there are columns', () => {
    expect(listCsvHead().split(',').length).toBe(LIST_COLUMNS.length);
    const cells = listCsvLine({ ...row, advice: 'a, "b"', riskTarget: null, faults: null });
    expect(cells).toContain('"a, ""b"""');
  });

  it('has its columns in the guide, name by name, unit and meaning', () => {
    const guide = readFileSync(new URL('../../../../docs/guide/list.md', import.meta.url), 'utf8');
    const rows = [...guide.matchAll(/^\| `(\w+)` \| ([^|]+) \| (.+) \|$/gm)].map((found) =>
      found.slice(1, 4),
    );
    expect(
      rows.map(([name, unit, meaning]) => [name, unit?.trim(), meaning?.replaceAll('\\|', '|')]),
    ).toEqual(LIST_COLUMNS.map(({ name, unit, meaning }) => [name, unit, meaning]));
  });
});
