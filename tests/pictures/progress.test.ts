/** What is told while a strip is looked for and read: shares that only grow, from nothing to all, without long leaps. */
import { readStrip, seeChart } from '@standfast/engine';
import { expect, it } from 'vitest';
import { laidStrip } from './laidStrip.ts';

/** No step is so long that a bar seems to stand still. */
const LONGEST_STEP = 0.4;

it.each<['find' | 'read']>([['find'], ['read']])('the shares told to %s only grow', (what) => {
  const strip = laidStrip('left to right', { numbers: true });
  const told: { share: number; step: string }[] = [];
  const tell = (share: number, step: string) => told.push({ share, step });
  if (what === 'find') seeChart(strip.image, tell);
  else {
    readStrip(
      strip.image,
      { cornersPx: strip.cornersPx, depthMm: strip.depthMm, resistance: [0, 100] },
      { onProgress: tell },
    );
  }
  const shares = [...told.map(({ share }) => share), 1];
  expect(shares[0]).toBe(0);
  for (let i = 1; i < shares.length; i++) {
    expect(shares[i]).toBeGreaterThanOrEqual(shares[i - 1]!);
    expect(shares[i]! - shares[i - 1]!).toBeLessThanOrEqual(LONGEST_STEP);
  }
  expect(new Set(told.map(({ step }) => step)).size).toBeGreaterThanOrEqual(4);
});
