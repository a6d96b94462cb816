import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { provenHtml, sampleAssessment, sampleCase, verifyReport } from '@standfast/report';
import { loadFonts } from '@standfast/report/node';
import { firstStart, goTo, settled } from './app.ts';
import { axeFaults } from './axe.ts';

const PICTURES = join(import.meta.dirname, '../report/pictures');

/** A report with everything that can stand in one. */
async function wholeReport(): Promise<string> {
  const read = (name: string) => new Uint8Array(readFileSync(join(PICTURES, name)));
  const sample = sampleCase();
  const caseFile = {
    ...sample,
    signs: [
      { kind: 'crack', photo: 'photos/turned.jpg' },
      { kind: 'cavity', photo: 'photos/gone.jpg' },
    ],
    report: {
      letterhead: { lines: ['Firm', 'Street'], logo: 'report/logo.png' },
      signature: { image: 'report/logo.png', signedOn: '2026-05-02' },
      struck: ['method/paragraph-1', 'limits/list-1'],
      added: [{ after: 'method/paragraph-1', text: 'Added.', by: 'Ada' }],
    },
  };
  const bag = new Map([
    ['photos/turned.jpg', read('turned.jpg')],
    ['report/logo.png', read('logo.png')],
  ]);
  return provenHtml(
    {
      assessment: sampleAssessment(6),
      caseFile,
      bag,
      options: { units: 'metric', generatedOn: '2026-05-02' },
    },
    { fonts: await loadFonts() },
  );
}

/** Shows an HTML report as its reader would, and gathers what it asks the network for. */
async function read(page: Page, html: string): Promise<string[]> {
  const asked: string[] = [];
  page.on('request', (request) => {
    if (!request.url().startsWith('data:')) asked.push(request.url());
  });
  await page.route('http://report.invalid/', (route) =>
    route.fulfill({ contentType: 'text/html; charset=utf-8', body: html }),
  );
  await page.goto('http://report.invalid/');
  return asked;
}

test('the HTML report can be read by everyone at a desk, on a phone and on paper, and asks for nothing', async ({
  page,
}) => {
  const asked = await read(page, await wholeReport());
  for (const [name, viewport] of [
    ['a desk', { width: 1280, height: 900 }],
    ['a phone', { width: 360, height: 740 }],
  ] as const)
    await test.step(name, async () => {
      await page.setViewportSize(viewport);
      expect(
        await axeFaults(page, { tags: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'] }),
      ).toEqual([]);
      for (const landmark of ['banner', 'main', 'contentinfo', 'navigation'] as const)
        await expect(page.getByRole(landmark)).toHaveCount(1);
      expect(await page.getByRole('img').count()).toBeGreaterThan(8);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
      // The camera was held upright: the photo is shown so.
      const photo = page.getByRole('figure').filter({ hasText: 'Photo 1.' }).getByRole('img');
      const box = (await photo.boundingBox())!;
      expect(box.height).toBeGreaterThan(box.width);
      expect(asked).toEqual(['http://report.invalid/']);
    });

  await test.step('on paper the owner’s summary ends its page and nothing is cut off', async () => {
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.emulateMedia({ media: 'print' });
    await expect(page.getByRole('navigation')).toBeHidden();
    const over = await page
      .locator('figure, .scroll')
      .evaluateAll((all) => all.filter((one) => getComputedStyle(one).overflowX !== 'visible').length);
    expect(over).toBe(0);
    const breaks = await page
      .locator('.break')
      .evaluateAll((all) => all.map((one) => getComputedStyle(one).breakBefore));
    expect(breaks).toContain('page');
  });
});

test('letterhead, signature, struck and added text stand in the saved reports, which verify', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await firstStart(page);
  await settled(page);
  await goTo(page, 'report');
  const preview = page.frameLocator('iframe[title="The report as it will read"]');
  await expect(preview.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(preview.getByText('not signed').first()).toBeVisible();

  await test.step('the firm', async () => {
    await page.getByLabel('Logo image').setInputFiles(join(PICTURES, 'logo.png'));
    await page.getByLabel('Lines of the letterhead').fill('Quillfeather Tree Care\n12 Beech Lane');
    await expect(preview.getByText('12 Beech Lane')).toBeVisible();
    await expect(preview.getByAltText('Logo of Quillfeather Tree Care')).toBeVisible();
  });

  await test.step('the signature, drawn', async () => {
    await page.getByRole('button', { name: 'Sign here' }).click();
    const box = (await page.getByRole('img', { name: 'Field to sign in' }).boundingBox())!;
    await page.mouse.move(box.x + 30, box.y + 40);
    await page.mouse.down();
    await page.mouse.move(box.x + 90, box.y + 70, { steps: 5 });
    await page.mouse.move(box.x + 150, box.y + 30, { steps: 5 });
    await page.mouse.up();
    await page.getByRole('button', { name: 'Use this signature' }).click();
    await page.getByLabel('Signed on').fill('2026-06-20');
    await expect(page.getByText('The report is signed.')).toBeVisible();
  });

  await test.step('struck and added', async () => {
    await page.getByText('Passages of the report').click();
    await page.getByText(/^\d+ Method in plain words$/).click();
    await page.getByRole('button', { name: 'Strike' }).first().click();
    await page.getByRole('button', { name: 'Add text after' }).nth(1).click();
    await page.getByLabel('Text', { exact: true }).fill('A note by the assessor.');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await expect(preview.locator('s').first()).toBeVisible();
    await expect(preview.getByText('A note by the assessor.').first()).toBeVisible();
  });

  const fonts = await loadFonts();
  for (const kind of ['PDF', 'HTML'] as const)
    await test.step(`saved as ${kind}, it stands`, async () => {
      const saving = page.waitForEvent('download');
      await page.getByRole('button', { name: `Save report as ${kind}` }).click();
      const saved = await saving;
      const bytes = new Uint8Array(readFileSync(await saved.path()));
      const found = await verifyReport(bytes, saved.suggestedFilename(), { fonts });
      expect(found.figures.differing).toEqual([]);
      expect(found).toMatchObject({ stands: true, kind: kind.toLowerCase(), caseUnchanged: true });
    });

  await test.step('the next case begins with the firm', async () => {
    await page.getByRole('button', { name: 'Keep for new cases' }).click();
    await expect(
      page.getByText('Each new case on this device begins with Quillfeather Tree Care.'),
    ).toBeVisible();
    await page.goto('/#/');
    await page.getByRole('button', { name: 'New case' }).first().click();
    await page.getByRole('link', { name: 'Report' }).first().click();
    await expect(page.getByLabel('Lines of the letterhead')).toHaveValue(
      'Quillfeather Tree Care\n12 Beech Lane',
    );
    await expect(page.getByRole('img', { name: 'Logo' })).toBeVisible();
    await expect(page.getByLabel('Signed on')).toHaveValue('');
  });
});
