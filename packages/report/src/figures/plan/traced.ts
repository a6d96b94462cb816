/** What was traced on the felled section, laid over the prediction: outlines only, so that both stay visible. */
import type { FelledAssessment, RingMm } from '@standfast/engine';
import { group, type Px, ring, type Stroke, stroked } from '../../scene/marks.ts';
import type { SceneItem } from '../../scene/scene.ts';
import { figureWords } from '../../words/spoken.ts';
import { type PlanMap, planToPx } from '../options.ts';

/** Strokes of the two kinds of tracing; also for the legend. */
export const TRACED: Record<'unsound' | 'incipient', Stroke> = {
  unsound: { width: 1.6, join: 'round' },
  incipient: { width: 1.2, join: 'round', dash: [5, 3] },
};

/** A line in the tracing's colour on a wider one of paper, so that it shows on dark and light wood alike. */
export function tracedLine(d: string, kind: keyof typeof TRACED): SceneItem[] {
  return [stroked(d, 'paper', { width: 3.4, join: 'round' }), stroked(d, 'alarm', TRACED[kind])];
}

/**
 * The traced rings, kept within the felled outline: an opening is drawn past it. That outline is drawn only where it was
 * measured anew.
 */
export function tracedRings(felled: FelledAssessment, standing: RingMm, map: PlanMap): SceneItem[] {
  const pathOf = (points: RingMm) => ring(points.map(([x, y]): Px => planToPx(map, x, y)));
  const outline = pathOf(felled.outlineMm);
  return [
    group(
      { part: 'traced', title: figureWords.tracedTitle },
      [
        ...felled.incipientMm.flatMap((points) => tracedLine(pathOf(points), 'incipient')),
        ...felled.unsoundMm.flatMap((points) => tracedLine(pathOf(points), 'unsound')),
        ...(sameRing(felled.outlineMm, standing)
          ? []
          : [stroked(outline, 'alarm', { width: 1.6, dash: [1.5, 2.5] })]),
      ],
      outline,
    ),
  ];
}

function sameRing(one: RingMm, other: RingMm): boolean {
  return one.length === other.length && one.every(([x, y], i) => x === other[i]![0] && y === other[i]![1]);
}
