import { describe, expect, it } from 'vitest';
import { between, clampWindow, traceWindow, zoomWindow } from './traceWindow.ts';

const n = 20_000;
const depthMm = Float64Array.from({ length: n }, (_, i) => i * 0.02);
const resistancePct = Float64Array.from({ length: n }, () => 20);
resistancePct[7_777] = 95;
const whole = { depthMm: [0, 200, 400], lowPct: [0, 0, 0], highPct: [0, 0, 0], frictionPct: [0, 2, 6] };

describe('a stretch of a trace', () => {
  it('loses no spike, however few the columns', () => {
    const drawn = traceWindow({ depthMm, resistancePct }, whole, 0, 400, 300);
    expect(drawn.depthMm.length).toBeLessThanOrEqual(302);
    expect(Math.max(...drawn.highPct)).toBe(95);
    expect(Math.min(...drawn.lowPct)).toBe(20);
  });

  it('shows single samples where there are fewer than columns, and reaches the edges', () => {
    const drawn = traceWindow({ depthMm, resistancePct }, whole, 100, 101, 300);
    expect(drawn.depthMm.length).toBeGreaterThanOrEqual(50);
    expect(drawn.depthMm[0]).toBeLessThanOrEqual(100);
    expect(drawn.depthMm.at(-1)).toBeGreaterThanOrEqual(101);
    expect(drawn.frictionPct[0]).toBeCloseTo(1, 1);
  });

  it('reads a table between its rows and flat beyond', () => {
    expect(between([0, 10], [1, 3], 5)).toBe(2);
    expect(between([0, 10], [1, 3], -5)).toBe(1);
    expect(between([0, 10], [1, 3], 50)).toBe(3);
    expect(between([], [], 1)).toBe(0);
  });

  it('zooms about a depth and stays within the trace', () => {
    expect(zoomWindow([0, 400], 2, 100)).toEqual([50, 250]);
    expect(clampWindow([-50, 100], [0, 400])).toEqual([0, 150]);
    expect(clampWindow([390, 500], [0, 400])).toEqual([290, 400]);
    expect(clampWindow([100, 101], [0, 400])).toEqual([100, 105]);
    expect(clampWindow([-100, 900], [0, 400])).toEqual([0, 400]);
  });
});
