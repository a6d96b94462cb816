/**
 * The wind's work on the tree, in elevation: the crown as the strips it was cut into, stem and lean, the gust
 * pressure by height as arrows to scale, the centre of pressure, and the moment at the ground.
 */
import type { WindAssessment } from '@standfast/engine';
import { hatch } from '../scene/hatch.ts';
import {
  arrowHead,
  chain,
  circle,
  coordinate,
  filled,
  group,
  line,
  type Px,
  plate,
  ring,
  stroked,
  text,
} from '../scene/marks.ts';
import type { Figure, SceneItem } from '../scene/scene.ts';
import { textWidth } from '../scene/textWidth.ts';
import { compassPoint, fixed, measure, number, span, unitOf } from '../units.ts';
import { figureWords } from '../words/spoken.ts';
import { roundTicks } from './axis.ts';
import { type AxisMap, type FigureOptions, toPx } from './options.ts';
import { smoothRing } from './rose/drawRose.ts';

export interface WindFigureOptions extends FigureOptions {
  /** Height of the drawing, px. Default three quarters of the width. */
  height?: number;
  /** Levels to mark on the stem, m above ground. */
  sections?: readonly { id: string; heightM: number }[];
}

/** Of the tree, what its silhouette needs; a `TreeInput` has it, and a case half filled in will do. */
export interface TreeSilhouette {
  heightM?: number | undefined;
  stemDiameterMm?: number | undefined;
  leanDeg?: number | undefined;
  leanTowardDeg?: number | undefined;
}

export interface WindPlot {
  heightM: AxisMap;
}

const LEFT = 40;

export function windFigure(
  tree: TreeSilhouette,
  wind: WindAssessment,
  options: WindFigureOptions,
): Figure<WindPlot> {
  const { width, units, textSize: size = 9, height = width * 0.75, sections = [] } = options;
  const ground = height - size * 3.4;
  const top = size * 2.4;
  const tallest = Math.max(tree.heightM ?? 0, wind.strips.at(-1)?.toM ?? 0, 1);
  const { stemDiameterMm = 0, leanDeg = 0, leanTowardDeg = 0 } = tree;
  const y: AxisMap = { domain: [0, tallest], range: [ground, top] };
  const perM = (ground - top) / tallest;
  const crownHalf = (Math.max(0, ...wind.strips.map((s) => s.widthM)) / 2) * perM;
  // The wind comes from the left: pressure on the left of the crown, tree to the right of it.
  const right = width - 12;
  const pressureRoom = Math.max(70, Math.min(width * 0.34, right - LEFT - 2 * crownHalf - 24));
  const axisX = Math.min(
    right - crownHalf - 60,
    Math.max(LEFT + pressureRoom + crownHalf + 16, width * 0.56),
  );
  const lean = Math.tan((leanDeg * Math.PI) / 180);
  const centreAt = (heightM: number): number => axisX + lean * heightM * perM;
  const most = Math.max(1, ...wind.strips.map((s) => s.pressurePa));

  const items: SceneItem[] = [...heightAxis(y, width, size, units)];
  items.push(...groundLine(ground, LEFT, right));
  items.push(...stem(stemDiameterMm, tallest, y, perM, centreAt));
  items.push(...crown(wind, y, perM, centreAt));
  items.push(...pressure(wind, y, perM, centreAt, pressureRoom, most, units, size));

  const pressureY = toPx(y, wind.centreOfPressureM);
  const centre: Px = [centreAt(wind.centreOfPressureM), pressureY];
  items.push(
    group(
      {
        part: 'centre-of-pressure',
        title: `${figureWords.centreOfPressure} ${measure(wind.centreOfPressureM, 'heightM', units)}`,
      },
      [
        line([centre[0] - 9, centre[1]], [centre[0] + 9, centre[1]], 'ink', { width: 0.8 }),
        line([centre[0], centre[1] - 9], [centre[0], centre[1] + 9], 'ink', { width: 0.8 }),
        filled(circle(centre[0], centre[1], 4), 'paper', { stroke: 'ink', width: 1.2 }),
        ...plate(
          centre[0] + 12,
          centre[1] - 4,
          `${figureWords.centreOfPressure} ${measure(wind.centreOfPressureM, 'heightM', units)}`,
          { size },
        ),
      ],
    ),
  );
  for (const s of sections) {
    const at = toPx(y, s.heightM);
    const x = centreAt(s.heightM);
    const half = Math.max(6, ((stemDiameterMm / 1000) * perM) / 2 + 5);
    items.push(line([x - half, at], [x + half, at], 'accent', { width: 1.2 }));
    items.push(
      ...plate(
        x - Math.max(half, 28) - 4,
        at + size * 0.3,
        `${s.id} ${measure(s.heightM, 'heightM', units)}`,
        {
          size,
          anchor: 'end',
          fill: 'accent',
        },
      ),
    );
  }
  items.push(...momentArrow(centreAt(0), ground, wind, units, size, right));
  if (leanDeg > 0)
    items.push(
      text(right, height - 3, figureWords.lean(fixed(leanDeg, 0), compassPoint(leanTowardDeg)), {
        size: size - 1,
        anchor: 'end',
        fill: 'secondary',
      }),
    );

  const { p05, p95 } = wind.momentIntervalNm;
  return {
    width,
    height,
    title: figureWords.windTitle,
    description: figureWords.windDescription(
      measure(wind.momentNm, 'momentNm', units),
      span(p05, p95, 'momentNm', units),
      measure(wind.gustMs, 'speedMs', units),
      measure(wind.centreOfPressureM, 'heightM', units),
    ),
    items,
    plot: { heightM: y },
  };
}

function heightAxis(y: AxisMap, width: number, size: number, units: FigureOptions['units']): SceneItem[] {
  const items: SceneItem[] = [];
  const marks = roundTicks(y.domain[0], y.domain[1], 5, 'heightM', units);
  marks.forEach((t, i) => {
    const at = toPx(y, t.at);
    if (i > 0) items.push(line([LEFT, at], [width - 12, at], 'rule', { width: 0.5 }));
    items.push(line([LEFT - 4, at], [LEFT, at], 'ink', { width: 0.7 }));
    const label = i === marks.length - 1 ? `${t.label} ${unitOf('heightM', units)}` : t.label;
    items.push(text(LEFT - 6, at + size * 0.33, label, { size: size - 1, anchor: 'end', fill: 'secondary' }));
  });
  items.push(line([LEFT, y.range[0]], [LEFT, y.range[1]], 'ink', { width: 0.7 }));
  return items;
}

function groundLine(ground: number, left: number, right: number): SceneItem[] {
  const box: Px[] = [
    [left, ground],
    [right, ground],
    [right, ground + 6],
    [left, ground + 6],
  ];
  return [
    stroked(hatch([box], { angleDeg: -45, spacing: 4 }), 'secondary', { width: 0.5 }),
    line([left, ground], [right, ground], 'ink', { width: 1.2 }),
  ];
}

function stem(
  diameterMm: number,
  heightM: number,
  y: AxisMap,
  perM: number,
  centreAt: (m: number) => number,
): SceneItem[] {
  const foot = Math.max(2.5, ((diameterMm / 1000) * perM) / 2);
  const tip = heightM * 0.94;
  const side = (sign: number): Px[] =>
    [0, 0.02, 0.06, 0.4, 1].map((t) => {
      const taper = t < 0.06 ? 1 + (0.06 - t) * 9 : 1 - 0.86 * ((t - 0.06) / 0.94);
      return [centreAt(tip * t) + sign * foot * taper, toPx(y, tip * t)];
    });
  return [
    group({ part: 'stem' }, [
      filled(ring([...side(-1), ...side(1).reverse()]), { soundness: 0.75 }, { stroke: 'ink', width: 0.6 }),
    ]),
  ];
}

/** The crown as the strips it was cut into, within the silhouette that runs through them. */
function crown(wind: WindAssessment, y: AxisMap, perM: number, centreAt: (m: number) => number): SceneItem[] {
  const [first, last] = [wind.strips[0], wind.strips.at(-1)];
  if (first === undefined || last === undefined) return [];
  const edge = (sign: number): Px[] =>
    wind.strips.map((s) => {
      const middle = (s.fromM + s.toM) / 2;
      return [centreAt(middle) + (sign * s.widthM * perM) / 2, toPx(y, middle)];
    });
  const outline = smoothRing([
    [centreAt(first.fromM), toPx(y, first.fromM)],
    ...edge(-1),
    [centreAt(last.toM), toPx(y, last.toM)],
    ...edge(1).reverse(),
  ]);
  const widest = Math.max(...wind.strips.map((s) => s.widthM)) * perM;
  const cuts = wind.strips.slice(1).map((s) => {
    const x = centreAt(s.fromM);
    return line([x - widest, toPx(y, s.fromM)], [x + widest, toPx(y, s.fromM)], 'rule', { width: 0.6 });
  });
  return [
    group({ part: 'crown', title: figureWords.windTitle }, [
      filled(outline, 'tint', { opacity: 0.88 }),
      group({}, cuts, outline),
      stroked(outline, 'ink', { width: 1, join: 'round' }),
    ]),
  ];
}

/** Pressure arrows to scale, one a strip, ending at the crown's windward edge, with the value at top and bottom. */
function pressure(
  wind: WindAssessment,
  y: AxisMap,
  perM: number,
  centreAt: (m: number) => number,
  room: number,
  most: number,
  units: FigureOptions['units'],
  size: number,
): SceneItem[] {
  if (wind.strips.length === 0) return [];
  const widest = Math.max(...wind.strips.map((s) => s.widthM));
  const edge = Math.min(...wind.strips.map((s) => centreAt((s.fromM + s.toM) / 2))) - (widest / 2) * perM - 8;
  const long = Math.min(room, edge - LEFT - 10) * 0.86;
  const profile: Px[] = [];
  const items: SceneItem[] = [];
  for (const s of wind.strips) {
    const at = toPx(y, (s.fromM + s.toM) / 2);
    const from = edge - (long * s.pressurePa) / most;
    profile.push([from, at]);
    items.push(
      line([from, at], [edge - 4, at], 'accent', { width: 0.8 }),
      arrowHead([edge, at], 0, 5, 'accent'),
    );
  }
  items.push(stroked(chain(profile), 'accent', { width: 1.2 }));
  items.push(line([edge, profile[0]![1]], [edge, profile.at(-1)![1]], 'accent', { width: 0.5 }));
  const [low, high] = [wind.strips[0]!, wind.strips.at(-1)!];
  items.push(
    ...plate(
      edge,
      profile[0]![1] + size + 6,
      `${number(low.pressurePa, 'pressurePa', units)} ${unitOf('pressurePa', units)}`,
      { size: size - 1, anchor: 'end', fill: 'accent' },
    ),
  );
  const label = `${figureWords.pressureAxis} ${measure(high.pressurePa, 'pressurePa', units)}`;
  const x = Math.max(LEFT + 4 + textWidth(label, size - 1), edge);
  items.push(...plate(x, profile.at(-1)![1] - 6, label, { size: size - 1, anchor: 'end', fill: 'accent' }));
  return [group({ part: 'pressure' }, items)];
}

/** A curved arrow about the foot of the stem, with the moment and its interval. */
function momentArrow(
  x: number,
  ground: number,
  wind: WindAssessment,
  units: FigureOptions['units'],
  size: number,
  right: number,
): SceneItem[] {
  const r = 20;
  const c = coordinate;
  const from: Px = [x - r, ground - 4];
  const to: Px = [x + r, ground - 4];
  const { p05, p95 } = wind.momentIntervalNm;
  const value = `${measure(wind.momentNm, 'momentNm', units)} (${span(p05, p95, 'momentNm', units)})`;
  const wide = Math.max(textWidth(value, size, 'semibold'), textWidth(figureWords.momentAtGround, size));
  const at = Math.min(x + r + 10, right - wide);
  return [
    group({ part: 'moment', title: `${figureWords.momentAtGround} ${value}` }, [
      stroked(
        `M${c(from[0])} ${c(from[1])}C${c(x - r)} ${c(ground - r * 1.35)} ${c(x + r)} ${c(ground - r * 1.35)} ${c(to[0])} ${c(to[1])}`,
        'ink',
        { width: 1.4 },
      ),
      arrowHead(to, Math.PI / 2 - 0.05, 8, 'ink'),
      ...plate(at, ground - size * 2.2, figureWords.momentAtGround, { size }),
      ...plate(at, ground - size * 0.9, value, { size, face: 'semibold' }),
    ]),
  ];
}
