/** The trade's rules side by side: each as a dot at its distance from its own limit, and in words whether it is met. */
import type { Criterion } from '@standfast/engine';
import { circle, filled, group, line, rectangle, text } from '../scene/marks.ts';
import type { Figure, SceneItem } from '../scene/scene.ts';
import { textWidth } from '../scene/textWidth.ts';
import { roundNumber } from '../units.ts';
import { figureWords } from '../words/spoken.ts';
import { type AxisMap, type FigureOptions, toPx } from './options.ts';

export interface CriteriaPlot {
  /** How many times on the safe side of its limit a rule's value lies. */
  margin: AxisMap;
}

/**
 * How many times on the safe side of the limit: value over limit for a least, limit over value for a most; null
 * where the rule does not apply. Above 1 the rule is met.
 */
export function marginOf(c: Criterion): number | null {
  if (c.value === null || c.met === null) return null;
  const least = c.value === c.limit ? /least/.test(c.quantity) : c.value > c.limit === c.met;
  if (least) return c.limit === 0 ? null : c.value / c.limit;
  return c.value <= 0 ? Number.POSITIVE_INFINITY : c.limit / c.value;
}

const TOP = 2.5;

export function criteriaFigure(criteria: readonly Criterion[], options: FigureOptions): Figure<CriteriaPlot> {
  const { width, textSize: size = 9 } = options;
  const names = Math.min(width * 0.48, Math.max(0, ...criteria.map((c) => textWidth(c.name, size))) + 10);
  const verdicts = textWidth(figureWords.doesNotApply, size, 'semibold') + 12;
  const margin: AxisMap = { domain: [0, TOP], range: [names, width - verdicts - 10] };
  const row = size * 2.1;
  const top = size + 8;
  const bottom = top + criteria.length * row;
  const [left, right] = margin.range;
  const limit = toPx(margin, 1);
  const items: SceneItem[] = [
    filled(rectangle(left, top, limit - left, bottom - top), 'alarmTint'),
    line([limit, top - 3], [limit, bottom], 'alarm', { width: 1.2 }),
    text(limit, top - 6, figureWords.atLimit, {
      size: size - 1,
      anchor: 'middle',
      fill: 'alarm',
      face: 'semibold',
    }),
    line([left, bottom], [right, bottom], 'ink', { width: 0.7 }),
  ];
  for (const tick of [0, 0.5, 1, 1.5, 2, 2.5]) {
    const x = toPx(margin, tick);
    items.push(line([x, bottom], [x, bottom + 3], 'ink', { width: 0.6 }));
    items.push(
      text(x, bottom + size + 3, tick === TOP ? `${roundNumber(tick)}+` : roundNumber(tick), {
        size: size - 1,
        anchor: 'middle',
        fill: 'secondary',
      }),
    );
  }
  items.push(
    text((left + right) / 2, bottom + 2 * size + 5, figureWords.criteriaAxis, {
      size: size - 1,
      anchor: 'middle',
      fill: 'secondary',
    }),
  );
  criteria.forEach((c, i) => {
    const y = top + (i + 0.5) * row;
    const value = marginOf(c);
    const verdict = value === null ? figureWords.doesNotApply : c.met ? figureWords.met : figureWords.notMet;
    const marks: SceneItem[] = [
      text(left - 8, y + size * 0.35, shorten(c.name, names - 10, size), { size, anchor: 'end' }),
      line([left, y], [right, y], 'rule', { width: 0.5 }),
      text(right + 10, y + size * 0.35, verdict, {
        size,
        face: 'semibold',
        fill: value === null ? 'secondary' : c.met ? 'ink' : 'alarm',
      }),
    ];
    if (value !== null) {
      const x = toPx(margin, Math.min(TOP, value));
      marks.push(line([limit, y], [x, y], c.met ? 'ink' : 'alarm', { width: 1.6 }));
      marks.push(
        filled(circle(x, y, 3.6), c.met ? 'ink' : 'paper', { stroke: c.met ? 'ink' : 'alarm', width: 1.6 }),
      );
    }
    items.push(group({ part: 'criterion', ref: String(i), title: `${c.name}: ${verdict}` }, marks));
  });
  return {
    width,
    height: bottom + 2 * size + 8,
    title: figureWords.criteriaTitle,
    description: `${figureWords.criteriaDescription} ${criteria
      .map(
        (c) =>
          `${c.name}: ${marginOf(c) === null ? figureWords.doesNotApply : c.met ? figureWords.met : figureWords.notMet}.`,
      )
      .join(' ')}`,
    items,
    plot: { margin },
  };
}

function shorten(name: string, room: number, size: number): string {
  if (textWidth(name, size) <= room) return name;
  let cut = name;
  while (cut.length > 1 && textWidth(`${cut}…`, size) > room) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}…`;
}
