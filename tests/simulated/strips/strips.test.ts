/** Simulated strips read within the bounds the project has set itself; the whole study is `npm run accuracy strips`. */
import { describe, expect, it } from 'vitest';
import { InputFault } from '../../../packages/engine/src/faults.ts';
import { randomFrom } from '../../../packages/engine/src/random.ts';
import { readStrip, settleChart } from '../../../packages/engine/src/strip/index.ts';
import type { CornersPx, StripImage } from '../../../packages/engine/src/strip/types.ts';
import { judgeStrip } from './judge.ts';
import { JUDGING_STYLES, TUNING_STYLES } from './styles.ts';

/** What a strip must be read to: design, "How good it must be". */
const CLEAN = { depthMm: 0.5, levelPct: 1 };
const HARD = { depthMm: 1, levelPct: 2 };
/** Zones of the read trace and of the true one differ only next to edges, by the pen's width. */
const ZONES_AGREE = 0.9;
/** Corners are found where lines run, which a blurred photo shows to a fraction of a pixel. */
const CORNERS_PX = 2;
/** A whole frame with a line in it leaves little doubt. */
const SURE = 0.75;
/** A gap's ends are told to the pen's width. */
const LEFT_OUT = 0.95;
const WIDTH_PX = 1000;
const SEED = 17;

describe.each(['black on orange', 'written over', 'carbon grey'])('%s', (name) => {
  const style = JUDGING_STYLES.find((each) => each.name === name)!;
  it('is read to depth, level and zones', () => {
    const { score } = judgeStrip(style, SEED, false, WIDTH_PX);
    const bounds = style.hard ? HARD : CLEAN;
    expect(score.depthMm).toBeLessThanOrEqual(bounds.depthMm);
    expect(score.levelPct).toBeLessThanOrEqual(bounds.levelPct);
    expect(score.zonesAgree).toBeGreaterThanOrEqual(ZONES_AGREE);
    expect(score.cornersPx).toBeLessThanOrEqual(CORNERS_PX);
  });
});

it.each(['black on sepia', 'form with a table', 'band and bracket', 'tinted ground, bands'])(
  'finds the chart on a sheet with other print: %s',
  (name) => {
    const { score } = judgeStrip(TUNING_STYLES.find((each) => each.name === name)!, SEED, true, WIDTH_PX);
    expect(score.cornersPx).toBeLessThanOrEqual(CORNERS_PX);
    expect(score.cornersSure).toBeGreaterThan(SURE);
  },
);

it.each([10, 12, 28])(
  'reads on to where the pen stopped, after a hollow along the frame: seed %i',
  (seed) => {
    const style = TUNING_STYLES.find(({ name }) => name === 'long chart, red on grey')!;
    const { score } = judgeStrip(style, seed, true, WIDTH_PX);
    expect(score.read).toBeGreaterThan(0.97);
    expect(score.invented).toBe(0);
  },
);

it('leaves gaps out and offers both of two lines', () => {
  const lifts = judgeStrip(JUDGING_STYLES.find((each) => each.name === 'pen lifts')!, SEED, true, WIDTH_PX);
  const end = lifts.line.depthMm.at(-1)!;
  expect(lifts.line.gapsMm.filter(([a, b]) => b - a > 5 && b < end)).toHaveLength(2);
  expect(lifts.score.invented).toBe(0);
  expect(lifts.score.gapsLeftOut).toBeGreaterThan(LEFT_OUT);
  expect(lifts.score.zonesAgree).toBeGreaterThanOrEqual(ZONES_AGREE);
  const two = judgeStrip(JUDGING_STYLES.find((each) => each.name === 'two drillings')!, SEED, true, WIDTH_PX);
  expect(two.reading.lines.length).toBeGreaterThanOrEqual(2);
});

describe('what is no strip gives no trace', () => {
  const corners: CornersPx = [
    [20, 15],
    [580, 15],
    [580, 185],
    [20, 185],
  ];
  const random = randomFrom(SEED);
  const paper = () => 245 + 4 * random.normal();
  const cases: [string, (x: number, y: number) => number][] = [
    ['blank paper', paper],
    ['all black', () => 2],
    ['grain only', () => 180 + 25 * random.normal()],
    ['a chart without a line', (x, y) => ((x - 20) % 40 === 0 || (y - 15) % 34 === 0 ? 60 : paper())],
    ['a checked cloth', (x, y) => (((x >> 5) + (y >> 5)) & 1 ? 30 : 230)],
    ['wood grain', (x, y) => 120 + 70 * Math.sin(y / 9 + 3 * Math.sin(x / 150))],
  ];
  it.each(cases)('%s', (_, grey) => {
    const image = painted(600, 200, grey);
    const chart = { depthMm: [0, 300], resistance: [0, 100] } as const;
    expect(() => readStrip(image, { ...chart, cornersPx: corners })).toThrow(InputFault);
    expect(() => {
      const settled = settleChart(image, chart, { photo: 'photo', chart: 'chart' });
      if (settled.chart) readStrip(image, settled.chart);
    }).toThrow(InputFault);
  });

  it('does not take a band of colour for a chart', () => {
    const image = painted(600, 200, (x, y) => {
      const side = (x === 20 || x === 580) && y >= 15 && y <= 185;
      const edge = (y === 15 || y === 185) && x >= 20 && x <= 580;
      const inside = x > 20 && x < 580 && y > 15 && y < 185;
      return side || edge ? 40 : inside ? 190 : paper();
    });
    const scale = { depthMm: [0, 300], resistance: [0, 100] } as const;
    expect(() => settleChart(image, scale, { photo: 'photo', chart: 'chart' })).toThrow(/sure to \d+ % only/);
  });

  it('asks for the scale', () => {
    const image = painted(600, 200, paper);
    const settled = settleChart(image, { cornersPx: corners, depthMm: [0, 300] }, { photo: 'p', chart: 'c' });
    expect(settled).toMatchObject({ chart: null, missing: ['resistance'] });
  });
});

function painted(widthPx: number, heightPx: number, grey: (x: number, y: number) => number): StripImage {
  const rgba = new Uint8ClampedArray(4 * widthPx * heightPx).fill(255);
  for (let k = 0; k < widthPx * heightPx; k++) {
    rgba.fill(grey(k % widthPx, Math.floor(k / widthPx)), 4 * k, 4 * k + 3);
  }
  return { widthPx, heightPx, rgba };
}
