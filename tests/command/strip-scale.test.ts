/** How a strip comes by its scale, from photo to table through the real command, and how near the table is to the truth. */
import { readFileSync, writeFileSync } from 'node:fs';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { CLEAN, type Laid, type LaidStrip, laidStrip, offTruth } from '../pictures/laidStrip.ts';
import { buildCommand, standfast, temporaryFolder } from './standfast.ts';

beforeAll(buildCommand, 120_000);

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

const LEVEL = [0, 100];
/** Scales found or worked out from points may be off by a hair: share of the chart's length. */
const ENDS_MM = 0.3;

/** Reads the photo through the command and holds the table it writes against the truth. */
function expectTrue(strip: LaidStrip, chart: unknown, scaleFrom: string) {
  writeFileSync(folder.at('strip.jpg'), strip.jpeg);
  const args = ['strip', folder.at('strip.jpg'), '--csv', folder.at('out.csv'), '--json'];
  if (chart) {
    writeFileSync(folder.at('chart.json'), JSON.stringify(chart));
    args.push('--chart', folder.at('chart.json'));
  }
  const ran = standfast(args);
  expect(ran).toMatchObject({ status: 0, err: '' });
  const document = JSON.parse(ran.out);
  expect(document.chart.scaleFrom).toBe(scaleFrom);
  expect(Math.abs(document.chart.depthMm[0] - strip.depthMm[0])).toBeLessThan(ENDS_MM);
  expect(Math.abs(document.chart.depthMm[1] - strip.depthMm[1])).toBeLessThan(ENDS_MM);
  const rows = readFileSync(folder.at('out.csv'), 'utf8')
    .split('\n')
    .filter((line) => /^[\d.]/.test(line))
    .map((line) => line.split(',').map(Number));
  const read = { depthMm: rows.map(([depth]) => depth!), resistance: rows.map(([, level]) => level!) };
  expect(read.depthMm.every((depth, i) => i === 0 || depth > read.depthMm[i - 1]!)).toBe(true);
  const off = offTruth(read, strip.trace);
  expect(off.depthMm).toBeLessThanOrEqual(CLEAN.depthMm);
  expect(off.levelPct).toBeLessThanOrEqual(CLEAN.levelPct);
  expect(read.depthMm.at(-1)! - read.depthMm[0]!).toBeGreaterThan(0.95 * strip.trace.depthMm.at(-1)!);
  return document;
}

describe.each<Laid>(['left to right', 'right to left', 'upright'])('a chart drawn %s', (laid) => {
  it('has all of it from its printed numbers, with nothing said', () => {
    expectTrue(laidStrip(laid, { numbers: true }), null, 'printed numbers');
  });

  it('has it from the depths at its edges', () => {
    const strip = laidStrip(laid);
    expectTrue(strip, { cornersPx: strip.cornersPx, depthMm: strip.depthMm, resistance: LEVEL }, 'given');
  });

  it('has it from a ruler laid along it, wherever the ruler begins', () => {
    const strip = laidStrip(laid, { ruler: true });
    // Marks as a finger sets them: half a pixel off.
    const px = [strip.rulerAt(20), strip.rulerAt(200)].map(([x, y]) => [x + 0.5, y - 0.5]);
    const startsAt = laid === 'right to left' ? 'right' : 'left';
    expectTrue(
      strip,
      { cornersPx: strip.cornersPx, resistance: LEVEL, ruler: { px, distanceMm: 180, startsAt } },
      'ruler',
    );
  });
});

it('has it from two points of known depth beside the chart, its corners found', () => {
  const strip = laidStrip('left to right', { ruler: true });
  // The ruler's zero lies 7.5 mm into the chart.
  const taps = [
    { px: strip.rulerAt(10), depthMm: 17.5 },
    { px: strip.rulerAt(190), depthMm: 197.5 },
  ];
  const { chart } = expectTrue(strip, { resistance: LEVEL, taps }, 'taps');
  expect(chart.from).not.toBe('given');
});

it('is asked which end is its top where an upright chart has no numbers', () => {
  const strip = laidStrip('upright');
  writeFileSync(folder.at('strip.jpg'), strip.jpeg);
  writeFileSync(folder.at('chart.json'), JSON.stringify({ depthMm: [0, 240], resistance: LEVEL }));
  const ran = standfast(['strip', folder.at('strip.jpg'), '--chart', folder.at('chart.json')]);
  expect(ran).toMatchObject({ status: 1, out: '' });
  expect(ran.err).toMatch(/lies on its side, and which end is its top is not known/);
});

it('is told once, and shown in words', () => {
  const strip = laidStrip('left to right', { ruler: true });
  const ruler = { px: [strip.rulerAt(20), strip.rulerAt(200)], distanceMm: 180 };
  writeFileSync(folder.at('strip.jpg'), strip.jpeg);
  const chart = folder.at('chart.json');
  writeFileSync(chart, JSON.stringify({ depthMm: [0, 240], resistance: LEVEL, ruler }));
  const twice = standfast(['strip', folder.at('strip.jpg'), '--chart', chart]);
  expect(twice).toMatchObject({ status: 1, out: '' });
  expect(twice.err).toMatch(/depth is told twice, by depthMm and ruler/);
  writeFileSync(chart, JSON.stringify({ resistance: LEVEL, ruler }));
  const once = standfast(['strip', folder.at('strip.jpg'), '--chart', chart]);
  expect(once.out.replace(/\s+/g, ' ')).toMatch(
    /Scale by two points a known distance apart: depth 0\.0 mm at its left edge to 240\.\d mm at its right/,
  );
  expect(once.out).toMatch(/Photo sha256 [0-9a-f]{64}/);
});
