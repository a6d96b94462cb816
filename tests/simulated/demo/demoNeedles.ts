/** Where the demonstration's needles go, what its wood looks like to a drill, and how its traces are simulated. */
import { needleLine, type RingMm } from '@standfast/engine';
import type { SimulateTraceOptions, TraceStretch } from '../traces/simulateTrace.ts';
import { BARK_MM, kindAt } from './truthOfDemo.ts';

export const NEEDLE_MM = 400;
const STEP_MM = 0.1;
/** A flare stands this far out of the section's outline, and its drillings start at this height. */
export const FLARE_OUT_MM = 90;
export const FLARE_START_MM = 250;

export interface Needle {
  id: string;
  azimuthDeg: number;
  offRadialDeg?: number;
  downDeg?: number;
  note?: string;
}

export const SECTION_NEEDLES: Needle[] = [
  { id: 'd1', azimuthDeg: 12 },
  { id: 'd2', azimuthDeg: 68 },
  { id: 'd3', azimuthDeg: 122 },
  { id: 'd4', azimuthDeg: 196, note: 'Left of the old wound.' },
  { id: 'd5', azimuthDeg: 229, note: 'Through the seam; the needle dropped freely for some centimetres.' },
  { id: 'd6', azimuthDeg: 274 },
  { id: 'd7', azimuthDeg: 322, offRadialDeg: -22, note: 'Off the radial, to pass a surface root of ivy.' },
];

export const FLARES: { id: string; azimuthDeg: number; widthMm: number; heightMm: number; needle: Needle }[] =
  [
    {
      id: 'f1',
      azimuthDeg: 24,
      widthMm: 340,
      heightMm: 380,
      needle: { id: 'd8', azimuthDeg: 24, downDeg: 40 },
    },
    {
      id: 'f2',
      azimuthDeg: 114,
      widthMm: 310,
      heightMm: 330,
      needle: { id: 'd9', azimuthDeg: 114, downDeg: 40 },
    },
    {
      id: 'f3',
      azimuthDeg: 216,
      widthMm: 360,
      heightMm: 400,
      needle: { id: 'd10', azimuthDeg: 216, downDeg: 38, note: 'Soft from about 16 cm in.' },
    },
    {
      id: 'f4',
      azimuthDeg: 301,
      widthMm: 300,
      heightMm: 320,
      needle: { id: 'd11', azimuthDeg: 301, downDeg: 42 },
    },
  ];

/**
 * The true kinds along a needle, from the plan of decay.
 *
 * @param ring outline over bark
 * @param outMm how far out of it the needle starts, as on a flare
 * @param spreadMm how far decay has spread since the plan, by azimuth from the origin
 */
export function stretchesOf(
  needle: Needle,
  ring: RingMm,
  outMm: number,
  startHeightMm: number,
  barkMm = BARK_MM,
  spreadMm: (azimuthDeg: number) => number = () => 0,
): TraceStretch[] {
  const { azimuthDeg, offRadialDeg = 0, downDeg = 0 } = needle;
  const line = needleLine(ring, { azimuthDeg, offRadialDeg, downDeg });
  const down = Math.sin((downDeg * Math.PI) / 180);
  const stretches: TraceStretch[] = [];
  for (let i = 0; i < NEEDLE_MM / STEP_MM; i++) {
    const depth = (i + 0.5) * STEP_MM;
    const across = depth * line.horizontalPerDepth - outMm;
    const x = line.entryMm[0] + across * line.headingUnit[0];
    const y = line.entryMm[1] + across * line.headingUnit[1];
    const spread = spreadMm((Math.atan2(x, y) * 180) / Math.PI);
    const kind = depth < barkMm ? 'bark' : kindAt(x, y, startHeightMm - depth * down, spread);
    const last = stretches.at(-1);
    if (last?.kind === kind) last.lengthMm += STEP_MM;
    else stretches.push({ kind, lengthMm: STEP_MM, ...LOOK[kind] });
  }
  return stretches;
}

/** How each kind looks in this tree: level over that of sound wood, and width of the edge into it. */
const LOOK: Record<string, { share?: number; edgeMm?: number }> = {
  bark: { share: 0.14 },
  sound: { share: 1, edgeMm: 3 },
  incipient: { share: 0.7, edgeMm: 6 },
  decayed: { share: 0.24, edgeMm: 5 },
  void: { share: 0 },
};

/** The drill and the wood of the first visit. */
export const FIRST_SETTING: Omit<SimulateTraceOptions, 'stretches' | 'seed'> = {
  rings: 'diffuse',
  ringMm: 2.6,
  soundLevelPct: 41,
  frictionPctPerMm: 0.018,
  frictionOnsetPct: 1.5,
  zeroPct: 0.6,
  noiseSdPct: 0.9,
  trendShare: -0.06,
  spacingMm: STEP_MM,
};

export function round(values: Float64Array, decimals: number): Float64Array {
  return values.map((value) => Number(value.toFixed(decimals)));
}
