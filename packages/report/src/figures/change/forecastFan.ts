/** The safety of the stem in the years to come: middle estimate and range as a fan, with the marks it may pass. */
import type { Forecast } from '@standfast/engine';
import { chain, filled, line, type Px, plate, ring, stroked, text } from '../../scene/marks.ts';
import type { Scene, SceneItem } from '../../scene/scene.ts';
import { fixed } from '../../units.ts';
import { language } from '../../words/spoken.ts';
import { type AxisMap, type FigureOptions, toPx } from '../options.ts';

/** Values that may stand at the axis. */
const TICKS = [0.25, 0.5, 1, 1.5, 2, 3, 4, 6, 8, 12, 16, 24, 32];

export function forecastFan(forecast: Forecast, options: FigureOptions): Scene {
  const { width, textSize: size = 9 } = options;
  const words = language().report.change.figures;
  const { safety, years } = forecast;
  const left = 34;
  const right = width - 14;
  const top = size + 12;
  const bottom = top + Math.min(230, width * 0.42);
  const low = Math.max(0.1, Math.min(0.9, ...safety.map(({ p05 }) => p05)) * 0.92);
  const high = Math.max(2, ...safety.map(({ p95 }) => p95)) * 1.08;
  const x: AxisMap = { domain: [0, years], range: [left, right] };
  const y: AxisMap = { domain: [low, high], range: [bottom, top], logarithmic: true };
  const at = (year: number, value: number): Px => [toPx(x, year), toPx(y, Math.max(low, value))];
  const upper = safety.map(({ year, p95 }) => at(year, p95));
  const lower = safety.map(({ year, p05 }) => at(year, p05));
  const middle = safety.map(({ year, p50 }) => at(year, p50));
  const items: SceneItem[] = [text(left, top - 6, words.fanAxis, { size: size - 1, fill: 'secondary' })];
  for (const tick of TICKS.filter((value) => value >= low && value <= high)) {
    const py = toPx(y, tick);
    items.push(
      line([left, py], [right, py], 'rule', { width: 0.5 }),
      text(left - 4, py + size * 0.33, fixed(tick, Number.isInteger(tick) ? 0 : tick < 1 ? 2 : 1), {
        size: size - 1,
        anchor: 'end',
        fill: 'secondary',
      }),
    );
  }
  items.push(
    filled(ring([...upper, ...lower.slice().reverse()]), 'accentTint'),
    stroked(chain(upper), 'accent', { width: 0.7 }),
    stroked(chain(lower), 'accent', { width: 0.7 }),
    stroked(chain(middle), 'ink', { width: 1.8, join: 'round' }),
  );
  for (const { limit } of forecast.crossings) {
    const py = toPx(y, limit);
    items.push(
      line([left, py], [right, py], 'alarm', { width: 1, ...(limit > 1 ? { dash: [5, 3] } : {}) }),
      ...plate(right - 2, py - 3, fixed(limit, 1), {
        size: size - 1,
        anchor: 'end',
        fill: 'alarm',
        face: 'semibold',
      }),
    );
  }
  const next = forecast.nextVisitMonths / 12;
  if (next > 0 && next < years) {
    const px = toPx(x, next);
    items.push(
      line([px, top], [px, bottom], 'secondary', { width: 0.8, dash: [2, 2] }),
      ...plate(px + 4, bottom - 5, words.nextVisit, { size: size - 1, fill: 'secondary' }),
    );
  }
  items.push(line([left, bottom], [right, bottom], 'ink', { width: 0.8 }));
  for (let year = 0; year <= years; year += 5) {
    const px = toPx(x, year);
    items.push(
      line([px, bottom], [px, bottom + 3.5], 'ink', { width: 0.6 }),
      text(px, bottom + size + 4, String(year), { size: size - 1, anchor: 'middle', fill: 'secondary' }),
    );
  }
  const last = safety.at(-1)!;
  items.push(
    text((left + right) / 2, bottom + 2 * size + 6, words.fanYears, {
      size: size - 1,
      anchor: 'middle',
      fill: 'secondary',
    }),
    ...plate(
      right - 4,
      toPx(y, last.p50) - 4,
      words.fanMiddle,
      { size: size - 1, anchor: 'end' },
      'accentTint',
    ),
    ...plate(
      right - 4,
      toPx(y, last.p95) + size + 2,
      words.fanBand,
      { size: size - 1, anchor: 'end' },
      'accentTint',
    ),
  );
  return {
    width,
    height: bottom + 2 * size + 12,
    title: words.fan,
    description: `${words.fan}. ${safety
      .filter(({ year }) => year % 5 === 0)
      .map(({ year, p05, p50, p95 }) =>
        words.fanPoint(
          String(year),
          `${fixed(p50, 2)} (${language().numbers.range(fixed(p05, 2), fixed(p95, 2))})`,
        ),
      )
      .join('; ')}.`,
    items,
  };
}
