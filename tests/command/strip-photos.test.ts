/** Photos of strips in every format a phone, scanner or print shop hands over, and photos that show no strip. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import encodeWebp, { init as initWebp } from '@jsquash/webp/encode.js';
import type { StripImage } from '@standfast/engine';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { encodePng, turned } from '../../apps/command/src/strip/photo.ts';
import { randomFrom } from '../../packages/engine/src/random.ts';
import { cmykJpeg, greyJpeg, progressiveJpeg } from '../pictures/jpegKinds.ts';
import { CLEAN, laidStrip, offTruth } from '../pictures/laidStrip.ts';
import { deepPng, seeThrough } from '../pictures/pngKinds.ts';
import { taggedPng } from '../pictures/taggedPhoto.ts';
import { buildCommand, type Ran, standfast, temporaryFolder } from './standfast.ts';

let webp: Uint8Array;
beforeAll(async () => {
  buildCommand();
  const code = createRequire(import.meta.url).resolve('@jsquash/webp/codec/enc/webp_enc.wasm');
  await initWebp(await WebAssembly.compile(readFileSync(code)));
  const { widthPx: width, heightPx: height, rgba } = strip.image;
  const data = new Uint8ClampedArray(rgba);
  webp = new Uint8Array(await encodeWebp({ width, height, data, colorSpace: 'srgb' }, { quality: 85 }));
}, 120_000);

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

const strip = laidStrip('left to right', { numbers: true });
const chart = { cornersPx: strip.cornersPx, depthMm: strip.depthMm, resistance: [0, 100] };

function read(bytes: Uint8Array, chartJson: unknown = null): Ran {
  writeFileSync(folder.at('strip'), bytes);
  writeFileSync(folder.at('chart.json'), JSON.stringify(chartJson));
  const given = chartJson ? ['--chart', folder.at('chart.json')] : [];
  return standfast(['strip', folder.at('strip'), ...given, '--csv', folder.at('out.csv'), '--json']);
}

describe('a strip is read to the truth from', () => {
  it.each<[string, () => Uint8Array | Promise<Uint8Array>]>([
    ['a WebP', () => webp],
    ['a progressive JPEG', () => progressiveJpeg(strip.image)],
    ['a grey JPEG', () => greyJpeg(strip.image)],
    ['a CMYK JPEG', () => cmykJpeg(strip.image)],
    ['a PNG of 16 bits', () => deepPng(strip.image)],
    ['a PNG with see-through paper', () => encodePng(seeThrough(strip.image))],
    ['a PNG tagged as upside down', async () => taggedPng(await encodePng(turned(strip.image, 3)), 3)],
    ['a PNG tagged as lying on its side', async () => taggedPng(await encodePng(turned(strip.image, 8)), 6)],
  ])('%s', async (_, made) => {
    const ran = read(await made());
    expect(ran).toMatchObject({ status: 0, err: '' });
    const { chart: found, trace } = JSON.parse(ran.out);
    expect(found).toMatchObject({ depthMm: strip.depthMm, scaleFrom: 'printed numbers' });
    // Upright, the chart lies where it was laid; a photo taken as it is stored would have it elsewhere.
    for (const [i, [x, y]] of strip.cornersPx.entries()) {
      expect(Math.hypot(found.cornersPx[i][0] - x, found.cornersPx[i][1] - y)).toBeLessThan(3);
    }
    const off = offTruth(trace, strip.trace);
    expect(off.depthMm).toBeLessThanOrEqual(CLEAN.depthMm);
    expect(off.levelPct).toBeLessThanOrEqual(CLEAN.levelPct);
  });
});

const random = randomFrom(8);
const paper = () => 236 + 4 * random.normal();
const painted = (grey: (x: number, y: number) => number, widthPx = 700, heightPx = 260): StripImage => {
  const rgba = new Uint8ClampedArray(4 * widthPx * heightPx).fill(255);
  for (let k = 0; k < widthPx * heightPx; k++) {
    rgba.fill(grey(k % widthPx, Math.floor(k / widthPx)), 4 * k, 4 * k + 3);
  }
  return { widthPx, heightPx, rgba };
};
/** A chart's frame and grid, 40 pixels within the photo. */
const onChart = (x: number, y: number) =>
  x >= 40 &&
  x <= 660 &&
  y >= 40 &&
  y <= 220 &&
  ((x - 40) % 62 < 2 || (y - 40) % 45 < 2 || x > 658 || y > 218);
const around = {
  ...chart,
  cornersPx: [
    [40, 40],
    [660, 40],
    [660, 220],
    [40, 220],
  ],
};

describe('no trace is made of', () => {
  it.each<[string, () => Uint8Array | Promise<Uint8Array>, unknown, RegExp]>([
    ['blank paper', () => encodePng(painted(paper)), null, /no frame or grid of a chart was found/],
    ['blank paper with corners set', () => encodePng(painted(paper)), around, /no line of a pen was found/],
    [
      'a chart without a line',
      () => encodePng(painted((x, y) => (onChart(x, y) ? 70 : paper()))),
      around,
      /no line of a pen was found/,
    ],
    [
      'an all black photo',
      () => encodePng(painted(() => 0)),
      around,
      /all black: photograph it in more light/,
    ],
    [
      'an all black photo, nothing said',
      () => encodePng(painted(() => 0)),
      null,
      /no frame or grid of a chart was found/,
    ],
    [
      'bark',
      () => encodePng(painted((x, y) => 110 + 60 * Math.sin(x / 7 + 4 * Math.sin(y / 60)))),
      null,
      /no frame or grid|sure to \d+ % only|no line of a pen/,
    ],
    ['one pixel', () => encodePng(painted(() => 0, 1, 1)), around, /1 × 1 pixels, too small/],
    [
      'a JPEG broken off',
      () => strip.jpeg.subarray(0, strip.jpeg.length >> 1),
      chart,
      /JPEG is damaged or broken off/,
    ],
    ['a JPEG broken off, its end put back', () => mended(strip.jpeg), chart, /JPEG is damaged or broken off/],
    ['a WebP broken off', () => webp.subarray(0, webp.length >> 1), chart, /WebP is damaged or broken off/],
    [
      'a PNG broken off',
      async () => (await encodePng(strip.image)).subarray(0, 9000),
      chart,
      /PNG is damaged or broken off/,
    ],
    [
      'a progressive JPEG broken off',
      () => progressiveJpeg(strip.image).subarray(0, 9000),
      chart,
      /JPEG is damaged or broken off/,
    ],
    ['a WebP of 200 megapixels', hugeWebp, chart, /\d{3} megapixels, and 100 can be read/],
    ['a JPEG of 200 megapixels', () => hugeJpeg(strip.jpeg), chart, /200 megapixels, and 100 can be read/],
    [
      'a chart with its corners crossed',
      () => strip.jpeg,
      { ...chart, cornersPx: [0, 2, 1, 3].map((i) => strip.cornersPx[i]) },
      /corners are crossed/,
    ],
    [
      'a chart whose level nobody knows',
      () => laidStrip('left to right').jpeg,
      { depthMm: chart.depthMm },
      /scale is missing: give the resistance in percent/,
    ],
  ])('%s', async (_, made, chartJson, message) => {
    const ran = read(await made(), chartJson);
    expect(ran.status).toBe(1);
    expect(ran.err).toMatch(/^standfast: /);
    expect(ran.err.replace(/\s+/g, ' ')).toMatch(message);
    expect(ran.err).not.toMatch(/\n\s+at .*:\d+:\d+|a fault of this program/);
    if (ran.out !== '') expect(JSON.parse(ran.out).trace).toBeNull();
    expect(existsSync(folder.at('out.csv'))).toBe(false);
  });
});

/** Half of a JPEG with the end marker behind it, as a card reader leaves it that fills in what it lost. */
function mended(bytes: Uint8Array): Uint8Array {
  return Uint8Array.of(...bytes.subarray(0, bytes.length >> 1), 0xff, 0xd9);
}

/** A WebP's head that claims 16,000 × 12,500 pixels, the most of its kind being 16,383 a side. */
function hugeWebp(): Uint8Array {
  const bytes = webp.slice();
  new DataView(bytes.buffer).setUint16(26, 16_000, true);
  new DataView(bytes.buffer).setUint16(28, 12_500, true);
  return bytes;
}

/** The JPEG with a frame header that claims 20,000 × 10,000 pixels. */
function hugeJpeg(jpeg: Uint8Array): Uint8Array {
  const bytes = jpeg.slice();
  const frame = bytes.findIndex((byte, i) => byte === 0xff && bytes[i + 1] === 0xc0);
  new DataView(bytes.buffer).setUint16(frame + 5, 10_000);
  new DataView(bytes.buffer).setUint16(frame + 7, 20_000);
  return bytes;
}
