/**
 * Ways to drill a section hole by hole, and how sure each is of the decision on the way. All hold their holes against the
 * same field and the same limit; they differ in where they drill. Each goes on to a certainty far stricter than anyone
 * asks for, so that one run shows what it would have done at any laxer one.
 */
import { randomFrom } from '../../../packages/engine/src/random.ts';
import { type FieldPosterior, soundnessPosterior } from '../../../packages/engine/src/section/field/index.ts';
import { nextDrilling } from '../../../packages/engine/src/section/next/index.ts';
import type { NeedlePose } from '../../../packages/engine/src/section/types.ts';
import { leastRatio, type Visit } from './visit.ts';

/** No strategy drills more holes than this. */
export const MOST_HOLES = 12;
/** Chance of a wrong decision, by the field, below which nobody drills on. */
export const STRICTEST = 0.005;

/** Where a section stands: chance that it must be acted on, given the holes made. */
export interface Stand {
  holes: number;
  mustAct: number;
}

export const chanceWrong = ({ mustAct }: Stand) => Math.min(mustAct, 1 - mustAct);
/** Whether a stand is as sure as is asked: the chance of a wrong decision below this. */
export const isSure = (stand: Stand, certainty: number) => chanceWrong(stand) < certainty;

interface Looked extends Stand {
  posterior: FieldPosterior;
  safetyByDraw: Float64Array;
}

function look(visit: Visit, poses: readonly NeedlePose[], draws: number): Looked {
  const random = randomFrom(visit.seed).fork(`look ${poses.length}`);
  const posterior = soundnessPosterior(visit.drilled(poses), random, draws);
  const safetyByDraw = Float64Array.from({ length: draws }, (_, i) =>
    leastRatio(posterior.remaining, i * visit.needed.length, visit.needed),
  );
  const mustAct = safetyByDraw.filter((v) => v < 1).length / draws;
  return { holes: poses.length, mustAct, posterior, safetyByDraw };
}

const stand = ({ holes, mustAct }: Looked): Stand => ({ holes, mustAct });

const level = (azimuthDeg: number, offRadialDeg = 0): NeedlePose => ({
  azimuthDeg: ((azimuthDeg % 360) + 360) % 360,
  offRadialDeg,
  downDeg: 0,
});

const startDeg = (visit: Visit) => 360 * randomFrom(visit.seed).fork('start').uniform();

/** What the prior and the surface say before any hole. */
export function undrilled(visit: Visit, draws: number): Stand {
  return stand(look(visit, [], draws));
}

/** The order in which gaps are halved: each hole goes to the middle of one of the widest gaps. */
const HALVING_DEG = [0, 180, 90, 270, 45, 225, 135, 315, 22.5, 202.5, 112.5, 292.5];

/** Equal spacing as it can be done hole by hole. */
export function halving(visit: Visit, draws: number): Stand[] {
  const start = startDeg(visit);
  const stands: Stand[] = [];
  const poses: NeedlePose[] = [];
  while (poses.length < MOST_HOLES && !stands.some((s) => isSure(s, STRICTEST))) {
    poses.push(level(start + HALVING_DEG[poses.length]!));
    stands.push(stand(look(visit, poses, draws)));
  }
  return stands;
}

/** Numbers of holes for which sets are made anew, and those at which gaps halved from one start are such a set. */
const SETS = [1, 2, 3, 4, 5, 6, 8, 10, MOST_HOLES];
const EVEN_BY_HALVING = [1, 2, 4, 8];

/**
 * Equal spacing at its best: for each number of holes a set of its own, as if the number had been known beforehand and
 * the holes made for fewer had never been.
 *
 * @param halved stands of halved gaps from the same start, which for some numbers are the very same sets
 */
export function equallySpaced(visit: Visit, draws: number, halved: readonly Stand[]): Stand[] {
  const start = startDeg(visit);
  const stands: Stand[] = [];
  for (const holes of SETS) {
    if (stands.some((s) => isSure(s, STRICTEST))) break;
    const same = EVEN_BY_HALVING.includes(holes) ? halved[holes - 1] : undefined;
    const poses = () => Array.from({ length: holes }, (_, k) => level(start + (360 * k) / holes));
    stands.push(same ?? stand(look(visit, poses(), draws)));
  }
  return stands;
}

export interface Advised {
  /** To the strictest certainty, whatever the advice to stop. */
  stands: Stand[];
  /** Where it stood when the advice was to stop; null when that did not happen within the most holes. */
  stopped: Stand | null;
}

/** Hole after hole where the advice on the next drilling says, from none on. */
export function advised(visit: Visit, draws: number): Advised {
  const stands: Stand[] = [];
  const poses: NeedlePose[] = [];
  let stopped: Stand | null = null;
  let now = look(visit, poses, draws);
  for (;;) {
    const advice = nextDrilling({
      // What the tree must carry is known here, so the section is all that differs between draws.
      sections: [
        {
          id: 's',
          posterior: now.posterior,
          safetyByDraw: now.safetyByDraw,
          safetyOfSection: now.safetyByDraw,
          drilled: poses,
        },
      ],
      limit: 1,
      needleMm: visit.needleMm,
    });
    if (advice.stop) stopped ??= stand(now);
    const place = advice.stop ? advice.candidates?.[0] : advice;
    if (!place || isSure(now, STRICTEST) || poses.length === MOST_HOLES) return { stands, stopped };
    poses.push(level(place.azimuthDeg, place.offRadialDeg));
    now = look(visit, poses, draws);
    stands.push(stand(now));
  }
}
