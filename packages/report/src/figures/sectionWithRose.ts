/** The section in plan with safety by direction as a rose round it: the assessment in one drawing. */
import type { SafetyAssessment } from '@standfast/engine';
import { circle, filled } from '../scene/marks.ts';
import type { Figure, SceneItem } from '../scene/scene.ts';
import { textWidth } from '../scene/textWidth.ts';
import { figureWords } from '../words/spoken.ts';
import type { FigureOptions, PlanMap, RoseMap } from './options.ts';
import {
  drawPlan,
  kindsMet,
  nextHere,
  type PlanContent,
  planInWords,
  reachMm,
  surfaceStates,
} from './plan/drawPlan.ts';
import { northArrow, planLegend, scaleBar } from './plan/furniture.ts';
import { drawRose, roseLegend } from './rose/drawRose.ts';
import {
  clearAzimuth,
  limitCircles,
  roseExtras,
  safetyInWords,
  safetyScale,
  safetySeries,
} from './rose/rose.ts';

export interface SectionWithRoseOptions extends FigureOptions {
  bare?: boolean;
}

/** The plan within, the rose without. */
export interface SectionWithRosePlot {
  plan: PlanMap;
  rose: RoseMap;
}

export function sectionWithRoseFigure(
  content: PlanContent & { safety: SafetyAssessment },
  options: SectionWithRoseOptions,
): Figure<SectionWithRosePlot> {
  const { width, units, textSize: size = 9, bare = false } = options;
  const { section, safety } = content;
  const half = width / 2;
  const outer = half - 14 - size * 1.6;
  const inner = outer * 0.62;
  const room = content.flares?.length ? 0.63 : 0.8;
  const plan: PlanMap = { centre: [half, half], pxPerMm: (inner * room) / reachMm(section) };
  const { domain, circles } = safetyScale(safety);
  const rose: RoseMap = {
    centre: [half, half],
    radius: { domain, range: [inner, outer], logarithmic: true },
  };
  const limits = limitCircles();
  const series = safetySeries(safety);
  const side = inner * 1.94;
  const items: SceneItem[] = [
    ...drawRose(series, {
      map: rose,
      circles,
      limits,
      size,
      labelsDeg: clearAzimuth(series),
    }),
    filled(circle(half, half, inner - 0.5), 'paper'),
    ...drawPlan(
      content,
      plan,
      { x: half - side / 2, y: half - side / 2, width: side, height: side },
      [],
      units,
      size - 1,
    ),
    ...northArrow(width - 14, 18, size),
    ...scaleBar(10, width - 8, width * 0.2, plan, units, size - 1),
  ];
  let height = width;
  if (!bare) {
    const first = roseLegend(series, 4, width + 8, width - 8, size, roseExtras(limits), (l) =>
      textWidth(l, size),
    );
    const second = planLegend(4, width + 8 + first.height + 5, width - 8, size, {
      next: nextHere(content) !== null,
      kinds: kindsMet(section),
      surface: surfaceStates(section),
    });
    items.push(...first.items, ...second.items);
    height += 13 + first.height + second.height;
  }
  return {
    width,
    height,
    title: figureWords.combinedTitle(section.id),
    description: `${planInWords(content)} ${safetyInWords(safety)} ${figureWords.roseDirection} ${figureWords.roseLog}`,
    items,
    plot: { plan, rose },
  };
}
