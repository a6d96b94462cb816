import { checkTrace } from './checkTrace.ts';
import { type ConditionedTrace, conditionTrace, quantile } from './conditionTrace.ts';
import { type Trace, type TraceReading, ZONE_KINDS, type Zone, type ZoneKind } from './types.ts';

/** A drilling to read: its trace, and what is known of the place it was made in. */
export interface TraceToRead {
  id: string;
  trace: Trace;
  /** Bark thickness where it was measured or guessed, mm; 0 when the drilling starts in wood. */
  barkMm?: number;
  /** Botanical name, which says whether rings can be expected to show. */
  species?: string;
}

/**
 * Read all drillings of one tree together, so that they share the level that its sound wood has. Absolute levels
 * differ between drills and settings, so drillings made with different settings must be read apart.
 *
 * @returns one reading for each input, in order.
 * @throws InputFault where a trace cannot be read (see checkTrace), naming the drilling's id.
 */
export function readTraces(input: TraceToRead[]): TraceReading[] {
  const conditioned = input.map(({ id, trace }) => {
    checkTrace(trace, `drilling ${id}`);
    return conditionTrace(trace);
  });
  const levels = conditioned.map((c) => quantile(c.levelPct, 0.8));
  const shared = quantile(Float64Array.from(levels), 0.6);
  return conditioned.map((c, i) => readAlone(c, Math.max(levels[i]!, shared), input.length > 1));
}

/** Threshold reading of one trace against a sound level. */
function readAlone(c: ConditionedTrace, sound: number, several: boolean): TraceReading {
  const { gridMm, levelPct } = c;
  const n = gridMm.length;
  const kindAt = (share: number): ZoneKind =>
    share > 0.8 ? 'sound' : share > 0.5 ? 'incipient' : share > 0.06 ? 'decayed' : 'void';
  const smooth = Float64Array.from({ length: n }, (_, i) =>
    quantile(levelPct.slice(Math.max(0, i - 3), Math.min(n, i + 4)), 0.5),
  );
  let wood = 0;
  while (wood < n - 1 && smooth[wood]! < 0.5 * sound) wood++;
  const zones: Zone[] = [];
  const probability = new Float64Array(n * ZONE_KINDS.length);
  for (let i = 0; i < n; i++) {
    const kind = i < wood ? 'bark' : kindAt(smooth[i]! / sound);
    const last = zones.at(-1);
    const to = gridMm[i]! + c.cellMm / 2;
    if (last?.kind === kind) last.toMm = to;
    else zones.push({ kind, fromMm: to - c.cellMm, toMm: to, confidence: 0.7 });
    for (let k = 0; k < ZONE_KINDS.length; k++)
      probability[i * ZONE_KINDS.length + k] = ZONE_KINDS[k] === kind ? 0.7 : 0.05;
  }
  const woodFromMm = gridMm[wood]! - c.cellMm / 2;
  const unsound = zones.find((z) => z.kind !== 'bark' && z.kind !== 'sound');
  const wall = (unsound?.fromMm ?? zones.at(-1)!.toMm) - woodFromMm;
  return {
    zones,
    residualWallMm: wall,
    residualWallInterval: { p05: Math.max(0, wall - 10), p50: wall, p95: wall + 10 },
    residualWallAtLeast: !unsound,
    barkFromMm: gridMm[0]! - c.cellMm / 2,
    woodFromMm,
    gridMm,
    probability,
    levelPct,
    frictionPct: new Float64Array(n),
    reference: {
      levelPct: sound,
      sdPct: 0.15 * sound,
      restsOn: several ? 'all drillings of the tree' : 'this trace',
    },
    warnings: [],
  };
}
