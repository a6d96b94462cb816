/** A recorded opening is evidence of that stretch of the surface, however narrow, and of no other. */
import { openCase } from '@standfast/casefile';
import { demoBag } from '@standfast/casefile/node';
import { arcSpanDeg, assess } from '@standfast/engine';
import { expect, it } from 'vitest';

const DRAWS = 200;

it.each([
  ['a slit', 0.5],
  ['a hand', 100],
])('takes an opening as wide as %s for just that much of the round', async (_, widthMm) => {
  const { engineInput } = openCase(await demoBag());
  const section = { ...engineInput.sections[0]!, opening: { azimuthDeg: 90, widthMm } };
  const { surface, outlineMm, soundShare } = assess({ ...engineInput, sections: [section] }, { draws: DRAWS })
    .sections[0]!;
  const roundMm = outlineMm.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = outlineMm[(i + 1) % outlineMm.length]!;
    return sum + Math.hypot(nextX - x, nextY - y);
  }, 0);
  const open = surface!.filter(({ state }) => state === 'open');
  expect(open).toHaveLength(1);
  expect(arcSpanDeg(open[0]!.fromDeg, open[0]!.toDeg)).toBeCloseTo((360 * widthMm) / roundMm, 6);
  // The drillings of this stem find most of its wood sound; a narrow opening cannot turn that over.
  expect(soundShare.p50).toBeGreaterThan(0.7);
});
