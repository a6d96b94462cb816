/**
 * Traces that are easy to misread, each kind drawn two ways: one to tune on, another to judge by. The judging side
 * differs in settings, ring patterns and shapes, not only in seeds.
 */
import { type Random, randomFrom } from '../../../packages/engine/src/random.ts';
import type { Layout, Setting, Specimen } from './families.ts';
import { simulateTrace, type TraceStretch } from './simulateTrace.ts';

/**
 * `rotten shell`: a few millimetres of sound wood behind the bark, then decay to the end, climbing by friction.
 * `fissured bark`: thick bark with deep slow lows, then sound wood. `uneven sound`: deep rings and slow waves of the
 * level, then a void and sound wood again. `short dip`: sound wood with one short low band, as at the pith.
 */
export const HARD_CASES = ['rotten shell', 'fissured bark', 'uneven sound', 'short dip'] as const;
export type HardCase = (typeof HARD_CASES)[number];
export type Side = 'tuning' | 'judging';

const LAYOUT: Record<HardCase, Layout> = {
  'rotten shell': 'rotten',
  'fissured bark': 'sound',
  'uneven sound': 'void',
  'short dip': 'sound',
};

const between = (r: Random, a: number, b: number) => a + (b - a) * r.uniform();
const pick = <T>(r: Random, from: readonly T[]): T =>
  from[Math.min(from.length - 1, Math.floor(r.uniform() * from.length))]!;

function setting(side: Side, r: Random): Setting {
  const tuning = side === 'tuning';
  return {
    soundLevelPct: tuning ? between(r, 30, 65) : between(r, 24, 72),
    zeroPct: between(r, 0, tuning ? 3 : 5),
    frictionPctPerMm: tuning ? between(r, 0.01, 0.05) : between(r, 0.005, 0.06),
    frictionOnsetPct: between(r, 0, tuning ? 2 : 4),
    rings: pick(
      r,
      tuning ? (['none', 'diffuse', 'ring-porous'] as const) : (['diffuse', 'conifer', 'saw-tooth'] as const),
    ),
    ringMm: tuning ? between(r, 1.5, 5) : between(r, 1, 7),
    ringContrast: between(r, 0.06, tuning ? 0.4 : 0.35),
    trendShare: between(r, -0.12, 0.12),
    barkShare: between(r, 0.08, 0.25),
    noiseSdPct: tuning ? between(r, 0.5, 2) : between(r, 0.3, 3),
    wanderShare: between(r, 0.02, 0.05),
    wanderMm: between(r, 2, tuning ? 8 : 15),
    tipMm: between(r, 0.8, 2),
    spacingMm: pick(r, tuning ? [0.1, 0.25] : [0.05, 0.2, 0.5]),
    barkMm: between(r, 5, 25),
    leadAirMm: r.uniform() < 0.3 ? between(r, 2, 15) : 0,
  };
}

/** One hard case, a function of the side and the seed only. */
export function hardCase(name: HardCase, side: Side, seed: number): Specimen {
  const r = randomFrom(seed).fork(`${side} ${name}`);
  const tuning = side === 'tuning';
  const s = setting(side, r);
  const sound = (a: number, b: number): TraceStretch => ({ kind: 'sound', lengthMm: between(r, a, b) });
  let wood: TraceStretch[];
  switch (name) {
    case 'rotten shell':
      s.frictionPctPerMm = tuning ? between(r, 0.035, 0.07) : between(r, 0.04, 0.075);
      s.decayRubs = between(r, 0.5, 1);
      if (!tuning) s.trendShare = between(r, -0.2, 0.2);
      wood = [
        sound(8, 26),
        {
          kind: 'decayed',
          lengthMm: tuning ? between(r, 100, 260) : between(r, 70, 330),
          share: between(r, 0.28, 0.46),
          edgeMm: tuning ? pick(r, [0, 2]) : pick(r, [0, 3, 6]),
        },
      ];
      break;
    case 'fissured bark':
      s.barkMm = between(r, 20, 45);
      s.barkShare = tuning ? between(r, 0.08, 0.2) : between(r, 0.07, 0.22);
      s.fissureShare = tuning ? between(r, 0.6, 1) : between(r, 0.5, 1);
      s.fissureMm = tuning ? between(r, 10, 22) : between(r, 8, 30);
      wood = [sound(80, 250)];
      break;
    case 'uneven sound':
      s.rings = tuning ? pick(r, ['ring-porous', 'conifer'] as const) : 'saw-tooth';
      s.ringContrast = tuning ? between(r, 0.25, 0.45) : between(r, 0.2, 0.35);
      s.trendShare = between(r, -0.22, 0.22);
      s.waveShare = tuning ? between(r, 0.05, 0.15) : between(r, 0, 0.12);
      s.waveMm = tuning ? between(r, 120, 300) : between(r, 100, 400);
      wood = [sound(50, 160), { kind: 'void', lengthMm: between(r, 10, 60) }, sound(30, 120)];
      break;
    case 'short dip':
      wood = [
        sound(50, 150),
        {
          kind: 'sound',
          lengthMm: tuning ? between(r, 6, 20) : between(r, 5, 20),
          share: between(r, 0.62, 0.85),
          edgeMm: tuning ? pick(r, [0, 3]) : pick(r, [1, 5]),
        },
        { ...sound(50, 150), edgeMm: tuning ? 0 : pick(r, [1, 5]) },
      ];
  }
  const { barkMm, leadAirMm, ...rest } = s;
  const stretches: TraceStretch[] = [
    ...(leadAirMm > 0 ? [{ kind: 'air' as const, lengthMm: leadAirMm }] : []),
    { kind: 'bark', lengthMm: barkMm },
    ...wood,
  ];
  const simulated = simulateTrace({ ...rest, stretches, seed: seed * 6007 + 29 });
  return { ...simulated, family: `${side} ${name}`, layout: LAYOUT[name], seed, barkMm, stretches };
}
