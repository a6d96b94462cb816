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
  /** Writes capacity by direction in `year` over that in year 0 for a draw into `out` (36). */
  ratio(draw: number, year: number, out: Float64Array): void;
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
  const rays = field.stateAzimuthsDeg.length;
  const shells = field.stateShells.length;
  const nodes = rays * shells;
  const sin = field.stateAzimuthsDeg.map((a) => Math.sin((a * Math.PI) / 180));
  const cos = field.stateAzimuthsDeg.map((a) => Math.cos((a * Math.PI) / 180));
  const toNone = new Float64Array(nodes);
  const toUnsound = new Float64Array(nodes);
  const speed = new Float64Array(rays);
  const now = new Float64Array(DIRECTIONS);
  const weight = new Float64Array(nodes);
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
      toNone[i] = state === WOOD_STATE.none ? 0 : Number.POSITIVE_INFINITY;
      toUnsound[i] = state === WOOD_STATE.sound ? Number.POSITIVE_INFINITY : 0;
      if (state !== WOOD_STATE.sound) anyUnsound = true;
    }
    if (anyUnsound) {
      sweep(toNone);
      sweep(toUnsound);
    }
    modulus(0, now);
  };

  /** Two sweeps each way round: distances along the mesh to the nearest node of distance 0. */
  const sweep = (distance: Float64Array) => {
    for (let pass = 0; pass < 2; pass++) {
      for (let step = 0; step < rays; step++) relax(distance, step, (step + rays - 1) % rays);
      for (let step = rays - 1; step >= 0; step--) relax(distance, step, (step + 1) % rays);
    }
  };
  const relax = (distance: Float64Array, ray: number, beside: number) => {
    const radius = field.stateCambiumMm[ray]!;
    const outward = radius / (shells - 1);
    const angle = (2 * Math.PI) / rays;
    const row = ray * shells;
    const other = beside * shells;
    for (let i = 0; i < shells; i++) {
      const around = angle * radius * (i / (shells - 1));
      let least = distance[row + i]!;
      least = Math.min(least, distance[other + i]! + around);
      if (i > 0) least = Math.min(least, distance[other + i - 1]! + Math.hypot(outward, around));
      if (i + 1 < shells) least = Math.min(least, distance[other + i + 1]! + Math.hypot(outward, around));
      if (i > 0) least = Math.min(least, distance[row + i - 1]! + outward);
      distance[row + i] = least;
    }
    for (let i = shells - 2; i >= 0; i--)
      distance[row + i] = Math.min(distance[row + i]!, distance[row + i + 1]! + outward);
  };

  /** Modulus by direction of the draw prepared, aged by `year`. */
  const modulus = (year: number, out: Float64Array) => {
    let area = 0;
    let mx = 0;
    let my = 0;
    let ixx = 0;
    let iyy = 0;
    let ixy = 0;
    const outer = new Float64Array(rays);
    for (let k = 0; k < rays; k++) {
      const radius = field.stateCambiumMm[k]!;
      const cell = radius / (shells - 1);
      const reach = speed[k]! * year;
      for (let i = 0; i < shells; i++) {
        const at = k * shells + i;
        let w = 1;
        if (anyUnsound) {
          const whole = clamp((toUnsound[at]! - reach) / cell);
          const some = clamp((toNone[at]! - reach) / cell);
          w = INCIPIENT_SHARE * some + (1 - INCIPIENT_SHARE) * Math.min(some, whole);
        }
        weight[at] = w;
        // The outermost node stands for the half cell inside it.
        const from = i === 0 ? 0 : (i - 0.5) * cell;
        const to = i === shells - 1 ? radius : (i + 0.5) * cell;
        if (w > 0.02) outer[k] = to;
        add(w, k, from, to);
      }
      const rim = weight[k * shells + shells - 1]!;
      if (rim > 0.5 && growth * year > 0) {
        add(1, k, radius, radius + growth * year);
        outer[k] = radius + growth * year;
      }
    }
    function add(w: number, k: number, from: number, to: number) {
      if (w === 0) return;
      const a = (w * (to ** 2 - from ** 2)) / 2;
      const b = (w * (to ** 3 - from ** 3)) / 3;
      const c = (w * (to ** 4 - from ** 4)) / 4;
      area += a;
      mx += b * sin[k]!;
      my += b * cos[k]!;
      ixx += c * sin[k]! ** 2;
      iyy += c * cos[k]! ** 2;
      ixy += c * sin[k]! * cos[k]!;
    }
    const cx = mx / area;
    const cy = my / area;
    const jxx = ixx - area * cx * cx;
    const jyy = iyy - area * cy * cy;
    const jxy = ixy - area * cx * cy;
    const determinant = jxx * jyy - jxy * jxy;
    if (!(area > 0) || !(determinant > 0)) {
      out.fill(0);
      return;
    }
    for (let d = 0; d < DIRECTIONS / 2; d++) {
      const angle = (DIRECTIONS_DEG[d]! * Math.PI) / 180;
      const ux = Math.sin(angle);
      const uy = Math.cos(angle);
      const qx = (jyy * ux - jxy * uy) / determinant;
      const qy = (jxx * uy - jxy * ux) / determinant;
      let greatest = 0;
      for (let k = 0; k < rays; k++) {
        if (outer[k] === 0) continue;
        const stress = Math.abs(qx * (outer[k]! * sin[k]! - cx) + qy * (outer[k]! * cos[k]! - cy));
        if (stress > greatest) greatest = stress;
      }
      out[d] = out[d + DIRECTIONS / 2] = greatest > 0 ? 1 / greatest : 0;
    }
  };

  return {
    ratio(draw, year, out) {
      prepare(draw);
      if (year === 0) {
        out.fill(1);
        return;
      }
      modulus(year, out);
      for (let d = 0; d < DIRECTIONS; d++) out[d] = now[d]! > 0 ? out[d]! / now[d]! : 0;
    },
  };
}

function clamp(x: number): number {
  return Math.max(0, Math.min(1, x));
}
