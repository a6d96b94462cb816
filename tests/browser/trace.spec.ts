import { expect, test } from '@playwright/test';
import { firstStart, goTo } from './app.ts';

test('a needle on the plan opens its trace, which is read off and zoomed by keyboard and hand', async ({
  page,
}) => {
  await firstStart(page);
  await goTo(page, 'section');
  await page.locator('[data-part="drilling"][data-ref="s1/d5"]').first().click();
  await expect(page.getByRole('heading', { name: /d5/ })).toBeVisible();
  const readOut = page.getByTestId('read-out');
  const slider = page.getByRole('slider', { name: 'Depth of the read-out' });

  await slider.focus();
  await page.keyboard.press('Home');
  await expect(readOut).toContainText('bark');
  await expect(readOut).toContainText('0.0 mm');
  for (let i = 0; i < 6; i++) await page.keyboard.press('PageUp');
  await expect(readOut).toContainText('void');
  await expect(slider).toHaveAttribute('aria-valuetext', /void, probability/);

  const zones = page.locator('.trace-figure [data-part="zone"]');
  const all = await zones.count();
  await page.getByRole('button', { name: 'Closer' }).click();
  await page.getByRole('button', { name: 'Closer' }).click();
  await expect.poll(() => zones.count()).toBeLessThan(all);
  await page.getByRole('button', { name: 'Whole trace' }).click();
  await expect.poll(() => zones.count()).toBe(all);

  const figure = page.locator('.trace-figure');
  const box = (await figure.boundingBox())!;
  await page.mouse.click(box.x + box.width * 0.25, box.y + 80);
  await expect(readOut).toContainText('sound');
  await page.mouse.move(box.x + box.width * 0.5, box.y + 80);
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, -400);
  await page.keyboard.up('Control');
  await expect(page.getByRole('button', { name: 'Whole trace' })).toBeEnabled();
});
