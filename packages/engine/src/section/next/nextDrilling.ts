/**
 * Where to drill next, or to stop. Each draw of the posterior says what a needle at a candidate place would meet and
 * whether the tree should be kept; so the draws show how much a needle's answer would sharpen the decision before
 * the hole is made (preposterior analysis: Raiffa & Schlaifer 1961, Applied Statistical Decision Theory; stepwise
 * uncertainty reduction: Bect, Ginsbourger, Li, Picheny & Vazquez 2012, Statistics and Computing 22).
 */
import type { NextDrilling } from '../../assessment.ts';
import { InputFault } from '../../faults.ts';
import { type FieldPosterior, WOOD_STATE } from '../field/types.ts';
import type { NextDrillingInput, SectionToDrill } from './types.ts';

/** Places looked at around each section. */
const CANDIDATES = 36;
/** Below this chance of a wrong decision no hole is worth its wound. */
const SURE_ENOUGH = 0.05;
/** Least share of that chance that a hole must be expected to take away. */
const LEAST_WORTH = 0.1;
/** A hole this near to one already made tells little and weakens the same place, degrees. */
const TOO_NEAR_DEG = 8;
/** Chance that a needle's answer misleads: it passes the decay by, or is misread. */
const MISLEADS = 0.05;
const SAMPLES = 40;
const USUAL_NEEDLE_MM = 400;
/** Classes of what a needle may answer: by sound wall, then by strength-weighted wood along the needle. */
const WALL_CLASSES = 4;
const WOOD_CLASSES = 3;

/**
 * The place whose hole is expected to lower most the chance of a wrong keep-or-act decision, or the advice to stop.
 * The decision is for the tree: act when any section's safety factor is below the limit (or `chanceOtherwise`).
 * `worth` is the expected drop as a share of the present chance.
 *
 * @throws InputFault when the safety factors of a section do not match its posterior's draws, or none are given
 */
export function nextDrilling(input: NextDrillingInput): NextDrilling {
  const { sections, limit, chanceOtherwise = 0, needleMm = USUAL_NEEDLE_MM } = input;
  if (sections.length === 0) {
    return {
      stop: true,
      why: 'No section was described, so there is nowhere to drill. Describe a section first.',
    };
  }
  for (const s of sections) {
    if (s.safetyByDraw.length !== s.posterior.draws) {
      throw new InputFault(
        `${s.safetyByDraw.length} safety factors were given for ${s.posterior.draws} draws of the section. Give one for each draw.`,
        `sections.${s.id}`,
      );
    }
  }
  const failing = sections.map((s) => share(s.safetyByDraw, (v) => v < limit));
  const safeOtherwise = (except: number) =>
    failing.reduce((safe, p, i) => (i === except ? safe : safe * (1 - p)), 1 - chanceOtherwise);
  const mustAct = 1 - safeOtherwise(-1);
  const wrongNow = Math.min(mustAct, 1 - mustAct);
  const leaning = mustAct < 0.5 ? 'keep' : 'act';
  const mark = limit.toFixed(1);

  const candidates = sections.flatMap((s, index) =>
    places(s, needleMm).map(({ azimuthDeg, wall, wood }) => {
      const after = wrongAfter(s.safetyByDraw, limit, wall, wood, safeOtherwise(index));
      const drop = (1 - MISLEADS) * (wrongNow - after);
      return { sectionId: s.id, azimuthDeg, worth: wrongNow > 0 ? Math.max(0, drop / wrongNow) : 0 };
    }),
  );
  candidates.sort((a, b) => b.worth - a.worth || a.azimuthDeg - b.azimuthDeg);
  const best = candidates[0];

  if (wrongNow < SURE_ENOUGH) {
    return {
      stop: true,
      why: `The chance that the safety factor against breakage is below ${mark} is ${percent(mustAct)}: as far as the stem's strength goes, the decision to ${leaning} is wrong in less than ${percent(SURE_ENOUGH)} of what the drillings allow, and no further hole would change that enough to be worth its wound. Anchorage is judged apart.`,
      candidates,
    };
  }
  if (!best || best.worth < LEAST_WORTH) {
    return {
      stop: true,
      why: `As far as breakage goes, the decision to ${leaning} is wrong with a chance of ${percent(wrongNow)}, but the best place for one more hole would lower that by only ${percent((best?.worth ?? 0) * wrongNow)}: what is left comes from the wind and the wood's strength more than from the section. Another hole is not worth its wound; another kind of test may be.`,
      candidates,
    };
  }
  return {
    sectionId: best.sectionId,
    azimuthDeg: best.azimuthDeg,
    worth: best.worth,
    why: `As far as breakage goes, the decision to ${leaning} is wrong with a chance of ${percent(wrongNow)} now. A hole at section ${best.sectionId}, ${Math.round(best.azimuthDeg)}°, is expected to bring that to ${percent(wrongNow * (1 - best.worth))}.`,
    candidates,
  };
}

const percent = (p: number) => `${(100 * p).toFixed(p < 0.1 ? 1 : 0)} %`;

interface Place {
  azimuthDeg: number;
  /** For each draw: sound wood before the first unsound, in samples; and wood weighted by the cube of its radius. */
  wall: Float64Array;
  wood: Float64Array;
}

function places(section: SectionToDrill, needleMm: number): Place[] {
  const { posterior, drilled } = section;
  const found: Place[] = [];
  for (let c = 0; c < CANDIDATES; c++) {
    const azimuthDeg = (360 * c) / CANDIDATES;
    if (drilled.some((d) => d.downDeg < 45 && turn(d.azimuthDeg, azimuthDeg) < TOO_NEAR_DEG)) continue;
    found.push({ azimuthDeg, ...seen(posterior, azimuthDeg, needleMm) });
  }
  return found;
}

function turn(a: number, b: number): number {
  const d = Math.abs(a - b) % 360;
  return Math.min(d, 360 - d);
}

/** What a level needle at an azimuth, aimed at the origin, would meet in each draw. */
function seen(
  posterior: FieldPosterior,
  azimuthDeg: number,
  needleMm: number,
): { wall: Float64Array; wood: Float64Array } {
  const { draws, states, stateShells, stateAzimuthsDeg, stateCambiumMm, centreMm } = posterior;
  const rays = stateAzimuthsDeg.length;
  const shells = stateShells.length;
  const ux = Math.sin((azimuthDeg * Math.PI) / 180);
  const uy = Math.cos((azimuthDeg * Math.PI) / 180);
  const locate = (radius: number) => {
    const x = radius * ux - centreMm[0];
    const y = radius * uy - centreMm[1];
    const turns = Math.atan2(x, y) / (2 * Math.PI);
    const ray = Math.round((turns - Math.floor(turns)) * rays) % rays;
    return { ray, rho: Math.hypot(x, y) / stateCambiumMm[ray]! };
  };
  // Cambium on this line, from outside in.
  let edge = 2 * Math.max(...stateCambiumMm) + Math.hypot(centreMm[0], centreMm[1]);
  while (edge > 0 && locate(edge).rho > 1) edge -= 2;
  const nodes: number[] = [];
  const lever: number[] = [];
  for (let k = 0; k < SAMPLES; k++) {
    const depth = (needleMm * (k + 0.5)) / SAMPLES;
    const { ray, rho } = locate(edge - depth);
    if (rho > 1) continue;
    nodes.push(ray * shells + Math.round(rho * (shells - 1)));
    lever.push(rho ** 3);
  }
  const wall = new Float64Array(draws);
  const wood = new Float64Array(draws);
  const size = rays * shells;
  for (let d = 0; d < draws; d++) {
    let sound = 0;
    let unbroken = true;
    let sum = 0;
    for (let k = 0; k < nodes.length; k++) {
      const isSound = states[d * size + nodes[k]!] === WOOD_STATE.sound;
      if (isSound) sum += lever[k]!;
      else unbroken = false;
      if (unbroken) sound++;
    }
    wall[d] = sound;
    wood[d] = sum;
  }
  return { wall, wood };
}

/**
 * Chance of a wrong decision once the needle's answer is known. Answers are put in classes; in each class the
 * decision is taken on one half of the draws and judged on the other, so that chance is not mistaken for knowledge.
 */
function wrongAfter(
  safety: Float64Array,
  limit: number,
  wall: Float64Array,
  wood: Float64Array,
  safeOtherwise: number,
): number {
  const classes = answerClasses(wall, wood);
  const count = WALL_CLASSES * WOOD_CLASSES;
  const fails = new Float64Array(2 * count);
  const sizes = new Float64Array(2 * count);
  for (let d = 0; d < safety.length; d++) {
    const cell = (d % 2) * count + classes[d]!;
    sizes[cell] = sizes[cell]! + 1;
    if (safety[d]! < limit) fails[cell] = fails[cell]! + 1;
  }
  let wrong = 0;
  for (let c = 0; c < count; c++) {
    for (const half of [0, 1]) {
      const decide = half * count + c;
      const judge = (1 - half) * count + c;
      if (sizes[judge] === 0) continue;
      const rate = sizes[decide] ? fails[decide]! / sizes[decide]! : 0;
      const act = 1 - (1 - rate) * safeOtherwise > 0.5;
      const safe = (sizes[judge]! - fails[judge]!) * safeOtherwise;
      wrong += act ? safe : sizes[judge]! - safe;
    }
  }
  return wrong / safety.length;
}

/** Class of each draw's answer: by rank of the wall, and within that by rank of the weighted wood. */
function answerClasses(wall: Float64Array, wood: Float64Array): Uint8Array {
  const n = wall.length;
  const classes = new Uint8Array(n);
  const order = Array.from({ length: n }, (_, i) => i).sort(
    (i, j) => wall[i]! - wall[j]! || wood[i]! - wood[j]!,
  );
  for (let q = 0; q < WALL_CLASSES; q++) {
    const part = order.slice(Math.floor((q * n) / WALL_CLASSES), Math.floor(((q + 1) * n) / WALL_CLASSES));
    part.sort((i, j) => wood[i]! - wood[j]!);
    part.forEach((i, k) => {
      classes[i] = q * WOOD_CLASSES + Math.floor((k * WOOD_CLASSES) / part.length);
    });
  }
  return classes;
}

function share(values: Float64Array, holds: (v: number) => boolean): number {
  let count = 0;
  for (const v of values) if (holds(v)) count++;
  return values.length ? count / values.length : 0;
}
