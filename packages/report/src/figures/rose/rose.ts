/** Compass roses of their own: remaining strength of a section, and safety factors by direction. */
import type { SafetyAssessment, SectionAssessment } from '@standfast/engine';
import { arrowHead, line } from '../../scene/marks.ts';
import type { Figure, SceneItem } from '../../scene/scene.ts';
import { textWidth } from '../../scene/textWidth.ts';
import { bearing, fixed } from '../../units.ts';
import { figureWords } from '../../words/spoken.ts';
import type { AxisMap, FigureOptions, RoseMap } from '../options.ts';
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
  return rose(
    series,
    circles,
    [],
    { domain: [0, top] },
    figureWords.remainingTitle(section.id),
    words,
    options,
  );
}

/** Safety against breakage and uprooting by direction, with circles at the limits. */
export function safetyRose(safety: SafetyAssessment, options: RoseFigureOptions): Figure<RoseMap> {
  const { domain, circles } = safetyScale(safety);
  return rose(
    safetySeries(safety),
    circles,
    limitCircles(),
    { domain, logarithmic: true },
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

/** Ends that a safety scale may have: factors of two, and one and a half times them. */
const LOWER_ENDS = [0.5, 0.25, 0.125, 0.0625];
const UPPER_ENDS = [2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64];

/**
 * The radial scale of safety factors: logarithmic, from below the least to above the greatest value shown, so that nothing is cut
 * off; circles where the factor doubles.
 */
export function safetyScale(safety: SafetyAssessment): {
  domain: [number, number];
  circles: { at: number; label: string }[];
} {
  const all = [...safety.breakage, ...safety.uprooting];
  const least = Math.min(1, ...all.map(({ p05 }) => p05));
  const most = Math.max(2, ...all.map(({ p95 }) => p95));
  const low = LOWER_ENDS.find((end) => end <= least) ?? LOWER_ENDS.at(-1)!;
  const top = UPPER_ENDS.find((end) => end >= most) ?? UPPER_ENDS.at(-1)!;
  const circles: { at: number; label: string }[] = [];
  for (let at = 2 * low; at < top - 1e-9; at *= 2) circles.push({ at, label: significant(at) });
  return { domain: [low, top], circles };
}

const significant = (value: number) => fixed(value, value < 0.2 ? 3 : value < 1 ? 2 : 0);

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
  radius: Pick<AxisMap, 'domain' | 'logarithmic'>,
  title: string,
  description: string,
  options: RoseFigureOptions,
): Figure<RoseMap> {
  const { width, textSize: size = 9, bare = false } = options;
  const outer = width / 2 - 14 - size * 1.6;
  const map: RoseMap = { centre: [width / 2, width / 2], radius: { ...radius, range: [0, outer] } };
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
    description: [description, figureWords.roseDirection, radius.logarithmic ? figureWords.roseLog : '']
      .join(' ')
      .trim(),
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
