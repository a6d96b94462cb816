/** A section then, now, and the difference of its soundness: three plans to one scale. */
import type { SectionAssessment, SectionChange, SoundnessPicture } from '@standfast/engine';
import { contours } from 'd3-contour';
import { hatch } from '../../scene/hatch.ts';
import { filled, group, type Px, rectangle, ring, stroked, text } from '../../scene/marks.ts';
import type { Scene, SceneItem } from '../../scene/scene.ts';
import { textWidth } from '../../scene/textWidth.ts';
import { language } from '../../words/spoken.ts';
import { type FigureOptions, type PlanMap, planToPx } from '../options.ts';
import { drawPlan, reachMm } from '../plan/drawPlan.ts';
import { northArrow, scaleBar } from '../plan/furniture.ts';
import { fieldPlacer, GRID, onGrid } from '../plan/soundnessField.ts';

export interface ChangeSectionOptions extends FigureOptions {
  thenName: string;
  nowName: string;
  /** One below the other, for a narrow screen. */
  stacked?: boolean;
}

/** Drops of soundness from which a place is drawn as lost, and as perhaps lost. */
const LOST = 0.4;
const PERHAPS_LOST = 0.15;

export function changeSection(
  then: SectionAssessment,
  now: SectionAssessment,
  change: SectionChange,
  options: ChangeSectionOptions,
): Scene {
  const { width, units, textSize: size = 9, stacked = false } = options;
  const words = language().report.change.figures;
  const side = stacked ? width : width / 3;
  const pxPerMm = (side / 2 - 22) / Math.max(reachMm(then), reachMm(now));
  const head = size + 10;
  const place = (i: number): [number, number] => (stacked ? [0, i * (side + head)] : [i * side, 0]);
  const items: SceneItem[] = [];
  const titles = [options.thenName, options.nowName, words.difference];
  titles.forEach((title, i) => {
    const [x, y] = place(i);
    items.push(text(x + side / 2, y + size + 2, title, { size, face: 'semibold', anchor: 'middle' }));
  });
  const mapAt = (i: number): PlanMap => {
    const [x, y] = place(i);
    return { centre: [x + side / 2, y + head + side / 2], pxPerMm };
  };
  const frameAt = (i: number) => {
    const [x, y] = place(i);
    return { x, y: y + head, width: side, height: side };
  };
  [then, now].forEach((section, i) => {
    items.push(...drawPlan({ section }, mapAt(i), frameAt(i), [], units, size - 1));
  });
  items.push(...difference(then, now, change, mapAt(2)));
  const [x, y] = place(2);
  items.push(
    ...northArrow(x + side - 10, y + head + 10, size - 1),
    ...scaleBar(x + 6, y + head + side - 4, side * 0.3, mapAt(2), units, size - 2),
  );
  const bottom = (stacked ? 3 : 1) * (side + head);
  const legend = legendRow(4, bottom + 8, width - 8, size);
  items.push(...legend.items);
  return {
    width,
    height: bottom + 8 + legend.height,
    title: words.section(now.id),
    description: `${words.section(now.id)}.`,
    items,
  };
}

function difference(
  then: SectionAssessment,
  now: SectionAssessment,
  change: SectionChange,
  map: PlanMap,
): SceneItem[] {
  const toRing = (points: readonly (readonly [number, number])[]): Px[] =>
    points.map(([x, y]) => planToPx(map, x, y));
  const outline = toRing(now.outlineMm);
  const cambium = toRing(now.cambiumMm);
  const before = toRing(then.cambiumMm);
  const clip = ring(cambium);
  const picture: SoundnessPicture = now.soundness;
  const reach = (Math.max(...picture.cambiumMm) + Math.hypot(...picture.centreMm)) * 1.03;
  const toPxOf = fieldPlacer(map, reach);
  const lost = onGrid(
    picture,
    change.soundnessDifference.map((d) => -(d ?? 0)),
    reach,
  );
  const regions = (mark: number) =>
    (contours().size([GRID, GRID]).thresholds([mark])(lost)[0]?.coordinates ?? [])
      .flat()
      .map((r) => r.map(toPxOf));
  const perhaps = regions(PERHAPS_LOST);
  const surely = regions(LOST);
  return [
    filled(ring(outline), 'tint'),
    filled(clip, 'accentTint'),
    filled(ring(before), 'paper'),
    group(
      { part: 'lost' },
      [
        filled(perhaps.map(ring).join(''), 'alarmTint', { evenOdd: true }),
        filled(surely.map(ring).join(''), 'alarmTint', { evenOdd: true }),
        ...(surely.length > 0
          ? [stroked(hatch(surely, { angleDeg: 45, spacing: 3 }), 'alarm', { width: 0.8 })]
          : []),
      ],
      clip,
    ),
    stroked(ring(before), 'secondary', { width: 0.8, dash: [3, 2] }),
    stroked(clip, 'ink', { width: 0.9 }),
    stroked(ring(outline), 'secondary', { width: 0.6 }),
  ];
}

function legendRow(
  x0: number,
  y0: number,
  width: number,
  size: number,
): { items: SceneItem[]; height: number } {
  const words = language().report.change.figures;
  const box = size + 1;
  const swatch = (x: number, y: number, kind: 'new' | 'perhaps' | 'lost'): SceneItem[] => {
    const d = rectangle(x, y, box * 1.5, box);
    const region: Px[] = [
      [x, y],
      [x + box * 1.5, y],
      [x + box * 1.5, y + box],
      [x, y + box],
    ];
    return [
      filled(d, kind === 'new' ? 'accentTint' : 'alarmTint', { stroke: 'secondary', width: 0.4 }),
      ...(kind === 'lost'
        ? [stroked(hatch([region], { angleDeg: 45, spacing: 3 }), 'alarm', { width: 0.8 })]
        : []),
    ];
  };
  const entries = [
    { kind: 'new' as const, label: words.newWood },
    { kind: 'lost' as const, label: words.lost },
    { kind: 'perhaps' as const, label: words.lostPossible },
  ];
  const items: SceneItem[] = [];
  let x = x0;
  let y = y0;
  for (const { kind, label } of entries) {
    const wide = box * 1.5 + 5 + textWidth(label, size) + 16;
    if (x > x0 && x + wide > x0 + width) {
      x = x0;
      y += size + 8;
    }
    items.push(...swatch(x, y, kind), text(x + box * 1.5 + 5, y + size - 0.5, label, { size }));
    x += wide;
  }
  return { items, height: y - y0 + size + 6 };
}
