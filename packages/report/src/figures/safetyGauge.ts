/** Safety in the worst direction, each mode as an interval on a logarithmic scale with the two usual marks. */
import type { DirectionalInterval, SafetyAssessment } from '@standfast/engine';
import { scaleLog } from 'd3-scale';
import { circle, filled, group, line, plate, text } from '../scene/marks.ts';
import type { Figure, SceneItem } from '../scene/scene.ts';
import { textWidth } from '../scene/textWidth.ts';
import { bearing, fixed, roundNumber } from '../units.ts';
import { figureWords, language } from '../words/spoken.ts';
import type { AxisMap, FigureOptions } from './options.ts';
import { leastOf } from './rose/drawRose.ts';
import { SAFETY_LIMITS, safetyInWords } from './rose/rose.ts';

export interface SafetyGaugePlot {
  /** In logarithms to base 10: `domain` holds log10 of the safety factor. */
  log10Safety: AxisMap;
}

export function safetyGauge(safety: SafetyAssessment, options: FigureOptions): Figure<SafetyGaugePlot> {
  const { width, textSize: size = 9 } = options;
  const rows: { name: string; least: DirectionalInterval }[] = [];
  if (safety.breakage.length > 0) rows.push({ name: figureWords.breakage, least: leastOf(safety.breakage) });
  if (safety.uprooting.length > 0)
    rows.push({ name: figureWords.uprooting, least: leastOf(safety.uprooting) });
  const label = (r: (typeof rows)[number]) => `${figureWords.towards} ${bearing(r.least.directionDeg)}`;
  const left =
    Math.max(
      90,
      ...rows.map((r) => Math.max(textWidth(r.name, size, 'semibold'), textWidth(label(r), size - 1))),
    ) + 12;
  const right = width - 16;
  const low = Math.max(0.05, Math.min(0.5, ...rows.map((r) => r.least.p05 * 0.9)));
  const high = Math.max(5, ...rows.map((r) => r.least.p95 * 1.1));
  const x = scaleLog([low, high], [left, right]).clamp(true);
  const row = size * 3.9;
  const top = size + 8;
  const bottom = top + rows.length * row;
  const items: SceneItem[] = [line([left, bottom], [right, bottom], 'ink', { width: 0.8 })];
  const ticks = [0.1, 0.2, 0.5, 1, 1.5, 2, 3, 4, 5, 7, 10, 20, 50].filter((t) => t >= low && t <= high);
  let lastEnd = Number.NEGATIVE_INFINITY;
  for (const t of ticks) {
    items.push(line([x(t), bottom], [x(t), bottom + 3.5], 'ink', { width: 0.6 }));
    const half = textWidth(roundNumber(t), size - 1) / 2;
    if (x(t) - half < lastEnd + 4) continue;
    items.push(
      text(x(t), bottom + size + 4, roundNumber(t), { size: size - 1, anchor: 'middle', fill: 'secondary' }),
    );
    lastEnd = x(t) + half;
  }
  items.push(
    text((left + right) / 2, bottom + 2 * size + 6, figureWords.gaugeAxis, {
      size: size - 1,
      anchor: 'middle',
      fill: 'secondary',
    }),
  );
  SAFETY_LIMITS.forEach((limit, i) => {
    items.push(
      line([x(limit), top - 2], [x(limit), bottom], 'alarm', {
        width: i === 0 ? 1.3 : 1,
        ...(i === 0 ? {} : { dash: [5, 3] }),
      }),
    );
    items.push(
      text(x(limit), top - 5, fixed(limit, 1), {
        size: size - 1,
        anchor: 'middle',
        fill: 'alarm',
        face: 'semibold',
      }),
    );
  });
  rows.forEach((r, i) => {
    const y = top + (i + 0.42) * row;
    const { p05, p50, p95 } = r.least;
    const value = `${fixed(p50, 2)} (${language().numbers.range(fixed(p05, 2), fixed(p95, 2))})`;
    items.push(
      group({ part: 'safety', ref: r.name, title: `${r.name}: ${value}` }, [
        text(2, y - 1, r.name, { size, face: 'semibold' }),
        text(2, y + size + 1, label(r), { size: size - 1, fill: 'secondary' }),
        line([x(p05), y], [x(p95), y], 'ink', { width: 2.4 }),
        line([x(p05), y - 4], [x(p05), y + 4], 'ink', { width: 1.2 }),
        line([x(p95), y - 4], [x(p95), y + 4], 'ink', { width: 1.2 }),
        filled(circle(x(p50), y, 4.2), 'paper', { stroke: 'ink', width: 2 }),
        ...plate(x(p50), y + size + 6, value, { size, face: 'semibold', anchor: 'middle' }),
      ]),
    );
  });
  return {
    width,
    height: bottom + 2 * size + 9,
    title: figureWords.gaugeTitle,
    description: safetyInWords(safety),
    items,
    plot: { log10Safety: { domain: [Math.log10(low), Math.log10(high)], range: [left, right] } },
  };
}
