import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { verifyReport } from '@standfast/report';
import { loadFonts } from '@standfast/report/node';
import { caseZip, DEMONSTRATION, firstStart, germanTable, goTo, settled } from './app.ts';

async function bringIn(page: Page, name: string, buffer: Buffer) {
  await page
    .getByLabel('Case zips, tables or photos of strips')
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
}

test('cases are copied, deleted with a way back, saved as zip and brought in again', async ({ page }) => {
  await firstStart(page);
  await page.goto('/#/');
  await page.getByRole('button', { name: 'More for LG-7 (invented)' }).click();
  await page.getByRole('menuitem', { name: 'Duplicate' }).click();
  const copy = page.getByRole('link', { name: /LG-7 \(invented\) \(copy\)/ });
  await expect(copy).toBeVisible();
  await page.getByRole('button', { name: 'More for LG-7 (invented) (copy)' }).click();
  await page.getByRole('menuitem', { name: 'Delete' }).click();
  await expect(copy).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(copy).toBeVisible();

  await page.getByRole('button', { name: 'More for LG-7 (invented) (copy)' }).click();
  const saving = page.waitForEvent('download');
  await page.getByRole('menuitem', { name: 'Save as zip' }).click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toBe('standfast-LG-7-invented-copy-2026-06-18.zip');
  await bringIn(page, 'back.zip', readFileSync(await saved.path()));
  await settled(page);
  await expect(page.locator('.case-title-label')).toHaveText('LG-7 (invented) (copy)');

  await test.step('a half-done case comes in and says what it lacks', async () => {
    await page.goto('/#/');
    await bringIn(
      page,
      'half.zip',
      caseZip((caseFile) => {
        delete caseFile.tree.heightM;
      }),
    );
    await expect(page.getByText('Not assessed yet.')).toBeVisible();
    await page.getByRole('button', { name: /still needed/ }).click();
    await expect(page.getByRole('dialog')).toContainText('tree, height');
    await page.getByRole('dialog').getByRole('link', { name: 'Go there' }).first().click();
    await page.getByRole('textbox', { name: 'Height', exact: true }).fill('21');
    await settled(page);
  });
});

test('files that cannot be read are each named with the reason, and nothing is kept of them', async ({
  page,
}) => {
  await firstStart(page);
  await page.goto('/#/');
  await bringIn(page, 'torn.zip', caseZip(() => undefined).subarray(0, 4000));
  await expect(page.getByRole('alert').filter({ hasText: 'torn.zip' })).toBeVisible();
  await bringIn(
    page,
    'later.zip',
    caseZip((caseFile) => Object.assign(caseFile, { version: 99 })),
  );
  await expect(page.getByRole('alert').filter({ hasText: 'later.zip' })).toContainText(/99/);
  await page
    .getByLabel('Case zips, tables or photos of strips')
    .setInputFiles([{ name: 'film.mov', mimeType: 'video/quicktime', buffer: Buffer.from('x') }]);
  await expect(page.getByRole('alert').filter({ hasText: 'film.mov' })).toContainText('cannot be read');
  await expect(page.locator('.case-row')).toHaveCount(1);
});

test('a case comes in as a folder, and as a zip dropped anywhere', async ({ page }) => {
  await firstStart(page);
  await page.goto('/#/');
  await page.getByLabel('Case folder').setInputFiles(DEMONSTRATION);
  await expect(page).toHaveURL(/#\/case\/(?!demonstration)[^/]+\/section$/);
  await expect(page.getByRole('link', { name: /^d11/ })).toBeVisible();

  const zip = caseZip((caseFile) => {
    caseFile.tree.label = 'Dropped maple';
  }).toString('base64');
  const carried = await page.evaluateHandle((base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const transfer = new DataTransfer();
    transfer.items.add(new File([bytes], 'maple.zip'));
    return transfer;
  }, zip);
  await page.dispatchEvent('body', 'dragenter', { dataTransfer: carried });
  await expect(page.getByText('Drop a case folder, a case zip, tables of readings')).toBeVisible();
  await page.dispatchEvent('body', 'drop', { dataTransfer: carried });
  await expect(page.locator('.case-title-label')).toHaveText('Dropped maple');
});

test('a table with semicolons and decimal commas is shown as it will be read, and becomes a drilling', async ({
  page,
}) => {
  await firstStart(page);
  await goTo(page, 'section');
  await page
    .getByLabel('Tables of readings')
    .setInputFiles({ name: 'bohrung 7.csv', mimeType: 'text/csv', buffer: germanTable() });
  const step = page.getByRole('dialog');
  await expect(
    step.getByText(/^Columns parted by semicolon ;, decimal comma, depth in mm, resistance in percent/),
  ).toBeVisible();
  await step.getByText('Correct how it is read').click();
  await expect(step.getByLabel('Columns parted by')).toHaveValue(';');
  await expect(step.getByLabel('Decimal sign')).toHaveValue(',');
  await expect(step.getByRole('row', { name: /0,1 · 7,\d\d 0.1 7.\d+/ })).toBeVisible();
  await step.getByRole('button', { name: 'Read and keep' }).click();
  await expect(step.getByText('Say at which side the needle went in.')).toBeVisible();
  await step.getByLabel('Entry, direction from the pith').fill('45');
  await step.getByRole('button', { name: 'Read and keep' }).click();
  await expect(page.getByText('bohrung 7.csv: one trace, 2001 readings kept.')).toBeVisible();
  await settled(page);
  await page.getByRole('link', { name: /^d12/ }).click();
  await expect(page.getByRole('heading', { name: /d12/ })).toBeVisible();
  await expect(page.getByRole('row', { name: /^void/ })).toBeVisible();

  await test.step('the report is saved as PDF and as HTML', async () => {
    await goTo(page, 'report');
    const savingPdf = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save report as PDF' }).click();
    const pdf = await savingPdf;
    expect(pdf.suggestedFilename()).toMatch(/\.pdf$/);
    const bytes = readFileSync(await pdf.path());
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    const verdict = await verifyReport(bytes, pdf.suggestedFilename(), { fonts: await loadFonts() });
    expect(verdict.figures.differing).toEqual([]);
    expect(verdict.stands).toBe(true);
    const savingHtml = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save report as HTML' }).click();
    const html = readFileSync(await (await savingHtml).path(), 'utf8');
    expect(html).toContain('Acer saccharum');
    expect(html).toContain('<svg');
  });
});
