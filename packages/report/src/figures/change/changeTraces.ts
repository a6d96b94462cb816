/**
 * A drilling and its repeat one above the other, to one depth scale, the earlier set so that the same wood stands in one
 * upright line; cambium and decay front joined from one to the other.
 */
import type { DrillingAssessment, DrillingChange } from '@standfast/engine';
import { line, plate, text } from '../../scene/marks.ts';
import type { Scene, SceneItem } from '../../scene/scene.ts';
import { textWidth } from '../../scene/textWidth.ts';
import { bearing, measure, type Units } from '../../units.ts';
import { language } from '../../words/spoken.ts';
import { type FigureOptions, toPx } from '../options.ts';
import { commonTopPct, traceFigure, wallInWords } from '../trace.ts';
import { moved } from './moved.ts';

export interface ChangeTracesOptions extends FigureOptions {
  plotHeight?: number;
  /** What the visits are called, for example their dates. */
  thenName: string;
  nowName: string;
}

/** Millimetres by which the earlier trace is set deeper, so that its wood stands over the same wood of the later. */
export function earlierSetDeeper({ alignment, earlier, later }: DrillingChange): number {
  return alignment.shiftMm.p50 + later.woodFromMm - earlier.woodFromMm;
}

const endOf = (d: DrillingAssessment) => d.woodFromMm + d.residualWallMm;

export function changeTraces(change: DrillingChange, options: ChangeTracesOptions): Scene {
  const { units, width, textSize: size = 9, plotHeight = 64 } = options;
  const words = language().report.change.figures;
  const { earlier, later } = change;
  const deeper = earlierSetDeeper(change);
  const deepest = Math.max(later.zones.at(-1)?.toMm ?? 1, (earlier.zones.at(-1)?.toMm ?? 1) + deeper);
  const from = Math.min(0, deeper);
  const to = 10 * Math.ceil(deepest / 10);
  const topPct = commonTopPct([earlier, later]);
  const draw = (drilling: DrillingAssessment, range: readonly [number, number]) =>
    traceFigure(drilling, {
      units,
      width,
      textSize: size,
      plotHeight,
      depthRangeMm: range,
      topPct,
      bare: true,
    });
  const above = draw(earlier, [from - deeper, to - deeper]);
  const below = draw(later, [from, to]);
  const head = size + 8;
  const gap = 2 * size + 24;
  const second = head + above.height + gap;
  const x = below.plot.depthMm;
  const thenBottom = head + above.height - 2;
  const nowTop = second + (below.plot.resistancePct.range[1] ?? 0);

  const items: SceneItem[] = [
    text(2, size + 2, `${change.laterId} · ${bearing(later.azimuthDeg)}`, {
      size: size + 2,
      face: 'semibold',
    }),
    text(width - 10, size + 2, options.thenName, { size, anchor: 'end', face: 'semibold' }),
    ...moved(above.items, 0, head),
    ...moved(below.items, 0, second),
  ];
  // The joins run through the gap only, so that the traces stay readable.
  const joinFrom = thenBottom + 1;
  const joinTo = nowTop - size - 10;
  // The label of the cambium stands high, that of the front low, so that the two never meet.
  const join = (thenMm: number, nowMm: number, label: string, at: 'high' | 'low', strong: boolean) => {
    const a = toPx(x, thenMm + deeper);
    const b = toPx(x, nowMm);
    const paint = strong ? ('alarm' as const) : ('accent' as const);
    const y = at === 'high' ? joinFrom + size : joinTo - 2;
    const wide = textWidth(label, size - 1, 'semibold');
    const right = Math.max(a, b) + 5;
    const fits = right + wide <= width - 4;
    items.push(
      line([a, joinFrom], [b, joinTo], paint, { width: 1.4, ...(strong ? {} : { dash: [4, 2] }) }),
      ...plate(fits ? right : Math.min(a, b) - 5, y, label, {
        size: size - 1,
        fill: paint,
        face: 'semibold',
        anchor: fits ? 'start' : 'end',
      }),
    );
  };
  const frontPx = change.front === 'both' ? toPx(x, endOf(later)) : 0;
  items.push(
    ...plate(frontPx > width * 0.6 ? width * 0.3 : width - 10, joinTo - 2, options.nowName, {
      size,
      anchor: frontPx > width * 0.6 ? 'start' : 'end',
      face: 'semibold',
    }),
  );
  join(
    earlier.woodFromMm,
    later.woodFromMm,
    `${words.cambium}: ${words.grown(measure(change.growthMm.p50, 'lengthMm', units))}`,
    'high',
    false,
  );
  if (change.front === 'both' && change.frontMm) {
    const by = measure(change.frontMm.p50, 'lengthMm', units);
    join(
      endOf(earlier),
      endOf(later),
      change.verdict === 'moved' ? words.moved(by) : language().report.change.verdicts[change.verdict],
      'low',
      change.verdict === 'moved',
    );
  }
  return {
    width,
    height: second + below.height,
    title: words.traces(change.laterId),
    description: inWords(change, units, options),
    items,
  };
}

function inWords(change: DrillingChange, units: Units, { thenName, nowName }: ChangeTracesOptions): string {
  return `${thenName}: ${wallInWords(change.earlier, units)}. ${nowName}: ${wallInWords(change.later, units)}. ${language().report.change.verdicts[change.verdict]}.`;
}
