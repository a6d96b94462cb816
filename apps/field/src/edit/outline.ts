/** One kind of outline from another, as near as it goes, so that changing the kind loses little. */
import type { CaseOutline } from '@standfast/casefile';
import { outlineRadius, outlineRing } from '@standfast/engine';

export type OutlineKind = CaseOutline['kind'];

/** Directions at which radii are offered when an outline is turned into a table. */
const RADII_EVERY_DEG = 45;

/** The outline turned into another kind. Radii are read off at every 45 degrees; a circle keeps the mean radius. */
export function outlineAs(outline: CaseOutline, kind: OutlineKind): CaseOutline {
  if (outline.kind === kind) return outline;
  const radius = radiusOf(outline);
  const azimuths = Array.from({ length: 360 / RADII_EVERY_DEG }, (_, i) => i * RADII_EVERY_DEG);
  const radii = azimuths.map((azimuthDeg) => ({ azimuthDeg, radiusMm: Math.round(radius(azimuthDeg)) }));
  const mean = radii.reduce((sum, { radiusMm }) => sum + radiusMm, 0) / radii.length;
  switch (kind) {
    case 'circle':
      return { kind, diameterMm: Math.round(2 * mean) };
    case 'ellipse':
      return ellipseAs(radii.map(({ azimuthDeg, radiusMm }) => [azimuthDeg, radiusMm]));
    case 'radii':
      return { kind, radii };
    case 'polygon':
      return {
        kind,
        points: radii.map(({ azimuthDeg, radiusMm }) => {
          const angle = (azimuthDeg * Math.PI) / 180;
          return [Math.round(radiusMm * Math.sin(angle)), Math.round(radiusMm * Math.cos(angle))];
        }),
      };
  }
}

function ellipseAs(radii: [azimuthDeg: number, radiusMm: number][]): CaseOutline {
  const across = radii.slice(0, radii.length / 2).map(([azimuthDeg, radiusMm], i) => {
    const opposite = radii[i + radii.length / 2]?.[1] ?? radiusMm;
    return { azimuthDeg, diameterMm: radiusMm + opposite };
  });
  const long = across.reduce((best, at) => (at.diameterMm > best.diameterMm ? at : best));
  const short = across.reduce((best, at) => (at.diameterMm < best.diameterMm ? at : best));
  return {
    kind: 'ellipse',
    longMm: long.diameterMm,
    shortMm: short.diameterMm,
    longAxisDeg: long.azimuthDeg,
  };
}

/** Radius by azimuth, or a plain 300 mm where the outline cannot be drawn as it stands. */
function radiusOf(outline: CaseOutline): (azimuthDeg: number) => number {
  try {
    const radius = outlineRadius(outlineRing(outline));
    radius(0);
    return radius;
  } catch {
    return () => 300;
  }
}
