import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { featureScanner, treeOfFeature } from '@standfast/casefile';
import { caseZip, firstStart } from './app.ts';
import { expectNoFaultsInLightOrDark } from './axe.ts';

const point = (longitude: number, latitude: number, properties: object) => ({
  type: 'Feature',
  geometry: { type: 'Point', coordinates: [longitude, latitude] },
  properties,
});
const collection = (features: unknown[]) =>
  Buffer.from(JSON.stringify({ type: 'FeatureCollection', features }));

const INVENTORY = [
  point(9.9876543, 53.5512345, { number: 'P 1', botanical: 'Tilia cordata' }),
  point(9.9886543, 53.5512345, { number: 'P 2', botanical: 'Quercus robur' }),
  point(9.9896543, 53.5522345, { number: 'P 3', botanical: 'Acer platanoides' }),
];

async function bringIn(page: Page, name: string, buffer: Buffer) {
  await page
    .getByLabel('Case zips, tables or photos of strips')
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
}

async function makeCases(page: Page) {
  await bringIn(page, 'park.geojson', collection(INVENTORY));
  const step = page.getByRole('dialog');
  await expect(step.getByLabel('Label of the tree')).toHaveValue('number');
  await expect(step.getByLabel('Botanical name')).toHaveValue('botanical');
  await step.getByRole('button', { name: 'Make 3 cases' }).click();
  await expect(page.getByText('3 cases made of park.geojson.')).toBeVisible();
  await expect(page.locator('.case-row')).toHaveCount(4);
}

test('the list says risk, due date and safety with its range; it sorts, filters, and goes out and in', async ({
  page,
}) => {
  await firstStart(page);
  await page.goto('/#/');
  const demonstration = page.locator('.case-row').filter({ hasText: 'LG-7' });
  await expect(demonstration.locator('.case-verdict')).toContainText(/\d\.\d\d \(\d\.\d\d to \d+\.\d\d\)/);
  await expect(demonstration.locator('.case-risk')).toContainText(/low|moderate|high|extreme/);
  await expect(demonstration.locator('.case-due')).toContainText(/20\d\d/);
  await makeCases(page);
  await expect(page.locator('.case-row').last()).toContainText('not assessed yet');

  await test.step('filters', async () => {
    await page.getByRole('searchbox', { name: 'Search' }).fill('quercus');
    await expect(page.locator('.case-row')).toHaveCount(1);
    await expect(page.locator('.list-head')).toContainText('1 of 4');
    await page.getByRole('searchbox', { name: 'Search' }).fill('no such tree');
    await expect(page.getByRole('heading', { name: 'No case is like that' })).toBeVisible();
    await page.getByRole('button', { name: 'Show all cases' }).click();
    await page.getByLabel('Risk').selectOption('not assessed');
    await expect(page.locator('.case-row')).toHaveCount(3);
    await page.getByRole('button', { name: 'Show all', exact: true }).click();
    await page.getByLabel('Sorted by').selectOption('label');
    await expect(page.locator('.case-row').first()).toContainText('LG-7');
  });

  await test.step('saved as CSV and GeoJSON', async () => {
    const save = async (name: string) => {
      const saving = page.waitForEvent('download');
      await page.getByRole('button', { name: 'Save the list' }).click();
      await page.getByRole('menuitem', { name }).click();
      return readFileSync(await (await saving).path(), 'utf8');
    };
    const csv = await save('As CSV, for a spreadsheet');
    expect(csv.split('\r\n').length).toBe(6);
    const geojson = await save('As GeoJSON, for a map');
    const scanner = featureScanner('saved');
    const found = scanner
      .push(geojson)
      .filter(({ text }) => text.includes('"P 1"'))
      .map((feature) => treeOfFeature(feature, 'saved'));
    scanner.end();
    expect(found[0]?.longitude).toBeCloseTo(9.9876543, 7);
    expect(found[0]?.latitude).toBeCloseTo(53.5512345, 7);
  });

  await test.step('opens without assessing anew', async () => {
    await page.reload();
    await expect(
      page.locator('.case-row').filter({ hasText: 'LG-7' }).locator('.case-verdict'),
    ).toContainText(/\d\.\d\d \(/, { timeout: 4000 });
  });
});

test('a case brought in is worked out in the background, and an overdue one is marked', async ({ page }) => {
  await firstStart(page);
  await page.goto('/#/');
  await bringIn(
    page,
    'old.zip',
    caseZip((caseFile) => {
      Object.assign(caseFile, { visitedOn: '2019-05-14' });
      caseFile.tree.label = 'Old lime';
    }),
  );
  await expect(page).toHaveURL(/section$/);
  await page.goto('/#/');
  const old = page.locator('.case-row').filter({ hasText: 'Old lime' });
  await expect(old.locator('.case-verdict')).toContainText(/\d\.\d\d \(/, { timeout: 40_000 });
  await expect(old.locator('.case-due')).toContainText('overdue');
  await page.getByLabel('Due').selectOption('overdue');
  await expect(old).toBeVisible();
});

test('an inventory at fault says where, and takes nothing from a projected one', async ({ page }) => {
  await firstStart(page);
  await page.goto('/#/');
  const step = page.getByRole('dialog');
  const said = async (name: string, buffer: Buffer, words: RegExp) => {
    await bringIn(page, name, buffer);
    await expect(step.getByRole('alert')).toContainText(words);
    await step.getByRole('button', { name: 'Close' }).last().click();
  };
  await said('metres.geojson', collection([point(565000, 5934000, {})]), /feature 0: .*map projection/);
  await said('words.geojson', Buffer.from('number;x;y'), /not JSON/);
  await bringIn(
    page,
    'some.geojson',
    collection([...INVENTORY, { type: 'Feature', geometry: null, properties: {} }]),
  );
  await expect(step).toContainText('feature 3: it has no geometry');
  await step.getByRole('button', { name: 'Leave it' }).click();
  await expect(page.locator('.case-row')).toHaveCount(1);
});

test('the map shows the trees, a background, one’s own place; reachable by keyboard', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['geolocation']);
  await context.setGeolocation({ longitude: 9.9885, latitude: 53.5518, accuracy: 12 });
  await firstStart(page);
  await page.goto('/#/map');
  await page.goto('/#/');
  await makeCases(page);
  await expectNoFaultsInLightOrDark(page, 'list');
  await page.getByRole('link', { name: 'Map' }).click();
  const map = page.getByRole('application', { name: /Map of \d trees/ });
  await expect(map).toBeVisible();
  const beside = page.getByRole('region', { name: 'Trees in view' });
  await expect(beside.getByRole('link', { name: /P 2/ })).toBeVisible();
  await page.getByLabel('Background of roads, paths or boundaries').setInputFiles({
    name: 'paths.geojson',
    mimeType: 'application/geo+json',
    buffer: collection([
      {
        type: 'Feature',
        properties: {},
        geometry: {
          type: 'LineString',
          coordinates: [
            [9.986, 53.551],
            [9.991, 53.5525],
          ],
        },
      },
    ]),
  });
  await expect(page.getByText('paths.geojson: 1 lines, kept on this device.')).toBeVisible();
  await page.getByRole('button', { name: 'Where I am' }).click();
  await expect(page.getByText(/You are within 12/)).toBeVisible();
  await expectNoFaultsInLightOrDark(page, 'map');

  await page.getByRole('button', { name: 'Show all trees' }).click();
  await map.focus();
  for (let i = 0; i < 12; i++) await page.keyboard.press('+');
  await expect(beside).toContainText('In view 0');
  await page.keyboard.press('0');
  await expect(beside.getByRole('link', { name: /P 3/ })).toBeVisible();
  await beside.getByRole('link', { name: /P 3/ }).focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('.case-title-label')).toHaveText('P 3');
});
