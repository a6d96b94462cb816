/**
 * Families of simulated traces: what the drill, the tree and its wood are like (setting) and what the needle meets
 * (layout). Numbers were set on the tuning families; the figures are told on
 * the judging families and other seeds (docs/accuracy/traces.md says how far these were kept apart).
 */
import { type Random, randomFrom } from '../../../packages/engine/src/random.ts';
import {
  type SimulatedTrace,
  type SimulateTraceOptions,
  simulateTrace,
  type TraceFeature,
  type TraceStretch,
} from './simulateTrace.ts';

export type Setting = Omit<SimulateTraceOptions, 'stretches' | 'seed'> & {
  barkMm: number;
  leadAirMm: number;
};

export interface Family {
  name: string;
  about: string;
  setting: (random: Random) => Setting;
}

const between = (random: Random, a: number, b: number) => a + (b - a) * random.uniform();
const pick = <T>(random: Random, from: readonly T[]): T =>
  from[Math.min(from.length - 1, Math.floor(random.uniform() * from.length))]!;

function base(random: Random): Setting {
  return {
    soundLevelPct: between(random, 25, 70),
    zeroPct: between(random, 0, 4),
    frictionPctPerMm: between(random, 0.005, 0.05),
    frictionOnsetPct: between(random, 0, 3),
    rings: 'diffuse',
    ringMm: between(random, 1.5, 5),
    trendShare: between(random, -0.1, 0.1),
    barkShare: between(random, 0.08, 0.3),
    noiseSdPct: between(random, 0.5, 2.5),
    wanderShare: between(random, 0.02, 0.06),
    wanderMm: between(random, 2, 10),
    tipMm: between(random, 0.8, 2),
    spacingMm: pick(random, [0.02, 0.05, 0.1, 0.1, 0.25, 0.5]),
    unevenness: 0,
    barkMm: between(random, 5, 30),
    leadAirMm: random.uniform() < 0.4 ? between(random, 2, 20) : 0,
  };
}

export const TUNING_FAMILIES: Family[] = [
  { name: 'diffuse-porous', about: 'hardly any rings, moderate friction', setting: base },
  {
    name: 'ring-porous',
    about: 'deep earlywood minima, rings 1.5 to 6 mm',
    setting: (r) => ({ ...base(r), rings: 'ring-porous', ringMm: between(r, 1.5, 6) }),
  },
  {
    name: 'conifer',
    about: 'latewood peaks, rings 1 to 6 mm',
    setting: (r) => ({
      ...base(r),
      rings: 'conifer',
      ringMm: between(r, 1, 6),
      trendShare: between(r, -0.2, 0.1),
    }),
  },
  {
    name: 'high friction',
    about: 'friction 0.04 to 0.08 %/mm, low sound level',
    setting: (r) => ({
      ...base(r),
      soundLevelPct: between(r, 20, 45),
      frictionPctPerMm: between(r, 0.04, 0.08),
      frictionOnsetPct: between(r, 1, 5),
    }),
  },
  {
    name: 'noisy and coarse',
    about: 'noise 3 to 6 %, spacing 0.5 to 2 mm, uneven',
    setting: (r) => ({
      ...base(r),
      soundLevelPct: between(r, 30, 70),
      noiseSdPct: between(r, 3, 6),
      spacingMm: between(r, 0.5, 2),
      unevenness: between(r, 0, 0.6),
    }),
  },
  {
    name: 'steep trends',
    about:
      'sound level 20 to 60 %, rising or falling by 10 to 25 % per 200 mm, rings of all kinds to 7 mm, coarse steps',
    setting: (r) => ({
      ...base(r),
      soundLevelPct: between(r, 20, 60),
      trendShare: (r.uniform() < 0.5 ? -1 : 1) * between(r, 0.1, 0.25),
      rings: pick(r, ['none', 'diffuse', 'ring-porous', 'conifer'] as const),
      ringMm: between(r, 2, 7),
      frictionPctPerMm: between(r, 0, 0.08),
      wanderMm: between(r, 5, 15),
      wanderShare: between(r, 0.03, 0.08),
    }),
  },
];

/** Knots, pith, juvenile wood, wetwood within sound wood. */
function oddities(r: Random, fromMm: number, toMm: number): TraceFeature[] {
  const out: TraceFeature[] = [];
  if (r.uniform() < 0.5)
    out.push({ atMm: between(r, fromMm, toMm), widthMm: between(r, 8, 35), rise: between(r, 0.25, 0.9) });
  if (r.uniform() < 0.35)
    out.push({ atMm: between(r, fromMm, toMm), widthMm: between(r, 5, 14), rise: -between(r, 0.1, 0.3) });
  return out;
}

export const JUDGING_FAMILIES: Family[] = [
  {
    name: 'any',
    about: 'every parameter over the whole plausible range',
    setting: (r) => ({
      ...base(r),
      soundLevelPct: between(r, 20, 80),
      zeroPct: between(r, 0, 6),
      frictionPctPerMm: between(r, 0, 0.08),
      frictionOnsetPct: between(r, 0, 5),
      rings: pick(r, ['none', 'diffuse', 'ring-porous', 'conifer'] as const),
      ringMm: between(r, 1, 8),
      ringScatter: between(r, 0.05, 0.5),
      trendShare: between(r, -0.25, 0.25),
      noiseSdPct: between(r, 0.5, 4),
      spacingMm: Math.exp(between(r, Math.log(0.02), Math.log(2))),
      unevenness: between(r, 0, 0.8),
      spikesPerMetre: pick(r, [0, 0, 15]),
      barkMm: between(r, 5, 40),
    }),
  },
  {
    name: 'wide-ringed',
    about: 'ring-porous or conifer with rings of 5 to 8 mm, strong contrast',
    setting: (r) => ({
      ...base(r),
      rings: pick(r, ['ring-porous', 'conifer'] as const),
      ringMm: between(r, 5, 8),
      ringContrast: between(r, 0.4, 0.65),
      spacingMm: pick(r, [0.04, 0.2, 1]),
    }),
  },
  {
    name: 'dense and clipped',
    about: 'sound level 75 to 95 %, friction into the top of the scale',
    setting: (r) => ({
      ...base(r),
      soundLevelPct: between(r, 70, 85),
      frictionPctPerMm: between(r, 0.03, 0.07),
      rings: pick(r, ['none', 'diffuse', 'ring-porous'] as const),
    }),
  },
  {
    name: 'soft, blunt tip',
    about: 'sound level 20 to 30 %, tip 2 to 3 mm, friction up to 0.06 %/mm',
    setting: (r) => ({
      ...base(r),
      soundLevelPct: between(r, 20, 30),
      tipMm: between(r, 2, 3),
      frictionPctPerMm: between(r, 0.02, 0.06),
      noiseSdPct: between(r, 0.5, 2),
    }),
  },
  {
    name: 'quiet and smooth',
    about: 'no rings, noise below 0.7 %, steady levels',
    setting: (r) => ({
      ...base(r),
      rings: 'none',
      wanderShare: between(r, 0, 0.02),
      noiseSdPct: between(r, 0.3, 0.7),
      zeroPct: between(r, -1, 5),
    }),
  },
  {
    name: 'harsh',
    about: 'noise 4 to 6 % on a sound level of 20 to 40 %, spacing 0.2 to 1.5 mm',
    setting: (r) => ({
      ...base(r),
      soundLevelPct: between(r, 20, 40),
      noiseSdPct: between(r, 4, 6),
      spacingMm: between(r, 0.2, 1.5),
      unevenness: 0.5,
    }),
  },
];

/** What the needle meets. */
export const LAYOUTS = [
  'sound',
  'pocket',
  'void',
  'hollow',
  'rotten',
  'incipient',
  'crack',
  'through',
  'busy',
] as const;
export type Layout = (typeof LAYOUTS)[number];

/** Stretches inside the cambium, and whether the needle came out on the far side. */
function inside(layout: Layout, r: Random): { wood: TraceStretch[]; out: boolean } {
  const sound = (a: number, b: number): TraceStretch => ({ kind: 'sound', lengthMm: between(r, a, b) });
  const decayed = (a: number, b: number): TraceStretch => ({
    kind: 'decayed',
    lengthMm: between(r, a, b),
    share: between(r, 0.05, 0.5),
    edgeMm: pick(r, [0, 0, 4, 10]),
  });
  const hollow = (a: number, b: number): TraceStretch => ({ kind: 'void', lengthMm: between(r, a, b) });
  const incipient = (a: number, b: number): TraceStretch => ({
    kind: 'incipient',
    lengthMm: between(r, a, b),
    share: between(r, 0.55, 0.82),
    edgeMm: pick(r, [0, 4, 10]),
  });
  switch (layout) {
    case 'sound':
      return { wood: [sound(120, 380)], out: false };
    case 'through':
      return {
        wood: r.uniform() < 0.5 ? [sound(100, 300)] : [sound(40, 120), decayed(15, 80), sound(40, 120)],
        out: true,
      };
    case 'pocket':
      return { wood: [sound(30, 150), decayed(10, 60), sound(40, 150)], out: false };
    case 'void':
      return { wood: [sound(30, 150), hollow(10, 60), sound(30, 150)], out: false };
    case 'hollow':
      return {
        wood: [
          sound(20, 150),
          ...(r.uniform() < 0.6 ? [decayed(8, 40)] : []),
          hollow(40, 180),
          ...(r.uniform() < 0.5 ? [decayed(8, 40), sound(20, 80)] : []),
        ],
        out: false,
      };
    case 'rotten':
      return { wood: [sound(15, 50), decayed(80, 250)], out: false };
    case 'incipient':
      return {
        wood: [
          sound(30, 120),
          incipient(20, 80),
          ...(r.uniform() < 0.5 ? [sound(30, 120)] : [decayed(20, 80)]),
        ],
        out: false,
      };
    case 'crack': {
      const crack: TraceStretch = { kind: 'crack', lengthMm: between(r, 2, 5) };
      return { wood: [sound(30, 120), crack, sound(30, 150)], out: false };
    }
    case 'busy':
      return {
        wood: [sound(25, 70), decayed(10, 30), sound(15, 50), hollow(10, 40), decayed(10, 40), sound(20, 60)],
        out: false,
      };
  }
}

export interface Specimen extends SimulatedTrace {
  family: string;
  layout: Layout;
  seed: number;
  barkMm: number;
  stretches: TraceStretch[];
}

/** One specimen of a family and layout, a function of the seed only. */
export function specimen(family: Family, layout: Layout, seed: number): Specimen {
  const random = randomFrom(seed).fork(`${family.name} ${layout}`);
  const { barkMm, leadAirMm, ...setting } = family.setting(random);
  return build(family, layout, seed, setting, barkMm, leadAirMm, random);
}

/** Several drillings of one tree: one setting, different layouts. */
export function treeOf(family: Family, layouts: readonly Layout[], seed: number): Specimen[] {
  const random = randomFrom(seed).fork(`${family.name} tree`);
  const { barkMm, leadAirMm, soundLevelPct = 45, ...setting } = family.setting(random);
  return layouts.map((layout, i) =>
    build(
      family,
      layout,
      seed * 31 + i,
      { ...setting, soundLevelPct: soundLevelPct * Math.exp(0.06 * random.normal()) },
      barkMm * between(random, 0.7, 1.3),
      leadAirMm,
      random.fork(`${layout} ${i}`),
    ),
  );
}

function build(
  family: Family,
  layout: Layout,
  seed: number,
  setting: Omit<SimulateTraceOptions, 'stretches' | 'seed'>,
  barkMm: number,
  leadAirMm: number,
  random: Random,
): Specimen {
  const { wood, out } = inside(layout, random);
  const stretches: TraceStretch[] = [];
  if (leadAirMm > 0) stretches.push({ kind: 'air', lengthMm: leadAirMm });
  stretches.push({ kind: 'bark', lengthMm: barkMm }, ...wood);
  if (out)
    stretches.push(
      { kind: 'bark', lengthMm: barkMm * between(random, 0.8, 1.2) },
      { kind: 'air', lengthMm: between(random, 15, 60) },
    );
  const woodFrom = leadAirMm + barkMm;
  const woodTo = woodFrom + wood.reduce((sum, s) => sum + s.lengthMm, 0);
  const features = layout === 'sound' ? oddities(random, woodFrom + 15, woodTo - 10) : [];
  const simulated = simulateTrace({ ...setting, features, stretches, seed: seed * 7919 + 13 });
  return { ...simulated, family: family.name, layout, seed, barkMm, stretches };
}
