/** Photographed strips of 12 megapixels in the app itself, in Debian's chromium: from the file chosen to the line on screen. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, type CDPSession, chromium, type Page } from '@playwright/test';
import { preview } from 'vite';
import { packJpeg } from '../tests/simulated/strips/photograph.ts';
import { paintedStrip } from './strip.ts';
import { printedPhoto } from './stripPhotos.ts';
import { median } from './timing.ts';

const CHROMIUM = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(
  existsSync,
);
const APP = fileURLToPath(new URL('../apps/field', import.meta.url));
const QUALITY = 88;
const RUNS = 5;
const LONGEST_MS = 60_000;

/** Milliseconds of one step: by the clock, and of processor time in all of the browser's processes. */
export interface StepTime {
  clockMs: number;
  processorMs: number;
}

export interface AppTimes {
  photo: string;
  megabytes: number;
  /** From the file chosen to the chart's corners on the photo. */
  opened: StepTime;
  /** From the press of the button to the line on the photo. */
  read: StepTime;
  /** Both, which is all the time a person waits. */
  whole: StepTime;
}

/** Seconds that somebody takes to press a button, take a photo and say that it is the right one. */
const CHOOSING_MS = 5000;

/** Medians of several photos one after the other, and the first photo by itself. Null where there is no chromium. The app must have been built. */
export async function timesInApp(): Promise<AppTimes[] | null> {
  if (!CHROMIUM) return null;
  const photos = [
    { photo: 'printed, with numbers', jpeg: Buffer.from(packJpeg(printedPhoto(), QUALITY)) },
    { photo: 'drawn, without numbers', jpeg: Buffer.from(packJpeg(paintedStrip(), QUALITY)) },
  ];
  const server = await preview({ root: APP, preview: { host: '127.0.0.1', port: 0 }, logLevel: 'silent' });
  const browser = await chromium.launch({
    executablePath: CHROMIUM,
    args: ['--no-sandbox', '--disable-dev-shm-usage', '--disable-gpu'],
  });
  try {
    const url = server.resolvedUrls!.local[0]!;
    const times: AppTimes[] = [];
    for (const { photo, jpeg } of photos) {
      const megabytes = jpeg.length / 1e6;
      const atOnce = await timesOf(browser, url, jpeg, 0, 1);
      const inTurn = await timesOf(browser, url, jpeg, CHOOSING_MS, RUNS);
      times.push({ photo: `${photo}: chosen at once`, megabytes, ...summed(atOnce) });
      times.push({ photo: `${photo}: the first`, megabytes, ...summed(inTurn.slice(0, 1)) });
      times.push({ photo: `${photo}: one of ${RUNS}`, megabytes, ...summed(inTurn) });
    }
    return times;
  } finally {
    await browser.close();
    await server.close();
  }
}

/** Times of each photo in an app just opened, once its case is assessed and so many milliseconds have gone by. */
async function timesOf(
  browser: Browser,
  url: string,
  jpeg: Buffer,
  afterMs: number,
  runs: number,
): Promise<[StepTime, StepTime][]> {
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, locale: 'en-GB' });
  try {
    await page.goto(url);
    await page.getByTestId('governing').waitFor({ timeout: LONGEST_MS });
    await page.goto(`${url}#/case/demonstration/section`);
    await page.locator('.verdict-strip:not([data-quick]):not([data-stale])').waitFor({ timeout: LONGEST_MS });
    await page.waitForTimeout(afterMs);
    const system = await browser.newBrowserCDPSession();
    const times: [StepTime, StepTime][] = [];
    for (let run = 0; run < runs; run++) times.push(await once(page, system, jpeg));
    return times;
  } finally {
    await page.close();
  }
}

/** Medians of both steps of several photos, and of their sum. */
function summed(times: readonly [StepTime, StepTime][]): Pick<AppTimes, 'opened' | 'read' | 'whole'> {
  const whole = times.map(([opened, read]) => ({
    clockMs: opened.clockMs + read.clockMs,
    processorMs: opened.processorMs + read.processorMs,
  }));
  return {
    opened: middleOf(times.map(([opened]) => opened)),
    read: middleOf(times.map(([, read]) => read)),
    whole: middleOf(whole),
  };
}

async function once(page: Page, system: CDPSession, jpeg: Buffer): Promise<[StepTime, StepTime]> {
  const dialog = page.getByRole('dialog');
  const input = page.getByLabel('Photos of paper strips');
  // The clock runs in the page: how long the photo takes to reach the browser is not the app's.
  await page.evaluate(() => performance.clearMarks());
  await input.evaluate((element) =>
    element.addEventListener('change', () => performance.mark('chosen'), { once: true, capture: true }),
  );
  const opened = await timed(page, system, 'chosen', '.photo-handle', () =>
    input.setInputFiles({ name: 'strip.jpg', mimeType: 'image/jpeg', buffer: jpeg }),
  );
  // Where the numbers were read this says what they said.
  await dialog.getByLabel('Depth at the right edge').fill('300');
  const button = dialog.getByRole('button', { name: 'Read the line' });
  await button.evaluate((element) =>
    element.addEventListener('pointerdown', () => performance.mark('pressed'), { once: true, capture: true }),
  );
  const read = await timed(page, system, 'pressed', 'path.line-read', () => button.click());
  await dialog.getByRole('button', { name: 'Back to corners and scale' }).click();
  await dialog.getByRole('button', { name: 'Leave this photo out' }).click();
  await dialog.waitFor({ state: 'detached' });
  return [opened, read];
}

/** Times a step from the mark it sets to the moment what it brings is on the page. */
async function timed(
  page: Page,
  system: CDPSession,
  mark: string,
  brings: string,
  step: () => Promise<void>,
): Promise<StepTime> {
  const before = await processorMs(system);
  await step();
  await page.waitForFunction((selector) => document.querySelector(selector) !== null, brings, {
    timeout: LONGEST_MS,
    polling: 'raf',
  });
  const clockMs = await page.evaluate(
    (name) => performance.now() - (performance.getEntriesByName(name)[0]?.startTime ?? Number.NaN),
    mark,
  );
  return { clockMs, processorMs: (await processorMs(system)) - before };
}

async function processorMs(system: CDPSession): Promise<number> {
  const { processInfo } = await system.send('SystemInfo.getProcessInfo');
  return 1000 * processInfo.reduce((sum, { cpuTime }) => sum + cpuTime, 0);
}

const middleOf = (times: StepTime[]): StepTime => ({
  clockMs: median(times.map((time) => time.clockMs)),
  processorMs: median(times.map((time) => time.processorMs)),
});
