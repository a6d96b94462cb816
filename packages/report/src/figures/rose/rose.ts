/** Compass roses of their own: remaining strength of a section, and safety factors by direction. */
import type { SafetyAssessment, SectionAssessment } from '@standfast/engine';
import { arrowHead, line } from '../../scene/marks.ts';
import type { Figure, SceneItem } from '../../scene/scene.ts';
import { textWidth } from '../../scene/textWidth.ts';
import { bearing, fixed } from '../../units.ts';
import { figureWords } from '../../words/spoken.ts';
import type { FigureOptions, RoseMap } from '../options.ts';
import { drawRose, leastOf, type RoseScale, type RoseSeries, roseLegend } from './drawRose.ts';

/** Safety factors at which limit circles stand: failure expected, and the usual mark of static assessments. */
export const SAFETY_LIMITS = [1, 1.5] as const;

export interface RoseFigureOptions extends FigureOptions {
  /** Leave out the legend (a screen that has its own). */
  bare?: boolean;
}

/** Strength of a section that is left, by the direction of bending: 0 to 1 of the same outline all sound. */
export function remainingRose(section: SectionAssessment, options: RoseFigureOptions): Figure<RoseMap> {
  const series: RoseSeries[] = [
    {
      ref: section.id,
      name: `${figureWords.remaining} (${figureWords.bandNote})`,
      values: section.remaining,
      style: 'plain',
    },
  ];
  const top = Math.max(1, ...section.remaining.map((r) => r.p95));
  const circles = [0.25, 0.5, 0.75, 1].map((at) => ({ at, label: `${at * 100} %` }));
  const words =
    section.remaining.length === 0
      ? ''
      : inWords(figureWords.remaining, leastOf(section.remaining), (v) => `${Math.round(v * 100)} %`);
  return rose(series, circles, [], top, figureWords.remainingTitle(section.id), words, options);
}

/** Safety against breakage and uprooting by direction, with circles at the limits. */
export function safetyRose(safety: SafetyAssessment, options: RoseFigureOptions): Figure<RoseMap> {
  const { top, circles } = safetyScale(safety);
  return rose(
    safetySeries(safety),
    circles,
    limitCircles(),
    top,
    figureWords.safetyTitle,
    safetyInWords(safety),
    options,
  );
}

export function safetySeries(safety: SafetyAssessment): RoseSeries[] {
  return [
    {
      ref: 'breakage',
      name: `${figureWords.breakage} (${figureWords.bandNote})`,
      values: safety.breakage,
      style: 'plain',
    },
    {
      ref: 'uprooting',
      name: `${figureWords.uprooting} (${figureWords.bandNote})`,
      values: safety.uprooting,
      style: 'hatched',
    },
  ];
}

export function limitCircles(): { at: number; label: string }[] {
  return SAFETY_LIMITS.map((at) => ({ at, label: fixed(at, 1) }));
}

/** Top of the radial scale (high bounds beyond it are cut off at the circle) and its grid. */
export function safetyScale(safety: SafetyAssessment): {
  top: number;
  circles: { at: number; label: string }[];
} {
  const middles = [...safety.breakage, ...safety.uprooting].map((v) => v.p50);
  const top = Math.min(4, Math.max(2.5, Math.ceil(Math.max(0, ...middles) * 1.25 * 2) / 2));
  const step = top > 3 ? 1 : 0.5;
  const circles: { at: number; label: string }[] = [];
  for (let at = step; at < top - 1e-9; at += step) circles.push({ at, label: fixed(at, 1) });
  const beyond = [...safety.breakage, ...safety.uprooting].some((v) => v.p95 > top);
  if (beyond) circles.unshift({ at: top, label: figureWords.orMore(fixed(top, 1)) });
  return { top, circles };
}

/** The diagonal farthest from the directions in which series are least, so that labels and pointers keep apart. */
export function clearAzimuth(series: readonly RoseSeries[]): number {
  const leasts = series.filter((s) => s.values.length > 0).map((s) => leastOf(s.values).directionDeg);
  const clearance = (azimuth: number) =>
    Math.min(180, ...leasts.map((d) => Math.abs(((azimuth - d + 540) % 360) - 180)));
  return [45, 135, 225, 315].reduce((a, b) => (clearance(b) > clearance(a) ? b : a));
}

export function safetyInWords(safety: SafetyAssessment): string {
  return safetySeries(safety)
    .filter((s) => s.values.length > 0)
    .map((s) =>
      inWords(s.ref === 'breakage' ? figureWords.breakage : figureWords.uprooting, leastOf(s.values), (v) =>
        fixed(v, 2),
      ),
    )
    .join(' ');
}

function inWords(what: string, least: ReturnType<typeof leastOf>, print: (v: number) => string): string {
  return figureWords.roseWorst(
    what,
    bearing(least.directionDeg),
    print(least.p50),
    print(least.p05),
    print(least.p95),
  );
}

function rose(
  series: RoseSeries[],
  circles: { at: number; label: string }[],
  limits: { at: number; label: string }[],
  top: number,
  title: string,
  description: string,
  options: RoseFigureOptions,
): Figure<RoseMap> {
  const { width, textSize: size = 9, bare = false } = options;
  const outer = width / 2 - 14 - size * 1.6;
  const map: RoseMap = { centre: [width / 2, width / 2], radius: { domain: [0, top], range: [0, outer] } };
  const scale: RoseScale = { map, circles, limits, size, labelsDeg: clearAzimuth(series) };
  const items: SceneItem[] = drawRose(series, scale);
  let height = width;
  if (!bare) {
    const legend = roseLegend(series, 4, width + 6, width - 8, size, roseExtras(limits), (l) =>
      textWidth(l, size),
    );
    items.push(...legend.items);
    height += 6 + legend.height;
  }
  return {
    width,
    height,
    title,
    description: `${description} ${figureWords.roseDirection}`.trim(),
    items,
    plot: map,
  };
}

/** Legend entries for limit circles and the pointer at the least. */
export function roseExtras(limits: readonly { at: number; label: string }[]) {
  return [
    ...limits.map((l, i) => ({
      label: figureWords.limitLegend(l.label),
      draw: (x: number, y: number): SceneItem[] => [
        line([x, y + 5], [x + 22, y + 5], 'alarm', {
          width: i === 0 ? 1.3 : 1,
          ...(i === 0 ? {} : { dash: [6, 3] }),
        }),
      ],
    })),
    {
      label: figureWords.leastHere,
      draw: (x: number, y: number): SceneItem[] => [arrowHead([x + 16, y + 5], 0, 9, 'ink', 0.42)],
    },
  ];
}
