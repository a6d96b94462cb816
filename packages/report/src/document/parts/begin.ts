/** Where to begin drilling at a section that has no drilling yet. */
import type { FirstDrillings } from '@standfast/engine';
import { bearing, fixed, measure } from '../../units.ts';
import type { Block } from '../blocks.ts';
import type { Context } from '../context.ts';
import { table } from '../make.ts';

/** The plan as a table in the order of work, and the rules behind it. */
export function whereToBegin({ w, units }: Context, plan: FirstDrillings): Block[] {
  return [
    {
      kind: 'paragraph',
      text: `${plan.why} ${w.begin.depth(measure(plan.leastDepthMm, 'lengthMm', units))}`,
    },
    table(
      w.begin.table(plan.sectionId),
      w.begin.columns,
      [0.06, 0.14, 0.17, 0.1, 0.1, 0.43],
      plan.drillings.map((one) => [
        String(one.order),
        w.begin.place[one.at](one.placeId),
        bearing(one.azimuthDeg),
        measure(one.heightM, 'heightM', units),
        one.downDeg === 0 ? w.begin.level : `${fixed(one.downDeg, 0)}°`,
        one.why,
      ]),
    ),
    { kind: 'list', items: plan.rules.map(({ text, source }) => `${text} (${source})`) },
    ...(plan.notes.length > 0 ? [{ kind: 'paragraph' as const, text: plan.notes.join(' ') }] : []),
  ];
}
