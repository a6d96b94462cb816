import { expect, type Locator, type Page, test } from '@playwright/test';
import { firstStart, goTo, settled } from './app.ts';
import { axeFaults } from './axe.ts';
import { CHART_MM, heldAs, SECOND_VOID_MM, stripPhoto, VOID_MM } from './stripPhoto.ts';

// Long ways through the app; a machine that does much else takes its time.
test.describe.configure({ timeout: 240_000 });

async function choosePhoto(page: Page, buffer: Buffer, name = 'strip.jpg'): Promise<Locator> {
  await page.getByLabel('Photos of paper strips').setInputFiles({ name, mimeType: 'image/jpeg', buffer });
  return page.getByRole('dialog');
}

/** Where a handle says it is, photo pixels. */
async function placeOf(handle: Locator): Promise<[number, number]> {
  const words = (await handle.getAttribute('aria-label')) ?? '';
  const [x, y] = [...words.matchAll(/(\d+) px/g)].map((match) => Number(match[1]));
  return [x!, y!];
}

async function drag(page: Page, from: readonly [number, number], to: readonly [number, number]) {
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2, { steps: 4 });
  await page.mouse.move(...to, { steps: 4 });
}

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, serviceWorkers: 'allow' });

  test('a strip is photographed without a network, put right, and kept with its zones and its photo', async ({
    page,
    context,
  }) => {
    await firstStart(page);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await context.setOffline(true);
    await page.reload();
    await goTo(page, 'section');
    const step = await choosePhoto(page, stripPhoto({ second: true }));
    await expect(step.getByText(/Found by its printed/)).toBeVisible();

    await test.step('corners are dragged under a magnifier, nudged by keys, and snapped back to the print', async () => {
      const corner = step.getByRole('button', { name: /^Top left corner/ });
      const [x, y] = await placeOf(corner);
      const box = (await corner.boundingBox())!;
      expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(48);
      const [cx, cy] = [box.x + box.width / 2, box.y + box.height / 2];
      await drag(page, [cx, cy], [cx + 4, cy + 3]);
      await expect(step.locator('.lens')).toBeVisible();
      await page.mouse.up();
      await expect(step.locator('.lens')).toHaveCount(0);
      const [draggedX] = await placeOf(corner);
      expect(draggedX).toBeGreaterThan(x + 5);
      await corner.focus();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Shift+ArrowDown');
      await page.keyboard.press('Shift+ArrowUp');
      expect((await placeOf(corner))[0]).toBe(draggedX + 1);
      await step.getByRole('button', { name: 'Snap to print' }).click();
      await expect(step.getByText(/printed line was seen along/)).toBeVisible();
      const [backX, backY] = await placeOf(corner);
      expect(Math.hypot(backX - x, backY - y)).toBeLessThanOrEqual(3);
    });

    await test.step('the scale is taken from the printed numbers; one that nobody said is asked for, not invented', async () => {
      await expect(
        step.getByText(/Taken from the numbers printed on the chart: depth 0 to 250 mm, level 0 to 100\s%/),
      ).toBeVisible();
      const right = step.getByLabel('Depth at the right edge');
      await expect(right).toHaveValue(String(CHART_MM));
      await right.fill('');
      await step.getByRole('button', { name: 'Read the line' }).click();
      await expect(step.getByText('Needed to read the line.')).toBeVisible();
      expect(await axeFaults(page), 'corners and scale').toEqual([]);
      await right.fill(String(CHART_MM));
      await step.getByRole('button', { name: 'Read the line' }).click();
      await expect(step.getByRole('heading', { name: 'The line on the photo' })).toBeVisible();
    });

    await test.step('the line is chosen, rubbed out and drawn again, and each step taken back', async () => {
      await expect(step.getByRole('radio', { name: '1, blue' })).toBeChecked();
      await step.getByRole('radio', { name: '2, red' }).check({ force: true });
      await step.getByRole('radio', { name: '1, blue' }).check({ force: true });
      expect(await axeFaults(page), 'the line').toEqual([]);
      const stage = (await step.locator('.stage').boundingBox())!;
      const at = (across: number, down: number) =>
        [stage.x + across * stage.width, stage.y + down * stage.height] as const;
      const readings = step.getByText(/ readings from /);
      const before = await readings.textContent();
      const gaps = step.locator('polygon.line-gap');
      // The reader leaves out what it cannot tell, so there may be gaps before anything is erased.
      const leftOut = await gaps.count();
      await step.getByRole('radio', { name: 'Erase' }).click();
      await drag(page, at(0.25, 0.3), at(0.25, 0.7));
      await page.mouse.up();
      await expect(readings).toContainText('left out');
      await expect(gaps).toHaveCount(leftOut + 1);
      await step.getByRole('radio', { name: 'Draw' }).click();
      await page.mouse.click(...at(0.2, 0.5));
      await page.mouse.click(...at(0.3, 0.52));
      await step.getByRole('button', { name: 'Join the points' }).click();
      await expect(readings).toContainText('drawn by hand');
      await expect(step.locator('path.line-read.hand').first()).toBeAttached();
      await step.getByRole('button', { name: 'Take back' }).click();
      await step.getByRole('button', { name: 'Take back' }).click();
      await expect(readings).toHaveText(before ?? '');
    });

    const expectHollow = async (name: string, [begins, ends]: readonly [number, number]) => {
      await expect(page.getByRole('heading', { name: new RegExp(name) })).toBeVisible();
      const hollow = page.getByRole('row', { name: /^void/ });
      await expect(hollow).toHaveCount(1);
      const [from, to] = (await hollow.getByRole('cell').allTextContents()).map((text) =>
        Number.parseFloat(text),
      );
      expect(Math.abs(from! - begins)).toBeLessThanOrEqual(2);
      expect(Math.abs(to! - ends)).toBeLessThanOrEqual(2);
      await expect(page.getByRole('img', { name: `Paper strip: photos/${name}.jpg` })).toBeVisible();
    };
    await test.step('both lines of the sheet are kept, one after the other, each with its photo', async () => {
      await step.getByLabel('Entry, direction from the pith').fill('45');
      await step.getByRole('button', { name: 'Keep, then take another line' }).click();
      await expect(page.getByText(/strip.jpg: \d+ readings kept, with the photo/)).toBeVisible();
      await expect(step.getByRole('radio', { name: '2, red' })).toBeChecked();
      await step.getByRole('button', { name: 'Keep the trace and the photo' }).click();
      await expect(step.getByText('Say at which side the needle went in.')).toBeVisible();
      await step.getByLabel('Entry, direction from the pith').fill('135');
      await step.getByRole('button', { name: 'Keep the trace and the photo' }).click();
      await expectHollow('d13', SECOND_VOID_MM);
      await page.getByRole('link', { name: 'Drilling before: d12' }).click();
      await expectHollow('d12', VOID_MM);
    });
    await settled(page);
  });
});

test('photos that are none, broken off, or show no line are refused in clear words, and nothing is kept', async ({
  page,
}) => {
  await firstStart(page);
  await goTo(page, 'section');
  const jpeg = stripPhoto();
  const cases: [name: string, buffer: Buffer, words: RegExp][] = [
    ['torn.jpg', jpeg.subarray(0, jpeg.length / 2), /damaged or broken off/],
    ['letter.jpg', Buffer.from('Dear client'), /no photo that can be read/],
    ['phone.heic', Buffer.from('\0\0\0\x18ftypheic'), /cannot open HEIC/],
  ];
  for (const [name, buffer, words] of cases) {
    const step = await choosePhoto(page, buffer, name);
    await expect(step.getByRole('alert')).toHaveText(words);
    await step.getByRole('button', { name: 'Leave this photo out' }).click();
    await expect(step).toHaveCount(0);
  }

  await test.step('a photo without a chart asks for corners; without a line nothing is read', async () => {
    const blank = await page.evaluate(async () => {
      const canvas = new OffscreenCanvas(800, 500);
      const pen = canvas.getContext('2d')!;
      pen.fillStyle = '#e9e6dc';
      pen.fillRect(0, 0, 800, 500);
      const blob = await canvas.convertToBlob({ type: 'image/png' });
      return Array.from(new Uint8Array(await blob.arrayBuffer()));
    });
    const step = await choosePhoto(page, Buffer.from(blank), 'blank.png');
    await expect(step.getByText(/Drag the four corners/)).toBeVisible();
    await step.getByLabel('Depth at the right edge').fill('200');
    await step.getByRole('button', { name: 'Read the line' }).click();
    await expect(step.getByRole('alert')).toContainText(/No line of a pen/);
    await step.getByRole('button', { name: 'Leave this photo out' }).click();
  });

  await test.step('a photo laid aside comes back as it was left; held upright it is turned; a reading can be cancelled', async () => {
    const step = await choosePhoto(page, heldAs(jpeg, 6), 'upright.jpg');
    const corner = step.getByRole('button', { name: /^Top left corner/ });
    await expect(corner).toBeVisible();
    const size = await step
      .getByRole('img', { name: /photographed strip/ })
      .evaluate((canvas: HTMLCanvasElement) => canvas.width > 0);
    expect(size).toBe(true);
    // Turned by a quarter, the wide sheet stands: its corners spread farther down than across.
    const far = step.getByRole('button', { name: /^Bottom right corner/ });
    const [[ax, ay], [bx, by]] = [await placeOf(corner), await placeOf(far)];
    expect(Math.abs(by - ay)).toBeGreaterThan(Math.abs(bx - ax));
    await step.getByText('At two points').click();
    await step.getByLabel('Depth at A').fill('50');
    await step.getByRole('button', { name: 'Close', exact: true }).click();
    await page
      .getByRole('status')
      .filter({ hasText: 'upright.jpg' })
      .getByRole('button', { name: 'Take it up again' })
      .click();
    await expect(step.getByLabel('Depth at A')).toHaveValue('50');
    await step.getByLabel('Depth at B').fill('200');
    await step.getByRole('button', { name: 'Turn the chart' }).click();
    await step.getByRole('button', { name: 'Read the line' }).click();
    await step.getByRole('button', { name: 'Cancel' }).click();
    await expect(step.getByRole('heading', { name: 'The chart’s corners' })).toBeVisible();
    await expect(step.getByRole('alert')).toHaveCount(0);
    await step.getByRole('button', { name: 'Leave this photo out' }).click();
  });
  await expect(page.getByRole('link', { name: /^d12/ })).toHaveCount(0);
});
