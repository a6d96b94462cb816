/** What was found of the surface, drawn along the outside of the bark: sound, decayed or open. */
import { arcSpanDeg, type SurfaceArc, type SurfaceState } from '@standfast/engine';
import { chain, group, line, type Px, stroked } from '../../scene/marks.ts';
import type { SceneItem } from '../../scene/scene.ts';
import type { Paint } from '../../theme.ts';
import { bearing } from '../../units.ts';
import { figureWords } from '../../words/spoken.ts';
import { rayTo } from './furniture.ts';

/** How far outside the bark the line runs, px. */
const OUT_PX = 4;
const STEP_DEG = 3;

const STYLE: Record<SurfaceState, { paint: Paint; width: number; dash?: number[] }> = {
  sound: { paint: 'secondary', width: 0.8 },
  decayed: { paint: 'alarm', width: 1.8, dash: [3, 2] },
  open: { paint: 'alarm', width: 2.6 },
};

/** A line along the bark for each arc, with a tick at both ends. */
export function surfaceArcs(arcs: readonly SurfaceArc[], outline: readonly Px[], centre: Px): SceneItem[] {
  return arcs.map(({ fromDeg, toDeg, state }) => {
    const span = arcSpanDeg(fromDeg, toDeg);
    const steps = Math.max(2, Math.ceil(span / STEP_DEG));
    const at = (k: number, out: number): Px => {
      const a = ((fromDeg + (span * k) / steps) * Math.PI) / 180;
      const u: Px = [Math.sin(a), -Math.cos(a)];
      const r = rayTo(outline, centre, u) + out;
      return [centre[0] + u[0] * r, centre[1] + u[1] * r];
    };
    const along = Array.from({ length: steps + 1 }, (_, k) => at(k, OUT_PX));
    const { paint, width, dash } = STYLE[state];
    return group(
      {
        part: 'surface',
        title: `${figureWords.surface[state]}, ${bearing(fromDeg)} ${figureWords.clockwiseTo} ${bearing(toDeg)}`,
      },
      [
        stroked(chain(along), paint, { width, ...(dash ? { dash } : {}) }),
        ...(span < 360
          ? [0, steps].map((k) => line(at(k, OUT_PX - 2.5), at(k, OUT_PX + 2.5), paint, { width: 0.8 }))
          : []),
      ],
    );
  });
}

/** A short straight piece of the same line, for the legend. */
export function surfaceLine(state: SurfaceState, from: Px, to: Px): SceneItem {
  const { paint, width, dash } = STYLE[state];
  return line(from, to, paint, { width, ...(dash ? { dash } : {}) });
}
