/** Short ways to write a scene's marks. All coordinates in px, rounded to two decimals on the way into path data. */
import type { Paint } from '../theme.ts';
import type { FontFace, Group, Meaning, PathMark, SceneItem, TextMark } from './scene.ts';
import { textWidth } from './textWidth.ts';

export type Px = readonly [x: number, y: number];

/** A coordinate as path data prints it: two decimals, no trailing zeros, no minus zero. */
export function coordinate(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(rounded === 0 ? 0 : rounded);
}

/** Path data of an open chain of points. */
export function chain(points: readonly Px[]): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${coordinate(x)} ${coordinate(y)}`).join('');
}

/** Path data of a closed ring. */
export function ring(points: readonly Px[]): string {
  return points.length === 0 ? '' : `${chain(points)}Z`;
}

export function rectangle(x: number, y: number, width: number, height: number): string {
  return ring([
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]);
}

/** Path data of a full circle, as four cubic arcs (the same outline in SVG and PDF). */
export function circle(cx: number, cy: number, radius: number): string {
  const k = radius * 0.5522847498;
  const c = coordinate;
  return (
    `M${c(cx)} ${c(cy - radius)}` +
    `C${c(cx + k)} ${c(cy - radius)} ${c(cx + radius)} ${c(cy - k)} ${c(cx + radius)} ${c(cy)}` +
    `C${c(cx + radius)} ${c(cy + k)} ${c(cx + k)} ${c(cy + radius)} ${c(cx)} ${c(cy + radius)}` +
    `C${c(cx - k)} ${c(cy + radius)} ${c(cx - radius)} ${c(cy + k)} ${c(cx - radius)} ${c(cy)}` +
    `C${c(cx - radius)} ${c(cy - k)} ${c(cx - k)} ${c(cy - radius)} ${c(cx)} ${c(cy - radius)}Z`
  );
}

export type Stroke = Partial<Pick<PathMark, 'width' | 'dash' | 'cap' | 'join' | 'opacity'>> & Meaning;

export function line(from: Px, to: Px, stroke: Paint, style: Stroke = {}): PathMark {
  return { kind: 'path', d: chain([from, to]), stroke, width: 0.75, ...style };
}

export function stroked(d: string, stroke: Paint, style: Stroke = {}): PathMark {
  return { kind: 'path', d, stroke, width: 0.75, ...style };
}

export function filled(d: string, fill: Paint, style: Omit<PathMark, 'kind' | 'd' | 'fill'> = {}): PathMark {
  return { kind: 'path', d, fill, ...style };
}

export function group(meaning: Meaning, items: SceneItem[], clip?: string): Group {
  return clip === undefined
    ? { kind: 'group', ...meaning, items }
    : { kind: 'group', ...meaning, items, clip };
}

export interface TextStyle extends Meaning {
  size?: number;
  face?: FontFace;
  anchor?: TextMark['anchor'];
  fill?: Paint;
  rotateDeg?: number;
}

export function text(x: number, y: number, content: string, style: TextStyle = {}): TextMark {
  return {
    kind: 'text',
    x,
    y,
    text: content,
    size: 10,
    face: 'regular',
    anchor: 'start',
    fill: 'ink',
    ...style,
  };
}

/** Text on a small plate of ground colour, so that it stays legible over lines: a draughtsman's knockout. */
export function plate(
  x: number,
  y: number,
  content: string,
  style: TextStyle = {},
  ground: Paint = 'paper',
): SceneItem[] {
  const mark = text(x, y, content, style);
  const box = textBox(mark);
  return [filled(rectangle(box.x - 1.5, box.y - 0.5, box.width + 3, box.height + 1), ground), mark];
}

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** The box a text fills (unturned texts only). */
export function textBox(mark: TextMark): Box {
  const width = textWidth(mark.text, mark.size, mark.face);
  const x = mark.anchor === 'start' ? mark.x : mark.anchor === 'middle' ? mark.x - width / 2 : mark.x - width;
  return { x, y: mark.y - mark.size * 0.78, width, height: mark.size };
}

/** A filled arrow head with its tip at `tip`, pointing along `angleRad` (0 right, clockwise on screen). */
export function arrowHead(tip: Px, angleRad: number, length: number, paint: Paint, spread = 0.32): PathMark {
  const at = (turn: number): Px => [
    tip[0] - length * Math.cos(angleRad + turn),
    tip[1] - length * Math.sin(angleRad + turn),
  ];
  return filled(ring([tip, at(spread), at(-spread)]), paint);
}
