/**
 * Ways to drill a section hole by hole, and how sure each is of the decision on the way. All hold their holes against the
 * same field and the same limit; they differ in where they drill.
 */
import { randomFrom } from '../../../packages/engine/src/random.ts';
import { type FieldPosterior, soundnessPosterior } from '../../../packages/engine/src/section/field/index.ts';
import { nextDrilling } from '../../../packages/engine/src/section/next/index.ts';
import type { NeedlePose } from '../../../packages/engine/src/section/types.ts';
import { leastRatio, type Visit } from './visit.ts';

/** No strategy drills more holes than this. */
export const MOST_HOLES = 12;
/** Chance of a wrong decision below which a strategy is sure. */
export const SURE = 0.05;
/** Numbers of equally spaced holes at which every section is looked at, sure or not. */
export const FIXED = [2, 3, 4, 6, 8, 12];

/** Where a section stands: chance that it must be acted on, given the holes made. */
export interface Stand {
  holes: number;
  mustAct: number;
}

export const chanceWrong = ({ mustAct }: Stand) => Math.min(mustAct, 1 - mustAct);
export const isSure = (stand: Stand) => chanceWrong(stand) < SURE;

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

/**
 * Equal spacing at its best: for each number of holes a set of its own, as if the number had been known beforehand and
 * the holes made for fewer had never been. At the numbers of `FIXED`, and at all others until it is sure.
 */
export function equallySpaced(visit: Visit, draws: number): Stand[] {
  const start = startDeg(visit);
  const stands: Stand[] = [];
  for (let holes = 1; holes <= MOST_HOLES; holes++) {
    if (!FIXED.includes(holes) && stands.some(isSure)) continue;
    const poses = Array.from({ length: holes }, (_, k) => level(start + (360 * k) / holes));
    stands.push(stand(look(visit, poses, draws)));
  }
  return stands;
}

/** The order in which gaps are halved: each hole goes to the middle of one of the widest gaps. */
const HALVING_DEG = [0, 180, 90, 270, 45, 225, 135, 315, 22.5, 202.5, 112.5, 292.5];

/** Equal spacing as it can be done hole by hole, until it is sure. */
export function halving(visit: Visit, draws: number): Stand[] {
  const start = startDeg(visit);
  const stands: Stand[] = [];
  const poses: NeedlePose[] = [];
  while (poses.length < MOST_HOLES && !stands.some(isSure)) {
    poses.push(level(start + HALVING_DEG[poses.length]!));
    stands.push(stand(look(visit, poses, draws)));
  }
  return stands;
}

export interface Advised {
  /** Until it is sure, whatever the advice to stop. */
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
    if (!place || isSure(now) || poses.length === MOST_HOLES) return { stands, stopped };
    poses.push(level(place.azimuthDeg, place.offRadialDeg));
    now = look(visit, poses, draws);
    stands.push(stand(now));
  }
}
