/** What axe finds wrong on a page, for the browser tests. */
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

interface AxeOptions {
  /** Parts left out, as a selector. */
  without?: string;
  /** Only rules of these tags; all rules that axe has on by default when left out. */
  tags?: string[];
}

/**
 * Each rule that the page breaks as it stands, with the beginning of the elements at fault.
 *
 * Axe runs in the page itself: its other way gathers the results in a second page, which is for frames of other origins
 * and takes twice as long. What is in order is not written out.
 */
export async function axeFaults(
  page: Page,
  { without, tags }: AxeOptions = {},
): Promise<[string, string[]][]> {
  const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });
  if (without) axe.exclude(without);
  if (tags) axe.withTags(tags);
  const { violations } = await axe.analyze();
  return violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html.slice(0, 160))]);
}

/** Looks for faults in the light and in the dark, without opening the page anew. */
export async function expectNoFaultsInLightOrDark(
  page: Page,
  name: string,
  options?: AxeOptions,
): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    // A busy browser may draw no frame in which it would tell the page of the change: then it is made once more.
    await expect(async () => {
      await page.emulateMedia({ colorScheme: colorScheme === 'dark' ? 'light' : 'dark' });
      await page.emulateMedia({ colorScheme });
      await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(drawn)));
      await expect(page.locator('html')).toHaveAttribute('data-theme', colorScheme, { timeout: 2000 });
    }).toPass({ timeout: 30_000 });
    // What fades or slides comes to rest first, and a frame is drawn in the new colours: axe looks at what is seen.
    await page.evaluate(async () => {
      await Promise.allSettled(document.getAnimations().map(({ finished }) => finished));
      await new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)));
    });
    expect(await axeFaults(page, options), `${name}, ${colorScheme}`).toEqual([]);
  }
}
