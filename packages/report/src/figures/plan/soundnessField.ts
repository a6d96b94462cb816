/**
 * The soundness field in plan: filled contours of the mean in one graphite ramp, from paper (no strength) to dark
 * (sound), and hatching where the standard deviation says that little is known.
 */
import type { SoundnessPicture } from '@standfast/engine';
import { contours } from 'd3-contour';
import { hatch } from '../../scene/hatch.ts';
import { filled, group, type Px, ring, stroked } from '../../scene/marks.ts';
import type { SceneItem } from '../../scene/scene.ts';
import { figureWords } from '../../words/spoken.ts';
import { type PlanMap, planToPx } from '../options.ts';

/** Standard deviation of soundness from which a place is hatched as little known. */
export const LITTLE_KNOWN_SD = 0.25;

/** Contour steps of soundness. */
const LEVELS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

/** Cells each way of the even grid that a picture is read on. */
export const GRID = 110;

/** Marks of the field, clipped to the cambium (path data). */
export function soundnessField(picture: SoundnessPicture, map: PlanMap, cambium: readonly Px[]): SceneItem[] {
  const clip = ring(cambium);
  const reach = (Math.max(...picture.cambiumMm) + Math.hypot(...picture.centreMm)) * 1.03;
  const place = fieldPlacer(map, reach);
  const mean = onGrid(picture, picture.mean, reach);
  const marks: SceneItem[] = [filled(clip, { soundness: 0.05 })];
  for (const area of contours().size([GRID, GRID]).thresholds(LEVELS)(mean)) {
    const d = area.coordinates
      .flat()
      .map((r) => ring(withoutStraights(r.map(place))))
      .join('');
    if (d !== '') marks.push(filled(d, { soundness: area.value + 0.05 }, { evenOdd: true }));
  }
  const sd = onGrid(picture, picture.sd, reach);
  const [unknown] = contours().size([GRID, GRID]).thresholds([LITTLE_KNOWN_SD])(sd);
  const regions = (unknown?.coordinates ?? []).flat().map((r) => withoutStraights(r.map(place)));
  if (regions.length > 0) {
    const lines = hatch(regions, { angleDeg: 60, spacing: 4.5 });
    marks.push(
      group({ part: 'little-known', title: figureWords.littleKnown }, [
        // Two tones, so that the lines show on dark and on light ground alike.
        stroked(lines, 'paper', { width: 1.3 }),
        stroked(lines, 'ink', { width: 0.45 }),
      ]),
    );
  }
  return [group({ part: 'soundness', title: figureWords.soundnessTitle }, marks, clip)];
}

/** A closed chain of points without those on a straight line between their neighbours: half the path data. */
function withoutStraights(points: readonly Px[]): Px[] {
  const n = points.length;
  return points.filter((p, i) => {
    const [a, b] = [points[(i + n - 1) % n]!, points[(i + 1) % n]!];
    const across = (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
    return Math.abs(across) > 0.004 * Math.hypot(b[0] - a[0], b[1] - a[1]);
  });
}

/** d3-contour's grid coordinates to px: sample (i, j) stands at (i + 0.5, j + 0.5). */
export function fieldPlacer(map: PlanMap, reach: number): (point: number[]) => Px {
  const step = (2 * reach) / GRID;
  return ([gx, gy]) => planToPx(map, -reach + gx! * step, reach - gy! * step);
}

/** The polar mesh read on an even grid, bilinear in azimuth and relative radius; rows run from north to south. */
export function onGrid(picture: SoundnessPicture, values: number[], reach: number): number[] {
  const { azimuthsDeg, shells, cambiumMm, centreMm } = picture;
  const [na, ns] = [azimuthsDeg.length, shells.length];
  const step = (2 * reach) / GRID;
  const out: number[] = new Array(GRID * GRID);
  for (let j = 0; j < GRID; j++)
    for (let i = 0; i < GRID; i++) {
      const x = -reach + (i + 0.5) * step - centreMm[0];
      const y = reach - (j + 0.5) * step - centreMm[1];
      const azimuth = ((Math.atan2(x, y) * 180) / Math.PI + 360) % 360;
      const { low, high, share } = between(azimuthsDeg, azimuth);
      const cambium = cambiumMm[low]! * (1 - share) + cambiumMm[high]! * share;
      const relative = Math.hypot(x, y) / cambium;
      let s = 0;
      while (s < ns - 1 && shells[s + 1]! < relative) s++;
      const t = Math.min(s + 1, ns - 1);
      const gap = shells[t]! - shells[s]!;
      const across = gap > 0 ? Math.min(1, Math.max(0, (relative - shells[s]!) / gap)) : 0;
      const at = (a: number) => values[a * ns + s]! * (1 - across) + values[a * ns + t]! * across;
      out[j * GRID + i] = na === 0 ? 0 : at(low) * (1 - share) + at(high) * share;
    }
  return out;
}

/** The two mesh azimuths round a direction, and how far it lies from the first to the second. */
function between(azimuthsDeg: number[], azimuth: number): { low: number; high: number; share: number } {
  const n = azimuthsDeg.length;
  let low = n - 1;
  for (let i = 0; i < n; i++) if (azimuthsDeg[i]! <= azimuth) low = i;
  if (azimuth < azimuthsDeg[0]!) low = n - 1;
  const high = (low + 1) % n;
  const gap = (azimuthsDeg[high]! - azimuthsDeg[low]! + 360) % 360 || 360;
  return { low, high, share: ((azimuth - azimuthsDeg[low]! + 360) % 360) / gap };
}
