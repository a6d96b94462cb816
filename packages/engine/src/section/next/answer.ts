/**
 * What a needle would answer at a place not drilled yet, in each draw of the posterior: the wood along its line.
 */
import { type FieldPosterior, WOOD_STATE } from '../field/types.ts';
import { RAD } from '../ring.ts';

/** A level needle: where it enters, and how far its heading is turned clockwise from the line to the origin. */
export interface Aim {
  azimuthDeg: number;
  offRadialDeg: number;
}

/** Points looked at along the needle, and stretches they are put together in. */
const SAMPLES = 40;
const STRETCHES = 8;
/** Numbers that stand for one answer: soundness of each stretch, the sound wood before anything else, and its square. */
export const ANSWER_SIZE = STRETCHES + 2;
/** Incipient decay counted as wood, as in the table of the field's prior. */
const INCIPIENT = 0.45;
const STEP_MM = 2;

/**
 * Answers of the first `count` draws to each aim: rows of `ANSWER_SIZE` numbers between 0 and 1, one row a draw. Depth is
 * counted from the cambium; what lies beyond the far side counts as no wood.
 */
export function needleAnswers(
  posterior: FieldPosterior,
  aims: readonly Aim[],
  needleMm: number,
  count: number,
): Float64Array[] {
  const { states, stateShells, stateAzimuthsDeg } = posterior;
  const size = stateAzimuthsDeg.length * stateShells.length;
  const lines = aims.map((aim) => nodesAlong(posterior, aim, needleMm));
  const answers = aims.map(() => new Float64Array(count * ANSWER_SIZE));
  const perStretch = SAMPLES / STRETCHES;
  // Draw by draw, not aim by aim: a draw's states are then read from near memory.
  for (let d = 0; d < count; d++) {
    const row = d * ANSWER_SIZE;
    const from = d * size;
    for (let a = 0; a < lines.length; a++) {
      const line = lines[a]!;
      const out = answers[a]!;
      let wall = 0;
      let unbroken = true;
      let k = 0;
      for (let stretch = 0; stretch < STRETCHES; stretch++) {
        let wood = 0;
        for (const end = k + perStretch; k < end; k++) {
          const node = line[k]!;
          const state = node < 0 ? WOOD_STATE.none : states[from + node]!;
          if (state === WOOD_STATE.sound) {
            wood++;
            if (unbroken) wall++;
          } else {
            unbroken = false;
            if (state === WOOD_STATE.incipient) wood += INCIPIENT;
          }
        }
        out[row + stretch] = wood / perStretch;
      }
      out[row + STRETCHES] = wall / SAMPLES;
      out[row + STRETCHES + 1] = (wall / SAMPLES) ** 2;
    }
  }
  return answers;
}

/** Nodes of a draw's states along a needle; −1 where it is out of the wood. */
function nodesAlong(
  { stateShells, stateAzimuthsDeg, stateCambiumMm, centreMm }: FieldPosterior,
  { azimuthDeg, offRadialDeg }: Aim,
  needleMm: number,
): Int32Array {
  const rays = stateAzimuthsDeg.length;
  const shells = stateShells.length;
  const azimuth = azimuthDeg * RAD;
  const heading = azimuth + Math.PI + offRadialDeg * RAD;
  const at = (radius: number, depth: number) => {
    const x = radius * Math.sin(azimuth) + depth * Math.sin(heading) - centreMm[0];
    const y = radius * Math.cos(azimuth) + depth * Math.cos(heading) - centreMm[1];
    const turns = Math.atan2(x, y) / (2 * Math.PI);
    const ray = Math.round((turns - Math.floor(turns)) * rays) % rays;
    return { ray, rho: Math.hypot(x, y) / stateCambiumMm[ray]! };
  };
  // Cambium on the line to the origin, from outside in.
  let edge = 2 * Math.max(...stateCambiumMm) + Math.hypot(centreMm[0], centreMm[1]);
  while (edge > 0 && at(edge, 0).rho > 1) edge -= STEP_MM;
  return Int32Array.from({ length: SAMPLES }, (_, k) => {
    const { ray, rho } = at(edge, (needleMm * (k + 0.5)) / SAMPLES);
    return rho <= 1 ? ray * shells + Math.round(rho * (shells - 1)) : -1;
  });
}
