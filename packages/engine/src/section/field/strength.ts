/**
 * The mechanics of one draw: soundness-weighted second moments about the weighted centroid, and the greatest fibre
 * stress over the wood that carries, by direction. Boundaries are found between nodes, so the integrals are of
 * regions, not of counted cells.
 */
import { RADIAL_NODES } from './basis.ts';
import { type FieldFrame, RAYS } from './frame.ts';

/** Directions of bending, every 10 degrees. */
export const DIRECTIONS = 36;

/** Finer rays put between two neighbours that cut the wood differently, as on the two sides of an opening's lip. */
const FINER = 4;

const SIN = Float64Array.from({ length: FINER * RAYS }, (_, k) => Math.sin((2 * Math.PI * k) / FINER / RAYS));
const COS = Float64Array.from({ length: FINER * RAYS }, (_, k) => Math.cos((2 * Math.PI * k) / FINER / RAYS));

/** Inside this relative radius an error of the outline no longer shifts what the needle found. */
const SHIFT_FADES = 0.4;
/** Neighbouring rays differ when their sound share of length-weighted area does by more than this. */
const DIFFERENT = 0.15;

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
  const left = new Float64Array(6);
  const whole = new Float64Array(6);
  const between = new Float64Array(n);
  // Of each ray: radius powers of its wood, twice, three and four times their integrals; inner and outer end.
  const cuts = new Float64Array(5 * RAYS);
  const cut = new Float64Array(5);
  const px = new Float64Array(2 * FINER * RAYS);
  const py = new Float64Array(2 * FINER * RAYS);
  const ox = new Float64Array(RAYS);
  const oy = new Float64Array(RAYS);
  let points = 0;
  const addEnds = (angle: number, inner: number, outer: number) => {
    if (outer < 0) return;
    px[points] = outer * SIN[angle]!;
    py[points++] = outer * COS[angle]!;
    if (inner > 0) {
      px[points] = inner * SIN[angle]!;
      py[points++] = inner * COS[angle]!;
    }
  };
  return (draw, remaining, at) => {
    const { field, outlineError } = draw;
    left.fill(0);
    whole.fill(0);
    points = 0;
    let allSound = true;
    for (let k = 0; k < RAYS; k++) {
      const edge = frame.rays[k]! * (1 + outlineError[k]!);
      const s = SIN[FINER * k]!;
      const c = COS[FINER * k]!;
      addRay(whole, 1, s, c, edge ** 2, edge ** 3, edge ** 4);
      ox[k] = edge * s;
      oy[k] = edge * c;
      if (cutRay(draw, field, k * n, frame.rays[k]!, outlineError[k]!, cut)) allSound = false;
      cuts.set(cut, 5 * k);
      addEnds(FINER * k, cut[3]!, cut[4]!);
    }
    for (let k = 0; k < RAYS; k++) {
      const next = k + 1 < RAYS ? k + 1 : 0;
      const a = 5 * k;
      const b = 5 * next;
      const size = frame.rays[k]!;
      const differ = Math.abs(cuts[a]! - cuts[b]!) > DIFFERENT * size * size;
      const end = differ ? 0.5 / FINER : 0.5;
      addRay(left, end, SIN[FINER * k]!, COS[FINER * k]!, cuts[a]!, cuts[a + 1]!, cuts[a + 2]!);
      addRay(left, end, SIN[FINER * next]!, COS[FINER * next]!, cuts[b]!, cuts[b + 1]!, cuts[b + 2]!);
      if (!differ) continue;
      for (let f = 1; f < FINER; f++) {
        const u = f / FINER;
        for (let i = 0; i < n; i++) between[i] = field[k * n + i]! * (1 - u) + field[next * n + i]! * u;
        const radius = size * (1 - u) + frame.rays[next]! * u;
        const error = outlineError[k]! * (1 - u) + outlineError[next]! * u;
        cutRay(draw, between, 0, radius, error, cut);
        const angle = FINER * k + f;
        addRay(left, 1 / FINER, SIN[angle]!, COS[angle]!, cut[0]!, cut[1]!, cut[2]!);
        addEnds(angle, cut[3]!, cut[4]!);
      }
    }
    const wholeStress = stressByDirection(whole, ox, oy, RAYS);
    const leftStress = stressByDirection(left, px, py, points);
    const half = DIRECTIONS / 2;
    for (let d = 0; d < half; d++) {
      const stress = leftStress(d);
      const value = allSound ? 1 : stress > 0 ? wholeStress(d) / stress : 0;
      remaining[at + d] = value;
      remaining[at + d + half] = value;
    }
    return left[0]! / whole[0]!;
  };
}

/**
 * Where a ray runs through wood: sums over its stretches of the ends' squares, cubes and fourth powers of radius, each
 * stretch at its share of strength; and its innermost and outermost radius that carries (−1 where none does).
 * Returns whether any of it is not sound.
 */
function cutRay(
  draw: DrawStrength,
  field: Float64Array,
  from: number,
  radius: number,
  error: number,
  out: Float64Array,
): boolean {
  const n = RADIAL_NODES;
  const { band, incipientShare } = draw;
  let q2 = 0;
  let q3 = 0;
  let q4 = 0;
  let outer = -1;
  let crossings = 0;
  let before = field[from]!;
  let inner = before > 0 ? 0 : -1;
  for (let i = 1; i < n; i++) {
    const here = field[from + i]!;
    // Most steps cross nothing: sound to sound, or none to none.
    if (!((before > band && here > band) || (before <= 0 && here <= 0))) {
      for (let pass = 0; pass < 2; pass++) {
        const threshold = pass === 0 ? 0 : band;
        if (before > threshold === here > threshold) continue;
        crossings++;
        const rho = (i - 1 + (before - threshold) / (before - here)) / (n - 1);
        const r = radius * (rho + error * Math.min(1, rho / SHIFT_FADES));
        const share = pass === 0 ? incipientShare : 1 - incipientShare;
        const signed = here > threshold ? -share : share;
        const r2 = r * r;
        q2 += signed * r2;
        q3 += signed * r2 * r;
        q4 += signed * r2 * r2;
        if (pass === 0) {
          if (here <= 0) outer = r;
          else if (inner < 0) inner = r;
        }
      }
    }
    before = here;
  }
  if (before > 0) {
    const share = before > band ? 1 : incipientShare;
    outer = radius * (1 + error);
    q2 += share * outer ** 2;
    q3 += share * outer ** 3;
    q4 += share * outer ** 4;
  }
  out[0] = q2;
  out[1] = q3;
  out[2] = q4;
  out[3] = inner;
  out[4] = outer;
  return crossings > 0 || !(field[from]! > band);
}

/** Adds a ray's part to area, first and second moments; the common factor of the ray's angle cancels. */
function addRay(
  m: Float64Array,
  weight: number,
  s: number,
  c: number,
  r2: number,
  r3: number,
  r4: number,
): void {
  const a = (weight * r4) / 4;
  const b = (weight * r3) / 3;
  m[0] = m[0]! + (weight * r2) / 2;
  m[1] = m[1]! + s * b;
  m[2] = m[2]! + c * b;
  m[3] = m[3]! + s * s * a;
  m[4] = m[4]! + c * c * a;
  m[5] = m[5]! + s * c * a;
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
