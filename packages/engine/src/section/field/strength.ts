/**
 * The mechanics of one draw: soundness-weighted second moments about the weighted centroid, and the greatest fibre
 * stress over the wood that carries, by direction. Boundaries are found between nodes, so the integrals are of
 * regions, not of counted cells.
 */
import { RADIAL_NODES } from './basis.ts';
import { type FieldFrame, RAYS } from './frame.ts';

/** Directions of bending, every 10 degrees. */
export const DIRECTIONS = 36;

const SIN = Float64Array.from({ length: RAYS }, (_, k) => Math.sin((2 * Math.PI * k) / RAYS));
const COS = Float64Array.from({ length: RAYS }, (_, k) => Math.cos((2 * Math.PI * k) / RAYS));

/** Inside this relative radius an error of the outline no longer shifts what the needle found. */
const SHIFT_FADES = 0.4;

export interface DrawStrength {
  /** Field of the draw: `RAYS` × `RADIAL_NODES`. */
  field: Float64Array;
  /** Height of the incipient band, and share of strength kept in it. */
  band: number;
  incipientShare: number;
  /** Error of the outline at each ray, share of the radius. */
  outlineError: Float64Array;
}

/**
 * A function that writes the remaining strength of a draw (36 directions) into `remaining` from `at`, and returns the
 * share of the wood's area that is sound.
 *
 * A load toward the unit vector u gives the stress uᵀ J⁻¹ (r − c) per unit moment, J being the second moments about the
 * centroid c; the modulus is one over the greatest of its absolute values. An outline that is `error` too small at a ray
 * carries what the needle found outwards with it, for depths are measured from the bark.
 */
export function strengthOf(
  frame: FieldFrame,
): (draw: DrawStrength, remaining: Float64Array, at: number) => number {
  const n = RADIAL_NODES;
  const px = new Float64Array(2 * RAYS);
  const py = new Float64Array(2 * RAYS);
  const ox = new Float64Array(RAYS);
  const oy = new Float64Array(RAYS);
  const left = new Float64Array(6);
  const whole = new Float64Array(6);
  return (draw, remaining, at) => {
    const { field, band, incipientShare, outlineError } = draw;
    left.fill(0);
    whole.fill(0);
    let points = 0;
    for (let k = 0; k < RAYS; k++) {
      const error = outlineError[k]!;
      const edge = frame.rays[k]! * (1 + error);
      const s = SIN[k]!;
      const c = COS[k]!;
      add(whole, s, c, edge ** 2, edge ** 3, edge ** 4);
      ox[k] = edge * s;
      oy[k] = edge * c;
      let q2 = 0;
      let q3 = 0;
      let q4 = 0;
      let inner = -1;
      let outer = -1;
      for (let pass = 0; pass < 2; pass++) {
        const threshold = pass === 0 ? 0 : band;
        const share = pass === 0 ? incipientShare : 1 - incipientShare;
        let before = field[k * n]! - threshold;
        if (pass === 0 && before > 0) inner = 0;
        for (let i = 1; i < n; i++) {
          const here = field[k * n + i]! - threshold;
          if (before > 0 !== here > 0) {
            const rho = (i - 1 + before / (before - here)) / (n - 1);
            const r = frame.rays[k]! * (rho + error * Math.min(1, rho / SHIFT_FADES));
            const signed = here > 0 ? -share : share;
            const r2 = r * r;
            q2 += signed * r2;
            q3 += signed * r2 * r;
            q4 += signed * r2 * r2;
            if (pass === 0) {
              if (here > 0) {
                if (inner < 0) inner = r;
              } else outer = r;
            }
          }
          before = here;
        }
        if (before > 0) {
          q2 += share * edge ** 2;
          q3 += share * edge ** 3;
          q4 += share * edge ** 4;
          if (pass === 0) outer = edge;
        }
      }
      if (outer >= 0) {
        add(left, s, c, q2, q3, q4);
        px[points] = outer * s;
        py[points++] = outer * c;
        if (inner > 0) {
          px[points] = inner * s;
          py[points++] = inner * c;
        }
      }
    }
    const wholeStress = stressByDirection(whole, ox, oy, RAYS);
    const leftStress = stressByDirection(left, px, py, points);
    const half = DIRECTIONS / 2;
    for (let d = 0; d < half; d++) {
      const stress = leftStress(d);
      const value = stress > 0 ? wholeStress(d) / stress : 0;
      remaining[at + d] = value;
      remaining[at + d + half] = value;
    }
    return left[0]! / whole[0]!;
  };
}

/** Adds a ray's part to area, first and second moments; the common factor of the ray's angle cancels. */
function add(m: Float64Array, s: number, c: number, r2: number, r3: number, r4: number): void {
  m[0] = m[0]! + r2 / 2;
  m[1] = m[1]! + (s * r3) / 3;
  m[2] = m[2]! + (c * r3) / 3;
  m[3] = m[3]! + (s * s * r4) / 4;
  m[4] = m[4]! + (c * c * r4) / 4;
  m[5] = m[5]! + (s * c * r4) / 4;
}

/** Greatest stress per unit moment toward direction index d; 0 where nothing carries. */
function stressByDirection(
  m: Float64Array,
  x: Float64Array,
  y: Float64Array,
  points: number,
): (d: number) => number {
  const area = m[0]!;
  const cx = m[1]! / area;
  const cy = m[2]! / area;
  const jxx = m[3]! - area * cx * cx;
  const jyy = m[4]! - area * cy * cy;
  const jxy = m[5]! - area * cx * cy;
  const determinant = jxx * jyy - jxy * jxy;
  if (!(area > 0) || !(determinant > 0)) return () => 0;
  return (d) => {
    const angle = (2 * Math.PI * d) / DIRECTIONS;
    const ux = Math.sin(angle);
    const uy = Math.cos(angle);
    const qx = (jyy * ux - jxy * uy) / determinant;
    const qy = (jxx * uy - jxy * ux) / determinant;
    const shift = qx * cx + qy * cy;
    let greatest = 0;
    for (let i = 0; i < points; i++) {
      const stress = Math.abs(qx * x[i]! + qy * y[i]! - shift);
      if (stress > greatest) greatest = stress;
    }
    return greatest;
  };
}
