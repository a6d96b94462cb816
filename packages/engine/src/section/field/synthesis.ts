/**
 * From weights to the field on its rays and nodes: first across for each Fourier order, then around, using the
 * four-fold symmetry of sines and cosines.
 */
import { type FieldBasis, HIGHEST_ORDER, RADIAL_NODES } from './basis.ts';
import { RAYS } from './frame.ts';

const QUARTER = RAYS / 4;
const COSINE = new Float64Array((QUARTER + 1) * (HIGHEST_ORDER + 1));
const SINE = new Float64Array((QUARTER + 1) * (HIGHEST_ORDER + 1));
for (let k = 0; k <= QUARTER; k++) {
  for (let m = 0; m <= HIGHEST_ORDER; m++) {
    COSINE[k * (HIGHEST_ORDER + 1) + m] = Math.cos((2 * Math.PI * k * m) / RAYS);
    SINE[k * (HIGHEST_ORDER + 1) + m] = Math.sin((2 * Math.PI * k * m) / RAYS);
  }
}

/** A function that writes the field of given weights into `out`: `RAYS` rows of `RADIAL_NODES` nodes. */
export function synthesiser(basis: FieldBasis): (weights: Float64Array, out: Float64Array) => void {
  const n = RADIAL_NODES;
  const cosPart = new Float64Array((HIGHEST_ORDER + 1) * n);
  const sinPart = new Float64Array((HIGHEST_ORDER + 1) * n);
  const evenCos = new Float64Array(n);
  const oddCos = new Float64Array(n);
  const evenSin = new Float64Array(n);
  const oddSin = new Float64Array(n);
  return (weights, out) => {
    cosPart.fill(0);
    sinPart.fill(0);
    cosPart.set(basis.mean);
    let w = 0;
    for (let m = 0; m <= HIGHEST_ORDER; m++) {
      for (let q = basis.orderStart[m]!; q < basis.orderStart[m + 1]!; q++) {
        const a = weights[w++]!;
        const b = m === 0 ? 0 : weights[w++]!;
        const from = q * n;
        const to = m * n;
        for (let i = 0; i < n; i++) {
          const f = basis.radial[from + i]!;
          cosPart[to + i] = cosPart[to + i]! + a * f;
          sinPart[to + i] = sinPart[to + i]! + b * f;
        }
      }
    }
    for (let k = 0; k <= QUARTER; k++) {
      evenCos.fill(0);
      oddCos.fill(0);
      evenSin.fill(0);
      oddSin.fill(0);
      for (let m = 0; m <= HIGHEST_ORDER; m++) {
        if (m > 0 && basis.orderStart[m] === basis.orderStart[m + 1]) continue;
        const c = COSINE[k * (HIGHEST_ORDER + 1) + m]!;
        const s = SINE[k * (HIGHEST_ORDER + 1) + m]!;
        const cosInto = m % 2 === 0 ? evenCos : oddCos;
        const sinInto = m % 2 === 0 ? evenSin : oddSin;
        const from = m * n;
        for (let i = 0; i < n; i++) {
          cosInto[i] = cosInto[i]! + c * cosPart[from + i]!;
          sinInto[i] = sinInto[i]! + s * sinPart[from + i]!;
        }
      }
      const forward = k * n;
      const back = ((RAYS - k) % RAYS) * n;
      const mirrored = (RAYS / 2 - k) * n;
      const opposite = ((RAYS / 2 + k) % RAYS) * n;
      for (let i = 0; i < n; i++) {
        const plus = evenCos[i]! + oddCos[i]!;
        const minus = evenCos[i]! - oddCos[i]!;
        const sum = evenSin[i]! + oddSin[i]!;
        const difference = evenSin[i]! - oddSin[i]!;
        out[forward + i] = plus + sum;
        out[back + i] = plus - sum;
        out[mirrored + i] = minus - difference;
        out[opposite + i] = minus + difference;
      }
    }
  };
}
