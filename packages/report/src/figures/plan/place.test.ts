import { expect, it } from 'vitest';
import { text, textBox } from '../../scene/marks.ts';
import { overlaps, placeLabel, type Taken } from './place.ts';

it('sets labels of crowded points apart and inside the frame', () => {
  const taken: Taken = [];
  const frame = { x: 0, y: 0, width: 300, height: 300 };
  const placed = Array.from({ length: 12 }, (_, i) => {
    const a = (i / 12) * 2 * Math.PI;
    return placeLabel(
      text(0, 0, `d${i + 1}`, { size: 10 }),
      [150 + 40 * Math.sin(a), 150 - 40 * Math.cos(a)],
      [Math.sin(a), -Math.cos(a)],
      taken,
      frame,
    );
  });
  const boxes = placed.map(textBox);
  boxes.forEach((b, i) => {
    for (const other of boxes.slice(i + 1)) expect(overlaps(b, other, 0)).toBe(false);
    expect(b.x).toBeGreaterThanOrEqual(0);
    expect(b.x + b.width).toBeLessThanOrEqual(300);
  });
});
