/**
 * Hatching as real lines, cut to a region: the same in SVG and PDF, and in greyscale. The region is a set of
 * rings under the even-odd rule, so a ring inside another is a hole.
 */
import { coordinate, type Px } from './marks.ts';

export interface HatchStyle {
  /** Direction of the lines, degrees from the x axis, clockwise on screen. */
  angleDeg: number;
  /** Distance between lines, px. */
  spacing: number;
  /** Lengths of dash and gap along the line, px; without it the lines are whole. */
  dash?: readonly [on: number, off: number];
}

/**
 * Path data of the hatch lines over a region. Lines lie on a lattice fixed to the drawing, so that neighbouring
 * regions with one style join without a step.
 */
export function hatch(region: readonly (readonly Px[])[], style: HatchStyle): string {
  const angle = (style.angleDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  // Turned coordinates: along the lines (u) and across them (v).
  const turned = region.map((r) => r.map(([x, y]): Px => [x * c + y * s, y * c - x * s]));
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const r of turned)
    for (const [, v] of r) {
      low = Math.min(low, v);
      high = Math.max(high, v);
    }
  const parts: string[] = [];
  const draw = (u0: number, u1: number, v: number) => {
    const at = (u: number) => `${coordinate(u * c - v * s)} ${coordinate(u * s + v * c)}`;
    parts.push(`M${at(u0)}L${at(u1)}`);
  };
  // Half a spacing off the lattice, so that a line does not run along a region's edge at round coordinates.
  for (let k = Math.ceil(low / style.spacing - 0.5); (k + 0.5) * style.spacing < high; k++) {
    const v = (k + 0.5) * style.spacing;
    const crossings = crossingsAt(turned, v);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const [u0, u1] = [crossings[i]!, crossings[i + 1]!];
      if (u1 - u0 < 0.2) continue;
      if (style.dash === undefined) draw(u0, u1, v);
      else dashed(u0, u1, style.dash, k, (a, b) => draw(a, b, v));
    }
  }
  return parts.join('');
}

function crossingsAt(region: readonly (readonly Px[])[], v: number): number[] {
  const found: number[] = [];
  for (const r of region)
    for (let i = 0, j = r.length - 1; i < r.length; j = i++) {
      const [u0, v0] = r[j]!;
      const [u1, v1] = r[i]!;
      if (v0 <= v !== v1 <= v) found.push(u0 + ((v - v0) / (v1 - v0)) * (u1 - u0));
    }
  return found.sort((a, b) => a - b);
}

/** Dashes on a lattice along the line, every other line shifted by half a period. */
function dashed(
  from: number,
  to: number,
  [on, off]: readonly [number, number],
  row: number,
  draw: (a: number, b: number) => void,
): void {
  const period = on + off;
  const shift = row % 2 === 0 ? 0 : period / 2;
  for (let k = Math.floor((from - shift) / period); k * period + shift < to; k++) {
    const a = Math.max(from, k * period + shift);
    const b = Math.min(to, k * period + shift + on);
    if (b - a > 0.2) draw(a, b);
  }
}
