/**
 * A drilling's trace, to scale: the reading as its least and greatest value in each column, the zones beneath as
 * patterned and labelled bands with the depths of their edges, and the residual wall as a dimension line.
 */
import type { DrillingAssessment, Zone } from '@standfast/engine';
import { hatch } from '../scene/hatch.ts';
import {
  arrowHead,
  type Box,
  chain,
  filled,
  group,
  line,
  type Px,
  plate,
  rectangle,
  ring,
  stroked,
  text,
  textBox,
} from '../scene/marks.ts';
import type { Figure, SceneItem } from '../scene/scene.ts';
import { textWidth } from '../scene/textWidth.ts';
import { bearing, fixed, measure, number, span, type Units, unitOf } from '../units.ts';
import { figureWords, zoneName } from '../words/spoken.ts';
import { roundTicks } from './axis.ts';
import type { AxisMap, FigureOptions } from './options.ts';
import { toPx } from './options.ts';
import { zonePattern } from './zonePattern.ts';

export interface TraceFigureOptions extends FigureOptions {
  /** Height of the plot proper, without header, bands and axis, px. Default 110. */
  plotHeight?: number;
  /** Draw to this scale instead of filling the width: px for each mm of needle. */
  pxPerMm?: number;
  /** Part of the depth to draw, mm; the whole trace without it. */
  depthRangeMm?: readonly [number, number];
  /** Top of the resistance axis, percent; give one for all drillings of a tree. Default: from this trace. */
  topPct?: number;
  /** Names the drilling with its section, for `data-ref`: `s1/d3`. Default the drilling's id. */
  ref?: string;
  /** Leave out the heading line (a screen that has its own). */
  bare?: boolean;
}

/** Depth along x (mm along the needle), resistance along y (percent of full scale). */
export interface TracePlot {
  depthMm: AxisMap;
  resistancePct: AxisMap;
  /** Top and bottom of the zone bands, px. */
  bands: readonly [number, number];
}

/** Width of the plot's frame, px. */
const FRAME = 0.8;
const LEFT = 34;
const RIGHT = 10;

/** A top for the resistance axis that holds all the drillings, percent, round. */
export function commonTopPct(drillings: readonly DrillingAssessment[]): number {
  let top = 20;
  for (const d of drillings) {
    for (const v of d.drawn.highPct) top = Math.max(top, v);
    top = Math.max(top, d.reference.levelPct * 1.15);
  }
  return Math.min(100, Math.ceil(top / 10) * 10);
}

export function traceFigure(drilling: DrillingAssessment, options: TraceFigureOptions): Figure<TracePlot> {
  const { units, textSize: size = 9, plotHeight = 110, bare = false } = options;
  const { depthMm: depths } = drilling.drawn;
  const whole: [number, number] = [
    Math.min(0, depths[0] ?? 0),
    Math.max(depths.at(-1) ?? 1, drilling.zones.at(-1)?.toMm ?? 1),
  ];
  const [from, to] = options.depthRangeMm ?? whole;
  const plotWidth =
    options.pxPerMm === undefined ? options.width - LEFT - RIGHT : (to - from) * options.pxPerMm;
  const width = options.pxPerMm === undefined ? options.width : Math.max(plotWidth + LEFT + RIGHT, 240);
  const legend = legendRow(drilling, size);
  const heading = headingText(drilling);
  const headingWide = textWidth(heading, size + 2, 'semibold') + legend.width + 24 > width - 8;
  const headHeight = bare ? 4 : headingWide ? 2 * size + 16 : size + 9;
  const top = headHeight + size + 9;
  const bottom = top + plotHeight;
  const topPct = options.topPct ?? commonTopPct([drilling]);
  const x: AxisMap = { domain: [from, to], range: [LEFT, LEFT + plotWidth] };
  const y: AxisMap = { domain: [0, topPct], range: [bottom, top] };
  const bandTop = bottom + size + 9;
  const bandBottom = bandTop + 20;

  const items: SceneItem[] = [];
  if (!bare) {
    items.push(text(2, size + 2, heading, { size: size + 2, face: 'semibold' }));
    items.push(
      ...legend.at(headingWide ? 2 : width - RIGHT - legend.width, headingWide ? 2 * size + 9 : size + 1),
    );
  }
  const plotClip = rectangle(LEFT, top, plotWidth, plotHeight);
  items.push(...grid(x, y, topPct, size, units));
  items.push(group({ part: 'unsound' }, unsoundWash(drilling.zones, x, y), plotClip));
  items.push(
    group({ part: 'trace', title: figureWords.traceTitle(drilling.id) }, curves(drilling, x, y), plotClip),
  );
  // A closed frame, and numbers centred on their ticks: whoever has only the print can take its scale from them.
  items.push(stroked(rectangle(LEFT, top, plotWidth, plotHeight), 'ink', { width: FRAME, part: 'frame' }));
  const bands = zoneBands(drilling, x, bandTop, bandBottom, size, units, options.ref ?? drilling.id);
  items.push(...bands.items);
  items.push(...wallDimension(drilling, x, top, size, units));

  return {
    width,
    height: bands.bottom + 3,
    title: figureWords.traceTitle(drilling.id),
    description: traceInWords(drilling, units),
    items,
    plot: { depthMm: x, resistancePct: y, bands: [bandTop, bandBottom] },
  };
}

function headingText(d: DrillingAssessment): string {
  const off =
    Math.round(d.offRadialDeg) === 0 ? '' : `, ${fixed(d.offRadialDeg, 0)}° ${figureWords.offRadial}`;
  const down = Math.round(d.downDeg) === 0 ? '' : `, ${fixed(d.downDeg, 0)}° ${figureWords.down}`;
  return `${d.id} · ${bearing(d.azimuthDeg)}${off}${down}`;
}

/** The drawing in words, for readers who cannot see it. */
export function traceInWords(d: DrillingAssessment, units: Units): string {
  const zones = d.zones
    .filter((z) => z.kind !== 'air')
    .map((z) => `${zoneName(z.kind)} ${span(z.fromMm, z.toMm, 'lengthMm', units)}`)
    .join('; ');
  return `${figureWords.traceDescription} ${zones}. ${wallInWords(d, units)}`;
}

/** `residual wall 143 mm (138 to 147)`, or `at least` where the needle met no unsound wood. */
export function wallInWords(d: DrillingAssessment, units: Units): string {
  const { p05, p95 } = d.residualWallIntervalMm;
  const range = `(${span(Math.max(0, p05), p95, 'lengthMm', units)})`;
  if (d.residualWallAtLeast)
    return `${figureWords.wallAtLeast} ${measure(d.residualWallMm, 'lengthMm', units)}`;
  return `${figureWords.wall} ${measure(d.residualWallMm, 'lengthMm', units)} ${range}`;
}

function grid(x: AxisMap, y: AxisMap, topPct: number, size: number, units: Units): SceneItem[] {
  const items: SceneItem[] = [];
  const [left, right] = x.range;
  const [bottom, top] = y.range;
  const step = topPct > 50 ? 20 : 10;
  for (let pct = 0; pct <= topPct; pct += step) {
    const at = toPx(y, pct);
    if (pct > 0 && pct < topPct) items.push(line([left, at], [right, at], 'rule', { width: 0.5 }));
    items.push(
      text(left - 4, at + size * 0.33, String(pct), { size: size - 1, anchor: 'end', fill: 'secondary' }),
    );
  }
  items.push(
    text(9, (top + bottom) / 2, figureWords.resistanceAxis, {
      size: size - 1,
      anchor: 'middle',
      fill: 'secondary',
      rotateDeg: -90,
    }),
  );
  const labelled = roundTicks(x.domain[0], x.domain[1], Math.max(2, (right - left) / 55), 'lengthMm', units);
  const fine = roundTicks(x.domain[0], x.domain[1], Math.max(4, (right - left) / 11), 'lengthMm', units);
  for (const t of fine)
    items.push(line([toPx(x, t.at), bottom], [toPx(x, t.at), bottom + 2.5], 'ink', { width: 0.5 }));
  for (const t of labelled) {
    const at = toPx(x, t.at);
    items.push(line([at, bottom], [at, bottom + 4.5], 'ink', { width: 0.7 }));
    items.push(
      text(at, bottom + size + 4.5, t.label, { size: size - 1, anchor: 'middle', fill: 'secondary' }),
    );
  }
  // The unit stands between the last two numbers (DIN 461), so that each number is alone.
  const [before, last] = labelled.slice(-2);
  if (before && last)
    items.push(
      text((toPx(x, before.at) + toPx(x, last.at)) / 2, bottom + size + 4.5, unitOf('lengthMm', units), {
        size: size - 1,
        anchor: 'middle',
        fill: 'secondary',
      }),
    );
  return items;
}

/** A light wash of the pattern behind the trace where the wood is not sound, and hairlines at the edges. */
function unsoundWash(zones: readonly Zone[], x: AxisMap, y: AxisMap): SceneItem[] {
  const [bottom, top] = y.range;
  const items: SceneItem[] = [];
  for (const z of zones) {
    const [a, b] = [toPx(x, z.fromMm), toPx(x, z.toMm)];
    if (z.kind === 'decayed' || z.kind === 'void' || z.kind === 'crack' || z.kind === 'incipient')
      items.push(filled(rectangle(a, top, b - a, bottom - top), 'tint'));
    if (z.kind === 'decayed')
      items.push(
        stroked(
          hatch(
            [
              [
                [a, top],
                [b, top],
                [b, bottom],
                [a, bottom],
              ],
            ],
            { angleDeg: -45, spacing: 7 },
          ),
          'rule',
          { width: 0.5 },
        ),
      );
  }
  for (const z of zones.slice(1)) {
    const at = toPx(x, z.fromMm);
    items.push(line([at, top], [at, bottom], 'secondary', { width: 0.4, dash: [1, 2] }));
  }
  return items;
}

function curves(d: DrillingAssessment, x: AxisMap, y: AxisMap): SceneItem[] {
  const { depthMm, lowPct, highPct, frictionPct } = d.drawn;
  if (depthMm.length === 0) return [];
  const at = (i: number, v: number): Px => [toPx(x, depthMm[i]!), toPx(y, v)];
  const upper = depthMm.map((_, i) => at(i, highPct[i]!));
  const lower = depthMm.map((_, i) => at(i, lowPct[i]!)).reverse();
  const friction = depthMm.map((_, i) => at(i, frictionPct[i]!));
  const reference = depthMm
    .map((_, i) => at(i, d.reference.levelPct + frictionPct[i]!))
    .filter((_, i) => depthMm[i]! >= d.woodFromMm);
  return [
    { kind: 'path', d: ring([...upper, ...lower]), fill: 'ink', stroke: 'ink', width: 0.35, join: 'round' },
    stroked(chain(reference), 'accent', {
      width: 1,
      dash: [7, 2, 1.5, 2],
      part: 'reference',
      title: figureWords.referenceTitle,
    }),
    stroked(chain(friction), 'accent', {
      width: 1,
      dash: [3, 2.2],
      part: 'friction',
      title: figureWords.frictionTitle,
    }),
  ];
}

function legendRow(d: DrillingAssessment, size: number) {
  const entries: { label: string; dash?: number[] }[] = [
    { label: figureWords.frictionLegend, dash: [3, 2.2] },
    {
      label: figureWords.referenceLegend(fixed(d.reference.levelPct, 0), fixed(d.reference.sdPct, 0)),
      dash: [7, 2, 1.5, 2],
    },
  ];
  const widths = entries.map((e) => 22 + textWidth(e.label, size - 1) + 12);
  return {
    width: widths.reduce((a, b) => a + b, -12),
    at(x0: number, y0: number): SceneItem[] {
      let x = x0;
      return entries.flatMap((e, i) => {
        const marks = [
          line([x, y0 - size * 0.3], [x + 18, y0 - size * 0.3], 'accent', {
            width: 1,
            ...(e.dash ? { dash: e.dash } : {}),
          }),
          text(x + 22, y0, e.label, { size: size - 1, fill: 'secondary' }),
        ];
        x += widths[i]!;
        return marks;
      });
    },
  };
}

function zoneBands(
  d: DrillingAssessment,
  x: AxisMap,
  top: number,
  bottom: number,
  size: number,
  units: Units,
  ref: string,
): { items: SceneItem[]; bottom: number } {
  const [left, right] = x.range;
  const small = size - 1;
  const clamp = (v: number) => Math.min(right, Math.max(left, v));
  const items: SceneItem[] = [];
  const depthY = bottom + small + 3;
  const placedDepths: Box[] = [];
  const outside: { at: number; label: string }[] = [];
  d.zones.forEach((z, i) => {
    const [a, b] = [clamp(toPx(x, z.fromMm)), clamp(toPx(x, z.toMm))];
    if (b - a <= 0) return;
    const box: Px[] = [
      [a, top],
      [b, top],
      [b, bottom],
      [a, bottom],
    ];
    const percent = z.confidence > 0.995 ? '> 99 %' : `${Math.round(z.confidence * 100)} %`;
    const name = zoneName(z.kind);
    const marks = zonePattern(z.kind, box);
    if (z.kind !== 'air') {
      const long = `${name} ${percent}`;
      const middle = (a + b) / 2;
      const baseline = (top + bottom) / 2 + small * 0.34;
      const room = b - a - 6;
      if (textWidth(long, small) <= room)
        marks.push(
          ...plate(
            middle,
            baseline,
            long,
            { size: small, anchor: 'middle' },
            z.kind === 'sound' ? 'soundTint' : 'paper',
          ),
        );
      else if (textWidth(name, small) <= room)
        marks.push(
          ...plate(
            middle,
            baseline,
            name,
            { size: small, anchor: 'middle' },
            z.kind === 'sound' ? 'soundTint' : 'paper',
          ),
        );
      else outside.push({ at: middle, label: long });
    }
    items.push(
      group(
        {
          part: 'zone',
          ref: `${ref}/${i}`,
          title: `${name}, ${span(z.fromMm, z.toMm, 'lengthMm', units)}, ${figureWords.confidence} ${percent}`,
        },
        marks,
      ),
    );
    // Depth of the zone's lower edge, where it stands clear of those already printed.
    const edge = toPx(x, z.fromMm);
    if (i > 0 && edge >= left && edge <= right) {
      const mark = text(edge, depthY, number(z.fromMm, 'lengthMm', units), {
        size: small,
        anchor: 'middle',
        face: 'semibold',
      });
      const area = textBox(mark);
      items.push(line([edge, bottom], [edge, bottom + 2.5], 'ink', { width: 0.6 }));
      if (placedDepths.every((p) => area.x > p.x + p.width + 3)) {
        items.push(mark);
        placedDepths.push(area);
      }
    }
  });
  // Names that do not fit their band stand below it on short leaders, pushed apart so that none overlap.
  let lastEnd = Number.NEGATIVE_INFINITY;
  const nameY = depthY + small + 5;
  for (const { at, label } of outside) {
    const w = textWidth(label, small);
    const x0 = Math.max(lastEnd + 8, Math.min(at - w / 2, right + RIGHT - w));
    items.push(
      line(
        [at, bottom + 0.5],
        [Math.min(Math.max(at, x0 + 2), x0 + w - 2), nameY - small * 0.85],
        'secondary',
        { width: 0.4 },
      ),
    );
    items.push(text(x0, nameY, label, { size: small, fill: 'ink' }));
    lastEnd = x0 + w;
  }
  return { items, bottom: outside.length > 0 ? nameY + 2 : depthY };
}

function wallDimension(
  d: DrillingAssessment,
  x: AxisMap,
  top: number,
  size: number,
  units: Units,
): SceneItem[] {
  if (d.residualWallMm <= 0) return [];
  const [left, right] = x.range;
  const a = Math.max(left, toPx(x, d.woodFromMm));
  const b = Math.min(right, toPx(x, d.woodFromMm + d.residualWallMm));
  if (b - a < 2) return [];
  const y = top - 7;
  const label = wallInWords(d, units);
  const fits = textWidth(label, size, 'semibold') + 26 < b - a;
  const items: SceneItem[] = [
    // Short of the frame, so that its corners stay its own.
    line([a, y - 4], [a, y + 2], 'ink', { width: 0.5 }),
    line([b, y - 4], [b, y + 2], 'ink', { width: 0.5 }),
    line([a, y], [b, y], 'ink', { width: 0.6 }),
    arrowHead([a, y], Math.PI, 6, 'ink', 0.28),
  ];
  // An open end where the wall goes on beyond what was drilled.
  items.push(
    d.residualWallAtLeast
      ? line([b - 4, y], [b + 6, y], 'ink', { width: 0.6, dash: [1.5, 1.5] })
      : arrowHead([b, y], 0, 6, 'ink', 0.28),
  );
  if (fits)
    items.push(...plate((a + b) / 2, y + size * 0.33, label, { size, anchor: 'middle', face: 'semibold' }));
  else
    items.push(
      ...plate(Math.min(b + 9, right - textWidth(label, size, 'semibold')), y + size * 0.33, label, {
        size,
        face: 'semibold',
      }),
    );
  return [group({ part: 'residual-wall', title: label }, items)];
}
