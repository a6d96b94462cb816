/** What is measured: an invented beech with eight drillings of 20,000 readings each, one of them through a pocket. */
import type { CaseInput, DrillingInput, Trace } from '@standfast/engine';
import { simulateTrace, type TraceStretch } from '../tests/simulated/traces/simulateTrace.ts';

export const DRILLINGS = 8;
export const READINGS = 20_000;
export const DRAWS = 2_000;
const NEEDLE_MM = 400;

/** The k-th drilling's trace: sound all along, or with decay and a void inside, more of it on one side. */
function traceOf(k: number): Trace {
  const wall = 130 + 20 * k;
  const inside: TraceStretch[] =
    k < 4
      ? [
          { kind: 'incipient', lengthMm: 20, edgeMm: 6 },
          { kind: 'decayed', lengthMm: 60, edgeMm: 6 },
          { kind: 'void', lengthMm: NEEDLE_MM - 20 - wall - 80 },
        ]
      : [{ kind: 'sound', lengthMm: NEEDLE_MM - 20 - wall }];
  const { trace } = simulateTrace({
    seed: 100 + k,
    stretches: [
      { kind: 'air', lengthMm: 5 },
      { kind: 'bark', lengthMm: 15 },
      { kind: 'sound', lengthMm: wall, edgeMm: 3 },
      ...inside,
    ],
    spacingMm: NEEDLE_MM / READINGS,
  });
  // Digits as a drill gives them.
  const written = (value: number) => Math.round(value * 100) / 100;
  return {
    depthMm: trace.depthMm.slice(0, READINGS).map(written),
    resistancePct: trace.resistancePct.slice(0, READINGS).map(written),
  };
}

const drillings: DrillingInput[] = Array.from({ length: DRILLINGS }, (_, k) => ({
  id: `d${k + 1}`,
  azimuthDeg: k * 45,
  offRadialDeg: 0,
  downDeg: 0,
  trace: traceOf(k),
}));

export const inventedCase: CaseInput = {
  tree: {
    label: 'bench',
    species: 'Fagus grandifolia',
    stemDiameterMm: 900,
    heightM: 24,
    leanDeg: 2,
    leanTowardDeg: 90,
    crown: { baseHeightM: 5, widthM: 14, shape: 'ellipse', inLeaf: true },
  },
  site: { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'III' },
  sections: [{ id: 's1', heightM: 0.4, outline: { kind: 'circle', diameterMm: 980 }, barkMm: 15, drillings }],
  flares: [],
  signs: [],
  targets: [],
};

/** An outline of 720 corners with lobes, and four voids of 120, one of them open to the outside. */
export function lobedSection() {
  const ring = (count: number, x: number, y: number, radius: (turn: number) => number) =>
    Array.from({ length: count }, (_, i): [number, number] => {
      const turn = (2 * Math.PI * i) / count;
      return [x + radius(turn) * Math.sin(turn), y + radius(turn) * Math.cos(turn)];
    });
  return {
    outline: { kind: 'polygon' as const, points: ring(720, 0, 0, (turn) => 450 + 40 * Math.cos(5 * turn)) },
    voids: [
      ring(120, 60, 40, (turn) => 150 + 20 * Math.sin(3 * turn)),
      ring(120, -220, -120, () => 60),
      ring(120, -180, -150, () => 70),
      ring(120, 440, 0, () => 90),
    ],
  };
}
