/** Marks moved as they are to another place of a drawing, so that one figure can be made of several. */
import { coordinate } from '../../scene/marks.ts';
import type { SceneItem } from '../../scene/scene.ts';

/** Path data moved: it holds absolute pairs of coordinates only. */
function movedPath(d: string, dx: number, dy: number): string {
  let odd = false;
  return d.replace(/-?\d+(?:\.\d+)?/g, (found) => {
    odd = !odd;
    return coordinate(Number(found) + (odd ? dx : dy));
  });
}

export function moved(items: readonly SceneItem[], dx: number, dy: number): SceneItem[] {
  return items.map((item): SceneItem => {
    if (item.kind === 'text') return { ...item, x: item.x + dx, y: item.y + dy };
    if (item.kind === 'path') return { ...item, d: movedPath(item.d, dx, dy) };
    const inside = { ...item, items: moved(item.items, dx, dy) };
    return item.clip === undefined ? inside : { ...inside, clip: movedPath(item.clip, dx, dy) };
  });
}
