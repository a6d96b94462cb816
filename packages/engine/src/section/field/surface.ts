/**
 * What was seen of the surface, as sites of the field just under the bark. A stem is walked round and knocked on
 * before it is drilled: an opening that is seen, or bark that is alive and firm, says as much of the wood there as a
 * needle does, and of far more of the round.
 */
import { arcSpanDeg } from '../arc.ts';
import { outlineRadius } from '../outline.ts';
import { RAD } from '../ring.ts';
import { type RingMm, SURFACE_STATES, type SurfaceArc, type SurfaceState } from '../types.ts';
import { type FieldFrame, toFrame } from './frame.ts';
import type { FieldPrior } from './prior.ts';
import type { Site } from './sites.ts';

/** Sites of the surface stand this far apart: nearer findings are one finding. */
const APART_DEG = 12;
/** No site stands nearer to an arc's end: ends are noted to a few degrees, and beyond them the surface is another. */
const END_DEG = 6;
/** How far in from the cambium, share of the radius: what the surface tells of is the outermost wood. */
const DEPTH_SHARE = 0.03;

/** Sites of the arcs that were looked at. `outline` over bark. */
export function surfaceSites(
  outline: RingMm,
  barkMm: number,
  frame: FieldFrame,
  arcs: readonly SurfaceArc[],
  prior: FieldPrior,
): Site[] {
  if (arcs.length === 0) return [];
  const radius = outlineRadius(outline);
  return settled(arcs).flatMap(({ fromDeg, spanDeg, state }) => {
    const whole = spanDeg === 360;
    const end = whole ? 0 : Math.min(END_DEG, spanDeg / 3);
    const steps = Math.max(1, Math.round((spanDeg - 2 * end) / APART_DEG));
    const [none, incipient, sound] = prior.surfaceFoundAs[state];
    return Array.from({ length: whole ? steps : steps + 1 }, (_, k): Site => {
      const azimuthDeg = (fromDeg + end + ((spanDeg - 2 * end) * k) / steps) % 360;
      const r = (radius(azimuthDeg) - barkMm) * (1 - DEPTH_SHARE);
      const { rho, angleRad } = toFrame(frame, [
        r * Math.sin(azimuthDeg * RAD),
        r * Math.cos(azimuthDeg * RAD),
      ]);
      return { rho: Math.min(1, rho), angleRad, none, incipient, sound };
    });
  });
}

/** Arcs that do not overlap, whole degrees: where two findings differ the worse one holds. */
function settled(arcs: readonly SurfaceArc[]): { fromDeg: number; spanDeg: number; state: SurfaceState }[] {
  const found = new Array<SurfaceState | null>(360).fill(null);
  for (const { fromDeg, toDeg, state } of arcs) {
    const first = Math.round(fromDeg);
    const span = Math.max(1, Math.round(arcSpanDeg(fromDeg, toDeg)));
    for (let k = 0; k < span; k++) {
      const at = (((first + k) % 360) + 360) % 360;
      const before = found[at];
      if (!before || SURFACE_STATES.indexOf(state) > SURFACE_STATES.indexOf(before)) found[at] = state;
    }
  }
  const start = found.findIndex((state, i) => state !== found[(i + 359) % 360]);
  if (start < 0) return found[0] ? [{ fromDeg: 0, spanDeg: 360, state: found[0] }] : [];
  const runs: { fromDeg: number; spanDeg: number; state: SurfaceState }[] = [];
  for (let k = 0; k < 360; k++) {
    const at = (start + k) % 360;
    const state = found[at];
    if (!state) continue;
    const last = runs.at(-1);
    if (last && last.state === state && (last.fromDeg + last.spanDeg) % 360 === at) last.spanDeg++;
    else runs.push({ fromDeg: at, spanDeg: 1, state });
  }
  return runs;
}
