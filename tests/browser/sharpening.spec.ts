import { expect, test } from '@playwright/test';
import { caseZip, firstStart, goTo, settled } from './app.ts';
import { axeFaults } from './axe.ts';

test('a slider goes through the drillings in the order made; without any, the first are advised', async ({
  page,
}) => {
  await firstStart(page);
  await goTo(page, 'section');
  await settled(page);
  const least = await page
    .getByRole('button', { name: /Strength left at s1: how it was found/ })
    .textContent();
  await page.getByRole('button', { name: 'Go through the drillings' }).click();
  const slider = page.getByRole('slider', { name: 'Drillings counted' });
  const words = page.getByTestId('sharpening-words');
  await expect(words).toContainText('After 7 drillings', { timeout: 60_000 });
  // All drillings counted is the case as it is: the same direction, the same strength to a few percent.
  const percentIn = (text: string | null) => Number.parseFloat(/(\d+)\s*%/.exec(text ?? '')?.[1] ?? '');
  expect(Math.abs(percentIn(await words.textContent()) - percentIn(least))).toBeLessThanOrEqual(3);

  await slider.focus();
  await page.keyboard.press('Home');
  await expect(words).toContainText('Before any drilling');
  await expect(slider).toHaveAttribute('aria-valuetext', /^Before any drilling: strength left/);
  const widthOf = async () => {
    const [, low, high] = /\((\d+) to (\d+)\)/.exec((await words.textContent()) ?? '') ?? [];
    return Number(high) - Number(low);
  };
  const before = await widthOf();
  const plan = page.locator('.sharpening .figure').first();
  await expect(plan.locator('[data-part="drilling"]')).toHaveCount(0);
  await page.keyboard.press('End');
  expect(await widthOf()).toBeLessThan(before / 2);
  await page.locator('.sharpening [data-part="step"][data-ref="3"]').click();
  await expect(words).toContainText('After 3 drillings (d1, d2, d3)');

  await test.step('where to begin', async () => {
    await page.goto('/#/');
    await page.getByLabel('Case zips, tables or photos of strips').setInputFiles({
      name: 'bare.zip',
      mimeType: 'application/zip',
      buffer: caseZip((caseFile) => {
        for (const holder of [...caseFile.sections, ...caseFile.flares]) holder.drillings = [];
      }),
    });
    await expect(page.getByRole('heading', { name: 'First drillings at s1' })).toBeVisible();
    await expect(page.getByText(/^Begin here: stand at/)).toBeVisible();
    await expect(page.locator('.plan-list li').first()).toContainText(/of (s1|f\d).*above ground/);
    await page.getByText('Where you cannot stand there').click();
    await expect(page.getByRole('row', { name: /of s1/ }).first()).toBeVisible();
    expect(await axeFaults(page)).toEqual([]);
  });
});
