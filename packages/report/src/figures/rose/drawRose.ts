/** A compass rose of intervals by direction: band from 5 % to 95 %, line of the middle estimate, limit circles. */
import type { DirectionalInterval } from '@standfast/engine';
import { line as curve, curveCatmullRomClosed } from 'd3-shape';
import { hatch } from '../../scene/hatch.ts';
import {
  arrowHead,
  circle,
  filled,
  group,
  line,
  type Px,
  plate,
  ring,
  stroked,
  text,
} from '../../scene/marks.ts';
import type { SceneItem } from '../../scene/scene.ts';
import { language } from '../../words/spoken.ts';
import { type RoseMap, roseToPx, toPx } from '../options.ts';

export interface RoseSeries {
  /** For `data-ref`, for example `breakage`. */
  ref: string;
  name: string;
  values: readonly DirectionalInterval[];
  /** How it is told from the others, in grey as well: a plain band and whole line, or hatched and dashed. */
  style: 'plain' | 'hatched';
}

export interface RoseScale {
  map: RoseMap;
  /** Circles of the grid, with their labels. */
  circles: readonly { at: number; label: string }[];
  /** Limits, drawn as strong circles; the first whole, others dashed. */
  limits: readonly { at: number; label: string }[];
  size: number;
  /** Azimuth along which the radial scale is labelled. */
  labelsDeg: number;
}

/** Marks of the rose, from the grid up. */
export function drawRose(series: readonly RoseSeries[], scale: RoseScale): SceneItem[] {
  return [
    ...grid(scale),
    ...series.flatMap((s) => band(s, scale)),
    ...limits(scale),
    ...series.map((s) => middle(s, scale)),
    ...labels(scale),
    ...series.flatMap((s, i) => worst(s, scale, i === 0)),
  ];
}

/** The direction in which a series is least. */
export function leastOf(values: readonly DirectionalInterval[]): DirectionalInterval {
  return values.reduce((a, b) => (b.p50 < a.p50 ? b : a));
}

function radiusOf({ map }: RoseScale, value: number): number {
  const [low, high] = map.radius.domain;
  return toPx(map.radius, Math.min(high, Math.max(low, value)));
}

function pointAt(scale: RoseScale, directionDeg: number, value: number): Px {
  const [low, high] = scale.map.radius.domain;
  return roseToPx(scale.map, directionDeg, Math.min(high, Math.max(low, value)));
}

function grid(scale: RoseScale): SceneItem[] {
  const { map, circles, size } = scale;
  const [cx, cy] = map.centre;
  const [inner, outer] = map.radius.range;
  const items: SceneItem[] = circles.map((c) =>
    stroked(circle(cx, cy, radiusOf(scale, c.at)), 'rule', { width: 0.6 }),
  );
  for (let d = 0; d < 360; d += 10) {
    const a = (d * Math.PI) / 180;
    const u: Px = [Math.sin(a), -Math.cos(a)];
    const from = d % 90 === 0 ? inner : outer;
    const long = d % 30 === 0 ? 6 : 3.5;
    if (d % 90 === 0)
      items.push(
        line([cx + u[0] * from, cy + u[1] * from], [cx + u[0] * outer, cy + u[1] * outer], 'rule', {
          width: 0.6,
        }),
      );
    items.push(
      line(
        [cx + u[0] * outer, cy + u[1] * outer],
        [cx + u[0] * (outer + long), cy + u[1] * (outer + long)],
        'ink',
        { width: d % 30 === 0 ? 0.8 : 0.5 },
      ),
    );
    if (d % 30 === 0) {
      const far = outer + 8 + size * 0.75;
      const { north, east, south, west } = language().numbers.compassLetters;
      const letters = [north, east, south, west];
      const name = d % 90 === 0 ? letters[d / 90]! : String(d);
      items.push(
        text(cx + u[0] * far, cy + u[1] * far + size * 0.35, name, {
          size: d % 90 === 0 ? size + 2 : size - 1,
          face: d % 90 === 0 ? 'semibold' : 'regular',
          anchor: 'middle',
          fill: d % 90 === 0 ? 'ink' : 'secondary',
        }),
      );
    }
  }
  items.push(stroked(circle(cx, cy, outer), 'ink', { width: 1 }));
  if (inner > 0) items.push(stroked(circle(cx, cy, inner), 'ink', { width: 0.6 }));
  return items;
}

function band(s: RoseSeries, scale: RoseScale): SceneItem[] {
  if (s.values.length === 0) return [];
  const high = smoothRing(s.values.map((v) => pointAt(scale, v.directionDeg, v.p95)));
  const low = smoothRing(s.values.map((v) => pointAt(scale, v.directionDeg, v.p05)));
  const marks: SceneItem[] = [];
  if (s.style === 'plain') marks.push(filled(high + low, 'secondary', { evenOdd: true, opacity: 0.24 }));
  else {
    const lines = hatch(
      [
        s.values.map((v) => pointAt(scale, v.directionDeg, v.p95)),
        s.values.map((v) => pointAt(scale, v.directionDeg, v.p05)),
      ],
      { angleDeg: -45, spacing: 3.4 },
    );
    marks.push(stroked(lines, 'accent', { width: 0.5 }));
  }
  const edge = s.style === 'plain' ? 'secondary' : 'accent';
  marks.push(stroked(high, edge, { width: 0.5 }), stroked(low, edge, { width: 0.5 }));
  return [group({ part: 'band', ref: s.ref }, marks)];
}

function middle(s: RoseSeries, scale: RoseScale): SceneItem {
  const d =
    s.values.length === 0 ? '' : smoothRing(s.values.map((v) => pointAt(scale, v.directionDeg, v.p50)));
  return stroked(d, s.style === 'plain' ? 'ink' : 'accent', {
    width: 1.7,
    join: 'round',
    ...(s.style === 'plain' ? {} : { dash: [5, 2.5] }),
    part: 'middle',
    ref: s.ref,
    title: s.name,
  });
}

function limits(scale: RoseScale): SceneItem[] {
  const [cx, cy] = scale.map.centre;
  return scale.limits.map((l, i) =>
    stroked(circle(cx, cy, radiusOf(scale, l.at)), 'alarm', {
      width: i === 0 ? 1.3 : 1,
      ...(i === 0 ? {} : { dash: [6, 3] }),
      part: 'limit',
      title: l.label,
    }),
  );
}

function labels(scale: RoseScale): SceneItem[] {
  const place = (value: number, label: string, strong: boolean, turnDeg = 0): SceneItem[] => {
    const [x, y] = pointAt(scale, scale.labelsDeg + turnDeg, value);
    return plate(x, y + scale.size * 0.3, label, {
      size: scale.size - 1,
      anchor: 'middle',
      fill: strong ? 'alarm' : 'secondary',
      face: strong ? 'semibold' : 'regular',
    });
  };
  // Circles are labelled where there is room beside the limits, which always are.
  const placed = scale.limits.map((l) => radiusOf(scale, l.at));
  const plain = scale.circles.filter((c) => {
    const r = radiusOf(scale, c.at);
    if (placed.some((p) => Math.abs(p - r) < scale.size * 1.9)) return false;
    placed.push(r);
    return true;
  });
  return [
    ...plain.flatMap((c) => place(c.at, c.label, false)),
    // Turned apart, since limits can lie close together.
    ...scale.limits.flatMap((l, i) => place(l.at, l.label, true, 14 * i)),
  ];
}

/** A pointer outside the circle at the direction in which the series is least. */
function worst(s: RoseSeries, scale: RoseScale, isFirst: boolean): SceneItem[] {
  if (s.values.length === 0) return [];
  const least = leastOf(s.values);
  const a = (least.directionDeg * Math.PI) / 180;
  const u: Px = [Math.sin(a), -Math.cos(a)];
  const [cx, cy] = scale.map.centre;
  const outer = scale.map.radius.range[1];
  const tip: Px = [cx + u[0] * (outer + 1), cy + u[1] * (outer + 1)];
  const paint = s.style === 'plain' ? 'ink' : 'accent';
  const dot = pointAt(scale, least.directionDeg, least.p50);
  const heading = Math.atan2(-u[1], -u[0]);
  return [
    group({ part: 'worst', ref: s.ref, title: s.name }, [
      arrowHead(tip, heading, 9, paint, 0.42),
      filled(circle(dot[0], dot[1], 3), isFirst ? paint : 'paper', { stroke: paint, width: 1.3 }),
    ]),
  ];
}

const closedCurve = curve<Px>().curve(curveCatmullRomClosed.alpha(0)).digits(2);

/** Path data of a closed curve through the points (uniform Catmull–Rom). */
export function smoothRing(points: readonly Px[]): string {
  return closedCurve(points) ?? '';
}

/** One legend line for each series, and one each for band, line and limits; breaks rows at `width`. */
export function roseLegend(
  series: readonly RoseSeries[],
  x: number,
  y: number,
  width: number,
  size: number,
  extra: readonly { label: string; draw: (x: number, y: number) => SceneItem[] }[],
  widthOf: (label: string) => number,
): { items: SceneItem[]; height: number } {
  const items: SceneItem[] = [];
  let [cx, cy] = [x, y];
  const entries = [
    ...series.map((s) => ({
      label: s.name,
      draw: (ex: number, ey: number): SceneItem[] => {
        const box: Px[] = [
          [ex, ey],
          [ex + 22, ey],
          [ex + 22, ey + size],
          [ex, ey + size],
        ];
        const mid = ey + size / 2;
        return s.style === 'plain'
          ? [
              filled(ring(box), 'secondary', { opacity: 0.24 }),
              line([ex, mid], [ex + 22, mid], 'ink', { width: 1.7 }),
            ]
          : [
              stroked(hatch([box], { angleDeg: -45, spacing: 3.4 }), 'accent', { width: 0.5 }),
              line([ex, mid], [ex + 22, mid], 'accent', { width: 1.7, dash: [5, 2.5] }),
            ];
      },
    })),
    ...extra,
  ];
  for (const e of entries) {
    const w = 28 + widthOf(e.label);
    if (cx > x && cx + w > x + width) {
      cx = x;
      cy += size + 7;
    }
    items.push(...e.draw(cx, cy), text(cx + 28, cy + size * 0.85, e.label, { size }));
    cx += w + 14;
  }
  return { items, height: cy + size + 4 - y };
}
