/** What each amount of crown reduction would reach: the share of the draws with the wanted safety, and the least that suffices. */
import type { LeastPruning } from '@standfast/engine';
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { chain, circle, filled, line, plate, stroked, text } from '../scene/marks.ts';
import type { Figure, SceneItem } from '../scene/scene.ts';
import { fixed } from '../units.ts';
import { figureWords } from '../words/spoken.ts';
import type { AxisMap, FigureOptions } from './options.ts';

export interface PruningCurvePlot {
  /** Reduction of height and spread, a share. */
  share: AxisMap;
  /** Share of the draws that reach the wanted safety. */
  confidence: AxisMap;
}

export function pruningCurve(least: LeastPruning, options: FigureOptions): Figure<PruningCurvePlot> {
  const { width, textSize: size = 9 } = options;
  const { curve, mostShare, wantedConfidence, wantedSafety, share } = least;
  const percent = (value: number) => `${fixed(100 * value, 0)} %`;
  const [left, right] = [size * 4, width - 16];
  const [top, bottom] = [size + 10, size + 10 + Math.max(120, width * 0.36)];
  const x = scaleLinear([0, mostShare], [left, right]);
  const y = scaleLinear([0, 1], [bottom, top]);
  const items: SceneItem[] = [line([left, bottom], [right, bottom], 'ink', { width: 0.8 })];
  for (const mark of [0, 0.25, 0.5, 0.75, 1]) {
    if (mark > 0) items.push(line([left, y(mark)], [right, y(mark)], 'rule', { width: 0.6 }));
    items.push(
      text(left - 6, y(mark) + size * 0.33, percent(mark), {
        size: size - 1,
        anchor: 'end',
        fill: 'secondary',
      }),
    );
  }
  for (const mark of ticks(0, 100 * mostShare, 5)) {
    const at = x(mark / 100);
    items.push(line([at, bottom], [at, bottom + 3.5], 'ink', { width: 0.6 }));
    items.push(
      text(at, bottom + size + 4, `${mark} %`, { size: size - 1, anchor: 'middle', fill: 'secondary' }),
    );
  }
  items.push(
    text((left + right) / 2, bottom + 2 * size + 7, figureWords.pruningAxis, {
      size: size - 1,
      anchor: 'middle',
      fill: 'secondary',
    }),
    text(left, top - 8, figureWords.pruningReach(fixed(wantedSafety, 1)), {
      size: size - 1,
      fill: 'secondary',
    }),
    line([left, y(wantedConfidence)], [right, y(wantedConfidence)], 'alarm', { width: 1.2, dash: [5, 3] }),
    ...plate(right - 4, y(wantedConfidence) - 4, figureWords.pruningWanted(percent(wantedConfidence)), {
      size: size - 1,
      anchor: 'end',
      fill: 'alarm',
      face: 'semibold',
    }),
    stroked(chain(curve.map((each) => [x(each.share), y(each.confidence)] as const)), 'ink', { width: 2 }),
    ...curve.map((each) => filled(circle(x(each.share), y(each.confidence), 2.2), 'ink')),
  );
  if (share !== null && share > 0) {
    items.push(
      line([x(share), y(wantedConfidence)], [x(share), bottom], 'accent', { width: 1.4 }),
      filled(circle(x(share), y(wantedConfidence), 4.5), 'paper', { stroke: 'accent', width: 2 }),
      ...plate(x(share), bottom - 6, `${fixed(100 * share, 1)} %`, {
        size,
        face: 'semibold',
        anchor: 'middle',
      }),
    );
  }
  return {
    width,
    height: bottom + 2 * size + 10,
    title: figureWords.pruningTitle,
    description: figureWords.pruningDescription(
      curve.map((each) => `${fixed(100 * each.share, 1)} %: ${percent(each.confidence)}`).join('; '),
    ),
    items,
    plot: {
      share: { domain: [0, mostShare], range: [left, right] },
      confidence: { domain: [0, 1], range: [bottom, top] },
    },
  };
}
