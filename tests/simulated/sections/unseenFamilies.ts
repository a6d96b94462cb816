/**
 * A third table of simulated sections, drawn blind: made from what decay in standing stems looks like, by someone who had
 * read nothing of the method that is judged on them, so that neither can have been shaped to the other. They are for
 * judging only: tune nothing on them.
 *
 * The mix is a judgement of what a mixed practice meets, not a count from a survey: over the table about half of the
 * sections are decayed within and closed, a third are open or soft at the surface, and the rest are sound or nearly so.
 * Every parameter is drawn wide, and where a rule has a source the family names it. All figures without one are ours.
 */
import type { Random } from '../../../packages/engine/src/random.ts';
import { cambiumRing } from '../../../packages/engine/src/section/cambium.ts';
import { outlineRadius } from '../../../packages/engine/src/section/outline.ts';
import { selfCrossing, withoutRepeats } from '../../../packages/engine/src/section/ring.ts';
import type { PointMm, RingMm } from '../../../packages/engine/src/section/types.ts';
import {
  at,
  between,
  type Decay,
  type Family,
  ring,
  type Shape,
  type Stem,
  TURN,
  waves,
  whole,
} from './shapes.ts';

/** A radius that passes the bark, in a fold too, where the way through it is longer: as far as an opening is drawn. */
const pastBark = (s: Stem, angle: number) => 1.25 * s.edge(angle) + 2.5 * s.barkMm;
/** No closed region comes nearer to the cambium than this share of the stem's size. */
const LEAST_SKIN = 0.02;

const degrees = (angle: number) => (angle * TURN) / 360;
const chance = (random: Random, share: number) => random.uniform() < share;
/** Drawn evenly on a scale of ratios. */
const ratio = (random: Random, low: number, high: number) =>
  Math.exp(between(random, Math.log(low), Math.log(high)));
/** The turn from one angle to another, in (−π, π]. */
const turnTo = (from: number, to: number) => {
  const turn = (to - from) % TURN;
  return turn > TURN / 2 ? turn - TURN : turn <= -TURN / 2 ? turn + TURN : turn;
};
/** A bump of height 1 at an angle, its half width at 1/e in radians. */
const bump = (angle: number, middle: number, half: number) =>
  Math.exp(-((turnTo(middle, angle) / half) ** 2));
const along = (a: PointMm, b: PointMm, share: number): PointMm => [
  a[0] + share * (b[0] - a[0]),
  a[1] + share * (b[1] - a[1]),
];

/* Outlines. */

/** From nearly round to clearly oval or egg-shaped. */
function oval(random: Random): Shape {
  const flat = between(random, 0, 0.16);
  const egg = between(random, 0, 0.05);
  const axis = TURN * random.uniform();
  const tip = TURN * random.uniform();
  const rough = waves(random, between(random, 0, 0.015), 1.2);
  return (angle) =>
    1 + flat * Math.cos(2 * (angle - axis)) + egg * Math.cos(3 * (angle - tip)) + rough(angle);
}

/** Flutes of unlike depth and spacing, as under the great limbs of an old stem. */
function fluted(random: Random): Shape {
  const base = oval(random);
  const count = whole(random, 2, 7);
  const start = TURN * random.uniform();
  const flutes = Array.from({ length: count }, (_, k) => ({
    middle: start + (TURN * (k + between(random, -0.3, 0.3))) / count,
    half: between(random, 0.12, 0.4),
    depth: between(random, 0.02, 0.16),
  }));
  return (angle) => {
    let share = base(angle);
    for (const { middle, half, depth } of flutes) share *= 1 - depth * bump(angle, middle, half);
    return share;
  };
}

const either = (random: Random): Shape => (chance(random, 0.65) ? oval(random) : fluted(random));

/* The wood in rings and rays. */

/** The stem's wood by growth ring (age 0 at the pith, 1 at the cambium) and ray (radians). */
type Growth = (ray: number, age: number) => PointMm;

/**
 * Growth about a pith that need not lie in the middle, with rings that grow rounder inwards. Decay keeps to rings and
 * rays, since the walls that a tree sets against it do (Shigo & Marx 1977, USDA Agriculture Information Bulletin 405,
 * from memory).
 */
function growth(s: Stem, random: Random, most = 0.4): Growth {
  let least = Infinity;
  for (let k = 0; k < 72; k++) least = Math.min(least, s.edge((TURN * k) / 72));
  const pith = at(TURN * random.uniform(), between(random, 0, most) * least);
  const rounding = ratio(random, 0.4, 3);
  return (ray, age) => {
    const own = Math.min(1, age) ** rounding;
    return along(pith, at(ray, least * (1 - own) + s.edge(ray) * own), age);
  };
}

/** Points between two values, both included. */
const steps = (count: number, from: number, to: number): number[] =>
  Array.from({ length: count + 1 }, (_, k) => from + ((to - from) * k) / count);

/** Round the pith, out to an age by ray. */
const roundPith = (grown: Growth, age: (ray: number) => number): RingMm =>
  ring(180, (ray) => grown(ray, Math.min(0.95, Math.max(0.02, age(ray)))));

/** A point drawn back inside the skin of sound wood, towards the origin. */
function withinSkin(s: Stem, [x, y]: PointMm): PointMm {
  const angle = Math.atan2(x, y);
  const radius = Math.hypot(x, y);
  const most = s.edge(angle) - LEAST_SKIN * s.size;
  return radius <= most ? [x, y] : at(angle, most);
}

/** Draws back what lies within reach of the cambium anywhere but near the opening. */
function openAt(s: Stem, points: readonly PointMm[], sign: number, half: number): PointMm[] {
  return points.map((p) => (Math.abs(turnTo(sign, Math.atan2(p[0], p[1]))) < half ? p : withinSkin(s, p)));
}

/** A lump, blunt or pointed, about a centre; the first half-axis lies at an angle, the second across. */
function lump(
  random: Random,
  centre: PointMm,
  halves: readonly [number, number],
  axis: number,
  sd: number,
): RingMm {
  const power = between(random, 1.7, 2.8);
  const rough = waves(random, sd, 1);
  return ring(84, (turn) => {
    const c = Math.cos(turn);
    const d = Math.sin(turn);
    const r =
      Math.exp(rough(turn)) *
      (Math.abs(c / halves[0]) ** power + Math.abs(d / halves[1]) ** power) ** (-1 / power);
    const [x, y] = at(axis + turn, r);
    return [centre[0] + x, centre[1] + y];
  });
}

/** A strip along a straight axis from one point to another, its half widths (left and right) by the share of the way. */
function tongue(
  from: PointMm,
  to: PointMm,
  half: (share: number, side: -1 | 1) => number,
  count = 40,
): PointMm[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const across: PointMm = [(to[1] - from[1]) / length, (from[0] - to[0]) / length];
  const edge = (side: -1 | 1) =>
    steps(count, 0, 1).map((share): PointMm => {
      const [x, y] = along(from, to, share);
      const w = side * half(share, side);
      return [x + w * across[0], y + w * across[1]];
    });
  return [...edge(1), ...edge(-1).reverse()];
}

/** The widest ring drawn that does not fold over itself, of breadths going down from 1. */
function unfolded(draw: (breadth: number) => RingMm): RingMm {
  for (let breadth = 1; breadth > 0.05; breadth *= 0.8) {
    const drawn = draw(breadth);
    if (!selfCrossing(withoutRepeats(drawn))) return drawn;
  }
  throw new Error('no breadth of this strip is free of folds: draw its axis elsewhere');
}

/* Families. */

/**
 * Heart rot that a ring of barrier holds, uneven between the rays, in some broken through to a younger barrier over a
 * part of the round (walls 2 to 4 of Shigo & Marx 1977).
 */
const heartRot: Decay = (s, random) => {
  const grown = growth(s, random);
  const barrier = between(random, 0.38, 0.9);
  const count = whole(random, 3, 9);
  const walls = Array.from({ length: count }, () => TURN * random.uniform()).sort((a, b) => a - b);
  const falling = between(random, 0, 0.5);
  const held = walls.map(() => (chance(random, 0.6) ? 1 : 1 - falling * random.uniform()));
  const rough = waves(random, between(random, 0, 0.03), 0.8);
  const broken = chance(random, 0.4)
    ? {
        middle: TURN * random.uniform(),
        half: between(random, 0.25, 1.5),
        age: between(random, barrier, 0.94),
      }
    : null;
  return [
    roundPith(grown, (ray) => {
      if (broken && Math.abs(turnTo(broken.middle, ray)) < broken.half) return broken.age;
      const within = walls.filter((wall) => wall <= ray).length % count;
      return barrier * held[within]! * (1 - Math.abs(rough(ray)));
    }),
  ];
};

/** The flattened, sunken face of bark that the sun killed, towards the south to west. */
function scalded(random: Random): Shape {
  const base = oval(random);
  const face = degrees(between(random, 160, 280));
  const sunk = between(random, 0, 0.08);
  const half = between(random, 0.3, 0.9);
  return Object.assign((angle: number) => base(angle) * (1 - sunk * bump(angle, face, half)), {
    signs: [face],
  });
}

/**
 * Sapwood rotting behind bark killed by the sun, on the south-west (Wagner & Kuhns, undated, Utah State University
 * Extension, NR/FF/021; sunken areas, bark sloughed off), its front in fingers along the rays.
 */
const sunscald: Decay = (s, random) => {
  const grown = growth(s, random, 0.25);
  const half = degrees(ratio(random, 14, 75));
  const deep = ratio(random, 0.07, 0.5);
  const blunt = between(random, 0.25, 1);
  const rough = waves(random, between(random, 0.1, 0.4), 0.6);
  const fingers = Array.from({ length: whole(random, 2, 12) }, () => ({
    at: between(random, -0.9, 0.9),
    half: between(random, 0.02, 0.09),
    more: between(random, 0.1, 0.9),
  }));
  const age = (u: number) => {
    let depth = deep * (1 - u * u) ** blunt * Math.exp(rough(u * 3));
    for (const f of fingers) depth *= 1 + f.more * Math.max(0, 1 - Math.abs(u - f.at) / f.half);
    return 1 - Math.min(0.75, depth);
  };
  const face = s.signs[0]! + between(random, -0.15, 0.15);
  const inner = steps(140, -1, 1).map((u) => grown(face + u * half, age(u)));
  const outer = steps(40, 1, -1).map((u) => at(face + u * half, pastBark(s, face + u * half)));
  const pockets = Array.from({ length: chance(random, 0.3) ? whole(random, 1, 3) : 0 }, () => {
    const u = between(random, -0.8, 0.8);
    const halves = [ratio(random, 0.02, 0.08) * s.size, ratio(random, 0.015, 0.05) * s.size] as const;
    const centre = grown(face + u * half, Math.max(0.15, age(u) - between(random, 0.05, 0.25)));
    return lump(random, centre, halves, face, 0.1);
  });
  return [[...inner, ...outer], ...pockets];
};

/** One furrow, seldom two, in some between ribs of woundwood. */
function struck(random: Random): Shape {
  const base = either(random);
  const first = TURN * random.uniform();
  const signs = chance(random, 0.2) ? [first, first + between(random, 0.9, 5.3)] : [first];
  const furrow = between(random, 0, 0.07);
  const rib = between(random, 0, 0.05);
  const half = between(random, 0.1, 0.22);
  return Object.assign(
    (angle: number) => {
      let share = base(angle);
      for (const sign of signs) {
        share *= 1 - furrow * bump(angle, sign, half);
        share *= 1 + rib * (bump(angle, sign - 2 * half, half) + bump(angle, sign + 2 * half, half));
      }
      return share;
    },
    { signs },
  );
}

/**
 * A strip torn off by lightning: 2 to 10 inches wide and shallow (Taylor 1969, USDA Forest Service Research Note
 * INT-90), with or without a shake along a ray, or decay behind it between the rays (wall 3).
 */
const lightning: Decay = (s, random) =>
  s.signs.flatMap((sign) => {
    const half = Math.min(degrees(35), ratio(random, 25, 125) / s.size);
    const shallow = Math.min(0.15, ratio(random, 6, 45) / s.size);
    const rough = waves(random, 0.25, 0.7);
    const rotten = chance(random, 0.88);
    const depth = rotten ? ratio(random, 0.2, 0.8) : 0;
    const narrowing = between(random, 0, 0.5);
    const blunt = between(random, 0.3, 1.2);
    const grown = growth(s, random, 0.2);
    const inner = steps(60, -1, 1).map((u) => {
      const share = Math.max(0, 1 - (u / 0.96) ** 2) ** blunt;
      const age = 1 - Math.min(0.85, Math.max(shallow, depth * share) * Math.exp(rough(3 * u)));
      return grown(sign + u * half * (1 - narrowing * share), age);
    });
    const outer = steps(16, 1, -1).map((u) => at(sign + u * half, pastBark(s, sign + u * half)));
    const strip: RingMm = [...inner, ...outer];
    if (!chance(random, 0.5)) return [strip];
    const gape = between(random, 1, 5);
    const bend = between(random, -0.2, 0.2);
    const tip = grown(sign + bend, between(random, 0.1, 0.8));
    return [strip, tongue(at(sign, pastBark(s, sign)), tip, (share) => gape * (1.05 - share), 12)];
  });

/** The groove that a wound leaves, between rolls of woundwood. */
function scarred(random: Random): Shape {
  const base = either(random);
  const sign = TURN * random.uniform();
  const groove = between(random, 0.02, 0.2);
  const half = between(random, 0.12, 0.35);
  const rolls = [between(random, 0, 0.11), between(random, 0, 0.11)] as const;
  const apart = between(random, 1.7, 2.4) * half;
  return Object.assign(
    (angle: number) =>
      base(angle) *
      (1 -
        groove * bump(angle, sign, half) +
        rolls[0] * bump(angle, sign - apart, half) +
        rolls[1] * bump(angle, sign + apart, half)),
    { signs: [sign] },
  );
}

/**
 * A wound down to the wood of its year, as fire makes at the foot, that rolls of new wood close over from both sides:
 * gaping, a slit, or shut; rot behind the face keeps to the wood of before the wound and between reaction zones at
 * its sides (Smith & Sutherland 1999, Can. J. For. Res. 29: 166; Smith et al. 2016, Can. J. For. Res. 46: 535).
 */
const closingScar: Decay = (s, random) => {
  const grown = growth(s, random, 0.25);
  const sign = s.signs[0]!;
  const face = between(random, 0.5, 0.93);
  const tip = between(random, 0.08, face - 0.08);
  const halves = [degrees(ratio(random, 12, 60)), degrees(ratio(random, 12, 60))] as const;
  const behind = between(random, 0.35, 1.1);
  const curl = ratio(random, 0.5, 3);
  const shut = chance(random, 0.25);
  const mouth = shut ? 0 : ratio(random, 0.04, 0.8);
  const last = shut ? face + between(random, 0.2, 0.9) * (0.96 - face) : 1;
  const rough = [waves(random, 0.12, 0.7), waves(random, 0.12, 0.7)] as const;
  const half = (age: number, side: 0 | 1) => {
    const full = halves[side] * Math.exp(rough[side](3 * age));
    if (age < face) return full * Math.max(0, (age - tip) / (face - tip)) ** (behind * 0.7);
    const rolled = (1 - (age - face) / (last - face)) ** curl;
    return full * (mouth + (1 - mouth) * rolled);
  };
  const ages = [...steps(28, tip, face), ...steps(24, face, last).slice(1)];
  const left = ages.map((age) => grown(sign - half(age, 0), age));
  const right = ages.map((age) => grown(sign + half(age, 1), age)).reverse();
  const open = shut ? [] : [-half(1, 0), half(1, 1)].map((turn) => at(sign + turn, pastBark(s, sign + turn)));
  const scar: RingMm = [...left, ...open, ...right];
  if (!chance(random, 0.35)) return [scar];
  const reach = between(random, tip, Math.max(tip, face - 0.05));
  const uneven = waves(random, 0.1, 1);
  return [scar, roundPith(grown, (ray) => Math.min(face, reach * (1 + uneven(ray))))];
};

/** One to three collars where branches were. */
function pruned(random: Random): Shape {
  const base = either(random);
  const count = [1, 1, 1, 2, 3][whole(random, 0, 4)]!;
  const start = TURN * random.uniform();
  const signs = Array.from(
    { length: count },
    (_, k) => start + (TURN * (k + between(random, -0.3, 0.3))) / count,
  );
  const collar = between(random, 0, 0.1);
  const half = between(random, 0.15, 0.4);
  return Object.assign(
    (angle: number) => {
      let share = base(angle);
      for (const sign of signs) share *= 1 + collar * bump(angle, sign, half);
      return share;
    },
    { signs },
  );
}

/**
 * Pear-shaped decay from the stubs of branches inwards, the neck as wide as the branch was and still open, or closed
 * over by woundwood. Thick branches let in more (Eisner, Gilman & Grabosky 2002, J. Arboriculture 28: 99).
 */
const branchStubs: Decay = (s, random) => {
  const closes = chance(random, 0.5);
  return s.signs.map((sign) => {
    const branch = ratio(random, 0.1, 0.5);
    const neck = (branch * s.size) / 2;
    const bulb = neck * between(random, 0.8, 2.6);
    const where = between(random, 0.7, 2.2);
    const closed = closes || chance(random, 0.25);
    const skin = between(random, 0.03, 0.3);
    const from = at(sign, closed ? s.edge(sign) * (1 - skin) : pastBark(s, sign));
    const to = at(sign + between(random, -0.6, 0.6), between(random, -0.25, 0.5) * s.size * (1 - branch));
    const rough = [waves(random, 0.08, 0.8), waves(random, 0.08, 0.8)] as const;
    const half = (share: number, side: -1 | 1) => {
      const body = neck * (1 - share) ** 0.6 + (bulb - neck / 2) * Math.sin((TURN / 2) * share ** where);
      const ends = Math.min(1, (1 - share) / 0.2) ** 0.5 * (closed ? Math.min(1, share / 0.15) ** 0.5 : 1);
      return Math.min(0.55 * s.size, Math.max(0, body)) * ends * Math.exp(rough[side < 0 ? 0 : 1](3 * share));
    };
    return unfolded((breadth) => {
      const pear = tongue(from, to, (share, side) => breadth * half(share, side));
      return openAt(s, pear, sign, closed ? 0 : 0.9);
    });
  });
};

/** Two stems grown together: the outline of two rounds, its necks filled to some degree. The signs are the necks. */
function twin(random: Random): Shape {
  const axis = TURN * random.uniform();
  const small = between(random, 0.55, 1);
  // Centres apart by a share of the sum of the radii; below about a half there is hardly a neck.
  const apart = between(random, 0.55, 0.9) * (1 + small);
  // The origin lies where the rounds' common chord crosses the line of centres.
  const big = (apart * apart + 1 - small * small) / (2 * apart);
  const shape = [
    { along: big, radius: 1 },
    { along: big - apart, radius: small },
  ];
  const filled = ratio(random, 6, 40);
  const size = 1.9 / (1 + small + apart);
  const rough = waves(random, between(random, 0, 0.012), 1.2);
  const reach = (angle: number) => {
    let sum = 0;
    for (const { along: a, radius } of shape) {
      const c = a * Math.cos(angle - axis);
      sum += (c + Math.sqrt(Math.max(0, radius * radius - a * a + c * c))) ** filled;
    }
    return sum ** (1 / filled);
  };
  return Object.assign((angle: number) => size * reach(angle) * (1 + rough(angle)), {
    signs: [axis + TURN / 4, axis - TURN / 4],
  });
}

/**
 * Bark shut in between two stems and rot at their union. The seam may be buried by later wood or still gape at one
 * neck (the degrees of occlusion of Slater & Ennos 2015, Arboriculture & Urban Forestry 41: 194).
 */
const union: Decay = (s, random) => {
  const gapes = chance(random, 0.32);
  const [neck, far] = chance(random, 0.5) ? [s.signs[0]!, s.signs[1]!] : [s.signs[1]!, s.signs[0]!];
  const outer = gapes ? 1 : between(random, 0.3, 0.93);
  const inner = between(random, -0.3, 0.75);
  const from = at(neck, gapes ? pastBark(s, neck) : outer * s.edge(neck));
  const to = at(far, inner * s.edge(far));
  const thick = between(random, 1.5, 12);
  const crooked = waves(random, 0.3, 0.6);
  const seam = tongue(
    from,
    to,
    (share, side) => thick * (1.02 - share ** 4) * Math.exp(crooked(2 * share + side)),
  );
  const voids: RingMm[] = [openAt(s, seam, neck, gapes ? 0.5 : 0)];
  if (chance(random, 0.93)) {
    const open = gapes && chance(random, 0.5);
    const start = open ? pastBark(s, neck) : Math.min(0.88, outer) * between(random, 0.6, 1) * s.edge(neck);
    const end = between(random, -0.2, 0.75);
    const widest = ratio(random, 0.17, 0.5) * s.size;
    const lean = between(random, 0.4, 1.6);
    const place = between(random, 0.7, 1.8);
    const rough = [waves(random, 0.12, 0.8), waves(random, 0.12, 0.8)] as const;
    const half = (share: number, side: -1 | 1) => {
      const swell = Math.sin((TURN / 2) * share ** place) ** 0.7;
      const gap = open ? 0.5 * thick * (1 - share) : 0;
      return (
        (gap + widest * swell * (side < 0 ? lean : 2 - lean)) * Math.exp(rough[side < 0 ? 0 : 1](3 * share))
      );
    };
    voids.push(
      unfolded((breadth) => {
        const rot = tongue(
          at(neck, start),
          at(far, end * s.edge(far)),
          (share, side) => breadth * half(share, side),
        );
        return openAt(s, rot, neck, open ? 0.25 : 0);
      }),
    );
  }
  if (chance(random, 0.45)) {
    // A heart rot of its own in one of the two stems.
    const other = neck + TURN / 4 + (chance(random, 0.5) ? TURN / 2 : 0);
    const centre = at(other, between(random, 0.35, 0.55) * s.edge(other));
    const half = ratio(random, 0.1, 0.34) * s.edge(other);
    voids.push(
      lump(random, centre, [half, half * between(random, 0.7, 1)], other, 0.12).map((p) => withinSkin(s, p)),
    );
  }
  return voids;
};

/** The foot of a stem: three to seven root flares, unlike in reach, breadth and spacing. The signs are the flares. */
function buttressed(random: Random): Shape {
  const base = oval(random);
  const count = whole(random, 3, 7);
  const start = TURN * random.uniform();
  const most = between(random, 0.12, 0.5);
  const flares = Array.from({ length: count }, (_, k) => ({
    middle: start + (TURN * (k + between(random, -0.22, 0.22))) / count,
    half: between(random, 0.2, 0.42) * Math.min(1, 5 / count),
    reach: most * between(random, 0.3, 1),
  }));
  return Object.assign(
    (angle: number) => {
      let share = 0.88 * base(angle);
      for (const { middle, half, reach } of flares) share += reach * bump(angle, middle, half);
      return share;
    },
    { signs: flares.map(({ middle }) => middle) },
  );
}

/**
 * Butt rot that came up from one or two of the roots: through the flare towards the heart, inside a shell, or with the
 * flare dead at its tip. The other flares are sound.
 */
const buttressRot: Decay = (s, random) => {
  const first = whole(random, 0, s.signs.length - 1);
  const roots = [first];
  if (chance(random, 0.45)) roots.push((first + whole(random, 1, s.signs.length - 1)) % s.signs.length);
  const dead = chance(random, 0.28);
  const voids: RingMm[] = roots.map((root, k) => {
    const sign = s.signs[root]!;
    const open = dead && k === 0;
    const tip = open ? pastBark(s, sign) : between(random, 0.55, 0.94) * s.edge(sign);
    const end = at(sign + between(random, -0.5, 0.5), between(random, -0.15, 0.55) * s.size);
    const flare = ratio(random, 0.09, 0.26) * s.size;
    const heart = flare * between(random, 0.6, 2);
    const rough = [waves(random, 0.12, 0.8), waves(random, 0.12, 0.8)] as const;
    const half = (share: number, side: -1 | 1) => {
      const ends = Math.min(1, (1 - share) / 0.3) ** 0.5 * (open ? 1 : Math.min(1, share / 0.25) ** 0.5);
      return (flare + (heart - flare) * share) * ends * Math.exp(rough[side < 0 ? 0 : 1](3 * share));
    };
    return unfolded((breadth) => {
      const rot = tongue(at(sign, tip), end, (share, side) => breadth * half(share, side));
      return openAt(s, rot, sign, open ? 0.3 : 0);
    });
  });
  if (chance(random, 0.5)) {
    const sign = s.signs[first]!;
    const centre = at(sign, between(random, 0, 0.35) * s.size);
    const half = ratio(random, 0.12, 0.5) * s.size;
    voids.push(
      lump(random, centre, [half, half * between(random, 0.6, 1)], sign, 0.15).map((p) => withinSkin(s, p)),
    );
  }
  return voids;
};

/**
 * Many small pockets through the heart: spindles of a white pocket rot, in a ring in section (red ring rot: USDA Forest
 * Service, Southwestern Region, Field Guide to Insects and Diseases), or galleries that ants cut along the soft early
 * wood of the rings.
 */
const heartPockets: Decay = (s, random) => {
  const grown = growth(s, random);
  const outer = between(random, 0.45, 0.9);
  const inner = chance(random, 0.4) ? outer * between(random, 0.3, 0.8) : 0;
  const count = whole(random, 14, 48);
  const galleries = between(random, 0, 1);
  const size = ratio(random, 0.04, 0.09) * s.size;
  const side = TURN * random.uniform();
  const half = chance(random, 0.5) ? TURN / 2 : between(random, 0.8, 2.2);
  const kept: { centre: PointMm; reach: number }[] = [];
  const voids: RingMm[] = [];
  for (let tries = 0; voids.length < count && tries < 6 * count; tries++) {
    const ray = side + half * between(random, -1, 1);
    const age = Math.max(0.06, Math.sqrt(inner * inner + (outer * outer - inner * inner) * random.uniform()));
    const gallery = chance(random, galleries);
    const thick = size * ratio(random, 0.4, 1.6) * (gallery ? 0.6 : 1);
    const long = thick * (gallery ? between(random, 2, 6) : between(random, 0.8, 1.8));
    const centre = grown(ray, age);
    const reach = Math.max(thick, long);
    // Pockets keep apart; what would run together is drawn again.
    const apart = ({ centre: c, reach: r }: { centre: PointMm; reach: number }) =>
      Math.hypot(c[0] - centre[0], c[1] - centre[1]) > 0.8 * (r + reach);
    if (!kept.every(apart)) continue;
    kept.push({ centre, reach });
    const [deep, wide] = [thick / s.size, Math.min(0.9, long / (age * s.size))];
    const rough = waves(random, 0.1, 0.8);
    voids.push(
      ring(28, (turn) => {
        const r = Math.exp(rough(turn));
        const a = Math.min(0.95, Math.max(0.01, age + r * deep * Math.cos(turn)));
        return grown(ray + r * wide * Math.sin(turn), a);
      }),
    );
  }
  return voids;
};

/**
 * An old hollow, closed: with a thin wall of very even thickness, or a less even one, in some with ribs that stand
 * into it or bridges of sound wood left between chambers.
 */
const oldHollow: Decay = (s, random) => {
  const wall = ratio(random, 0.06, 0.4) * s.size;
  const uneven = chance(random, 0.45) ? between(random, 0, 0.03) : between(random, 0.03, 0.25);
  const cleared = outlineRadius(cambiumRing(s.wood, wall));
  const rough = waves(random, uneven, 1);
  const reach = (angle: number) =>
    Math.max(
      0.08 * s.size,
      Math.min(
        s.edge(angle) - 0.35 * wall,
        cleared(((((angle * 360) / TURN) % 360) + 360) % 360) - wall * rough(angle),
      ),
    );
  const kind = random.uniform();
  const bare = [ring(180, (angle) => at(angle, reach(angle)))];
  if (kind < 0.4) return bare;
  const thick = ratio(random, 0.05, 0.22) * s.size;
  const start = TURN * random.uniform();
  if (kind < 0.65) {
    const ribs = Array.from({ length: whole(random, 1, 3) }, (_, k) => ({
      middle: start + k * between(random, 1.2, 2.6),
      length: between(random, 0.2, 0.8),
    }));
    const inside = (angle: number) => {
      let share = 1;
      for (const { middle, length } of ribs) {
        const off = Math.abs(turnTo(middle, angle)) / (thick / s.size);
        share = Math.min(share, 1 - length * Math.exp(-(off ** 4)));
      }
      return share * reach(angle);
    };
    return [ring(240, (angle) => at(angle, inside(angle)))];
  }
  const count = [2, 2, 2, 3, 4][whole(random, 0, 4)]!;
  const bridges = Array.from(
    { length: count },
    (_, k) => start + (TURN * (k + between(random, -0.2, 0.2))) / count,
  );
  const chambers = bridges.flatMap((bridge, k) => {
    const next = k + 1 < count ? bridges[k + 1]! : bridges[0]! + TURN;
    const taper = between(random, 0.7, 1.3);
    const from = bridge + Math.asin(Math.min(0.7, (taper * thick) / 2 / reach(bridge)));
    const to = next - Math.asin(Math.min(0.7, (taper * thick) / 2 / reach(next)));
    const middle = (bridge + next) / 2;
    const apex = thick / 2 / Math.sin((next - bridge) / 2);
    if (to - from < 0.15 || apex > 0.8 * reach(middle)) return [];
    // Corners between wall and bridge are rounded, as decay leaves them.
    const corner = Math.min(0.2, 0.2 * (to - from));
    const arc = steps(70, from, to).map((angle) => {
      const near = Math.min(1, Math.min(angle - from, to - angle) / corner);
      return at(angle, reach(angle) * (0.86 + 0.14 * Math.sqrt(near * (2 - near))));
    });
    return [[at(middle, apex), ...arc]];
  });
  // Bridges as thick as the hollow is wide leave none.
  return chambers.length > 0 ? chambers : bare;
};

/** Sound or nearly: nothing, or one or two small closed pockets near the cambium. */
const nearlySound: Decay = (s, random) => {
  const count = [0, 1, 1, 1, 2][whole(random, 0, 4)]!;
  return Array.from({ length: count }, () => {
    const angle = TURN * random.uniform();
    const deep = ratio(random, 0.015, 0.07) * s.size;
    const wide = deep * between(random, 0.7, 2.4);
    const centre = at(angle, s.edge(angle) - deep * 1.3 - between(random, LEAST_SKIN, 0.12) * s.size);
    return lump(random, centre, [deep, wide], angle, 0.12).map((p) => withinSkin(s, p));
  });
};

/** The third table: ten families, for judging only. */
export const UNSEEN_FAMILIES: Record<string, Family> = {
  'heart rot behind a barrier': { stem: either, decay: heartRot },
  'sapwood after sunscald': { stem: scalded, decay: sunscald },
  'lightning strip': { stem: struck, decay: lightning },
  'scar closing over': { stem: scarred, decay: closingScar },
  'branch stubs': { stem: pruned, decay: branchStubs },
  'union of two stems': { stem: twin, decay: union },
  'rot in a buttress': { stem: buttressed, decay: buttressRot },
  'many heart pockets': { stem: either, decay: heartPockets },
  'old hollow': { stem: either, decay: oldHollow },
  'nearly sound': { stem: either, decay: nearlySound },
};
