import { expect, test } from '@playwright/test';
import { firstStart, goTo, settled } from './app.ts';

// The app as a person meets it, kept for use offline.
test.use({ serviceWorkers: 'allow' });

test('the first start shows the invented demonstration with its range; units and theme are the person’s choice and stay', async ({
  page,
}) => {
  await firstStart(page);
  await expect(page.getByTestId('governing')).toHaveText(/^\d+\.\d\d \(\d+\.\d\d to \d+\.\d\d\)$/);
  await expect(page.getByText('Invented demonstration')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Decision', exact: true })).toBeVisible();
  await expect(page.getByRole('complementary', { name: 'Cautions' })).toContainText('The assessor decides');

  await test.step('every number opens to its formula, inputs and source', async () => {
    await page
      .getByRole('button', { name: /Safety against .*: how it was found$/ })
      .first()
      .click();
    const sheet = page.getByRole('dialog');
    await expect(sheet.getByRole('heading', { name: 'How it is worked out' })).toBeVisible();
    await expect(sheet.getByRole('table')).toBeVisible();
    await expect(sheet.getByRole('heading', { name: 'Sources' })).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(sheet).toBeHidden();
  });

  await goTo(page, 'tree');
  await expect(page.getByLabel('Stem diameter')).toHaveValue('880');
  await page.getByRole('button', { name: 'Units and look' }).click();
  await page.getByRole('radio', { name: 'US' }).check({ force: true });
  await page.getByRole('radio', { name: 'Dark' }).check({ force: true });
  await page.keyboard.press('Escape');
  await expect(page.getByLabel('Stem diameter')).toHaveValue('34.65');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.reload();
  await expect(page.getByLabel('Stem diameter')).toHaveValue('34.65');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
});

test('after the first visit everything works without a network, deep links too', async ({
  page,
  context,
}) => {
  await firstStart(page);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await context.setOffline(true);
  await goTo(page, 'strength');
  await page.reload();
  await settled(page);
  await expect(page.getByRole('heading', { name: 'Strength and wind' })).toBeVisible();
  await expect(page.getByText('No network. Everything works')).toBeAttached();
  const another = await context.newPage();
  await another.goto('/#/');
  await expect(another.getByRole('link', { name: /LG-7/ })).toBeVisible();
});
