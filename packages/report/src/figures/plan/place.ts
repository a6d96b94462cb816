/** Labels set down where they touch none set down before: the map-maker's first rule. */
import { type Box, type Px, textBox } from '../../scene/marks.ts';
import type { TextMark } from '../../scene/scene.ts';

/** Boxes taken so far. */
export type Taken = Box[];

export function overlaps(a: Box, b: Box, gap = 1.5): boolean {
  return (
    a.x < b.x + b.width + gap &&
    b.x < a.x + a.width + gap &&
    a.y < b.y + b.height + gap &&
    b.y < a.y + a.height + gap
  );
}

/**
 * Places a text near a point, along a unit vector away from it: first close by, then farther out and turned a
 * little to either side; takes the first place that is free and inside the frame, or the one that overlaps least.
 */
export function placeLabel(
  mark: TextMark,
  point: Px,
  outwards: Px,
  taken: Taken,
  frame: Box,
  from = 9,
): TextMark {
  const own = textBox({ ...mark, x: 0, y: 0, anchor: 'start' });
  let best: TextMark | null = null;
  let fewest = Number.POSITIVE_INFINITY;
  for (const far of [from, from + 7, from + 14, from + 24, from + 36])
    for (const turn of [0, 0.35, -0.35, 0.7, -0.7, 1.1, -1.1]) {
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const u: Px = [outwards[0] * c - outwards[1] * s, outwards[0] * s + outwards[1] * c];
      const cx = point[0] + u[0] * (far + own.width / 2 - (own.width / 2 - own.height / 2) * Math.abs(u[1]));
      const cy = point[1] + u[1] * (far + own.height / 2);
      const tried: TextMark = { ...mark, anchor: 'middle', x: cx, y: cy + mark.size * 0.28 };
      const box = textBox(tried);
      const outside =
        box.x < frame.x ||
        box.y < frame.y ||
        box.x + box.width > frame.x + frame.width ||
        box.y + box.height > frame.y + frame.height;
      const clashes = taken.filter((t) => overlaps(t, box)).length + (outside ? 1.5 : 0);
      if (clashes < fewest) {
        fewest = clashes;
        best = tried;
      }
      if (clashes === 0) {
        taken.push(box);
        return tried;
      }
    }
  taken.push(textBox(best!));
  return best!;
}
