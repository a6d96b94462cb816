/** What a plan needs round it: north arrow, scale bar, the bark's edge, and the legend. */
import type { FelledAssessment, SurfaceState } from '@standfast/engine';
import { hatch } from '../../scene/hatch.ts';
import {
  chain,
  circle,
  filled,
  group,
  line,
  type Px,
  rectangle,
  ring,
  stroked,
  text,
} from '../../scene/marks.ts';
import type { SceneItem } from '../../scene/scene.ts';
import { textWidth } from '../../scene/textWidth.ts';
import { type Units, unitOf } from '../../units.ts';
import { figureWords, language, zoneName } from '../../words/spoken.ts';
import { roundLength } from '../axis.ts';
import type { PlanMap } from '../options.ts';
import { zonePattern } from '../zonePattern.ts';
import { surfaceLine } from './surfaceArcs.ts';
import { tracedLine } from './traced.ts';

/** A slim arrow with one half filled, its point at (x, y), and N above it. */
export function northArrow(x: number, y: number, size: number): SceneItem[] {
  const h = size * 3.2;
  const w = size * 0.55;
  const halves: [Px[], Px[]] = [
    [
      [x, y],
      [x - w, y + h],
      [x, y + h * 0.8],
    ],
    [
      [x, y],
      [x + w, y + h],
      [x, y + h * 0.8],
    ],
  ];
  return [
    group({ part: 'north', title: figureWords.northUp }, [
      filled(ring(halves[0]), 'ink', { stroke: 'ink', width: 0.6, join: 'miter' }),
      filled(ring(halves[1]), 'paper', { stroke: 'ink', width: 0.6, join: 'miter' }),
      text(x, y - 4, language().numbers.compassLetters.north, {
        size: size + 1,
        face: 'semibold',
        anchor: 'middle',
      }),
    ]),
  ];
}

/** An alternating scale bar of a round length, at most `most` px long, its left end at (x, y). */
export function scaleBar(
  x: number,
  y: number,
  most: number,
  map: PlanMap,
  units: Units,
  size: number,
): SceneItem[] {
  const length = roundLength(most / map.pxPerMm, 'lengthMm', units);
  const px = length.at * map.pxPerMm;
  const half = px / 2;
  const items: SceneItem[] = [
    filled(rectangle(x, y, half, 3.5), 'ink', { stroke: 'ink', width: 0.6 }),
    filled(rectangle(x + half, y, half, 3.5), 'paper', { stroke: 'ink', width: 0.6 }),
    text(x, y - 3, '0', { size, anchor: 'middle' }),
    text(x + px, y - 3, `${length.label} ${unitOf('lengthMm', units)}`, { size, anchor: 'middle' }),
  ];
  return [group({ part: 'scale' }, items)];
}

/** Bark between outline and cambium as short radial strokes, and the two edges. */
export function barkRing(outline: readonly Px[], cambium: readonly Px[], centre: Px): SceneItem[] {
  const strokes: string[] = [];
  const steps = 180;
  for (let k = 0; k < steps; k++) {
    const a = (k / steps) * 2 * Math.PI;
    const u: Px = [Math.sin(a), -Math.cos(a)];
    const outer = rayTo(outline, centre, u);
    const inner = rayTo(cambium, centre, u);
    if (outer - inner < 1.5) continue;
    const at = (r: number): Px => [centre[0] + u[0] * r, centre[1] + u[1] * r];
    const inset = (outer - inner) * 0.18;
    strokes.push(chain([at(inner + inset), at(outer - inset)]));
  }
  return [
    group({ part: 'bark' }, [
      stroked(strokes.join(''), 'secondary', { width: 0.5 }),
      stroked(ring(cambium), 'ink', { width: 0.6 }),
      stroked(ring(outline), 'ink', { width: 1.4, join: 'round' }),
    ]),
  ];
}

/** Distance from a centre to the farthest crossing of a ring along a unit vector, px. */
export function rayTo(points: readonly Px[], centre: Px, u: Px): number {
  let far = 0;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    const ax = points[j]![0] - centre[0];
    const ay = points[j]![1] - centre[1];
    const ex = points[i]![0] - centre[0] - ax;
    const ey = points[i]![1] - centre[1] - ay;
    const across = u[0] * ey - u[1] * ex;
    if (across === 0) continue;
    const along = (ax * ey - ay * ex) / across;
    const share = (ax * u[1] - ay * u[0]) / across;
    if (along > far && share >= 0 && share <= 1) far = along;
  }
  return far;
}

/**
 * The legend of a plan: soundness ramp, little-known hatching, the logs' patterns, and the next position where one
 * is marked. Returns its marks and its height; rows break at `width`.
 */
export function planLegend(
  x: number,
  y: number,
  width: number,
  size: number,
  shows: {
    next: boolean;
    kinds: readonly Parameters<typeof zonePattern>[0][];
    traced?: FelledAssessment;
    surface?: readonly SurfaceState[];
  },
): { items: SceneItem[]; height: number } {
  const items: SceneItem[] = [];
  const rowHeight = size + 7;
  let [cx, cy] = [x, y];
  const take = (w: number) => {
    if (cx > x && cx + w > x + width) {
      cx = x;
      cy += rowHeight;
    }
    const at = cx;
    cx += w + 14;
    return at;
  };
  const box = (bx: number): Px[] => [
    [bx, cy],
    [bx + 20, cy],
    [bx + 20, cy + size],
    [bx, cy + size],
  ];
  const base = () => cy + size * 0.85;

  const rampLabel = [figureWords.noStrength, figureWords.soundWood] as const;
  const left = textWidth(rampLabel[0], size);
  const ramp = take(left + 5 + 84 + 5 + textWidth(rampLabel[1], size));
  items.push(text(ramp, base(), rampLabel[0], { size }));
  for (let k = 0; k < 10; k++)
    items.push(filled(rectangle(ramp + left + 5 + k * 8.4, cy, 8.6, size), { soundness: k / 10 + 0.05 }));
  items.push(stroked(rectangle(ramp + left + 5, cy, 84.2, size), 'ink', { width: 0.5 }));
  items.push(text(ramp + left + 94, base(), rampLabel[1], { size }));

  const known = take(25 + textWidth(figureWords.littleKnownShort, size));
  items.push(filled(ring(box(known)), { soundness: 0.55 }));
  const lines = hatch([box(known)], { angleDeg: 60, spacing: 4.5 });
  items.push(stroked(lines, 'paper', { width: 1.3 }), stroked(lines, 'ink', { width: 0.45 }));
  items.push(text(known + 25, base(), figureWords.littleKnownShort, { size }));

  if (shows.next) {
    const next = take(25 + textWidth(figureWords.nextDrilling, size));
    items.push(
      line([next, cy + size / 2], [next + 20, cy + size / 2], 'accent', { width: 1.2, dash: [4, 2.5] }),
    );
    items.push(stroked(circle(next + 3, cy + size / 2, 2.8), 'accent', { width: 1.2 }));
    items.push(text(next + 25, base(), figureWords.nextDrilling, { size }));
  }
  for (const state of shows.surface ?? []) {
    const at = take(25 + textWidth(figureWords.surface[state], size));
    items.push(surfaceLine(state, [at, cy + size / 2], [at + 20, cy + size / 2]));
    items.push(text(at + 25, base(), figureWords.surface[state], { size }));
  }
  const { traced } = shows;
  if (traced) {
    for (const kind of ['unsound', 'incipient'] as const) {
      if ((kind === 'unsound' ? traced.unsoundMm : traced.incipientMm).length === 0) continue;
      const at = take(25 + textWidth(figureWords.traced[kind], size));
      const middle = cy + size / 2;
      items.push(
        ...tracedLine(
          chain([
            [at, middle],
            [at + 20, middle],
          ]),
          kind,
        ),
        text(at + 25, base(), figureWords.traced[kind], { size }),
      );
    }
  }
  if (shows.kinds.length > 0) {
    const title = `${figureWords.alongNeedles}:`;
    cx = x;
    cy += rowHeight;
    const start = take(textWidth(title, size) - 8);
    items.push(text(start, base(), title, { size, fill: 'secondary' }));
    for (const kind of shows.kinds) {
      const at = take(25 + textWidth(zoneName(kind), size));
      items.push(...zonePattern(kind, box(at), { scale: 0.8 }));
      items.push(text(at + 25, base(), zoneName(kind), { size }));
    }
  }
  return { items, height: cy + size + 4 - y };
}
