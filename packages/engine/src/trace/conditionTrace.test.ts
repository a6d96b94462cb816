import { describe, expect, it } from 'vitest';
import { conditionTrace, quantile } from './conditionTrace.ts';

const trace = (depth: number[], level: (x: number) => number) => ({
  depthMm: Float64Array.from(depth),
  resistancePct: Float64Array.from(depth, level),
});
const steps = (toMm: number, spacingMm: number) =>
  Array.from({ length: Math.round(toMm / spacingMm) + 1 }, (_, i) => i * spacingMm);

describe('conditionTrace', () => {
  it('keeps a straight line straight at any spacing', () => {
    for (const spacing of [0.01, 0.1, 0.7, 2]) {
      const c = conditionTrace(trace(steps(100, spacing), (x) => 10 + 0.3 * x));
      // Half a fine step of quantisation in depth, times the slope.
      const tolerance = 0.3 * 0.3;
      c.gridMm.forEach((x, i) => {
        if (x > 2 && x < 97) expect(Math.abs(c.levelPct[i]! - (10 + 0.3 * x))).toBeLessThan(tolerance);
      });
    }
  });

  it('marks what lies in a gap as not read, and nothing of a trace with wide but even spacing', () => {
    const gap = conditionTrace(
      trace(
        steps(100, 0.2).filter((x) => x <= 40 || x >= 52),
        () => 30,
      ),
    );
    const unread = [...gap.gridMm].filter((_, i) => gap.unread[i]);
    expect(unread[0]).toBeCloseTo(40.5, 6);
    expect(unread.at(-1)).toBeCloseTo(51.5, 6);
    expect(unread).toHaveLength(12);
    const wide = conditionTrace(trace(steps(100, 5), () => 30));
    expect(wide.unread.every((cell) => cell === 0)).toBe(true);
  });

  it('takes out a single wild reading but keeps a 1.5 mm crack', () => {
    const spiked = trace(steps(100, 0.1), (x) => 40 + Math.sin(x));
    spiked.resistancePct[500] = 99;
    const c = conditionTrace(spiked);
    expect(c.spikes).toBe(1);
    expect(Math.max(...c.levelPct)).toBeLessThan(42);
    const cracked = conditionTrace(
      trace(steps(100, 0.1), (x) => (x > 50 && x < 51.5 ? 4 : 40 + Math.sin(x))),
    );
    expect(cracked.spikes).toBe(0);
    expect(Math.min(...cracked.finePct)).toBeLessThan(5);
  });

  it('tells the noise of a reading from the signal', () => {
    let state = 7;
    const noise = () => {
      // Sum of twelve uniforms: near normal, standard deviation 1.
      let s = -6;
      for (let i = 0; i < 12; i++) {
        state = (state * 48271) % 2147483647;
        s += state / 2147483647;
      }
      return s;
    };
    const c = conditionTrace(trace(steps(200, 0.05), (x) => 40 + 8 * Math.sin(x) + 2 * noise()));
    expect(c.readingNoisePct).toBeGreaterThan(1.7);
    expect(c.readingNoisePct).toBeLessThan(2.3);
  });

  it('needs memory by depth, not by rows', () => {
    const c = conditionTrace(trace(steps(50, 0.0005), (x) => x));
    expect(c.finePct.length).toBe(200);
  });
});

describe('quantile', () => {
  it('interpolates between order statistics', () => {
    expect(quantile(Float64Array.of(4, 1, 3, 2), 0.5)).toBe(2.5);
    expect(quantile(Float64Array.of(5), 0.9)).toBe(5);
    expect(quantile(new Float64Array(0), 0.5)).toBe(0);
  });
});
