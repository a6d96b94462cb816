/**
 * The demonstration case holds together: it opens without a fault, says everywhere that it is invented, and its traces
 * show the decay that the plan behind them has.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openCase, saveCase } from '@standfast/casefile';
import { demoBag } from '@standfast/casefile/node';
import { needleLine, outlineRing } from '@standfast/engine';
import { beforeAll, describe, expect, it } from 'vitest';
import { kindAt, SECTION_HEIGHT_MM } from '../simulated/demo/truthOfDemo.ts';

interface Truth {
  barkMm: number;
  drillings: { id: string; zones: { kind: string; fromMm: number; toMm: number }[] }[];
}

const truth = JSON.parse(
  readFileSync(join(import.meta.dirname, '../simulated/demo/truth.json'), 'utf8'),
) as Truth;

let bag: Awaited<ReturnType<typeof demoBag>>;
let opened: ReturnType<typeof openCase>;
beforeAll(async () => {
  bag = await demoBag();
  opened = openCase(bag);
});

describe('the demonstration case', () => {
  it('opens without a fault or a notice, and is saved as it stands', () => {
    expect(opened.notices).toEqual([]);
    const text = (files: typeof bag) => new TextDecoder().decode(files.get('case.json'));
    expect(text(saveCase(opened.caseFile, bag))).toBe(text(bag));
  });

  it('is marked as invented wherever a person may look', () => {
    const { invented, title, purpose, client, assessor, place, tree, notes } = opened.caseFile;
    expect(invented).toBe(true);
    for (const words of [
      title,
      purpose,
      client?.name,
      assessor?.name,
      assessor?.credential,
      place?.name,
      tree.label,
      notes,
    ]) {
      expect(words).toMatch(/invented/i);
    }
    for (const [path, bytes] of bag) {
      if (path.endsWith('.csv'))
        expect(new TextDecoder().decode(bytes.subarray(0, 20))).toMatch(/^# invented/);
    }
  });

  it('has seven drillings on its section, one of them off the radial, and one on each of four flares', () => {
    const { sections, flares } = opened.engineInput;
    expect(sections[0]?.drillings).toHaveLength(7);
    expect(sections[0]?.drillings.filter(({ offRadialDeg }) => offRadialDeg !== 0)).toHaveLength(1);
    expect(flares.map(({ drillings }) => drillings.length)).toEqual([1, 1, 1, 1]);
    expect(flares.every(({ drillings }) => drillings.every(({ downDeg }) => downDeg > 30))).toBe(true);
  });

  it('has traces that show what the truth has', () => {
    const { sections, flares } = opened.engineInput;
    const traces = new Map(
      [...sections, ...flares].flatMap((part) => part.drillings.map(({ id, trace }) => [id, trace])),
    );
    const levels: Record<string, number[]> = {};
    for (const { id, zones } of truth.drillings) {
      const { depthMm, resistancePct } = traces.get(id)!;
      for (const { kind, fromMm, toMm } of zones) {
        // Edges are gradual: look inside them.
        const inside = resistancePct.filter((_, i) => depthMm[i]! > fromMm + 6 && depthMm[i]! < toMm - 6);
        const mean = inside.reduce((sum, level) => sum + level, 0) / inside.length;
        levels[kind] = [...(levels[kind] ?? []), mean];
      }
    }
    expect(Math.max(...levels.bark!)).toBeLessThan(15);
    expect(Math.min(...levels.sound!)).toBeGreaterThan(38);
    expect(Math.max(...levels.incipient!)).toBeLessThan(Math.min(...levels.sound!));
    expect(Math.max(...levels.decayed!)).toBeLessThan(25);
    expect(levels.void).toHaveLength(1);
    expect(levels.void![0]).toBeLessThan(10);
  });

  it('has zones that follow from the plan of decay along each needle', () => {
    const { outline, drillings } = opened.engineInput.sections[0]!;
    const ring = outlineRing(outline);
    for (const pose of drillings) {
      const line = needleLine(ring, pose);
      for (const { kind, fromMm, toMm } of truth.drillings.find(({ id }) => id === pose.id)!.zones) {
        if (fromMm < truth.barkMm) continue;
        const middle = (fromMm + toMm) / 2;
        const [x, y] = [0, 1].map((axis) => line.entryMm[axis]! + middle * line.headingUnit[axis]!);
        expect(kindAt(x!, y!, SECTION_HEIGHT_MM), `${pose.id} at ${middle}`).toBe(kind);
      }
    }
  });
});
