/** The JSON that others rely on: every agreed key is there, of the agreed kind and in the agreed order. */
import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildCommand, standfast, temporaryFolder } from './standfast.ts';

const ZONE_KINDS = ['air', 'bark', 'sound', 'incipient', 'decayed', 'void', 'crack'];
const DIRECTIONS = Array.from({ length: 36 }, (_, i) => i * 10);

type Json = Record<string, unknown>;

const folder = temporaryFolder();
let assessment: Json;
let text: string;

beforeAll(() => {
  buildCommand();
  expect(standfast(['demo', folder.at('demo')])).toMatchObject({ status: 0, err: '' });
  const ran = standfast([
    'assess',
    folder.at('demo'),
    '--json',
    '--report',
    folder.at('report.pdf'),
    '--html',
    folder.at('report.html'),
  ]);
  expect(ran.status, ran.err).toBe(0);
  text = ran.out;
  assessment = JSON.parse(text) as Json;
}, 180_000);
afterAll(() => folder.remove());

/** The agreed keys, first and in this order; others may follow. */
function expectKeys(value: unknown, keys: string[]): void {
  expect(Object.keys(value as Json).slice(0, keys.length)).toEqual(keys);
}

function expectDirections(rows: unknown, keys: string[]): void {
  const list = rows as Json[];
  expect(list.map(({ directionDeg }) => directionDeg)).toEqual(DIRECTIONS);
  for (const row of list) {
    expectKeys(row, keys);
    for (const key of keys) expect(row[key]).toBeTypeOf('number');
  }
}

function expectOrdered(rows: unknown): void {
  for (const { p05, p50, p95 } of rows as { p05: number; p50: number; p95: number }[]) {
    expect(p05).toBeLessThanOrEqual(p50);
    expect(p50).toBeLessThanOrEqual(p95);
  }
}

function expectZones(zones: unknown): void {
  const list = zones as { kind: string; fromMm: number; toMm: number; confidence: number }[];
  expect(list.length).toBeGreaterThan(0);
  list.forEach((zone, i) => {
    expectKeys(zone, ['kind', 'fromMm', 'toMm', 'confidence']);
    expect(ZONE_KINDS).toContain(zone.kind);
    expect(zone.toMm).toBeGreaterThan(zone.fromMm);
    expect(zone.confidence).toBeGreaterThan(0);
    expect(zone.confidence).toBeLessThanOrEqual(1);
    if (i > 0) expect(zone.fromMm).toBe(list[i - 1]!.toMm);
  });
}

describe('assess --json', () => {
  it('has the agreed keys in their order', () => {
    expectKeys(assessment, ['format', 'version', 'sections', 'wind', 'safety', 'nextDrilling']);
    expect(assessment).toMatchObject({ format: 'standfast-assessment', version: 1 });
  });

  it('describes each section', () => {
    const sections = assessment.sections as Json[];
    expect(sections.length).toBeGreaterThan(0);
    for (const section of sections) {
      expect(section.id).toBeTypeOf('string');
      expect(section.intactModulusM3).toBeGreaterThan(0);
      expectDirections(section.remaining, ['directionDeg', 'p05', 'p50', 'p95']);
      expectOrdered(section.remaining);
      for (const drilling of section.drillings as Json[]) {
        expectKeys(drilling, ['id', 'zones', 'residualWallMm']);
        expectZones(drilling.zones);
        expect(drilling.residualWallMm).toBeGreaterThanOrEqual(0);
      }
      for (const rule of section.criteria as Json[]) {
        expect(rule).toMatchObject({
          name: expect.any(String),
          source: expect.any(String),
          limit: expect.any(Number),
        });
        expect(['number', 'object']).toContain(typeof rule.value);
        expect([true, false, null]).toContain(rule.met);
      }
    }
  });

  it('describes wind and safety', () => {
    expectKeys(assessment.wind, ['momentNm', 'gustMs']);
    const safety = assessment.safety as Json;
    expectKeys(safety, ['breakage', 'uprooting', 'governing']);
    for (const mode of ['breakage', 'uprooting']) {
      expectDirections(safety[mode], ['directionDeg', 'p05', 'p50', 'p95']);
      expectOrdered(safety[mode]);
    }
    expectKeys(safety.governing, ['mode', 'directionDeg', 'p05', 'p50', 'p95']);
    expectOrdered([safety.governing]);
  });

  it('rates the decision and advises', () => {
    const decision = assessment.decision as Json;
    expect(decision.likelihoodOfFailure).toMatchObject({
      suggested: expect.any(String),
      taken: expect.any(String),
      standing: expect.any(String),
    });
    for (const row of decision.targets as Json[]) {
      expect(row).toMatchObject({ target: expect.any(String), event: expect.any(String) });
      expect(['low', 'moderate', 'high', 'extreme']).toContain(row.risk);
    }
    const advice = assessment.advice as Json;
    expect((advice.options as Json[]).length).toBeGreaterThan(10);
    expect((advice.reinspection as Json).months).toBeTypeOf('number');
  });

  it('says where to drill next, or why to stop', () => {
    const next = assessment.nextDrilling as Json;
    if (next.stop) expect(next).toMatchObject({ stop: true, why: expect.any(String) });
    else {
      expect(next).toMatchObject({
        sectionId: expect.any(String),
        azimuthDeg: expect.any(Number),
        worth: expect.any(Number),
      });
    }
  });

  it('prints numbers of six significant digits at most', () => {
    const long = [...text.matchAll(/-?\d+\.\d+(?:e[+-]?\d+)?/g)]
      .map(([number]) => number)
      .filter((number) => number.replace(/e.*$/, '').replace(/^-?0?\.?0*|\./g, '').length > 6);
    expect(long).toEqual([]);
  });

  it('is the same, byte for byte, when run again', () => {
    expect(standfast(['assess', folder.at('demo'), '--json']).out).toBe(text);
  });

  it('changes its draws with the seed, and says which was used', () => {
    const other = JSON.parse(
      standfast(['assess', folder.at('demo'), '--json', '--seed', '42', '--draws', '500']).out,
    ) as Json;
    expect(other).toMatchObject({ seed: 42, draws: 500 });
    expect(other.safety).not.toEqual(assessment.safety);
  });

  it('writes the reports asked for beside it', () => {
    expect(readFileSync(folder.at('report.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    expect(readFileSync(folder.at('report.html'), 'utf8')).toMatch(/^<!doctype html>/i);
  });
});

describe('zones --json', () => {
  it('has the agreed keys', () => {
    const [trace] = JSON.parse(readFileSync(folder.at('demo', 'case.json'), 'utf8')).sections[0].drillings;
    const ran = standfast(['zones', folder.at('demo', trace.trace), '--json']);
    expect(ran).toMatchObject({ status: 0, err: '' });
    const document = JSON.parse(ran.out) as Json;
    expectKeys(document, ['zones', 'residualWallMm']);
    expectZones(document.zones);
  });
});

describe('section --json', () => {
  it('has the agreed keys, and the closed form of a ring', () => {
    const [outer, inner] = [300, 210];
    const hole = Array.from({ length: 3600 }, (_, i) => {
      const turn = (i / 3600) * 2 * Math.PI;
      return [inner * Math.sin(turn), inner * Math.cos(turn)];
    });
    writeFileSync(
      folder.at('ring.json'),
      JSON.stringify({ outline: { kind: 'circle', diameterMm: 2 * outer }, voids: [hole] }),
    );
    const ran = standfast(['section', folder.at('ring.json'), '--json']);
    expect(ran).toMatchObject({ status: 0, err: '' });
    const document = JSON.parse(ran.out) as Json & {
      areaMm2: number;
      ixxMm4: number;
      centroidMm: number[];
      remaining: { value: number }[];
    };
    expectKeys(document, ['areaMm2', 'centroidMm', 'ixxMm4', 'iyyMm4', 'ixyMm4', 'modulusMm3', 'remaining']);
    expect(document.centroidMm).toHaveLength(2);
    expectDirections(document.modulusMm3, ['directionDeg', 'value']);
    expectDirections(document.remaining, ['directionDeg', 'value']);
    // The hole is a polygon of 3600 sides, which is short of the circle by 1e-6 in area.
    const CLOSE = 1e-5;
    expect(Math.abs(document.areaMm2 / (Math.PI * (outer ** 2 - inner ** 2)) - 1)).toBeLessThan(CLOSE);
    expect(Math.abs(document.ixxMm4 / ((Math.PI / 4) * (outer ** 4 - inner ** 4)) - 1)).toBeLessThan(CLOSE);
    for (const { value } of document.remaining) {
      expect(Math.abs(value / (1 - (inner / outer) ** 4) - 1)).toBeLessThan(CLOSE);
    }
  });
});
