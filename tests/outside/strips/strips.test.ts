/**
 * Four photos by make_strips.py, of tuning styles and known to be read well, kept in photos/ so that reading them needs no Python:
 * `make_strips.py photos --style NAME --count 1 --seed SEED --long 1200`. And the judge itself on lines wrong on purpose.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { decodePhoto } from '../../../apps/command/src/strip/photo.ts';
import type { StripLine } from '../../../packages/engine/src/strip/index.ts';
import { isConfidentlyWrong, isNear, judgeStrip, lineScore, type StripTruth, TRUSTED } from './judge.ts';

const DEPTH_MM = 0.5;
const LEVEL_PCT = 2;
const STEADY_PCT = 1;
/** Where axes end is told by the middles of numbers a few pixels high. */
const AXES_PX = 5;

const photo = (name: string) => new URL(`photos/${name}`, import.meta.url);
const truthOf = (name: string) => JSON.parse(readFileSync(photo(`${name}.json`), 'utf8')) as StripTruth;

describe('photos made apart', () => {
  it.each(['framed-ticks-501', 'right-to-left-503', 'upright-strip-503'])('%s', async (name) => {
    const truth = truthOf(name);
    const image = await decodePhoto(readFileSync(photo(`${name}.jpg`)), name);
    const verdict = judgeStrip(image, truth);
    expect(isNear(verdict)).toBe(true);
    expect(verdict).toMatchObject({ depthNumbers: 'right', levelNumbers: 'right', alone: 'right' });
    expect(verdict.tapsMm).toBeLessThan(
      0.01 * Math.abs(truth.charts[0]!.depthMm[1] - truth.charts[0]!.depthMm[0]),
    );
    for (const line of [verdict.given!, verdict.foundLine!]) {
      expect(line.depthMm!).toBeLessThan(DEPTH_MM);
      expect(line.levelPct).toBeLessThan(LEVEL_PCT);
      expect(line.steadyPct).toBeLessThan(STEADY_PCT);
      expect(line.read).toBeGreaterThan(0.98);
      expect(line.invented).toBeLessThan(0.01);
      expect(isConfidentlyWrong(line)).toBe(false);
    }
  });
});

it('finds a chart of two axes on a form with a border by its numbers, and asks for a check of it', async () => {
  const truth = truthOf('field-sheet-502');
  const name = 'field-sheet-502.jpg';
  const verdict = judgeStrip(await decodePhoto(readFileSync(photo(name)), name), truth);
  expect(verdict.found).toMatchObject({ chart: 'right' });
  expect(verdict.found!.offPx).toBeLessThan(AXES_PX);
  expect(verdict.found!.sure).toBeLessThan(TRUSTED);
  expect(verdict.alone).toBe('right');
  expect(verdict.foundLine!.levelPct).toBeLessThan(LEVEL_PCT);
});

describe('the judge', () => {
  const truth = truthOf('framed-ticks-501').charts[0]!.lines;
  const drawn = truth[0]!;

  /** The true line as if read, with depths and levels changed and what is not wanted left out. */
  function read(change: (depth: number, level: number) => [number, number], keep = (_: number) => true) {
    const kept = drawn.depthMm.flatMap((d, i) => (keep(d) ? [change(d, drawn.levelPct[i]!)] : []));
    return {
      depthMm: Float64Array.from(kept, ([d]) => d),
      resistancePct: Float64Array.from(kept, ([, level]) => level),
      sure: 0.9,
    } as StripLine;
  }
  const same = (depth: number, level: number): [number, number] => [depth, level];

  it('finds no fault in the truth', () => {
    const score = lineScore(read(same), truth);
    expect(score.depthMm).toBeLessThan(0.02);
    expect(score.levelPct).toBeLessThan(0.5);
    expect(score).toMatchObject({ wrong: 0, read: 1, invented: 0 });
  });

  it('tells a shift in depth', () => {
    expect(
      lineScore(
        read((d, level) => [d + 1.5, level]),
        truth,
      ).depthMm,
    ).toBeCloseTo(1.5, 1);
  });

  it('tells a level that is off, and calls it confidently wrong', () => {
    const score = lineScore(
      read((d, level) => [d, level + 7]),
      truth,
    );
    expect(score.levelPct).toBeCloseTo(7, 1);
    expect(isConfidentlyWrong(score)).toBe(true);
  });

  it('tells what was not read and what was invented', () => {
    const middle = drawn.depthMm.at(-1)! / 2;
    expect(
      lineScore(
        read(same, (d) => d < middle),
        truth,
      ).read,
    ).toBeCloseTo(0.5, 2);
    const gapped = [{ ...drawn, gapsMm: [[middle, middle + 42]] as [number, number][] }];
    expect(lineScore(read(same), gapped).invented).toBeCloseTo(40 / (2 * middle), 2);
  });
});
