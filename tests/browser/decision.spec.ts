import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { DEMONSTRATION, firstStart, goTo, settled } from './app.ts';

/** The line of the whole tree's likelihood of failure. */
const likelihoodLine = (page: Page) =>
  page.locator('#likelihood').getByRole('button', { name: /confirm or override$/ });

/** An interval as the app prints it, `1.25 (0.52 to 2.80)`. */
function intervalOf(text: string): { p50: number; p05: number; p95: number } {
  const [, p50, p05, p95] = /([\d.]+) \(([\d.]+) to ([\d.]+)\)/.exec(text) ?? [];
  return { p50: Number(p50), p05: Number(p05), p95: Number(p95) };
}

/** Safety against uprooting toward a bearing, from the table of the strength place. */
async function uprooting(page: Page, bearing: string) {
  await goTo(page, 'strength');
  await settled(page);
  const rows = page
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: bearing, exact: true }) });
  if (!(await rows.isVisible())) await page.getByText('By direction, as a table').click();
  return intervalOf((await rows.getByRole('cell').nth(2).textContent()) ?? '');
}

/** The list's row that was added last. */
const lastRow = (group: Locator) => group.getByRole('listitem').last();

test('an override counts once it has a reason, is kept, undone, and printed in the report', async ({
  page,
}) => {
  await firstStart(page);
  await goTo(page, 'decision');
  await settled(page);
  await expect(likelihoodLine(page)).toContainText('suggested');
  const before = (await page.getByTestId('overall-risk').textContent()) ?? '';
  await likelihoodLine(page).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('radio', { name: 'imminent', exact: true }).check({ force: true });
  await expect(
    sheet.getByText('Give a reason: until then the suggestion counts, not your word.'),
  ).toBeVisible();
  await expect(page.locator('#likelihood .judged')).toHaveAttribute('data-standing', 'refused');
  await sheet.getByRole('textbox', { name: 'Reason' }).fill('The soil was seen to lift in a breeze.');
  await expect(sheet.getByText('Give a reason')).toHaveCount(0);
  await expect(sheet.getByRole('status')).toHaveText(/Risk, highest of the targets: (high|extreme)\./);
  await sheet.getByRole('button', { name: 'Done' }).click();

  await expect(likelihoodLine(page)).toContainText('your word; suggested: possible');
  await expect(page.locator('#likelihood')).toContainText('Reason: The soil was seen to lift in a breeze.');
  await expect(page.getByTestId('overall-risk')).toContainText('By the suggestions alone: moderate.');
  await expect(page.getByRole('textbox', { name: 'Decided by' })).toHaveValue('Ada Quillfeather (invented)');
  await expect(page.getByLabel('Decided on')).not.toHaveValue('');

  await test.step('undo takes the reason back, then the word; redo brings both again', async () => {
    await page.getByRole('button', { name: 'Undo: Reason' }).click();
    await expect(likelihoodLine(page)).toContainText('reason needed for “imminent”');
    await page.getByRole('button', { name: 'Undo: Likelihood of failure: imminent' }).click();
    await expect(likelihoodLine(page)).toContainText('suggested');
    await expect(page.getByTestId('overall-risk')).toHaveText(before);
    await page.getByRole('button', { name: 'Redo: Likelihood of failure: imminent' }).click();
    await page.getByRole('button', { name: 'Redo: Reason' }).click();
  });

  await test.step('it is there after a reload, and in the report beside the suggestion', async () => {
    await expect(page.getByTestId('saved')).toHaveText(/^saved /);
    await page.reload();
    await expect(likelihoodLine(page)).toContainText('your word; suggested: possible');
    await goTo(page, 'report');
    await settled(page);
    const report = page.frameLocator('iframe[title="The report as it will read"]');
    await expect(report.getByText('The soil was seen to lift in a breeze.').first()).toBeAttached();
  });
});

test('each target’s words can be judged, all the rest confirmed at once, and both matrices show the cell', async ({
  page,
}) => {
  await firstStart(page);
  await goTo(page, 'decision');
  await settled(page);
  const card = page.getByRole('listitem', { name: 'footpath across the green, whole tree' });
  await card.getByText('Both matrices').click();
  const second = card.getByRole('table', { name: 'Second: risk' });
  await expect(second.locator('td[data-lit]')).toHaveText('● here: moderate');

  await card.getByRole('button', { name: /^Consequences/ }).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('radio', { name: 'negligible', exact: true }).check({ force: true });
  await sheet.getByRole('textbox', { name: 'Reason' }).fill('The path is closed for works.');
  await sheet.getByRole('button', { name: 'Done' }).click();
  await expect(second.locator('td[data-lit]')).toHaveText('● here: low');
  await expect(card).toContainText('By the suggestions alone: moderate.');

  await settled(page);
  await page.getByRole('button', { name: /^Confirm all \d+ as suggested$/ }).click();
  await expect(page.getByText('Every suggestion was confirmed or overridden.')).toBeVisible();
  await expect(card.getByRole('button', { name: /^Consequences/ })).toContainText(
    'your word; suggested: severe',
  );
  await expect(likelihoodLine(page)).toContainText('confirmed');

  await test.step('another time frame changes the chance that is named', async () => {
    await page.getByRole('textbox', { name: 'Time frame' }).fill('1');
    await settled(page);
    await expect(page.getByText('Chance of failing within 1 year', { exact: true })).toBeVisible();
  });
});

test('a static load test, asked for where the evidence is thin, narrows uprooting on the side it was pulled to', async ({
  page,
}) => {
  await firstStart(page);
  const before = await uprooting(page, '30° (north-east)');
  await goTo(page, 'decision');
  await expect(page.getByText('The evidence on the roots is too thin to decide on.')).toBeVisible();
  await page.getByRole('link', { name: 'Enter a static load test' }).click();
  const tests = page.locator('#static-tests');
  await expect(tests).toBeFocused();
  await tests.getByRole('button', { name: 'Add a static load test' }).click();
  await expect(tests.getByRole('textbox', { name: 'Pulled toward' })).toBeFocused();
  await expect(tests.getByText('Needed for the assessment.')).toBeVisible();
  await tests.getByRole('textbox', { name: 'Pulled toward' }).fill('30');
  await tests.getByRole('textbox', { name: 'Tilt of the root plate' }).fill('2.5');
  await expect(tests.getByText('Must be at most 0.50°.')).toBeVisible();
  await tests.getByRole('textbox', { name: 'Tilt of the root plate' }).fill('0.25');
  await tests.getByRole('textbox', { name: 'Moment at the ground' }).fill('600');
  const after = await uprooting(page, '30° (north-east)');
  expect(after.p95 / after.p05).toBeLessThan(0.8 * (before.p95 / before.p05));
});

test('a root cut lowers uprooting safety on its side; an opening counts in the trade’s rules', async ({
  page,
}) => {
  await firstStart(page);
  const before = await uprooting(page, '120° (south-east)');
  await goTo(page, 'tree');
  const cuts = page.locator('#root-cuts');
  await cuts.getByRole('button', { name: 'Add a root cut' }).click();
  const cut = lastRow(cuts);
  await cut.getByRole('textbox', { name: 'Side of the cut' }).fill('120');
  await cut.getByRole('textbox', { name: 'Distance from the bark' }).fill('1');
  const after = await uprooting(page, '120° (south-east)');
  expect(after.p50).toBeLessThan(before.p50);

  await test.step('opening', async () => {
    const rule = page
      .getByRole('listitem')
      .filter({ hasText: /opening/i })
      .first();
    await expect(rule).toContainText('does not apply');
    await goTo(page, 'section');
    await page.getByRole('button', { name: 'Add an open cavity' }).click();
    await page.getByRole('textbox', { name: 'Width along the bark' }).fill('400');
    await goTo(page, 'strength');
    await settled(page);
    await expect(rule).not.toContainText('does not apply');
  });
});

test('advice is chosen with its cost and day, and stands in the report', async ({ page }) => {
  await firstStart(page);
  await goTo(page, 'decision/advice');
  await page.getByText(/^Also possible/).click();
  const option = page.getByRole('listitem', { name: 'Crown reduction by 10 % of height and spread' });
  await expect(option).toContainText(/then\s*1\.\d\d \(/);
  await option.getByRole('button', { name: /^Choose/ }).click();
  await expect(option.getByRole('button', { name: /^Chosen/ })).toHaveAttribute('aria-pressed', 'true');
  await option.getByRole('textbox', { name: 'Cost' }).fill('about 900 crowns');
  await option.getByLabel('To be done by').fill('2027-02-28');
  await option.getByRole('textbox', { name: 'Note' }).fill('After the nesting season.');
  await expect(option).toContainText('by 28 February 2027');
  await goTo(page, 'report');
  await settled(page);
  const report = page.frameLocator('iframe[title="The report as it will read"]');
  await expect(report.getByText('about 900 crowns').first()).toBeAttached();
  await expect(report.getByText(/After the nesting season\./).first()).toBeAttached();
  await expect(report.getByText(/28 February 2027/).first()).toBeAttached();
});

test('a sign keeps its photo, a place its position, a felled section its polygons', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['geolocation']);
  await context.setGeolocation({ latitude: 52.123456, longitude: -1.654321, accuracy: 6 });
  await firstStart(page);
  await goTo(page, 'tree');
  await page.getByRole('button', { name: 'Use this position' }).click();
  await expect(page.getByRole('textbox', { name: 'Latitude' })).toHaveValue('52.123456');
  await expect(page.getByRole('textbox', { name: 'Longitude' })).toHaveValue('−1.654321');

  await test.step('a picture is kept, and what is none is refused with its name', async () => {
    const photo = page.getByLabel('Photo of sign 2', { exact: true });
    await photo.setInputFiles({
      name: 'words.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from('no picture'),
    });
    await expect(page.getByRole('alert').filter({ hasText: 'words.jpg' })).toBeVisible();
    const png = readFileSync(join(import.meta.dirname, '../../apps/field/public/icon-192.png'));
    await photo.setInputFiles({ name: 'ants.png', mimeType: 'image/png', buffer: png });
    await expect(page.getByRole('img', { name: 'Photo of sign 2: photos/sign-2.png' })).toBeVisible();
    await expect(page.getByTestId('saved')).toHaveText(/^saved /);
    await page.reload();
    await expect(page.getByRole('img', { name: 'Photo of sign 2: photos/sign-2.png' })).toBeVisible();
  });

  await test.step('polygons', async () => {
    const { sections } = JSON.parse(readFileSync(join(DEMONSTRATION, 'case.json'), 'utf8')) as {
      sections: { felled?: unknown }[];
    };
    expect(sections[0]).not.toHaveProperty('felled');
    await goTo(page, 'section');
    const ring = [
      [-200, -200],
      [0, -200],
      [0, 0],
      [-200, 0],
    ];
    await page.getByLabel('Traced polygons').setInputFiles({
      name: 'stump.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify({ unsound: [ring], source: 'traced from a photo' })),
    });
    const felled = page.locator('#felled');
    await expect(felled).toContainText('1 polygon of unsound wood');
    await expect(felled).toContainText('in truth');
    await expect(felled.getByRole('textbox', { name: 'How it was traced' })).toHaveValue(
      'traced from a photo',
    );
  });
});
