/** Every way a strip comes by its scale, in the real app, to a trace in the saved case that agrees with the truth. */
import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { unzipSync } from 'fflate';
import { CLEAN, type Laid, type LaidStrip, laidStrip, offTruth } from '../pictures/laidStrip.ts';
import { firstStart, goTo } from './app.ts';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });
// Each reads a photo and saves a case; a machine that does much else takes its time.
test.describe.configure({ timeout: 150_000 });

async function choose(page: Page, strip: LaidStrip): Promise<Locator> {
  await page
    .getByLabel('Photos of paper strips')
    .setInputFiles({ name: 'strip.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(strip.jpeg) });
  const step = page.getByRole('dialog');
  await expect(step.getByText(/Found by its printed/)).toBeVisible();
  return step;
}

/** Reads, keeps, saves the case as a zip, and holds the trace in it against the truth. Gives the table's notes. */
async function expectTrue(page: Page, step: Locator, strip: LaidStrip): Promise<string> {
  await step.getByRole('button', { name: 'Read the line' }).click();
  await expect(step.getByRole('heading', { name: 'The line on the photo' })).toBeVisible();
  await step.getByLabel('Entry, direction from the pith').fill('45');
  await step.getByRole('button', { name: 'Keep the trace and the photo' }).click();
  await expect(page.getByRole('heading', { name: /d12/ })).toBeVisible();
  await page.getByText('How the trace was read off it').click();
  const told = page.locator('.origin');
  await expect(told).toContainText(/Photo sha256 [0-9a-f]{64}/);
  const words = (await told.textContent()) ?? '';
  await page.goto('/#/');
  await page.getByRole('button', { name: 'More for LG-7 (invented)' }).click();
  const saving = page.waitForEvent('download');
  await page.getByRole('menuitem', { name: 'Save as zip' }).click();
  const files = unzipSync(new Uint8Array(readFileSync(await (await saving).path())));
  const path = Object.keys(files).find((name) => name.endsWith('traces/d12.csv'))!;
  const rows = new TextDecoder()
    .decode(files[path])
    .split('\n')
    .filter((line) => /^[\d.]/.test(line))
    .map((line) => line.split(',').map(Number));
  const off = offTruth(
    { depthMm: rows.map(([depth]) => depth!), resistance: rows.map(([, level]) => level!) },
    strip.trace,
  );
  expect(off.depthMm).toBeLessThanOrEqual(CLEAN.depthMm);
  expect(off.levelPct).toBeLessThanOrEqual(CLEAN.levelPct);
  expect(Object.keys(files).some((name) => name.endsWith('photos/d12.jpg'))).toBe(true);
  return words;
}

/** Where a handle says it is, photo pixels. */
async function placeOf(handle: Locator): Promise<[number, number]> {
  const words = (await handle.getAttribute('aria-label')) ?? '';
  const [x, y] = [...words.matchAll(/(\d+) px/g)].map((match) => Number(match[1]));
  return [x!, y!];
}

async function middleOf(handle: Locator): Promise<[number, number]> {
  const box = (await handle.boundingBox())!;
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** Drags a handle to a place of the photo, and nudges it there with the arrow keys. */
async function put(page: Page, step: Locator, name: RegExp, to: readonly [number, number]) {
  const handle = step.getByRole('button', { name });
  const far = step.getByRole('button', { name: /^Bottom right corner/ });
  const near = step.getByRole('button', { name: /^Top left corner/ });
  await far.scrollIntoViewIfNeeded();
  const [[ax, ay], [bx, by]] = [await placeOf(near), await placeOf(far)];
  const [[asx, asy], [bsx, bsy]] = [await middleOf(near), await middleOf(far)];
  const scale = Math.hypot(bsx - asx, bsy - asy) / Math.hypot(bx - ax, by - ay);
  const [x, y] = await placeOf(handle);
  const [sx, sy] = await middleOf(handle);
  await page.mouse.move(sx, sy);
  await page.mouse.down();
  await page.mouse.move(sx + scale * (to[0] - x), sy + scale * (to[1] - y), { steps: 5 });
  await expect(step.locator('.lens')).toBeVisible();
  await page.mouse.up();
  await handle.focus();
  const [nowX, nowY] = await placeOf(handle);
  const [dx, dy] = [Math.round(to[0]) - nowX, Math.round(to[1]) - nowY];
  expect(Math.hypot(dx, dy)).toBeLessThan(12);
  for (let i = 0; i < Math.abs(dx); i++) await page.keyboard.press(dx > 0 ? 'ArrowRight' : 'ArrowLeft');
  for (let i = 0; i < Math.abs(dy); i++) await page.keyboard.press(dy > 0 ? 'ArrowDown' : 'ArrowUp');
}

/** Notes every share and word that a progress bar shows, from now on. */
async function watchBars(page: Page) {
  await page.evaluate(() => {
    const told: [number, string][] = [];
    (window as unknown as { told: typeof told }).told = told;
    const look = () => {
      const bar = document.querySelector('[role=progressbar]');
      const label = bar?.querySelector('.doing-words')?.firstChild?.textContent ?? '';
      if (bar) told.push([Number(bar.getAttribute('aria-valuenow') ?? Number.NaN), label]);
    };
    new MutationObserver(look).observe(document.body, {
      subtree: true,
      childList: true,
      attributes: true,
      attributeFilter: ['aria-valuenow'],
    });
  });
}

async function expectGrowing(page: Page, of: RegExp, steps: number) {
  const told = await page.evaluate(() => (window as unknown as { told: [number, string][] }).told);
  const mine = told.filter(([, label]) => of.test(label));
  const shares = mine.map(([share]) => share);
  expect(shares.every((share, i) => share >= (shares[i - 1] ?? 0) && share <= 100)).toBe(true);
  // Not every message of a worker is drawn, but most are.
  expect(new Set(shares).size).toBeGreaterThanOrEqual(steps);
  expect(shares[0]).toBeLessThanOrEqual(30);
  expect(shares.at(-1)).toBeGreaterThanOrEqual(50);
}

for (const laid of ['right to left', 'upright'] satisfies Laid[]) {
  test(`a chart drawn ${laid} has its scale from its printed numbers`, async ({ page }) => {
    await firstStart(page);
    await goTo(page, 'section');
    await watchBars(page);
    const strip = laidStrip(laid, { numbers: true });
    const step = await choose(page, strip);
    await expectGrowing(page, /^(Opening|Looking)/, 4);
    await expect(step.getByLabel('Depth at the left edge')).toHaveValue(String(strip.depthMm[0]));
    await expect(step.getByLabel('Depth at the right edge')).toHaveValue(String(strip.depthMm[1]));
    const reading = step.getByRole('button', { name: 'Read the line' });
    await expect(reading).toBeEnabled();
    const words = await expectTrue(page, step, strip);
    await expectGrowing(page, /^Reading the line/, 4);
    expect(words).toContain('by the numbers printed on the chart');
    expect(words).toMatch(/Corners found by the (frame|grid), sure 0\.\d+/);
  });
}

test('an upright chart without numbers is turned by hand and told its depths', async ({ page }) => {
  await firstStart(page);
  await goTo(page, 'section');
  const strip = laidStrip('upright');
  const step = await choose(page, strip);
  const hint = step.getByText(/This chart stands upright on the photo/);
  await expect(hint).toBeVisible();
  // Until left, where depth begins, is at the photo's top: a quarter turn a press, the other way about.
  for (let press = 0; press < 3; press++) await step.getByRole('button', { name: 'Turn the chart' }).click();
  await expect(hint).toHaveCount(0);
  const [x, y] = await placeOf(step.getByRole('button', { name: /^Top left corner/ }));
  expect(Math.hypot(x - strip.cornersPx[0][0], y - strip.cornersPx[0][1])).toBeLessThan(3);
  await step.getByLabel('Depth at the left edge').fill('0');
  await step.getByLabel('Depth at the right edge').fill('240');
  expect(await expectTrue(page, step, strip)).toContain('as typed');
});

test('a chart drawn right to left has its scale from a ruler laid along it', async ({ page }) => {
  await firstStart(page);
  await goTo(page, 'section');
  const strip = laidStrip('right to left', { ruler: true });
  const step = await choose(page, strip);
  await step.getByText('By a ruler laid along it').click();
  await put(page, step, /^Point A/, strip.rulerAt(200));
  await put(page, step, /^Point B/, strip.rulerAt(20));
  await step.getByText('Right edge', { exact: true }).click();
  await step.getByRole('button', { name: 'Read the line' }).click();
  await expect(step.getByText('Needed to read the line.')).toBeVisible();
  await step.getByLabel('From A to B').fill('180');
  expect(await expectTrue(page, step, strip)).toContain('by two marked points a known distance apart');
});

test('a strip has its scale from two points of known depth', async ({ page }) => {
  await firstStart(page);
  await goTo(page, 'section');
  const strip = laidStrip('left to right', { ruler: true });
  const step = await choose(page, strip);
  await step.getByText('At two points').click();
  await put(page, step, /^Point A/, strip.rulerAt(20));
  await put(page, step, /^Point B/, strip.rulerAt(200));
  // The ruler's zero lies 7.5 mm into the chart.
  await step.getByLabel('Depth at A').fill('27.5');
  await step.getByLabel('Depth at B').fill('207.5');
  expect(await expectTrue(page, step, strip)).toContain('by two marked points of known depth');
});
