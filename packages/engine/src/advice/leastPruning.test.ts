import { describe, expect, it } from 'vitest';
import { defaultWanted, leastPruning } from './leastPruning.ts';
import { confidence, loadLeft } from './loads.ts';
import { reliefOf } from './pruning.ts';
import { assessedTree, testedAllRound } from './testTree.ts';

const WANTED = { safety: 1.5, confidence: 0.9 };

describe('leastPruning', () => {
  it('asks for 1.5 in nine of ten draws unless told otherwise', () => {
    expect(defaultWanted()).toEqual(WANTED);
  });

  it('finds none needed where the tree reaches it as it stands', () => {
    const { standing, loads } = assessedTree({
      tree: { stemDiameterMm: 1200 },
      staticTests: testedAllRound(1e6),
    });
    const found = leastPruning(standing, loads, WANTED);
    expect(found).toMatchObject({ share: 0, topM: 0, foliageShare: 0 });
    expect(found.confidenceNow).toBeGreaterThanOrEqual(0.9);
    expect(found.text).toContain('no pruning is needed');
  });

  it('finds the least that reaches it, and hardly less does not', () => {
    const { standing, loads } = assessedTree({
      tree: { stemDiameterMm: 1200 },
      staticTests: testedAllRound(2.45e5),
      draws: 1000,
    });
    const found = leastPruning(standing, loads, WANTED);
    expect(found.confidenceNow).toBeLessThan(0.9);
    expect(found.share).toBeGreaterThan(0);
    expect(found.share).toBeLessThanOrEqual(found.mostShare);
    const at = (share: number) =>
      confidence(loads, loadLeft(loads, reliefOf(standing, { kind: 'reduce', amount: share })), 1.5);
    expect(at(found.share!)).toBeGreaterThanOrEqual(0.9);
    expect(at(found.share! - 0.004)).toBeLessThan(0.9);
    expect(found.topM).toBeCloseTo(found.share! * 13, 9);
    // The curve runs from the tree as it stands to the most permissible, and never falls.
    expect(found.curve[0]).toMatchObject({ share: 0, confidence: found.confidenceNow });
    expect(found.curve.at(-1)).toMatchObject({ share: found.mostShare, confidence: found.confidenceAtMost });
    const rising = found.curve.map(({ confidence }) => confidence);
    expect(rising).toEqual([...rising].sort((a, b) => a - b));
    const sure = found.curve.filter(({ share }) => share >= found.share!);
    const short = found.curve.filter(({ share }) => share < found.share! - 0.002);
    expect(Math.min(...sure.map(({ confidence }) => confidence))).toBeGreaterThanOrEqual(0.9);
    expect(Math.max(...short.map(({ confidence }) => confidence))).toBeLessThan(0.9);
  });

  it('says so when no permissible pruning reaches it, and what the most would give', () => {
    const { standing, loads } = assessedTree({ tree: { stemDiameterMm: 600 } });
    const found = leastPruning(standing, loads, WANTED);
    expect(found.share).toBeNull();
    expect(found.topM).toBeNull();
    expect(found.confidenceAtMost).toBeGreaterThan(found.confidenceNow);
    expect(found.confidenceAtMost).toBeLessThan(0.9);
    expect(found.text).toContain('No permissible crown reduction');
    // 30 % of the foliage, by volume, is 11.2 % of height and spread.
    expect(found.mostShare).toBeCloseTo(0.112, 3);
  });
});
