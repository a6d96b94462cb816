/**
 * Drillings in plan: each needle on its true line and to its true length, as a narrow log whose pattern is the
 * zone's, the way borehole logs are drawn on a geological section.
 */
import { type DrillingAssessment, needleLine, type RingMm } from '@standfast/engine';
import { circle, filled, group, line, type Px, ring, stroked } from '../../scene/marks.ts';
import type { SceneItem } from '../../scene/scene.ts';
import type { Units } from '../../units.ts';
import { figureWords } from '../../words/spoken.ts';
import { type PlanMap, planToPx } from '../options.ts';
import { wallInWords } from '../trace.ts';
import { zonePattern } from '../zonePattern.ts';

/** Width of a needle's log, px. */
const LOG_WIDTH = 6;

export interface DrawnNeedle {
  id: string;
  entry: Px;
  /** Unit vector on the drawing, from the entry outwards along the needle's line. */
  outwards: Px;
  items: SceneItem[];
}

/** One needle on a section whose outline over bark is `outline` (mm). */
export function drawNeedle(
  drilling: DrillingAssessment,
  outline: RingMm,
  map: PlanMap,
  units: Units,
  ref: string,
): DrawnNeedle {
  const needle = needleLine(outline, drilling);
  const along = (depthMm: number): Px => {
    const way = (depthMm - drilling.barkFromMm) * needle.horizontalPerDepth;
    return planToPx(
      map,
      needle.entryMm[0] + way * needle.headingUnit[0],
      needle.entryMm[1] + way * needle.headingUnit[1],
    );
  };
  const entry = planToPx(map, needle.entryMm[0], needle.entryMm[1]);
  const heading: Px = [needle.headingUnit[0], -needle.headingUnit[1]];
  const side: Px = [-heading[1], heading[0]];
  const turnDeg = (Math.atan2(heading[1], heading[0]) * 180) / Math.PI;
  const last = drilling.zones.findLast((z) => z.kind !== 'air');
  const end = along(last?.toMm ?? drilling.barkFromMm);
  const log: SceneItem[] = [];
  for (const zone of drilling.zones) {
    if (zone.kind === 'air') continue;
    const [a, b] = [along(zone.fromMm), along(zone.toMm)];
    const corner = (p: Px, s: number): Px => [
      p[0] + (s * side[0] * LOG_WIDTH) / 2,
      p[1] + (s * side[1] * LOG_WIDTH) / 2,
    ];
    const box = [corner(a, -1), corner(b, -1), corner(b, 1), corner(a, 1)];
    log.push(...zonePattern(zone.kind, box, { turnDeg, scale: 0.7 }));
    if (zone.kind === 'crack') log.push(stroked(ring(box), 'ink', { width: 1 }));
  }
  const wide = LOG_WIDTH / 2 + 1.4;
  const casing: Px[] = [
    [entry[0] - side[0] * wide, entry[1] - side[1] * wide],
    [end[0] - side[0] * wide, end[1] - side[1] * wide],
    [end[0] + side[0] * wide, end[1] + side[1] * wide],
    [entry[0] + side[0] * wide, entry[1] + side[1] * wide],
  ];
  return {
    id: drilling.id,
    entry,
    outwards: [-heading[0], -heading[1]],
    items: [
      group(
        {
          part: 'drilling',
          ref,
          title: `${figureWords.drilling} ${drilling.id}: ${wallInWords(drilling, units)}`,
        },
        [
          filled(ring(casing), 'paper'),
          line(entry, end, 'ink', { width: 0.8 }),
          ...log,
          filled(circle(entry[0], entry[1], 2.6), 'ink'),
        ],
      ),
    ],
  };
}
