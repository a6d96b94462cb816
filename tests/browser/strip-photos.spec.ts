/** Photos of strips in every format the browser opens, and photos that give no trace, in the real app. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import encodeWebp, { init as initWebp } from '@jsquash/webp/encode.js';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { encodePng } from '../../apps/command/src/strip/photo.ts';
import { cmykJpeg, greyJpeg, progressiveJpeg } from '../pictures/jpegKinds.ts';
import { laidStrip } from '../pictures/laidStrip.ts';
import { deepPng, seeThrough } from '../pictures/pngKinds.ts';
import { firstStart, goTo } from './app.ts';

// Each reads several photos; a machine that does much else takes its time.
test.describe.configure({ timeout: 240_000 });

const strip = laidStrip('left to right', { numbers: true });

async function choose(page: Page, bytes: Uint8Array, name: string): Promise<Locator> {
  await page
    .getByLabel('Photos of paper strips')
    .setInputFiles({ name, mimeType: 'image/jpeg', buffer: Buffer.from(bytes) });
  return page.getByRole('dialog');
}

async function leaveOut(step: Locator) {
  await step.getByRole('button', { name: 'Leave this photo out' }).click();
  await expect(step).toHaveCount(0);
}

async function webp(): Promise<Uint8Array> {
  const code = createRequire(import.meta.url).resolve('@jsquash/webp/codec/enc/webp_enc.wasm');
  await initWebp(await WebAssembly.compile(readFileSync(code)));
  const { widthPx: width, heightPx: height, rgba } = strip.image;
  const data = new Uint8ClampedArray(rgba);
  return new Uint8Array(await encodeWebp({ width, height, data, colorSpace: 'srgb' }, { quality: 85 }));
}

test('a strip is read from every format', async ({ page }) => {
  await firstStart(page);
  await goTo(page, 'section');
  const kinds: [string, Uint8Array][] = [
    ['strip.webp', await webp()],
    ['progressive.jpg', progressiveJpeg(strip.image)],
    ['grey.jpg', greyJpeg(strip.image)],
    ['cmyk.jpg', cmykJpeg(strip.image)],
    ['16 bits.png', deepPng(strip.image)],
    // A name without an ending, as some pickers give it: the browser still knows it for a picture.
    ['see-through', await encodePng(seeThrough(strip.image))],
  ];
  for (const [name, bytes] of kinds) {
    await test.step(name, async () => {
      const step = await choose(page, bytes, name);
      await expect(step.getByText(/numbers printed on the chart: depth 0 to 240 mm/)).toBeVisible();
      await step.getByRole('button', { name: 'Read the line' }).click();
      await expect(step.getByText(/ readings from /)).toContainText(/to 2(09|10)\smm, (over )?9\d/);
      await step.getByRole('button', { name: 'Back to corners and scale' }).click();
      await leaveOut(step);
    });
  }
});

test('what is no strip gives no trace', async ({ page }) => {
  await firstStart(page);
  await goTo(page, 'section');
  const black = (widthPx: number, heightPx: number) => {
    const rgba = new Uint8Array(4 * widthPx * heightPx);
    for (let p = 3; p < rgba.length; p += 4) rgba[p] = 255;
    return encodePng({ widthPx, heightPx, rgba });
  };
  const huge = Uint8Array.from(await black(64, 64));
  new DataView(huge.buffer).setUint32(16, 20_000);
  new DataView(huge.buffer).setUint32(20, 10_000);
  const refused: [string, Uint8Array, RegExp][] = [
    ['one.png', await black(1, 1), /too small to show a line/],
    ['huge.png', huge, /200 megapixels, and 100 can be read/],
    ['torn.jpg', strip.jpeg.subarray(0, strip.jpeg.length >> 1), /damaged or broken off/],
    ['torn.webp', (await webp()).subarray(0, 9000), /WebP is damaged or broken off/],
  ];
  for (const [name, bytes, words] of refused) {
    const step = await choose(page, bytes, name);
    await expect(step.getByRole('alert')).toHaveText(words);
    await expect(step.getByRole('button', { name: 'Read the line' })).toHaveCount(0);
    await leaveOut(step);
  }

  await test.step('all black: corners and scale are asked for, then it is said why nothing is read', async () => {
    const step = await choose(page, await black(800, 400), 'black.png');
    await expect(step.getByText(/Drag the four corners/)).toBeVisible();
    await step.getByRole('button', { name: 'Read the line' }).click();
    await expect(step.getByText('Needed to read the line.')).toBeVisible();
    await step.getByLabel('Depth at the right edge').fill('200');
    await step.getByRole('button', { name: 'Read the line' }).click();
    const fault = step.getByRole('alert');
    await expect(fault).toContainText(/all black: photograph it in more light/);
    await expect(fault).toBeInViewport();
    await leaveOut(step);
  });

  await test.step('corners crossed', async () => {
    const step = await choose(page, strip.jpeg, 'crossed.jpg');
    await expect(step.getByText(/Found by its printed/)).toBeVisible();
    const at = async (name: RegExp) => {
      const box = (await step.getByRole('button', { name }).boundingBox())!;
      return [box.x + box.width / 2, box.y + box.height / 2] as const;
    };
    const left = await at(/^Top left corner/);
    const right = await at(/^Top right corner/);
    await page.mouse.move(...left);
    await page.mouse.down();
    await page.mouse.move(right[0] + 20, right[1] + 90, { steps: 6 });
    await page.mouse.up();
    await step.getByRole('button', { name: 'Read the line' }).click();
    await expect(step.getByRole('alert')).toContainText(/corners are crossed/);
    await expect(step.getByRole('heading', { name: 'The line on the photo' })).toHaveCount(0);
    await leaveOut(step);
  });
  await expect(page.getByRole('link', { name: /^d12/ })).toHaveCount(0);
});
