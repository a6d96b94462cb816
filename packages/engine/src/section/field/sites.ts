/**
 * What the needles met, as sites of the field: points along each needle with the chance of its reading under each
 * kind of wood. Neighbouring readings are one piece of evidence, not many, so sites stand apart, closer only on the
 * two sides of a change.
 */
import { ZONE_KINDS } from '../../trace/types.ts';
import { needleLine } from '../needle.ts';
import type { PointMm, RingMm, SurfaceArc } from '../types.ts';
import { type FieldFrame, frameRadius, toFrame } from './frame.ts';
import type { FieldPrior } from './prior.ts';
import { surfaceSites } from './surface.ts';
import type { FieldDrilling } from './types.ts';

export interface FieldSites {
  rho: Float64Array;
  angleRad: Float64Array;
  /** Chances of the reading if the wood there had no strength, were incipient, were sound. */
  none: Float64Array;
  incipient: Float64Array;
  sound: Float64Array;
}

/** Wood that begins this much before or after the cambium by the outline, besides half the bark, is that cambium. */
const ENTRY_SLACK_MM = 8;
/** Up to this the drill may have been held off the stem. */
const STAND_OFF_MM = 12;
/** Bark or air read this far inside the cambium is a hollow in the stem, not its far side: mm, and share of radius. */
const FAR_SIDE_MM = 15;
const FAR_SIDE_SHARE = 0.06;
/** A change shorter than this along the needle is not a region of the section. */
const SHORTEST_MM = 5;
/** Least distance of a site from the change beside it. */
const EDGE_MM = 3;
/** Distance between sites of one kind, share of the section's mean radius. */
const APART = 0.11;
/** Sites of one section at most; beyond this they stand farther apart. */
const MOST_SITES = 170;

const KIND = Object.fromEntries(ZONE_KINDS.map((kind, i) => [kind, i])) as Record<
  (typeof ZONE_KINDS)[number],
  number
>;

interface Stretch {
  kind: number;
  fromMm: number;
  toMm: number;
}

/** Sites of all drillings of a section and of its surface where it was looked at. `outline` over bark. */
export function fieldSites(
  outline: RingMm,
  barkMm: number,
  frame: FieldFrame,
  drillings: readonly FieldDrilling[],
  surface: readonly SurfaceArc[],
  prior: FieldPrior,
): FieldSites {
  const meanRadius = frame.rays.reduce((a, b) => a + b, 0) / frame.rays.length;
  let apart = APART * meanRadius;
  let all = drillings.map((d) => needleSites(outline, barkMm, frame, d, prior, apart));
  let count = all.reduce((sum, s) => sum + s.length, 0);
  while (count > MOST_SITES && apart < meanRadius) {
    apart *= 1.25;
    all = drillings.map((d) => needleSites(outline, barkMm, frame, d, prior, apart));
    count = all.reduce((sum, s) => sum + s.length, 0);
  }
  const flat = [...all.flat(), ...surfaceSites(outline, barkMm, frame, surface, prior)];
  const pick = (f: (s: Site) => number) => Float64Array.from(flat, f);
  return {
    rho: pick((s) => s.rho),
    angleRad: pick((s) => s.angleRad),
    none: pick((s) => s.none),
    incipient: pick((s) => s.incipient),
    sound: pick((s) => s.sound),
  };
}

/** One site: where it is in the frame, and the chance of what was found there under each kind of wood. */
export interface Site {
  rho: number;
  angleRad: number;
  none: number;
  incipient: number;
  sound: number;
}

function needleSites(
  outline: RingMm,
  barkMm: number,
  frame: FieldFrame,
  drilling: FieldDrilling,
  prior: FieldPrior,
  apartMm: number,
): Site[] {
  const { reading, pose } = drilling;
  const line = needleLine(outline, pose);
  const at = (depthMm: number): PointMm => [
    line.entryMm[0] + line.headingUnit[0] * line.horizontalPerDepth * depthMm,
    line.entryMm[1] + line.headingUnit[1] * line.horizontalPerDepth * depthMm,
  ];
  const grid = reading.gridMm;
  const n = grid.length;
  if (n < 2) return [];
  const kinds = ZONE_KINDS.length;
  // Where the needle crosses the cambium by the outline; where the trace says wood begins.
  let cambiumMm = 0;
  while (cambiumMm < grid[n - 1]! && toFrame(frame, at(cambiumMm)).rho > 1) cambiumMm += 0.5;
  const slack = ENTRY_SLACK_MM + barkMm / 2;
  const early = reading.woodFromMm - cambiumMm;
  // Depths are tied to the outline at the cambium, unless what lies there is not the end of the bark: an opening or
  // decayed wood reads like bark that is too thick, and is told by the outline alone.
  const tied = early > -slack && early < slack + STAND_OFF_MM;
  const shift = tied ? cambiumMm - reading.woodFromMm : 0;
  const woodFrom = cambiumMm - shift;

  const weight = new Float64Array(3 * n);
  const label = new Int8Array(n).fill(-1);
  for (let i = 0; i < n; i++) {
    if (grid[i]! < woodFrom) continue;
    const row = i * kinds;
    const p = (kind: keyof typeof KIND) => reading.probability[row + KIND[kind]]!;
    const outer = p('bark') + p('air');
    const none =
      p('decayed') + p('void') + (outer > 0.05 && isInside(at(grid[i]! + shift), frame) ? outer : 0);
    const incipient = p('incipient');
    const sound = p('sound');
    const sum = none + incipient + sound;
    if (!(sum >= 0.5)) continue;
    weight[3 * i] = none / sum;
    weight[3 * i + 1] = incipient / sum;
    weight[3 * i + 2] = sound / sum;
    label[i] = none > incipient && none > sound ? 0 : incipient > sound ? 1 : 2;
  }
  const stretches = stretchesOf(label, grid);
  const sites: Site[] = [];
  const drop = Math.sqrt(Math.max(0, 1 - line.horizontalPerDepth ** 2));
  const read = new Float64Array(3);
  stretches.forEach((stretch, j) => {
    const before = stretches[j - 1];
    const after = stretches[j + 1];
    const inset = Math.min(EDGE_MM, (stretch.toMm - stretch.fromMm) / 3);
    const from = stretch.fromMm + (before?.toMm === stretch.fromMm ? inset : Math.min(1, inset));
    const to = stretch.toMm - (after?.fromMm === stretch.toMm ? inset : Math.min(1, inset));
    const gaps = Math.max(1, Math.ceil((to - from) / apartMm));
    for (let g = 0; g <= gaps; g++) {
      const depth = from + ((to - from) * g) / gaps;
      const { rho, angleRad } = toFrame(frame, at(depth + shift));
      if (rho > 1) continue;
      meanReading(grid, weight, label, stretch, depth, read);
      // A tilted needle meets the stem lower down than the section: the farther, the less it says.
      const believed = Math.exp(-(((depth * drop) / prior.heightReachMm) ** 2));
      const chance = (truly: readonly [number, number, number]) =>
        believed * (truly[0] * read[0]! + truly[1] * read[1]! + truly[2] * read[2]!) + (1 - believed) / 3;
      sites.push({
        rho,
        angleRad,
        none: chance(prior.readAs.none),
        incipient: chance(prior.readAs.incipient),
        sound: chance(prior.readAs.sound),
      });
    }
  });
  return sites;
}

/** Whether a point lies so far inside the cambium that bark or air there cannot be the stem's far side. */
function isInside(point: PointMm, frame: FieldFrame): boolean {
  const { rho, angleRad } = toFrame(frame, point);
  const edge = frameRadius(frame, angleRad);
  return edge * (1 - rho) > FAR_SIDE_MM + FAR_SIDE_SHARE * edge;
}

/** Mean of the chances read within a few millimetres of a depth, in its own stretch. */
function meanReading(
  grid: Float64Array,
  weight: Float64Array,
  label: Int8Array,
  stretch: Stretch,
  depth: number,
  out: Float64Array,
): void {
  out.fill(0);
  let count = 0;
  for (let i = nearest(grid, Math.max(stretch.fromMm, depth - EDGE_MM)); i < grid.length; i++) {
    if (grid[i]! > Math.min(stretch.toMm, depth + EDGE_MM)) break;
    if (label[i]! < 0) continue;
    count++;
    for (let k = 0; k < 3; k++) out[k] = out[k]! + weight[3 * i + k]!;
  }
  if (count === 0) out[stretch.kind] = 1;
  else for (let k = 0; k < 3; k++) out[k] = out[k]! / count;
}

/** Stretches of one kind, those too short to matter given to the longer neighbour. */
function stretchesOf(label: Int8Array, grid: Float64Array): Stretch[] {
  let stretches: Stretch[] = [];
  const half = grid.length > 1 ? (grid[1]! - grid[0]!) / 2 : 0;
  for (let i = 0; i < label.length; i++) {
    if (label[i]! < 0) continue;
    const last = stretches.at(-1);
    if (last && last.kind === label[i]! && grid[i]! - half - last.toMm < half) last.toMm = grid[i]! + half;
    else stretches.push({ kind: label[i]!, fromMm: grid[i]! - half, toMm: grid[i]! + half });
  }
  for (let j = 1; j < stretches.length; j++) {
    const gap = stretches[j]!.fromMm - stretches[j - 1]!.toMm;
    if (gap < SHORTEST_MM) {
      const middle = (stretches[j]!.fromMm + stretches[j - 1]!.toMm) / 2;
      stretches[j]!.fromMm = middle;
      stretches[j - 1]!.toMm = middle;
    }
  }
  for (;;) {
    let shortest = -1;
    for (let j = 0; j < stretches.length; j++) {
      const length = stretches[j]!.toMm - stretches[j]!.fromMm;
      if (length >= SHORTEST_MM || stretches.length === 1) continue;
      if (shortest < 0 || length < stretches[shortest]!.toMm - stretches[shortest]!.fromMm) shortest = j;
    }
    if (shortest < 0) break;
    const { fromMm, toMm } = stretches[shortest]!;
    const before = stretches[shortest - 1];
    const after = stretches[shortest + 1];
    if (before && after && before.kind === after.kind) before.toMm = after.toMm;
    else if (before && (!after || before.toMm - before.fromMm >= after.toMm - after.fromMm))
      before.toMm = toMm;
    else after!.fromMm = fromMm;
    stretches.splice(shortest, before && after && before.kind === after.kind ? 2 : 1);
    stretches = merged(stretches);
  }
  return stretches;
}

function merged(stretches: Stretch[]): Stretch[] {
  const out: Stretch[] = [];
  for (const s of stretches) {
    const last = out.at(-1);
    if (last && last.kind === s.kind && last.toMm === s.fromMm) last.toMm = s.toMm;
    else out.push(s);
  }
  return out;
}

function nearest(grid: Float64Array, depth: number): number {
  let low = 0;
  let high = grid.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (grid[middle]! < depth) low = middle + 1;
    else high = middle;
  }
  return low > 0 && depth - grid[low - 1]! < grid[low]! - depth ? low - 1 : low;
}
