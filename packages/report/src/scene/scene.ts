/**
 * A drawing as plain data: what to draw, in which paint, and what it means. One scene is printed to SVG for the
 * screen and to vector PDF for paper, by the same marks; nothing in it depends on either.
 *
 * Units: px of the SVG, which are points in the PDF at scale 1. y points down. Path data is SVG path syntax with
 * absolute commands.
 */
import type { Paint } from '../theme.ts';

/** What a part of the drawing stands for, so that a screen can find it and a reader can be told. */
export interface Meaning {
  /** Kind of part, for example `drilling`, `zone`, `direction`; becomes `data-part` in SVG. */
  part?: string;
  /** Which one, for example `s1/d3`; becomes `data-ref` in SVG. */
  ref?: string;
  /** One line that says it in words; becomes the SVG's `<title>` (tooltip, accessible name). */
  title?: string;
}

export interface Group extends Meaning {
  kind: 'group';
  items: SceneItem[];
  /** Path outside which nothing of the group is drawn. */
  clip?: string;
}

export interface PathMark extends Meaning {
  kind: 'path';
  d: string;
  fill?: Paint;
  stroke?: Paint;
  /** Stroke width, px. */
  width?: number;
  /** Lengths of dash and gap, px. */
  dash?: number[];
  cap?: 'butt' | 'round' | 'square';
  join?: 'miter' | 'round' | 'bevel';
  evenOdd?: boolean;
  /** 0 to 1, of fill and stroke alike. */
  opacity?: number;
}

export type FontFace = 'regular' | 'semibold' | 'heading';

export interface TextMark extends Meaning {
  kind: 'text';
  x: number;
  /** The text's baseline. */
  y: number;
  text: string;
  size: number;
  face: FontFace;
  anchor: 'start' | 'middle' | 'end';
  fill: Paint;
  /** Turned about (x, y), degrees clockwise. */
  rotateDeg?: number;
}

export type SceneItem = Group | PathMark | TextMark;

export interface Scene {
  width: number;
  height: number;
  /** What the figure is, in a few words. */
  title: string;
  /** What it shows, in words, for a reader who cannot see it. */
  description: string;
  items: SceneItem[];
}

/** A scene with the geometry of its plot, so that an overlay can map pointer to data and back. */
export interface Figure<Plot> extends Scene {
  plot: Plot;
}
