/** The demonstration's second visit against the truth it was made from. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openCase } from '@standfast/casefile';
import { secondVisitBag } from '@standfast/casefile/node';
import { assess } from '@standfast/engine';
import { describe, expect, it } from 'vitest';

const truth = JSON.parse(readFileSync(join(import.meta.dirname, '../demo/second/truth.json'), 'utf8')) as {
  drillings: { id: string; growthMm: number; spreadMm: number }[];
};
const { engineInput } = openCase(await secondVisitBag());
const assessed = assess(engineInput, { draws: 200 });
const change = assessed.change!;

describe("the demonstration's second visit", () => {
  it('shows the front moved where it did, and within error where it stood', () => {
    const verdicts = Object.fromEntries(change.drillings.map(({ laterId, verdict }) => [laterId, verdict]));
    expect(verdicts).toMatchObject({
      d5: 'moved',
      d10: 'moved',
      d4: 'not moved',
      d6: 'not moved',
      d1: 'no front',
    });
    for (const id of ['d5', 'd10']) {
      const { frontMm } = change.drillings.find(({ laterId }) => laterId === id)!;
      const { spreadMm } = truth.drillings.find((drilling) => drilling.id === id)!;
      expect(frontMm!.p05).toBeLessThan(spreadMm);
      expect(frontMm!.p95).toBeGreaterThan(spreadMm);
    }
  });

  it('holds the true growth at nine drillings of ten', () => {
    const held = change.drillings.filter(({ laterId, growthMm }) => {
      const { growthMm: true_ } = truth.drillings.find(({ id }) => id === laterId)!;
      return growthMm.p05 - 0.5 <= true_ && true_ <= growthMm.p95 + 0.5;
    });
    expect(held.length).toBeGreaterThanOrEqual(change.drillings.length - 1);
  });

  it('says what was not compared, what was recorded otherwise, and how long', () => {
    expect(change.unmatched.map(({ visit, id }) => `${visit} ${id}`)).toEqual(['earlier d3', 'later d12']);
    expect(change.recorded.map(({ where }) => where)).toContain('tree.heightM');
    expect(change.safety.breakageWithLoadHeld).not.toBeNull();
    expect(change.forecast!.safety[0]!.p50).toBeCloseTo(change.safety.breakage.now.p50, 9);
    expect(change.forecast!.crossings.map(({ limit }) => limit)).toEqual([1.5, 1]);
  });

  it('is refused where the earlier visit is not earlier', () => {
    expect(() => assess({ ...engineInput, visitedOn: '2026-06-18' }, { draws: 200 })).toThrow(/not before/);
  });

  it('gives no speed and no forecast without a date, and says so', () => {
    const { visitedOn: _, ...undated } = engineInput;
    const without = assess(undated, { draws: 200 });
    expect(without.change!.forecast).toBeNull();
    expect(without.change!.drillings.every(({ rateMmYear }) => rateMmYear === null)).toBe(true);
    expect(without.notices.some(({ where, text }) => where === 'visitedOn' && /no forecast/.test(text))).toBe(
      true,
    );
  });
});
