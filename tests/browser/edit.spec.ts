import { expect, test } from '@playwright/test';
import { firstStart, goTo, governing, settled } from './app.ts';

test('the assessment follows an edit; undo brings the old answer back; a reload keeps the edit', async ({
  page,
}) => {
  await firstStart(page);
  await settled(page);
  const before = await governing(page);
  await goTo(page, 'tree');
  const height = page.getByRole('textbox', { name: 'Height', exact: true });
  await height.fill('14');
  await expect(page.getByTestId('governing')).not.toHaveText(before);
  await settled(page);
  const after = await governing(page);
  expect(Number.parseFloat(after)).toBeGreaterThan(Number.parseFloat(before));

  await page.reload();
  await expect(height).toHaveValue('14');
  await settled(page);
  expect(await governing(page)).toBe(after);

  await height.fill('21');
  await settled(page);
  expect(await governing(page)).toBe(before);
  await page.getByRole('button', { name: 'Undo: Height' }).click();
  await expect(height).toHaveValue('14');
  await settled(page);
  expect(await governing(page)).toBe(after);
});

test('a value that cannot be read is kept with its message, and the last answer is marked as old', async ({
  page,
}) => {
  await firstStart(page);
  await goTo(page, 'tree');
  const diameter = page.getByRole('textbox', { name: 'Stem diameter' });
  await settled(page);
  const before = await governing(page);
  await diameter.fill('88x');
  await expect(page.getByText('“88x” is not a number. Use digits and one decimal sign.')).toBeVisible();
  await expect(page.getByText('of the case before the last change')).toBeVisible();
  await expect(page.getByTestId('governing')).toHaveText(before);
  await page.reload();
  await expect(diameter).toHaveValue('88x');
  await diameter.fill('1,250');
  await expect(page.getByText(/can be read two ways. Write 1250 or 1.250/)).toBeVisible();

  await test.step('an impossible tree names its field', async () => {
    await diameter.fill('880');
    await page.getByRole('textbox', { name: 'Height of crown base' }).fill('40');
    await page.getByRole('button', { name: /to mend/ }).click();
    await expect(page.getByRole('dialog')).toContainText(/crown/);
    await page.keyboard.press('Escape');
    await page.getByRole('textbox', { name: 'Height of crown base' }).fill('4.5');
    await settled(page);
    await expect(page.getByRole('button', { name: /to mend/ })).toHaveCount(0);
  });

  await test.step('the outline can be measured in another way', async () => {
    await goTo(page, 'section');
    const kind = page.getByLabel('Outline, over bark');
    await kind.selectOption('circle');
    const diameter = page.getByRole('textbox', { name: 'Diameter', exact: true });
    await expect(diameter).toHaveValue(/^1\d{3}$/);
    await settled(page);
    const round = await governing(page);
    await diameter.fill('700');
    await expect(page.getByTestId('governing')).not.toHaveText(round);
    await kind.selectOption('ellipse');
    await expect(page.getByLabel('Long diameter')).toHaveValue('700');
  });
});

test('site, roots and targets are typed in the units shown, kept as typed, and told at the field where they cannot be', async ({
  page,
}) => {
  await firstStart(page);
  await goTo(page, 'tree');
  await page.getByRole('button', { name: 'Units and look' }).click();
  await page.getByRole('dialog').getByText('US', { exact: true }).click();
  await page.keyboard.press('Escape');
  await page.getByLabel('Soil').selectOption('poor');
  await page.getByRole('textbox', { name: 'Returns once in' }).fill('1');
  await expect(page.getByText(/Must be at least 2\D+years/)).toBeVisible();
  await page.getByRole('button', { name: 'Add a root cut' }).click();
  const cut = page.locator('#root-cuts');
  await cut.getByRole('textbox', { name: 'Distance from the bark' }).fill('10');
  await cut.getByRole('textbox', { name: 'Year' }).fill('201x');
  await expect(cut.getByText('“201x” is not a number. Use digits and one decimal sign.')).toBeVisible();
  await page.locator('#targets').getByLabel('Shielded').first().selectOption('partial');
  await expect(page.getByTestId('saved')).toHaveText(/^saved /);

  await page.reload();
  await expect(page.getByLabel('Soil')).toHaveValue('poor');
  await expect(page.getByRole('textbox', { name: 'Returns once in' })).toHaveValue('1');
  await expect(cut.getByRole('textbox', { name: 'Distance from the bark' })).toHaveValue('10');
  await expect(cut.getByRole('textbox', { name: 'Year' })).toHaveValue('201x');
  await expect(page.locator('#targets').getByLabel('Shielded').first()).toHaveValue('partial');

  await page.getByRole('button', { name: /things to mend/ }).click();
  await page
    .getByRole('dialog')
    .getByRole('listitem')
    .filter({ hasText: 'root cut' })
    .getByRole('link')
    .click();
  await expect(cut).toBeFocused();
  await cut.getByRole('textbox', { name: 'Year' }).fill('2019');
  await page.getByRole('textbox', { name: 'Returns once in' }).fill('50');
  await settled(page);
  await page.getByRole('button', { name: 'Units and look' }).click();
  await page.getByRole('dialog').getByText('Metric', { exact: true }).click();
  await page.keyboard.press('Escape');
  await expect(cut.getByRole('textbox', { name: 'Distance from the bark' })).toHaveValue('3.048');
});

test('one tab writes; the other reads along until it takes over', async ({ page, context }) => {
  await firstStart(page);
  await goTo(page, 'tree');
  const second = await context.newPage();
  await second.goto('/#/case/demonstration/tree');
  await expect(second.getByText('Another tab is writing in this case.')).toBeVisible();
  await expect(second.getByLabel('Label', { exact: true })).not.toBeEditable();
  await page.getByLabel('Label', { exact: true }).fill('Gate maple');
  await expect(second.getByLabel('Label', { exact: true })).toHaveValue('Gate maple');
  await second.getByRole('button', { name: 'Write here instead' }).click();
  await expect(second.getByLabel('Label', { exact: true })).toBeEditable();
  await expect(page.getByText('Another tab is writing in this case.')).toBeVisible();
  await second.getByLabel('Label', { exact: true }).fill('Old gate maple');
  await expect(page.getByLabel('Label', { exact: true })).toHaveValue('Old gate maple');
});

test('storage that is full is told at once, with the way out, and nothing on screen is lost', async ({
  page,
}) => {
  // A full disk cannot be had in a test, so the database's door answers as the browser does then.
  await page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...given: Parameters<typeof put>) {
      if (document.documentElement.dataset.diskFull === 'yes') {
        throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
      }
      return put.apply(this, given);
    };
  });
  const fill = (state: 'yes' | 'no') =>
    page.evaluate((full) => {
      document.documentElement.dataset.diskFull = full;
    }, state);
  await firstStart(page);
  await goTo(page, 'report');
  await fill('yes');
  const purpose = page.getByLabel('Purpose');
  await purpose.fill('The last words before the disk was full.');
  await expect(page.getByRole('alert')).toContainText('storage is full');
  await expect(page.getByTestId('saved')).toHaveText('not saved');
  const saving = page.waitForEvent('download');
  await page.getByRole('alert').getByRole('button', { name: 'Save as zip' }).click();
  expect((await saving).suggestedFilename()).toMatch(/\.zip$/);

  await fill('no');
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByTestId('saved')).toHaveText(/^saved /);
  await page.reload();
  await expect(purpose).toHaveValue('The last words before the disk was full.');
});

test('a page that breaks still hands out the cases', async ({ page }) => {
  await firstStart(page);
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('standfast');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const change = opening.result.transaction('cases', 'readwrite');
          const cases = change.objectStore('cases');
          cases.put({
            id: 'broken',
            savedAt: 1,
            deletedAt: 0,
            files: {},
            drafts: {},
            verdict: null,
            caseFile: {},
          });
          change.oncomplete = () => resolve();
          change.onerror = () => reject(change.error);
        };
      }),
  );
  await page.goto('/#/case/broken/tree');
  await expect(page.getByRole('heading', { name: 'This page broke, your cases did not' })).toBeVisible();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save all cases as zip' }).click();
  expect((await saving).suggestedFilename()).toMatch(/\.zip$/);
});
