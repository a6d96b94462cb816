/**
 * Draws the map: paper, a grid of metres or feet, thin lines of the background, trees as marks by risk, scale and north.
 * Everything is drawn here from what is on this device.
 */
import type { Units } from '@standfast/report';
import { RISK_SHAPES } from '../parts/riskShapes.ts';
import type { RiskFilter } from '../state/listView.ts';
import type { Cluster } from './clusters.ts';
import type { LineSet } from './lines.ts';
import type { Plane, PlanePoint } from './plane.ts';
import { type MapView, roundLength, type ScreenSize, toScreen } from './view.ts';

export interface MapTree extends PlanePoint {
  id: string;
  label: string;
  risk: Exclude<RiskFilter, 'any'>;
  riskPlace: number;
}

/** The background in the plane, with the box of each line, so that what is off screen is passed over. */
export interface DrawnLines {
  points: Float64Array;
  starts: Uint32Array;
  /** West, south, east, north of each line. */
  boxes: Float64Array;
}

export interface OwnPlace extends PlanePoint {
  accuracyM: number;
}

export interface MapPicture {
  view: MapView;
  size: ScreenSize;
  plane: Plane;
  trees: readonly MapTree[];
  clusters: readonly Cluster[];
  lines: DrawnLines | null;
  own: OwnPlace | null;
  chosen: ReadonlySet<string>;
  units: Units;
}

export type MapColours = Record<
  'paper' | 'sheet' | 'ink' | 'secondary' | 'rule' | 'edge' | 'accent' | 'alarm',
  string
>;

const COLOUR_NAMES = ['paper', 'sheet', 'ink', 'secondary', 'rule', 'edge', 'accent', 'alarm'] as const;
const MARK_PX = 20;
/** Beyond so many marks on screen their names would only cover each other. */
const MOST_NAMED = 45;
/** The grid is of the local plane; over more than this it would mislead. */
const MOST_GRID_M = 150_000;
const GRID_PX = 120;
const FOOT_M = 0.3048;
const MILE_M = 1609.344;

/** The colours of the look that is on. */
export function coloursOf(element: Element): MapColours {
  const style = getComputedStyle(element);
  return Object.fromEntries(
    COLOUR_NAMES.map((name) => [name, style.getPropertyValue(`--${name}`).trim()]),
  ) as MapColours;
}

export function linesInPlane({ lonLatDeg, starts }: LineSet, plane: Plane): DrawnLines {
  const points = new Float64Array(lonLatDeg.length);
  const boxes = new Float64Array(4 * (starts.length - 1));
  for (let line = 0; line + 1 < starts.length; line++) {
    let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = starts[line]!; i < starts[line + 1]!; i++) {
      const { x, y } = plane.toPlane({ longitude: lonLatDeg[2 * i]!, latitude: lonLatDeg[2 * i + 1]! });
      points[2 * i] = x;
      points[2 * i + 1] = y;
      west = Math.min(west, x);
      south = Math.min(south, y);
      east = Math.max(east, x);
      north = Math.max(north, y);
    }
    boxes.set([west, south, east, north], 4 * line);
  }
  return { points, starts, boxes };
}

/** A length for scale bar and grid with its words: about so many true metres, round in the units of the person. */
export function scaleLength(aboutM: number, units: Units): { lengthM: number; text: string } {
  if (units === 'us') {
    if (aboutM < MILE_M / 2) {
      const feet = roundLength(aboutM / FOOT_M);
      return { lengthM: feet * FOOT_M, text: `${feet} ft` };
    }
    const miles = roundLength(aboutM / MILE_M);
    return { lengthM: miles * MILE_M, text: `${miles} mi` };
  }
  const metres = roundLength(aboutM);
  return { lengthM: metres, text: metres >= 1000 ? `${metres / 1000} km` : `${metres} m` };
}

export function drawMap(context: CanvasRenderingContext2D, picture: MapPicture, colours: MapColours): void {
  const { size } = picture;
  context.fillStyle = colours.sheet;
  context.fillRect(0, 0, size.width, size.height);
  const bar = scaleLength(
    (GRID_PX / picture.view.scale) * picture.plane.trueMetres(picture.view.y),
    picture.units,
  );
  drawGrid(context, picture, colours, bar.lengthM);
  if (picture.lines) drawLines(context, picture, picture.lines, colours);
  if (picture.own) drawOwn(context, picture, picture.own, colours);
  drawTrees(context, picture, colours);
  drawScale(context, picture, colours, bar);
  drawNorth(context, size, colours);
}

function drawGrid(
  context: CanvasRenderingContext2D,
  { view, size, plane }: MapPicture,
  colours: MapColours,
  lengthM: number,
): void {
  const trueMetres = plane.trueMetres(view.y);
  if ((Math.max(size.width, size.height) / view.scale) * trueMetres > MOST_GRID_M) return;
  const step = lengthM / trueMetres;
  const halfX = size.width / 2 / view.scale;
  const halfY = size.height / 2 / view.scale;
  context.strokeStyle = colours.rule;
  context.lineWidth = 1;
  context.beginPath();
  for (let x = Math.ceil((view.x - halfX) / step) * step; x <= view.x + halfX; x += step) {
    const at = Math.round(size.width / 2 + (x - view.x) * view.scale) + 0.5;
    context.moveTo(at, 0);
    context.lineTo(at, size.height);
  }
  for (let y = Math.ceil((view.y - halfY) / step) * step; y <= view.y + halfY; y += step) {
    const at = Math.round(size.height / 2 - (y - view.y) * view.scale) + 0.5;
    context.moveTo(0, at);
    context.lineTo(size.width, at);
  }
  context.stroke();
}

function drawLines(
  context: CanvasRenderingContext2D,
  { view, size }: MapPicture,
  { points, starts, boxes }: DrawnLines,
  colours: MapColours,
): void {
  const west = view.x - size.width / 2 / view.scale;
  const east = view.x + size.width / 2 / view.scale;
  const south = view.y - size.height / 2 / view.scale;
  const north = view.y + size.height / 2 / view.scale;
  context.strokeStyle = colours.edge;
  context.lineWidth = 1.1;
  context.lineJoin = 'round';
  context.beginPath();
  for (let line = 0; line + 1 < starts.length; line++) {
    const box = 4 * line;
    if (boxes[box]! > east || boxes[box + 2]! < west || boxes[box + 1]! > north || boxes[box + 3]! < south)
      continue;
    const [first, end] = [starts[line]!, starts[line + 1]!];
    let [lastX, lastY] = [Number.NaN, Number.NaN];
    for (let i = first; i < end; i++) {
      const x = size.width / 2 + (points[2 * i]! - view.x) * view.scale;
      const y = size.height / 2 - (points[2 * i + 1]! - view.y) * view.scale;
      if (i === first) context.moveTo(x, y);
      // Points nearer than a pixel are not seen; the last is drawn, so that lines meet.
      else if (i < end - 1 && Math.abs(x - lastX) + Math.abs(y - lastY) < 1) continue;
      else context.lineTo(x, y);
      [lastX, lastY] = [x, y];
    }
  }
  context.stroke();
}

function drawOwn(
  context: CanvasRenderingContext2D,
  { view, size, plane }: MapPicture,
  own: OwnPlace,
  colours: MapColours,
): void {
  const { x, y } = toScreen(view, size, own);
  const radius = (own.accuracyM / plane.trueMetres(own.y)) * view.scale;
  context.strokeStyle = colours.accent;
  context.fillStyle = colours.accent;
  context.globalAlpha = 0.12;
  circle(context, x, y, Math.max(radius, 8));
  context.fill();
  context.globalAlpha = 1;
  context.lineWidth = 1.5;
  context.stroke();
  circle(context, x, y, 5);
  context.fill();
  words(context, 'You', x + 9, y, colours.accent, colours.sheet);
}

function drawTrees(context: CanvasRenderingContext2D, picture: MapPicture, colours: MapColours): void {
  const { view, size, trees, clusters, chosen } = picture;
  const onScreen = clusters
    .map((cluster) => ({ cluster, at: toScreen(view, size, cluster) }))
    .filter(({ at }) => at.x > -30 && at.y > -30 && at.x < size.width + 30 && at.y < size.height + 30);
  // The worst are drawn last, over the others.
  for (const { cluster, at } of onScreen.toReversed()) {
    const worst = trees[cluster.members[0]!]!;
    if (cluster.members.some((member) => chosen.has(trees[member]!.id))) {
      context.strokeStyle = colours.accent;
      context.lineWidth = 3;
      circle(context, at.x, at.y, 20);
      context.stroke();
    }
    if (cluster.members.length === 1) drawMark(context, worst.risk, at, MARK_PX, colours);
    else drawCluster(context, cluster.members.length, worst, at, colours);
  }
  const single = onScreen.filter(({ cluster }) => cluster.members.length === 1);
  if (single.length > MOST_NAMED) return;
  const taken: { x: number; y: number; width: number }[] = [];
  for (const { cluster, at } of single) {
    const tree = trees[cluster.members[0]!]!;
    const text = tree.label.length > 18 ? `${tree.label.slice(0, 17)}…` : tree.label;
    context.font = NAME_FONT;
    const width = Math.max(context.measureText(text).width, 60);
    const [x, y] = [at.x + 14, at.y];
    const covered =
      taken.some((other) => Math.abs(other.y - y) < 30 && x < other.x + other.width && other.x < x + width) ||
      onScreen.some(
        ({ at: mark }) =>
          mark !== at && Math.abs(mark.y - y) < 20 && mark.x > x - 10 && mark.x < x + width + 10,
      );
    if (covered) continue;
    taken.push({ x, y, width });
    words(context, text, x, y - 7, colours.ink, colours.sheet);
    const severe = RISK_SHAPES[tree.risk].paint === 'alarm';
    words(context, tree.risk, x, y + 8, severe ? colours.alarm : colours.secondary, colours.sheet, RISK_FONT);
  }
}

const NAME_FONT = '600 14px "Source Sans 3", sans-serif';
const RISK_FONT = '400 13px "Source Sans 3", sans-serif';

function drawMark(
  context: CanvasRenderingContext2D,
  risk: MapTree['risk'],
  at: PlanePoint,
  breadth: number,
  colours: MapColours,
): void {
  const { fill, stroke, paint } = RISK_SHAPES[risk];
  context.save();
  context.translate(at.x - breadth / 2, at.y - breadth / 2);
  context.scale(breadth / 24, breadth / 24);
  context.lineJoin = 'round';
  for (const path of [stroke, fill]) {
    if (!path) continue;
    // A rim of paper keeps the mark apart from lines and from its neighbours.
    context.strokeStyle = colours.sheet;
    context.lineWidth = 6;
    context.stroke(pathOf(path));
  }
  context.fillStyle = colours[paint];
  context.strokeStyle = colours[paint];
  context.lineWidth = 2.8;
  if (stroke) {
    const inside = pathOf(stroke);
    context.save();
    context.fillStyle = colours.sheet;
    context.fill(inside);
    context.restore();
    context.stroke(inside);
  }
  if (fill) context.fill(pathOf(fill));
  context.restore();
}

const paths = new Map<string, Path2D>();

function pathOf(path: string): Path2D {
  let known = paths.get(path);
  if (!known) {
    known = new Path2D(path);
    paths.set(path, known);
  }
  return known;
}

function drawCluster(
  context: CanvasRenderingContext2D,
  count: number,
  worst: MapTree,
  at: PlanePoint,
  colours: MapColours,
): void {
  const radius = count < 10 ? 13 : count < 100 ? 15 : count < 1000 ? 18 : 21;
  context.fillStyle = colours.sheet;
  context.strokeStyle = colours.ink;
  context.lineWidth = 1.5;
  circle(context, at.x, at.y, radius);
  context.fill();
  context.stroke();
  context.font = '600 13px "Source Sans 3", sans-serif';
  context.fillStyle = colours.ink;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillText(String(count), at.x, at.y + 1);
  drawMark(context, worst.risk, { x: at.x + radius * 0.75, y: at.y - radius * 0.75 }, 13, colours);
}

function drawScale(
  context: CanvasRenderingContext2D,
  { view, size, plane }: MapPicture,
  colours: MapColours,
  { lengthM, text }: { lengthM: number; text: string },
): void {
  const length = (lengthM / plane.trueMetres(view.y)) * view.scale;
  const [x, y] = [14, size.height - 14];
  context.globalAlpha = 0.85;
  context.fillStyle = colours.sheet;
  context.fillRect(x - 8, y - 30, length + 16, 40);
  context.globalAlpha = 1;
  context.strokeStyle = colours.ink;
  context.lineWidth = 2;
  context.beginPath();
  context.moveTo(x, y - 6);
  context.lineTo(x, y);
  context.lineTo(x + length, y);
  context.lineTo(x + length, y - 6);
  context.stroke();
  context.font = '600 14px "Source Sans 3", sans-serif';
  context.fillStyle = colours.ink;
  context.textAlign = 'left';
  context.textBaseline = 'alphabetic';
  context.fillText(text, x, y - 10);
}

function drawNorth(context: CanvasRenderingContext2D, size: ScreenSize, colours: MapColours): void {
  const x = size.width - 22;
  context.fillStyle = colours.ink;
  context.strokeStyle = colours.ink;
  context.lineWidth = 1.5;
  context.beginPath();
  context.moveTo(x, 46);
  context.lineTo(x, 14);
  context.stroke();
  context.beginPath();
  context.moveTo(x, 10);
  context.lineTo(x + 5, 24);
  context.lineTo(x - 5, 24);
  context.fill();
  words(context, 'N', x - 5, 56, colours.ink, colours.sheet);
}

/** Words with a rim of paper, so that they are read over anything. */
function words(
  context: CanvasRenderingContext2D,
  text: string,
  x: number,
  y: number,
  colour: string,
  rim: string,
  font = NAME_FONT,
): void {
  context.font = font;
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  context.lineJoin = 'round';
  context.strokeStyle = rim;
  context.lineWidth = 4;
  context.strokeText(text, x, y);
  context.fillStyle = colour;
  context.fillText(text, x, y);
}

function circle(context: CanvasRenderingContext2D, x: number, y: number, radius: number): void {
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
}
