import { expect, type Page, test } from '@playwright/test';
import { firstStart, goTo, PLACES } from './app.ts';
import { expectNoFaultsInLightOrDark } from './axe.ts';

// Every screen is gone through here.
test.describe.configure({ timeout: 300_000 });

/** Everything a screen shows once it has come to rest. */
async function screens(page: Page, look: (name: string) => Promise<void>) {
  for (const place of [...PLACES, 'section/s1%3Ad4', 'decision/advice']) {
    await goTo(page, place);
    await page.locator('main h1').first().waitFor();
    if (place === 'report') await page.getByTitle('The report as it will read').waitFor();
    await look(place);
  }
  for (const [name, address] of [
    ['cases', '/#/'],
    ['about', '/#/about'],
  ] as const) {
    await page.goto(address);
    await page.locator('main').waitFor();
    await look(name);
  }
}

test('no screen has a fault that axe can find, in the light or in the dark', async ({ page }) => {
  await firstStart(page);
  await screens(page, (name) => expectNoFaultsInLightOrDark(page, name, { without: 'iframe' }));
  await goTo(page, 'decision');
  await page
    .getByRole('button', { name: /how it was found$/ })
    .first()
    .click();
  await page.getByRole('dialog').waitFor();
  await expectNoFaultsInLightOrDark(page, 'opened number');
  await page.keyboard.press('Escape');
  await page
    .getByRole('button', { name: /confirm or override$/ })
    .first()
    .click();
  await page.getByRole('dialog').getByRole('radio', { name: 'imminent' }).check({ force: true });
  await page.getByRole('dialog').getByRole('textbox', { name: 'Reason' }).waitFor();
  await expectNoFaultsInLightOrDark(page, 'judging');
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('everything pressed is at least 48 px high and nothing hangs over the edge', async ({ page }) => {
    await firstStart(page);
    await screens(page, async (name) => {
      const small = await page
        .locator('button:visible, a[href]:visible, select:visible, input:visible, summary:visible')
        .evaluateAll((elements) =>
          elements
            .filter((element) => !element.closest('.out-of-sight'))
            .map((element) => {
              // A tick or a field is pressed anywhere in its frame.
              const target = element.closest('.box, .entry.tick label, .segment') ?? element;
              const { height } = target.getBoundingClientRect();
              return [
                element.getAttribute('aria-label') ?? element.textContent?.slice(0, 40),
                Math.round(height),
              ];
            })
            .filter(([, height]) => Number(height) < 48),
        );
      expect([name, small]).toEqual([name, []]);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect([name, over]).toEqual([name, 0]);
    });
  });
});

test('the day’s work can be done with the keyboard alone', async ({ page }) => {
  await firstStart(page);
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Skip to the content' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.locator('#place')).toBeFocused();
  // The choice of leaf, then the first number.
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeVisible();
  await page.keyboard.press('Escape');
  const section = page.getByRole('link', { name: 'Section and drillings' });
  await section.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Section and drillings' })).toBeVisible();
  const drilling = page.getByRole('link', { name: /^d4/ });
  await drilling.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('slider')).toBeVisible();

  await test.step('and the decision', async () => {
    await goTo(page, 'decision');
    const line = page.locator('#likelihood').getByRole('button', { name: /confirm or override$/ });
    await line.focus();
    await page.keyboard.press('Enter');
    const sheet = page.getByRole('dialog');
    await sheet.getByRole('radio', { name: 'improbable' }).focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('ArrowDown');
    await expect(sheet.getByRole('radio', { name: /^possible/ })).toBeChecked();
    await page.keyboard.press('Escape');
    await expect(line).toBeFocused();
    await expect(line).toContainText('confirmed');
  });
});
