/** What the browser tests do again and again. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { zipSync } from 'fflate';

/** The demonstration case's folder. */
export const DEMONSTRATION = join(import.meta.dirname, '../../packages/casefile/demo');

/** Places of a case, as they stand in the address. */
export const PLACES = ['tree', 'section', 'strength', 'decision', 'report'] as const;

/** Opens the app for the first time and waits for the first answer on the demonstration. */
export async function firstStart(page: Page): Promise<void> {
  await page.goto('/');
  await expect(page.getByTestId('governing')).toBeVisible({ timeout: 40_000 });
}

/** Goes to a place of the demonstration case. */
export async function goTo(page: Page, place: string): Promise<void> {
  await page.goto(`/#/case/demonstration/${place}`);
}

/** Waits until the assessment is of the case as it stands, with all its draws. */
export async function settled(page: Page): Promise<void> {
  await expect(page.getByTestId('governing')).toBeVisible({ timeout: 40_000 });
  await expect(page.locator('.verdict-strip:not([data-quick]):not([data-stale])')).toBeVisible({
    timeout: 40_000,
  });
}

/** The safety that governs, as it stands on the screen. */
export async function governing(page: Page): Promise<string> {
  return (await page.getByTestId('governing').textContent()) ?? '';
}

/** The demonstration's files, for bringing in under another guise. */
export function demonstrationFiles(): Record<string, Uint8Array> {
  const files: Record<string, Uint8Array> = {};
  for (const entry of readdirSync(DEMONSTRATION, { withFileTypes: true, recursive: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    files[path.slice(DEMONSTRATION.length + 1)] = new Uint8Array(readFileSync(path));
  }
  return files;
}

/** A case zip with another label, after a change of its case.json. */
export function caseZip(
  change: (caseFile: {
    tree: Record<string, unknown>;
    sections: { drillings: unknown[] }[];
    flares: { drillings: unknown[] }[];
  }) => void,
): Buffer {
  const files = demonstrationFiles();
  const caseFile = JSON.parse(new TextDecoder().decode(files['case.json']));
  change(caseFile);
  files['case.json'] = new TextEncoder().encode(JSON.stringify(caseFile));
  return Buffer.from(zipSync(files, { level: 1 }));
}

/** A drill's table with semicolons and decimal commas: bark, then sound wood with a hollow at 90 to 120 mm. */
export function germanTable(): Buffer {
  const comma = (value: number, digits: number) => value.toFixed(digits).replace('.', ',');
  const rows = ['Tiefe [mm];Bohrwiderstand [%]'];
  for (let i = 0; i <= 2000; i++) {
    const depth = i * 0.1;
    const ripple = 2 * Math.sin(depth / 1.3);
    const level = depth < 12 ? 7 : depth > 90 && depth < 120 ? 2 : 34;
    rows.push(`${comma(depth, 1)};${comma(Math.max(0, level + ripple * (level > 10 ? 1 : 0.2)), 2)}`);
  }
  return Buffer.from(`${rows.join('\r\n')}\r\n`, 'utf8');
}
