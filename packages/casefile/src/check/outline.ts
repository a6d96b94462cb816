/**
 * The outline of a case file as the engine takes it, and its size for plausibility checks.
 */
import type { FelledSection, Outline } from '@standfast/engine';
import type { CaseFelled, CaseOutline } from '../schema/schema.ts';
import { wrapAzimuth } from './azimuth.ts';

/** The outline with azimuths in [0, 360) and without fields the engine does not know. */
export function engineOutline(outline: CaseOutline): Outline {
  switch (outline.kind) {
    case 'circle':
      return { kind: 'circle', diameterMm: outline.diameterMm };
    case 'ellipse':
      return {
        kind: 'ellipse',
        longMm: outline.longMm,
        shortMm: outline.shortMm,
        longAxisDeg: wrapAzimuth(outline.longAxisDeg),
      };
    case 'radii':
      return {
        kind: 'radii',
        radii: outline.radii.map(({ azimuthDeg, radiusMm }) => ({
          azimuthDeg: wrapAzimuth(azimuthDeg),
          radiusMm,
        })),
      };
    case 'polygon':
      return { kind: 'polygon', points: outline.points.map(([x, y]) => [x, y] as const) };
  }
}

/** What was traced of a felled section as the engine takes it. */
export function engineFelled({ outline, unsound, incipient, note, source }: CaseFelled): FelledSection {
  return {
    unsound,
    ...(outline ? { outline: engineOutline(outline) } : {}),
    ...(incipient && incipient.length > 0 ? { incipient } : {}),
    ...(note ? { note } : {}),
    ...(source ? { source } : {}),
  };
}

/** Mean distance across the outline, mm; close enough to tell a wrong unit. */
export function meanDiameterMm(outline: CaseOutline): number {
  switch (outline.kind) {
    case 'circle':
      return outline.diameterMm;
    case 'ellipse':
      return (outline.longMm + outline.shortMm) / 2;
    case 'radii':
      return (2 * outline.radii.reduce((sum, { radiusMm }) => sum + radiusMm, 0)) / outline.radii.length;
    case 'polygon':
      return 2 * Math.sqrt(Math.abs(shoelaceMm2(outline.points)) / Math.PI);
  }
}

function shoelaceMm2(points: readonly (readonly [number, number])[]): number {
  let twice = 0;
  points.forEach(([x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length]!;
    twice += x * nextY - nextX * y;
  });
  return twice / 2;
}
