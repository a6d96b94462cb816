/**
 * Simulated sections whose soundness is known exactly: an outline, and the regions without strength as polygons.
 * Families for tuning and families for judging are made by different rules, so that what is judged was not learned; a
 * third table, for judging too, was drawn blind (unseenFamilies.ts).
 */
import { type Random, randomFrom } from '../../../packages/engine/src/random.ts';
import { ringModulusByDirection } from '../../../packages/engine/src/section/capacity.ts';
import type { PointMm, RingMm } from '../../../packages/engine/src/section/types.ts';
import { at, between, type Decay, type Family, ring, type Stem, stem, TURN, waves, whole } from './shapes.ts';
import { UNSEEN_FAMILIES } from './unseenFamilies.ts';

export interface TrueSection {
  family: string;
  /** True outline over bark and bark thickness. */
  outline: RingMm;
  barkMm: number;
  wood: RingMm;
  /** Regions without strength; one that opens to the outside reaches past the bark. */
  voids: RingMm[];
  /** Whether each region is still filled with decayed wood (else it is empty). */
  filled: boolean[];
  /** Capacity over that of the wood all sound, 36 directions. */
  remaining: Float64Array;
}

function roundish(random: Random): (angle: number) => number {
  const oval = between(random, 0, 0.1);
  const axis = TURN * random.uniform();
  const rough = waves(random, between(random, 0, 0.02), 1.5);
  return (angle) => 1 + oval * Math.cos(2 * (angle - axis)) + rough(angle);
}

function lobed(random: Random): (angle: number) => number {
  const lobes = whole(random, 3, 7);
  const start = TURN * random.uniform();
  const depth = between(random, 0.04, 0.14);
  const rough = waves(random, 0.02, 1);
  return (angle) => 1 + depth * Math.cos(lobes * (angle - start)) + rough(angle);
}

/** A closed blob about a point given by angle and radius. */
function blob(
  random: Random,
  centre: PointMm,
  radiusMm: number,
  roughness: number,
  stretch = 1,
  axis = 0,
): RingMm {
  const rough = waves(random, roughness, 1.2);
  return ring(96, (angle) => {
    const r = radiusMm * Math.max(0.15, 1 + rough(angle));
    const along = r * Math.cos(angle) * stretch;
    const across = (r * Math.sin(angle)) / stretch;
    return [
      centre[0] + along * Math.sin(axis) + across * Math.cos(axis),
      centre[1] + along * Math.cos(axis) - across * Math.sin(axis),
    ];
  });
}

/** Part of the wood between two angles and from a relative depth outwards past the bark. */
function sector(
  stemOf: Stem,
  from: number,
  to: number,
  inner: (share: number) => number,
  outer = 1.5,
): RingMm {
  const points: PointMm[] = [];
  const steps = Math.max(8, Math.ceil(((to - from) / TURN) * 120));
  for (let k = 0; k <= steps; k++) {
    const angle = from + ((to - from) * k) / steps;
    points.push(at(angle, stemOf.edge(angle) * outer));
  }
  for (let k = steps; k >= 0; k--) {
    const angle = from + ((to - from) * k) / steps;
    points.push(at(angle, stemOf.edge(angle) * inner(k / steps)));
  }
  return points;
}

const following = (s: Stem, share: (angle: number) => number): RingMm =>
  ring(144, (angle) => at(angle, s.edge(angle) * share(angle)));

const nothing: Decay = () => [];

const concentric: Decay = (s, random) => {
  const k = between(random, 0.15, 0.92);
  const rough = waves(random, between(random, 0, 0.06), 1.2);
  return [following(s, (angle) => Math.min(0.97, Math.max(0.03, k * (1 + rough(angle)))))];
};

const offCentre: Decay = (s, random) => {
  const k = between(random, 0.2, 0.75);
  const shift = between(random, 0.05, 0.97 - k) * s.size;
  const centre = at(TURN * random.uniform(), shift);
  const stretch = Math.exp(between(random, 0, 0.25));
  return [blob(random, centre, k * s.size, 0.03, stretch, TURN * random.uniform())];
};

const irregular: Decay = (s, random) => {
  const k = between(random, 0.25, 0.7);
  const centre = at(TURN * random.uniform(), between(random, 0, 0.2) * s.size);
  return [
    blob(
      random,
      centre,
      k * s.size,
      between(random, 0.1, 0.25),
      Math.exp(between(random, 0, 0.3)),
      TURN * random.uniform(),
    ),
  ];
};

const openCavity: Decay = (s, random) => {
  const k = between(random, 0.3, 0.85);
  const width = (between(random, 2.5, 11) ** 2 * TURN) / 360;
  const middle = TURN * random.uniform();
  const rough = waves(random, 0.05, 1.2);
  return [
    following(s, (angle) => Math.min(0.95, k * (1 + rough(angle)))),
    sector(s, middle - width / 2, middle + width / 2, () => k * 0.6),
  ];
};

const pockets: Decay = (s, random) => {
  const count = whole(random, 2, 5);
  return Array.from({ length: count }, () => {
    const radius = between(random, 0.08, 0.28);
    const centre = at(TURN * random.uniform(), Math.sqrt(random.uniform()) * (0.95 - radius) * s.size);
    return blob(
      random,
      centre,
      radius * s.size,
      0.1,
      Math.exp(between(random, -0.4, 0.4)),
      TURN * random.uniform(),
    );
  });
};

const sapwood: Decay = (s, random) => {
  const width = (between(random, 3.5, 12.2) ** 2 * TURN) / 360;
  const middle = TURN * random.uniform();
  const deep = between(random, 0.1, 0.55);
  const rough = waves(random, 0.2, 1);
  return [
    sector(s, middle - width / 2, middle + width / 2, (share) => {
      const rounded = Math.min(1, 4 * Math.min(share, 1 - share) + 0.25);
      return 1 - deep * rounded * (1 + 0.5 * rough(share * TURN));
    }),
  ];
};

/* Judging: other rules of making. */

const crescent: Decay = (s, random) => {
  const k = between(random, 0.4, 0.8);
  const facing = TURN * random.uniform();
  const half = between(random, 0.5, 1.4);
  const thick = between(random, 0.25, 0.6);
  const points: PointMm[] = [];
  for (let i = 0; i <= 40; i++) {
    const u = -1 + i / 20;
    points.push(at(facing + u * half, k * s.size));
  }
  for (let i = 40; i >= 0; i--) {
    const u = -1 + i / 20;
    points.push(at(facing + u * half, k * s.size * (1 - thick * Math.sqrt(Math.max(0, 1 - u * u)))));
  }
  return [points];
};

const squarish: Decay = (s, random) => {
  const turn = TURN * random.uniform();
  const power = between(random, 3, 8);
  const a = between(random, 0.2, 0.7) * s.size;
  const b = a * between(random, 0.55, 1);
  const shift = at(TURN * random.uniform(), between(random, 0, 0.2) * s.size);
  return [
    ring(120, (angle) => {
      const c = Math.cos(angle - turn);
      const d = Math.sin(angle - turn);
      const r = (Math.abs(c / a) ** power + Math.abs(d / b) ** power) ** (-1 / power);
      const [x, y] = at(angle, r);
      return [x + shift[0], y + shift[1]];
    }),
  ];
};

const starred: Decay = (s, random) => {
  const arms = whole(random, 3, 6);
  const start = TURN * random.uniform();
  const k = between(random, 0.25, 0.6);
  const reach = between(random, 0.15, 0.45);
  return [
    following(s, (angle) =>
      Math.min(0.96, k * (1 + reach * Math.cos(arms * (angle - start)) + 0.1 * Math.cos(angle))),
    ),
  ];
};

const scarWedge: Decay = (s, random) => {
  const middle = TURN * random.uniform();
  const width = (between(random, 20, 110) * TURN) / 360;
  const tip = at(middle + between(random, -0.5, 0.5), between(random, -0.2, 0.7) * s.size);
  const points: PointMm[] = [tip];
  for (let i = 0; i <= 30; i++) {
    const angle = middle + width * (i / 30 - 0.5);
    points.push(at(angle, 1.4 * s.edge(angle)));
  }
  return [points];
};

const clustered: Decay = (s, random) => {
  const middle = TURN * random.uniform();
  const away = between(random, 0.2, 0.6);
  return Array.from({ length: whole(random, 2, 4) }, () => {
    const radius = between(random, 0.1, 0.25);
    const angle = middle + between(random, -0.9, 0.9);
    const centre = at(angle, Math.min(0.93 - radius, away + between(random, -0.15, 0.25)) * s.size);
    const n = whole(random, 5, 9);
    const turn = TURN * random.uniform();
    return ring(n, (a) => {
      const p = at(a + turn, radius * s.size);
      return [centre[0] + p[0], centre[1] + p[1]];
    });
  });
};

const twoSides: Decay = (s, random) => {
  const first = TURN * random.uniform();
  const second = first + between(random, 1.8, 4.4);
  return [first, second].map((middle) => {
    const width = (between(random, 25, 80) * TURN) / 360;
    const deep = between(random, 0.12, 0.45);
    const slope = between(random, -0.3, 0.3);
    return sector(
      s,
      middle - width / 2,
      middle + width / 2,
      (share) => 1 - deep * (1 + slope * (2 * share - 1)),
    );
  });
};

const keyhole: Decay = (s, random) => {
  const middle = TURN * random.uniform();
  const k = between(random, 0.25, 0.65);
  const shift = at(middle, between(random, 0, 0.25) * s.size);
  const mouth = between(random, 0.1, 0.5) * s.size;
  const wide = mouth * between(random, 1, 2.2);
  const away: PointMm = [Math.sin(middle), Math.cos(middle)];
  const side: PointMm = [Math.cos(middle), -Math.sin(middle)];
  const place = (along: number, across: number): PointMm => [
    away[0] * along + side[0] * across,
    away[1] * along + side[1] * across,
  ];
  const far = 1.4 * s.edge(middle);
  return [
    ring(90, (a) => {
      const p = at(a, k * s.size);
      return [p[0] + shift[0], p[1] + shift[1]];
    }),
    [place(0, -mouth / 2), place(0, mouth / 2), place(far, wide / 2), place(far, -wide / 2)],
  ];
};

const shelled: Decay = (s, random) => {
  // Decay between a sound core and a sound wall, over a part of the round.
  const outer = between(random, 0.5, 0.85);
  const inner = outer - between(random, 0.12, 0.3);
  const half = between(random, 1, 2.8);
  const middle = TURN * random.uniform();
  return [sector(s, middle - half, middle + half, () => inner, outer)];
};

const hollowAndPocket: Decay = (s, random) => {
  const k = between(random, 0.2, 0.5);
  const angle = TURN * random.uniform();
  const hollow = blob(random, at(angle, between(random, 0, 0.3) * s.size), k * s.size, 0.08);
  const small = between(random, 0.07, 0.16);
  const pocket = blob(
    random,
    at(angle + between(random, 1, 5), between(random, 0.55, 0.92 - small) * s.size),
    small * s.size,
    0.1,
    1.4,
    TURN * random.uniform(),
  );
  return [hollow, pocket];
};

export const TUNING_FAMILIES: Record<string, Family> = {
  sound: { stem: roundish, decay: nothing },
  concentric: { stem: roundish, decay: concentric },
  'off-centre': { stem: roundish, decay: offCentre },
  irregular: { stem: roundish, decay: irregular },
  'open cavity': { stem: roundish, decay: openCavity },
  pockets: { stem: roundish, decay: pockets },
  'sapwood sector': { stem: roundish, decay: sapwood },
  'lobed, hollow': { stem: lobed, decay: concentric },
  'lobed, off-centre': { stem: lobed, decay: offCentre },
};

export const JUDGING_FAMILIES: Record<string, Family> = {
  crescent: { stem: roundish, decay: crescent },
  squarish: { stem: roundish, decay: squarish },
  'star-shaped': { stem: roundish, decay: starred },
  'scar wedge': { stem: roundish, decay: scarWedge },
  'clustered pockets': { stem: roundish, decay: clustered },
  'two sides': { stem: roundish, decay: twoSides },
  keyhole: { stem: roundish, decay: keyhole },
  'sound core': { stem: roundish, decay: shelled },
  'lobed, hollow and pocket': { stem: lobed, decay: hollowAndPocket },
};

/** Makes a section of a family, of any of the three tables. Sections that keep less than a tenth of their strength are redrawn. */
export function trueSection(family: string, seed: number): TrueSection {
  const made = TUNING_FAMILIES[family] ?? JUDGING_FAMILIES[family] ?? UNSEEN_FAMILIES[family];
  if (!made) throw new Error(`unknown family: ${family}`);
  const random = randomFrom(seed).fork(family);
  for (;;) {
    const s = stem(random, made.stem(random));
    const voids = made.decay(s, random);
    const intact = ringModulusByDirection(s.wood);
    const left = ringModulusByDirection(s.wood, voids);
    const remaining = left.map((z, d) => z / intact[d]!);
    if (remaining.every((r) => r > 0.1 && Number.isFinite(r))) {
      const filled = voids.map(() => random.uniform() < 0.5);
      return { family, outline: s.outline, barkMm: s.barkMm, wood: s.wood, voids, filled, remaining };
    }
  }
}
