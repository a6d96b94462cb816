/**
 * A section's capacity in the years to come, draw by draw: each draw of the soundness field is aged. Wood within v·T of
 * what is unsound has become so by year T, v being the speed of the front towards that side, and g·T of sound wood has
 * been laid on outside wherever the wood below the bark is sound. Distances run over the polar mesh of the field (two
 * sweeps of a chamfer transform, Borgefors 1986), so fronts move in all directions, round a cavity as well as outward.
 * Only the ratio of the aged capacity to that of the same mesh at year 0 is used, so what the mesh leaves out cancels.
 */

import { FIELD_PRIOR, type FieldPosterior, WOOD_STATE } from '../section/field/index.ts';
import { DIRECTIONS_DEG } from '../section/index.ts';

const DIRECTIONS = DIRECTIONS_DEG.length;
/** Share of its strength that incipient wood keeps: the middle of what the field believes. */
const INCIPIENT_SHARE = FIELD_PRIOR.incipientStrength.mean;

/** Ages the draws of one section. */
export interface Ageing {
  /** Writes capacity by direction after `years` over that at first for a draw into `out` (36). */
  ratio(draw: number, years: number, out: Float64Array): void;
}

/**
 * @param speedMmYear speed of the front towards each ray of the field in a draw, mm a year, written into the array given
 * @param growthMmYear growth in a draw, mm a year
 */
export function ageing(
  field: FieldPosterior,
  speedMmYear: (draw: number, out: Float64Array) => void,
  growthMmYear: (draw: number) => number,
): Ageing {
  const mesh = meshOf(field);
  const { rays, shells } = mesh;
  const nodes = rays * shells;
  const toNone = new Float64Array(nodes);
  const toUnsound = new Float64Array(nodes);
  const speed = new Float64Array(rays);
  const first = new Float64Array(DIRECTIONS);
  const weights = new Float64Array(shells);
  const outer = new Float64Array(rays);
  let prepared = -1;
  let growth = 0;
  let anyUnsound = false;

  const prepare = (draw: number) => {
    if (prepared === draw) return;
    prepared = draw;
    growth = growthMmYear(draw);
    speedMmYear(draw, speed);
    anyUnsound = false;
    const at = draw * nodes;
    for (let i = 0; i < nodes; i++) {
      const state = field.states[at + i]!;
      toNone[i] = state === WOOD_STATE.none ? 0 : FAR_MM;
      toUnsound[i] = state === WOOD_STATE.sound ? FAR_MM : 0;
      if (state !== WOOD_STATE.sound) anyUnsound = true;
    }
    if (anyUnsound) {
      sweep(mesh, toNone);
      sweep(mesh, toUnsound);
    }
    modulus(0, first);
  };

  const modulus = (years: number, out: Float64Array) => {
    const m = new Float64Array(6);
    const grown = growth * years;
    for (let k = 0; k < rays; k++) {
      const row = k * shells;
      const radius = field.stateCambiumMm[k]!;
      const cell = radius / (shells - 1);
      const reach = speed[k]! * years;
      for (let i = 0; i < shells; i++) {
        let weight = 1;
        if (anyUnsound) {
          const whole = clamp((toUnsound[row + i]! - reach) / cell);
          const some = clamp((toNone[row + i]! - reach) / cell);
          weight = INCIPIENT_SHARE * some + (1 - INCIPIENT_SHARE) * Math.min(some, whole);
        }
        weights[i] = weight;
      }
      const edge = weights[shells - 1]! > LIVING_RIM ? radius + grown : radius;
      outer[k] = addRay(m, weights, cell, edge, mesh.sin[k]!, mesh.cos[k]!);
    }
    moduli(m, outer, mesh, out);
  };

  return {
    ratio(draw, years, out) {
      prepare(draw);
      if (years === 0) {
        out.fill(1);
        return;
      }
      modulus(years, out);
      for (let d = 0; d < DIRECTIONS; d++) out[d] = first[d]! > 0 ? out[d]! / first[d]! : 0;
    },
  };
}

/** Farther than anything in a stem, mm: finite, so that no difference of two is no number. */
const FAR_MM = 1e6;
/** New wood is laid on where the outermost wood keeps more than this. */
const LIVING_RIM = 0.5;
/** Wood that keeps less than this bears nothing at its edge. */
const BEARS = 0.02;

interface Mesh {
  rays: number;
  shells: number;
  sin: Float64Array;
  cos: Float64Array;
  /** Distance from one shell to the next on a ray, and from each node to the ray beside it, straight and aslant, mm. */
  outwardMm: Float64Array;
  aroundMm: Float64Array;
  aslantMm: Float64Array;
}

function meshOf(field: FieldPosterior): Mesh {
  const rays = field.stateAzimuthsDeg.length;
  const shells = field.stateShells.length;
  const angle = (2 * Math.PI) / rays;
  const radians = field.stateAzimuthsDeg.map((a) => (a * Math.PI) / 180);
  const outwardMm = Float64Array.from(field.stateCambiumMm, (radius) => radius / (shells - 1));
  const aroundMm = new Float64Array(rays * shells);
  const aslantMm = new Float64Array(rays * shells);
  for (let k = 0; k < rays; k++)
    for (let i = 0; i < shells; i++) {
      aroundMm[k * shells + i] = angle * outwardMm[k]! * i;
      aslantMm[k * shells + i] = Math.hypot(outwardMm[k]!, aroundMm[k * shells + i]!);
    }
  return {
    rays,
    shells,
    sin: Float64Array.from(radians, Math.sin),
    cos: Float64Array.from(radians, Math.cos),
    outwardMm,
    aroundMm,
    aslantMm,
  };
}

/** Distances along the mesh to the nearest node of distance 0: once round each way, a second time to close the circle. */
function sweep(mesh: Mesh, distance: Float64Array): void {
  const { rays } = mesh;
  for (let step = 0; step < 2 * rays; step++) relax(mesh, distance, step % rays, (step + rays - 1) % rays);
  for (let step = 2 * rays - 1; step >= 0; step--) relax(mesh, distance, step % rays, (step + 1) % rays);
}

function relax(mesh: Mesh, distance: Float64Array, ray: number, beside: number): void {
  const { shells, aroundMm, aslantMm } = mesh;
  const outward = mesh.outwardMm[ray]!;
  const row = ray * shells;
  const other = beside * shells;
  for (let i = 0; i < shells; i++) {
    const aslant = aslantMm[row + i]!;
    let least = distance[row + i]!;
    const straight = distance[other + i]! + aroundMm[row + i]!;
    if (straight < least) least = straight;
    if (i > 0) {
      const inner = distance[other + i - 1]! + aslant;
      const before = distance[row + i - 1]! + outward;
      if (inner < least) least = inner;
      if (before < least) least = before;
    }
    if (i + 1 < shells) {
      const further = distance[other + i + 1]! + aslant;
      if (further < least) least = further;
    }
    distance[row + i] = least;
  }
  for (let i = shells - 2; i >= 0; i--) {
    const after = distance[row + i + 1]! + outward;
    if (after < distance[row + i]!) distance[row + i] = after;
  }
}

/** Adds a ray's area, first and second moments, whose common factor cancels; gives its outermost bearing radius. */
function addRay(
  m: Float64Array,
  weights: Float64Array,
  cell: number,
  edge: number,
  sin: number,
  cos: number,
): number {
  const last = weights.length - 1;
  let q2 = 0;
  let q3 = 0;
  let q4 = 0;
  let outer = 0;
  // Each node stands for half a cell either way; only steps of the weight count.
  for (let i = 0; i <= last; i++) {
    const step = weights[i]! - (i < last ? weights[i + 1]! : 0);
    const r = i < last ? (i + 0.5) * cell : edge;
    if (weights[i]! > BEARS) outer = r;
    if (step === 0) continue;
    q2 += step * r * r;
    q3 += step * r * r * r;
    q4 += step * r * r * r * r;
  }
  m[0] = m[0]! + q2 / 2;
  m[1] = m[1]! + (sin * q3) / 3;
  m[2] = m[2]! + (cos * q3) / 3;
  m[3] = m[3]! + (sin * sin * q4) / 4;
  m[4] = m[4]! + (cos * cos * q4) / 4;
  m[5] = m[5]! + (sin * cos * q4) / 4;
  return outer;
}

/** One over the greatest stress per unit moment, by direction; 0 where nothing bears. */
function moduli(m: Float64Array, outer: Float64Array, { sin, cos, rays }: Mesh, out: Float64Array): void {
  const area = m[0]!;
  const cx = m[1]! / area;
  const cy = m[2]! / area;
  const jxx = m[3]! - area * cx * cx;
  const jyy = m[4]! - area * cy * cy;
  const jxy = m[5]! - area * cx * cy;
  const determinant = jxx * jyy - jxy * jxy;
  if (!(area > 0) || !(determinant > 0)) {
    out.fill(0);
    return;
  }
  for (let d = 0; d < DIRECTIONS / 2; d++) {
    const ux = UNIT_X[d]!;
    const uy = UNIT_Y[d]!;
    const qx = (jyy * ux - jxy * uy) / determinant;
    const qy = (jxx * uy - jxy * ux) / determinant;
    const shift = qx * cx + qy * cy;
    let greatest = 0;
    for (let k = 0; k < rays; k++) {
      const r = outer[k]!;
      if (r === 0) continue;
      const stress = Math.abs(r * (qx * sin[k]! + qy * cos[k]!) - shift);
      if (stress > greatest) greatest = stress;
    }
    out[d] = greatest > 0 ? 1 / greatest : 0;
    out[d + DIRECTIONS / 2] = out[d]!;
  }
}

const UNIT_X = DIRECTIONS_DEG.map((d) => Math.sin((d * Math.PI) / 180));
const UNIT_Y = DIRECTIONS_DEG.map((d) => Math.cos((d * Math.PI) / 180));

function clamp(x: number): number {
  return Math.max(0, Math.min(1, x));
}
