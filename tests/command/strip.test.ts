/** `standfast strip` as a person runs it: photo and chart file to a table that `zones` reads, and each bad input. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { encodePng } from '../../apps/command/src/strip/photo.ts';
import { randomFrom } from '../../packages/engine/src/random.ts';
import { invented } from '../simulated/strips/judge.ts';
import { packJpeg, photograph } from '../simulated/strips/photograph.ts';
import { type PrintStyle, printStrip } from '../simulated/strips/printStrip.ts';
import { TUNING_STYLES } from '../simulated/strips/styles.ts';
import { buildCommand, type Ran, standfast, temporaryFolder } from './standfast.ts';

beforeAll(buildCommand, 120_000);

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

const SEED = 5;
const WIDTH_PX = 900;
const QUALITY = 90;
const trace = invented(randomFrom(SEED), SEED);
const lengthMm = Math.ceil(trace.depthMm.at(-1)! / 10 + 0.5) * 10;
const style = TUNING_STYLES[0]!;
const printed: PrintStyle = style.print(randomFrom(SEED), trace);
const taken = (labels: boolean) =>
  photograph(
    printStrip(trace, lengthMm, { ...printed, labels }, SEED),
    { ...style.camera(randomFrom(SEED)), widthPx: WIDTH_PX },
    SEED,
  );
const photo = taken(false);
const chart = { cornersPx: photo.cornersPx, depthMm: [0, lengthMm], resistance: [0, 100] };
const jpegBytes = packJpeg(photo.image, QUALITY);

/** Writes a photo and a chart file. */
function written(chartJson: unknown = chart, bytes: Uint8Array = jpegBytes): [string, string] {
  writeFileSync(folder.at('strip.jpg'), bytes);
  writeFileSync(folder.at('chart.json'), JSON.stringify(chartJson));
  return [folder.at('strip.jpg'), folder.at('chart.json')];
}

function expectFault(ran: Ran, ...named: RegExp[]): void {
  expect(ran).toMatchObject({ status: 1, out: '' });
  for (const one of named) expect(ran.err).toMatch(one);
  expect(ran.err).not.toMatch(/\n\s+at .*:\d+:\d+|a fault of this program/);
}

describe('a strip', () => {
  it('becomes a table that zones reads, and a picture to check it by', () => {
    const [file, chartFile] = written();
    const csv = folder.at('out.csv');
    const overlay = folder.at('out.png');
    const ran = standfast([
      'strip',
      file,
      '--chart',
      chartFile,
      '--csv',
      csv,
      '--overlay',
      overlay,
      '--json',
    ]);
    expect(ran).toMatchObject({ status: 0, err: '' });
    const document = JSON.parse(ran.out);
    expect(document.photo.sha256).toMatch(/^[0-9a-f]{64}$/);
    expect(document.chart).toMatchObject({ from: 'given', sure: 1, scaleFrom: 'given' });
    const lines = readFileSync(csv, 'utf8').trim().split('\n');
    expect(lines.find((line) => !line.startsWith('#'))).toBe('depth_mm,resistance,confidence');
    expect(lines.filter((line) => /^[\d.]/.test(line))).toHaveLength(document.trace.depthMm.length);
    expect(readFileSync(overlay).subarray(1, 4).toString()).toBe('PNG');
    const zones = standfast(['zones', csv, '--json']);
    expect(zones.status).toBe(0);
    const kinds = JSON.parse(zones.out).zones.map((zone: { kind: string }) => zone.kind);
    expect(kinds).toContain('void');
  });

  it('is found without corners, and says how sure', () => {
    const { depthMm, resistance } = chart;
    const [file, chartFile] = written({ depthMm, resistance });
    const ran = standfast(['strip', file, '--chart', chartFile, '--json']);
    expect(ran.status).toBe(0);
    const { chart: found } = JSON.parse(ran.out);
    expect(found.sure).toBeGreaterThan(0.5);
    found.cornersPx.forEach(([x, y]: [number, number], i: number) => {
      expect(Math.hypot(x - chart.cornersPx[i]![0], y - chart.cornersPx[i]![1])).toBeLessThan(2);
    });
  });

  it('is turned as the camera was held', async () => {
    const [file] = written(chart, withOrientation(jpegBytes, 6));
    const { widthPx, heightPx } = photo.image;
    // Stored on its side, shown a quarter turn clockwise: stored (x, y) is shown at (height - 1 - y, x).
    const cornersPx = photo.cornersPx.map(([x, y]) => [heightPx - 1 - y, x]);
    writeFileSync(folder.at('turned.json'), JSON.stringify({ ...chart, cornersPx }));
    const ran = standfast(['strip', file, '--chart', folder.at('turned.json'), '--json']);
    expect(ran.status).toBe(0);
    expect(JSON.parse(ran.out).photo.sizePx).toEqual([heightPx, widthPx]);
  });

  it('has its scale from the numbers printed on it', async () => {
    writeFileSync(folder.at('strip.png'), await encodePng(taken(true).image));
    const ran = standfast(['strip', folder.at('strip.png'), '--json']);
    expect(ran).toMatchObject({ status: 0, err: '' });
    const document = JSON.parse(ran.out);
    expect(document.chart).toMatchObject({ ...chart, cornersPx: document.chart.cornersPx });
    expect(document.chart.scaleFrom).toBe('printed numbers');
    expect(document.warnings.join()).toMatch(/printed numbers/);
  });

  it('may be a PNG', async () => {
    const [, chartFile] = written();
    writeFileSync(folder.at('strip.png'), await encodePng(photo.image));
    const ran = standfast(['strip', folder.at('strip.png'), '--chart', chartFile]);
    expect(ran.status).toBe(0);
    expect(ran.out).toMatch(/Nothing was written/);
  });
});

describe('bad input', () => {
  it('asks for the scale, telling what it found', () => {
    const [file] = written();
    const ran = standfast(['strip', file, '--json']);
    expect(ran.status).toBe(1);
    expect(ran.err).toMatch(/scale is missing.*depths in mm.*cornersPx/);
    expect(JSON.parse(ran.out)).toMatchObject({ trace: null, missing: ['depthMm', 'resistance'] });
  });

  it.each<[string, unknown, RegExp]>([
    ['crossed corners', { ...chart, cornersPx: [0, 2, 1, 3].map((i) => chart.cornersPx[i]) }, /crossed/],
    [
      'corners outside',
      { ...chart, cornersPx: [[-500, 0], ...chart.cornersPx.slice(1)] },
      /outside the photo/,
    ],
    ['a scale of words', { ...chart, depthMm: ['0', '300'] }, /depthMm: give two numbers/],
    ['a chart that is a list', [1, 2], /chart.json: a chart file is an object/],
  ])('refuses %s', (_, chartJson, message) => {
    const [file, chartFile] = written(chartJson);
    expectFault(standfast(['strip', file, '--chart', chartFile, '--csv', folder.at('o.csv')]), message);
    expect(existsSync(folder.at('o.csv'))).toBe(false);
  });

  it.each<[string, Uint8Array, RegExp]>([
    ['a broken-off JPEG', jpegBytes.subarray(0, jpegBytes.length >> 1), /damaged or broken off/],
    ['an empty file', new Uint8Array(0), /empty/],
    ['a text', new TextEncoder().encode('depth_mm,resistance\n1,2\n'), /no picture/],
    ['a HEIC picture', new TextEncoder().encode('\0\0\0 ftypheic\0\0\0\0'), /HEIC.*JPEG or PNG/],
    ['200 megapixels', hugePng(), /200 megapixels/],
  ])('refuses %s', (_, bytes, message) => {
    const [file, chartFile] = written(chart, bytes);
    expectFault(standfast(['strip', file, '--chart', chartFile]), /strip\.jpg/, message);
  });

  it('refuses one pixel, and to write over the photo', async () => {
    const [file, chartFile] = written();
    writeFileSync(
      folder.at('one.png'),
      await encodePng({ widthPx: 1, heightPx: 1, rgba: new Uint8Array([0, 0, 0, 255]) }),
    );
    expectFault(standfast(['strip', folder.at('one.png'), '--chart', chartFile]), /too small/);
    expectFault(standfast(['strip', file, '--chart', chartFile, '--csv', file]), /overwrite the input/);
    expectFault(standfast(['strip', file, '--chart', chartFile, '--line', '9']), /no line 9/);
  });

  it('refuses options that contradict each other as wrong usage', () => {
    const [file, chartFile] = written();
    const out = folder.at('same');
    const ran = standfast(['strip', file, '--chart', chartFile, '--csv', out, '--overlay', out]);
    expect(ran).toMatchObject({ status: 2, out: '' });
    expect(standfast(['strip', file, '--line', 'two'])).toMatchObject({ status: 2, out: '' });
  });
});

/** The JPEG with an EXIF segment that holds nothing but the orientation. */
function withOrientation(bytes: Uint8Array, orientation: number): Uint8Array {
  const exif = Uint8Array.of(
    ...[0xff, 0xe1, 0, 34, 0x45, 0x78, 0x69, 0x66, 0, 0],
    ...[0x4d, 0x4d, 0, 0x2a, 0, 0, 0, 8, 0, 1],
    ...[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0],
    ...[0, 0, 0, 0],
  );
  return Uint8Array.of(...bytes.subarray(0, 2), ...exif, ...bytes.subarray(2));
}

/** A PNG's head that claims 20,000 × 10,000 pixels. */
function hugePng(): Uint8Array {
  const bytes = new Uint8Array(64);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  new DataView(bytes.buffer).setUint32(16, 20_000);
  new DataView(bytes.buffer).setUint32(20, 10_000);
  return bytes;
}
