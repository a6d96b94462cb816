/** The section itself, drawn at a given place and scale: shared by the plan and by the plan within its rose. */
import type {
  DrillingCandidate,
  FelledAssessment,
  FlareAssessment,
  NextDrilling,
  SectionAssessment,
  SurfaceState,
  ZoneKind,
} from '@standfast/engine';
import { SURFACE_STATES, ZONE_KINDS } from '@standfast/engine';
import {
  arrowHead,
  type Box,
  circle,
  filled,
  group,
  line,
  type Px,
  plate,
  ring,
  text,
  textBox,
} from '../../scene/marks.ts';
import type { SceneItem } from '../../scene/scene.ts';
import { bearing, type Units } from '../../units.ts';
import { figureWords } from '../../words/spoken.ts';
import { type PlanMap, planToPx } from '../options.ts';
import { barkRing, rayTo } from './furniture.ts';
import { drawNeedle } from './needles.ts';
import { placeLabel, type Taken } from './place.ts';
import { soundnessField } from './soundnessField.ts';
import { surfaceArcs } from './surfaceArcs.ts';
import { tracedRings } from './traced.ts';

export interface PlanContent {
  section: SectionAssessment;
  flares?: readonly FlareAssessment[];
  next?: NextDrilling;
  /** What was traced after felling, to be laid over the prediction. */
  felled?: FelledAssessment;
}

/** Farthest point of the outline from the origin, mm. */
export function reachMm(section: SectionAssessment): number {
  return Math.max(...section.outlineMm.map(([x, y]) => Math.hypot(x, y)));
}

/** Kinds of zone that the section's drillings met, in the fixed order, for the legend. */
export function kindsMet(section: SectionAssessment): ZoneKind[] {
  const met = new Set(section.drillings.flatMap((d) => d.zones.map((z) => z.kind)));
  return ZONE_KINDS.filter((k) => k !== 'air' && met.has(k));
}

/** What the surface was found to be, in the fixed order, for the legend. */
export function surfaceStates(section: SectionAssessment): SurfaceState[] {
  return SURFACE_STATES.filter((state) => section.surface?.some((arc) => arc.state === state));
}

/** Whether a next position on this section is advised. */
export function nextHere(content: PlanContent): DrillingCandidate | null {
  const { next, section } = content;
  return next !== undefined && next.stop !== true && next.sectionId === section.id ? next : null;
}

/** Marks of the plan; labels keep inside `frame` and off the boxes in `taken`. */
export function drawPlan(
  content: PlanContent,
  map: PlanMap,
  frame: Box,
  taken: Taken,
  units: Units,
  size: number,
): SceneItem[] {
  const { section, flares = [] } = content;
  const toRing = (points: readonly (readonly [number, number])[]) =>
    points.map(([x, y]) => planToPx(map, x, y));
  const outline = toRing(section.outlineMm);
  const cambium = toRing(section.cambiumMm);
  const centre: Px = [map.centre[0], map.centre[1]];
  const items: SceneItem[] = [];

  items.push(...flares.flatMap((f) => flareLobe(f, outline, centre, map, taken)));
  items.push(filled(ring(outline), 'paper'));
  items.push(...soundnessField(section.soundness, map, cambium));
  items.push(...barkRing(outline, cambium, centre));
  items.push(...surfaceArcs(section.surface ?? [], outline, centre));
  items.push(
    line([centre[0] - 4, centre[1]], [centre[0] + 4, centre[1]], 'secondary', { width: 0.6 }),
    line([centre[0], centre[1] - 4], [centre[0], centre[1] + 4], 'secondary', { width: 0.6 }),
  );

  if (content.felled) items.push(...tracedRings(content.felled, section.outlineMm, map));

  const needles = section.drillings.map((d) =>
    drawNeedle(d, section.outlineMm, map, units, `${section.id}/${d.id}`),
  );
  for (const n of needles) items.push(...n.items);

  taken.push(...outline.map(pointBox));
  const next = nextHere(content);
  if (next) items.push(...nextMark(next, outline, centre, size, taken, frame));
  for (const n of needles) {
    const mark = text(0, 0, n.id, { size: size + 1, face: 'semibold' });
    items.push(placeLabel(mark, n.entry, n.outwards, taken, frame, 6));
  }
  for (const f of flares) {
    const u = unit(f.azimuthDeg);
    const far = rayTo(outline, centre, u) + lobeDepth(f, map);
    const share =
      f.soundShare === null
        ? figureWords.notDrilled
        : figureWords.shareSound(Math.round(f.soundShare.p50 * 100));
    const mark = text(0, 0, `${f.id} ${share}`, { size, fill: 'ink' });
    items.push(placeLabel(mark, [centre[0] + u[0] * far, centre[1] + u[1] * far], u, taken, frame, 7));
  }
  return items;
}

/** The room a point of a line takes, so that labels keep off the line. */
function pointBox([x, y]: Px): Box {
  return { x: x - 2, y: y - 2, width: 4, height: 4 };
}

function unit(azimuthDeg: number): Px {
  const a = (azimuthDeg * Math.PI) / 180;
  return [Math.sin(a), -Math.cos(a)];
}

/** How far a flare's lobe stands out, px: a sign for it, since its true course leaves the level of the section. */
export function lobeDepth(flare: FlareAssessment, map: PlanMap): number {
  return Math.max(8, flare.widthMm * map.pxPerMm * 0.28);
}

/** A root flare as a lobe outside the outline, true in bearing and width. */
function flareLobe(
  flare: FlareAssessment,
  outline: readonly Px[],
  centre: Px,
  map: PlanMap,
  taken: Taken,
): SceneItem[] {
  const r = rayTo(outline, centre, unit(flare.azimuthDeg));
  const halfDeg = (Math.asin(Math.min(0.9, (flare.widthMm * map.pxPerMm) / 2 / r)) * 180) / Math.PI;
  const depth = lobeDepth(flare, map);
  const edge: Px[] = [];
  const foot: Px[] = [];
  for (let k = 0; k <= 28; k++) {
    // Closer together towards the lobe's sides, where it turns.
    const t = Math.sin((k / 28 - 0.5) * Math.PI);
    const u = unit(flare.azimuthDeg + t * halfDeg);
    const base = rayTo(outline, centre, u);
    const out = base + depth * Math.sqrt(1 - Math.abs(t) ** 3);
    edge.push([centre[0] + u[0] * out, centre[1] + u[1] * out]);
    foot.unshift([centre[0] + u[0] * base * 0.97, centre[1] + u[1] * base * 0.97]);
  }
  taken.push(...edge.map(pointBox));
  const dash = flare.soundShare === null ? { dash: [3, 2] } : {};
  return [
    group(
      {
        part: 'flare',
        ref: flare.id,
        title: `${figureWords.flare} ${flare.id}, ${bearing(flare.azimuthDeg)}`,
      },
      [filled(ring([...edge, ...foot]), 'tint', { stroke: 'ink', width: 0.9, join: 'round', ...dash })],
    ),
  ];
}

/** Where the next needle would tell most: an open dot, a dashed line along its heading, and a label. */
function nextMark(
  { azimuthDeg, offRadialDeg }: DrillingCandidate,
  outline: readonly Px[],
  centre: Px,
  size: number,
  taken: Taken,
  frame: Box,
): SceneItem[] {
  const u = unit(azimuthDeg);
  const r = rayTo(outline, centre, u);
  const entry: Px = [centre[0] + u[0] * r, centre[1] + u[1] * r];
  const heading = unit(azimuthDeg + 180 + offRadialDeg);
  const length = 0.75 * r;
  const tip: Px = [entry[0] + heading[0] * length, entry[1] + heading[1] * length];
  const label = placeLabel(
    text(0, 0, figureWords.next, { size: size + 1, face: 'semibold', fill: 'accent' }),
    entry,
    u,
    taken,
    frame,
    8,
  );
  const box = textBox(label);
  return [
    group({ part: 'next-drilling', title: `${figureWords.nextDrilling}: ${bearing(azimuthDeg)}` }, [
      line(entry, tip, 'paper', { width: 3.2 }),
      line(entry, tip, 'accent', { width: 1.3, dash: [5, 3] }),
      arrowHead(tip, Math.atan2(heading[1], heading[0]), 7, 'accent'),
      filled(circle(entry[0], entry[1], 4), 'paper', { stroke: 'accent', width: 1.4 }),
      ...plate(box.x, label.y, label.text, { size: label.size, face: 'semibold', fill: 'accent' }),
    ]),
  ];
}

/** The plan in words. */
export function planInWords(content: PlanContent): string {
  const { section } = content;
  const share = section.soundShare;
  const next = nextHere(content);
  const found = (section.surface ?? []).map(
    ({ fromDeg, toDeg, state }) =>
      `${figureWords.surface[state]}, ${bearing(fromDeg)} ${figureWords.clockwiseTo} ${bearing(toDeg)}`,
  );
  return [
    figureWords.planDescription(section.drillings.map((d) => `${d.id} ${bearing(d.azimuthDeg)}`).join(', ')),
    found.length > 0 ? `${found.join('; ')}.` : '',
    figureWords.soundShare(percent(share.p50), percent(share.p05), percent(share.p95)),
    content.felled ? figureWords.tracedDescription(percent(content.felled.soundShare.truth)) : '',
    next ? `${figureWords.nextDrilling}: ${bearing(next.azimuthDeg)}.` : '',
  ]
    .filter((s) => s !== '')
    .join(' ');
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
