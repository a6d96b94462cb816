/** Strength left against the number of drillings: the interval as a band, the middle estimate as a line with dots. */
import {
  type AxisMap,
  chain,
  circle,
  type Figure,
  type FigureOptions,
  filled,
  group,
  line,
  type Px,
  plate,
  rectangle,
  ring,
  type SceneItem,
  stroked,
  text,
  toPx,
} from '@standfast/report';

/** One step: strength left in one direction after so many drillings, shares of the sound section. */
export interface SharpeningPoint {
  drillings: number;
  p05: number;
  p50: number;
  p95: number;
}

export interface SharpeningFigureOptions extends FigureOptions {
  /** Drillings there are; steps not worked out yet stay empty. */
  count: number;
  /** The step that is shown, or null. */
  shown: number | null;
  height?: number;
}

/** Presses on a step carry part `step` and the number of drillings as ref. */
export function sharpeningFigure(
  points: readonly SharpeningPoint[],
  { width, count, shown, textSize: size = 12, height = 220 }: SharpeningFigureOptions,
): Figure<{ drillings: AxisMap; share: AxisMap }> {
  const left = 3.4 * size;
  const right = width - 0.8 * size;
  const top = 1.9 * size;
  const bottom = height - 3 * size;
  const most = Math.max(1, ...points.map(({ p95 }) => p95));
  const drillings: AxisMap = { domain: [0, Math.max(1, count)], range: [left + size, right - size] };
  const share: AxisMap = { domain: [0, most], range: [bottom, top] };
  const at = (k: number, value: number): Px => [toPx(drillings, k), toPx(share, value)];
  const items: SceneItem[] = [];
  for (const mark of [0, 0.25, 0.5, 0.75, 1]) {
    const [, y] = at(0, mark);
    items.push(line([left, y], [right, y], mark === 0 ? 'ink' : 'rule', { width: mark === 0 ? 1 : 0.6 }));
    items.push(
      text(left - 6, y + size * 0.34, `${100 * mark}`, { size: size - 1, anchor: 'end', fill: 'secondary' }),
    );
  }
  items.push(text(left, top - size * 0.7, 'strength left, %', { size: size - 1, fill: 'secondary' }));
  for (let k = 0; k <= count; k++) {
    const [x] = at(k, 0);
    items.push(line([x, bottom], [x, bottom + 4], 'ink', { width: 0.8 }));
    items.push(
      text(x, bottom + size * 1.3, String(k), {
        size: size - 1,
        anchor: 'middle',
        face: k === shown ? 'semibold' : 'regular',
        fill: k === shown ? 'accent' : 'secondary',
      }),
    );
  }
  items.push(
    text((left + right) / 2, height - size * 0.3, 'number of drillings', {
      size: size - 1,
      anchor: 'middle',
      fill: 'secondary',
    }),
  );
  const upper = points.map(({ drillings: k, p95 }) => at(k, p95));
  const lower = points.map(({ drillings: k, p05 }) => at(k, p05));
  if (points.length > 1) {
    items.push(filled(ring([...upper, ...[...lower].reverse()]), 'accentTint'));
    items.push(
      stroked(chain(upper), 'accent', { width: 0.8 }),
      stroked(chain(lower), 'accent', { width: 0.8 }),
    );
    items.push(
      stroked(chain(points.map(({ drillings: k, p50 }) => at(k, p50))), 'ink', { width: 1.6, join: 'round' }),
    );
  }
  for (const { drillings: k, p05, p50, p95 } of points) {
    const [x, y] = at(k, p50);
    const here = k === shown;
    const reach = (drillings.range[1] - drillings.range[0]) / Math.max(1, count) / 2;
    items.push(
      group(
        {
          part: 'step',
          ref: String(k),
          title: `${k} drillings: ${percent(p50)} (${percent(p05)} to ${percent(p95)})`,
        },
        [
          // The whole column can be pressed.
          filled(rectangle(x - reach, top, 2 * reach, bottom - top), 'paper', { opacity: 0 }),
          ...(here || points.length === 1
            ? [line(at(k, p05), at(k, p95), 'accent', { width: 2.4 }), ...ends(at(k, p05), at(k, p95))]
            : []),
          filled(circle(x, y, here ? 5 : 3), here ? 'accent' : 'ink', { stroke: 'paper', width: 1.2 }),
        ],
      ),
    );
    if (here) {
      const label = `${percent(p50)} (${percent(p05)} to ${percent(p95)})`;
      const nearEnd = x > (left + right) / 2;
      items.push(
        ...plate(x + (nearEnd ? -10 : 10), toPx(share, p05) + size * 1.5, label, {
          size,
          face: 'semibold',
          anchor: nearEnd ? 'end' : 'start',
          fill: 'accent',
        }),
      );
    }
  }
  const last = points.at(-1);
  return {
    width,
    height,
    title: 'Strength left against the number of drillings',
    description: points
      .map(({ drillings: k, p05, p50, p95 }) => `${k}: ${percent(p50)} (${percent(p05)} to ${percent(p95)}).`)
      .concat(last ? [] : ['Nothing worked out yet.'])
      .join(' '),
    items,
    plot: { drillings, share },
  };
}

function ends([x, low]: Px, [, high]: Px): SceneItem[] {
  return [low, high].map((y) => line([x - 5, y], [x + 5, y], 'accent', { width: 2 }));
}

function percent(value: number): string {
  return `${Math.round(100 * value)} %`;
}
