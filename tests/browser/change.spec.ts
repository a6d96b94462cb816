import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { zipSync } from 'fflate';
import { demonstrationFiles, firstStart, goTo, settled } from './app.ts';

const SECOND_VISIT = join(import.meta.dirname, '../../packages/casefile/demo-second-visit');

/** The demonstration's second visit with the first one inside, as a zip. */
function secondVisitZip(): Buffer {
  const files: Record<string, Uint8Array> = {};
  for (const entry of readdirSync(SECOND_VISIT, { withFileTypes: true, recursive: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    files[path.slice(SECOND_VISIT.length + 1)] = new Uint8Array(readFileSync(path));
  }
  for (const [path, bytes] of Object.entries(demonstrationFiles()))
    files[`earlier/2026-06-18/${path}`] = bytes;
  return Buffer.from(zipSync(files, { level: 1 }));
}

async function openSecondVisit(page: Page): Promise<void> {
  await page.goto('/#/');
  await page
    .getByLabel('Case zips, tables or photos of strips')
    .setInputFiles({ name: 'second.zip', mimeType: 'application/zip', buffer: secondVisitZip() });
  await page.getByRole('link', { name: 'Change' }).click();
  await settled(page);
  await expect(page.getByRole('heading', { name: 'Change since 2026-06-18' })).toBeVisible({
    timeout: 40_000,
  });
}

test('a second visit shows what moved, what stood within error, and how long', async ({ page }) => {
  test.slow();
  await firstStart(page);
  await openSecondVisit(page);
  const summary = page.getByTestId('change-summary');
  await expect(summary).toContainText('Decay has moved towards the bark at d5 and d10.');
  await expect(summary).toContainText(
    'Decay has not moved, within the error of a repeat drilling, at d4 and d6.',
  );
  await expect(page.getByRole('img', { name: /then, now and the difference/ })).toBeVisible();
  await expect(page.getByRole('img', { name: /years to come/ })).toBeVisible();
  // What moved stands open, with both traces; what did not can be opened.
  await expect(page.getByRole('img', { name: /Drilling d5 then and now/ })).toBeVisible();
  await expect(page.getByRole('img', { name: /Drilling d4 then and now/ })).toBeHidden();
  await page.getByRole('strong').filter({ hasText: 'd4' }).click();
  await expect(page.getByRole('img', { name: /Drilling d4 then and now/ })).toBeVisible();
  await expect(page.getByText('Drilling d3 of the earlier visit was not repeated.')).toBeVisible();
  await page.screenshot({ path: 'test-results/change-desktop.png', fullPage: true });

  await test.step('on a phone nothing runs out of the page', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    await expect(page.getByRole('img', { name: /Drilling d5 then and now/ })).toBeVisible();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(390);
    await page.screenshot({ path: 'test-results/change-phone.png', fullPage: true });
  });
});

test('the next visit begins with the old one inside and the drillings to repeat without traces', async ({
  page,
}) => {
  await firstStart(page);
  await goTo(page, 'report');
  await settled(page);
  await page.getByRole('button', { name: 'Start the next visit' }).click();
  await expect(page).toHaveURL(/#\/case\/(?!demonstration)[^/]+\/section/);
  await expect(page.getByRole('link', { name: 'Change' })).toBeVisible();
  await expect(page.getByText(/no trace/i).first()).toBeVisible();
  await page.getByRole('link', { name: 'Change' }).click();
  await expect(page.getByRole('heading', { name: /^Change/ })).toBeVisible();
});
