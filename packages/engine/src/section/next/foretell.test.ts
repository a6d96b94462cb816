import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../random.ts';
import { leftAfter, margins, NEAR, scores, told } from './foretell.ts';

const DRAWS = 4000;
const random = randomFrom(11);
const uniform = () => Float64Array.from({ length: DRAWS }, () => random.uniform());

describe('what an answer foretells', () => {
  it('scores by an answer that decides', () => {
    const answer = uniform();
    const margin = answer.map((a) => 2 * a - 1);
    const score = scores([answer], 1, margin)[0]!;
    // The ridge draws slopes toward nought by about two draws in the half of them.
    for (let i = 0; i < DRAWS; i += 97) expect(Math.abs(score[i]! - margin[i]!)).toBeLessThan(0.02);
  });

  it('scores several kinds of margins as it scores each alone', () => {
    const [a, b] = [uniform(), uniform()];
    const squares = a.map((x, i) => x * x + b[i]!);
    const both = scores([a], 1, b, squares);
    expect(both).toEqual([scores([a], 1, b)[0], scores([a], 1, squares)[0]]);
    expect(both[0]).not.toEqual(both[1]);
  });

  it('puts the answers of two needles together', () => {
    const [a, b] = [uniform(), uniform()];
    const margin = a.map((x, i) => x + b[i]! - 1);
    const [alone, both] = [scores([a], 1, margin)[0]!, scores([a, b], 1, margin)[0]!];
    const missed = (score: Float64Array) =>
      score.reduce((sum, s, i) => sum + (s - margin[i]!) ** 2, 0) / DRAWS;
    // Alone, what is missed is the spread of the other: 1/12.
    expect(missed(alone)).toBeCloseTo(1 / 12, 2);
    expect(missed(both)).toBeLessThan(1e-4);
  });

  it('says what share of the margins an answer tells', () => {
    const [a, b, noise] = [uniform(), uniform(), uniform()];
    const margin = a.map((x, i) => x + b[i]! - 1);
    expect(told(scores([a], 1, margin)[0]!, margin)).toBeCloseTo(0.5, 1);
    expect(told(scores([a, b], 1, margin)[0]!, margin)).toBeGreaterThan(0.999);
    expect(told(scores([noise], 1, margin)[0]!, margin)).toBeLessThan(0.01);
    expect(told(new Float64Array(4), new Float64Array(4).fill(2))).toBe(0);
  });

  it('learns nothing from answers that have nothing to do with it', () => {
    const fails = Uint8Array.from(uniform(), (x) => (x < 0.3 ? 1 : 0));
    const margin = Float64Array.from(fails, (f) => (f ? -1 : 1));
    const noise = Float64Array.from({ length: 10 * DRAWS }, () => random.uniform());
    const left = leftAfter(scores([noise], 10, margin)[0]!, fails, 1);
    const failing = fails.reduce((sum, f) => sum + f, 0) / DRAWS;
    expect(left.wrong).toBeCloseTo(failing, 2);
    expect(left.doubt / (failing * (1 - failing))).toBeCloseTo(1, 1);
    expect(left.doubt).toBeGreaterThan(0.985 * failing * (1 - failing));
  });

  it('leaves nothing when the score decides, but for the class in which the decision turns', () => {
    const score = uniform();
    const fails = Uint8Array.from(score, (s) => (s < 0.25 ? 1 : 0));
    const ten = leftAfter(score, fails, 1);
    expect(ten.wrong).toBeGreaterThan(0.03);
    expect(ten.wrong).toBeLessThan(0.07);
    expect(leftAfter(score, fails, 1, 40).wrong).toBeLessThan(0.02);
  });

  it('leaves the doubt that wind and wood make', () => {
    // In one half of the sections 9 of 10 fail, in the other 1 of 10: known, one is wrong in 1 of 10.
    const weak = Float64Array.from(uniform(), (x) => (x < 0.5 ? 0 : 1));
    const fails = Uint8Array.from(weak, (w) => (random.uniform() < (w ? 0.1 : 0.9) ? 1 : 0));
    const left = leftAfter(weak, fails, 1);
    expect(left.wrong).toBeCloseTo(0.1, 1);
    expect(left.doubt).toBeCloseTo(0.09, 1);
  });

  it('has nothing to decide when another thing calls for acting anyway', () => {
    const score = uniform();
    const fails = Uint8Array.from(score, (s) => (s < 0.5 ? 1 : 0));
    expect(leftAfter(score, fails, 0)).toEqual({ wrong: 0, doubt: 0 });
  });

  it('takes the section alone, steep at the limit and flat far from it', () => {
    const safetyOfSection = Float64Array.from([0.75, 1.5, 3, 30]);
    const [low, at, high, far] = margins(
      { safetyOfSection, safetyByDraw: safetyOfSection },
      1.5,
      4,
      NEAR.toDecide,
    );
    expect(at).toBe(0);
    expect(low).toBeCloseTo(-high!, 12);
    expect(far! - high!).toBeLessThan(0.01);
    const scattered = Float64Array.from([1.5, 0.75, 6, 15]);
    // The more wind and wood scatter, the farther from the limit the section still matters.
    expect(margins({ safetyOfSection, safetyByDraw: scattered }, 1.5, 4, NEAR.toDecide)[2]!).toBeLessThan(
      0.8 * high!,
    );
  });
});
