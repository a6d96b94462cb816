/** The section in plan: outline with bark, soundness and how well it is known, drillings, flares, next position. */
import type { Figure } from '../../scene/scene.ts';
import { figureWords } from '../../words/spoken.ts';
import type { FigureOptions, PlanMap } from '../options.ts';
import {
  drawPlan,
  kindsMet,
  nextHere,
  type PlanContent,
  planInWords,
  reachMm,
  surfaceStates,
} from './drawPlan.ts';
import { northArrow, planLegend, scaleBar } from './furniture.ts';
import type { Taken } from './place.ts';

export interface SectionFigureOptions extends FigureOptions {
  /** Leave out the legend (a screen that has its own). */
  bare?: boolean;
}

export function sectionFigure(content: PlanContent, options: SectionFigureOptions): Figure<PlanMap> {
  const { width, units, textSize: size = 9, bare = false } = options;
  const { section } = content;
  const margin = content.flares?.length ? Math.max(46, width * 0.13) : Math.max(30, width * 0.08);
  const pxPerMm = (width - 2 * margin) / (2 * reachMm(section));
  const plan = width;
  const map: PlanMap = { centre: [width / 2, plan / 2], pxPerMm };
  const taken: Taken = [
    { x: width - 40, y: 0, width: 40, height: 52 },
    { x: 0, y: plan - 26, width: width * 0.3, height: 26 },
  ];
  const items = [
    ...drawPlan(content, map, { x: 0, y: 0, width, height: plan }, taken, units, size),
    ...northArrow(width - 16, 16, size),
    ...scaleBar(10, plan - 8, width * 0.24, map, units, size - 1),
  ];
  let height = plan;
  if (!bare) {
    const legend = planLegend(4, plan + 10, width - 8, size, {
      next: nextHere(content) !== null,
      kinds: kindsMet(section),
      traced: content.felled,
      surface: surfaceStates(section),
    });
    items.push(...legend.items);
    height += 10 + legend.height;
  }
  return {
    width,
    height,
    title: content.felled ? figureWords.felledTitle(section.id) : figureWords.planTitle(section.id),
    description: planInWords(content),
    items,
    plot: map,
  };
}
