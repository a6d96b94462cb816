import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { firstStart, goTo, settled } from './app.ts';
import { axeFaults } from './axe.ts';

async function verify(page: Page, name: string, buffer: Buffer) {
  await page
    .getByLabel('Report to verify')
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
}

async function savedReport(page: Page, kind: 'PDF' | 'HTML'): Promise<Buffer> {
  const saving = page.waitForEvent('download', { timeout: 40_000 });
  await page.getByRole('button', { name: `Save report as ${kind}` }).click();
  return readFileSync(await (await saving).path());
}

test('a report dropped on the app is recomputed and said to stand; its case opens; a foreign file is refused', async ({
  page,
}) => {
  await firstStart(page);
  await goTo(page, 'report');
  await settled(page);
  const report = await savedReport(page, 'PDF');
  await page.goto('/#/');

  await test.step('a sound one stands', async () => {
    await verify(page, 'report.pdf', report);
    const step = page.getByRole('dialog');
    await expect(step.getByRole('heading', { name: 'It stands' })).toBeVisible({ timeout: 50_000 });
    await expect(step).toContainText(/Made by\s*engine \d/);
    await expect(step).toContainText(/(\d+) of \1 stand/);
    expect(await axeFaults(page)).toEqual([]);
    await step.getByRole('button', { name: 'Open the case inside' }).click();
    await expect(page.locator('.case-title-label')).toHaveText('LG-7 (invented)');
    await expect(page).not.toHaveURL(/demonstration/);
  });

  await test.step('foreign files are refused in words', async () => {
    await page.goto('/#/');
    const step = page.getByRole('dialog');
    for (const [name, buffer] of [
      [
        'foreign.pdf',
        Buffer.from('%PDF-1.4\n1 0 obj\n<</Type /Catalog>>\nendobj\ntrailer\n<</Root 1 0 R>>\n'),
      ],
      ['letter.html', Buffer.from('<!doctype html><p>Dear client</p>')],
      ['torn.pdf', report.subarray(0, report.length >> 1)],
      ['empty.pdf', Buffer.alloc(0)],
    ] as const) {
      await verify(page, name, buffer);
      await expect(step.getByRole('alert')).toContainText(/It cannot be verified.{20,}/, { timeout: 40_000 });
      await step.getByRole('button', { name: 'Close' }).last().click();
    }
  });
});
