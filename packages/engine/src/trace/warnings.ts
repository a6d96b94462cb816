import type { ConditionedTrace } from './conditionTrace.ts';
import type { Levels } from './levels.ts';
import { ZONE_KINDS, type Zone } from './types.ts';

/** Shares and sizes from which a reader is warned. */
const CLIPPED_SHARE = 0.02;
const COARSE_SPACING_MM = 1;
const LITTLE_SOUND_MM = 25;
const UNSURE_FLOOR_SHARE = 0.12;
const UNSURE_CONFIDENCE = 0.7;
const LEAST_UNSURE_MM = 10;
const UNSURE_END = 0.05;

/** What a reader should know before relying on a reading, in plain words. */
export function warningsOf(
  c: ConditionedTrace,
  zones: readonly Zone[],
  probability: Float64Array,
  levels: Levels,
  floorSdPct: number,
  several: boolean,
  dips: readonly { fromMm: number; toMm: number }[],
  exitKnown: boolean,
): string[] {
  const out: string[] = [];
  const length = (z: Zone) => z.toMm - z.fromMm;
  if (c.clippedShare > CLIPPED_SHARE)
    out.push(
      `${Math.round(100 * c.clippedShare)} % of the readings are at the top of the scale: differences within the densest wood are lost. A faster rotation or slower feed would keep the level in range.`,
    );
  if (c.spacingMm > COARSE_SPACING_MM)
    out.push(
      `Readings lie ${c.spacingMm.toFixed(1)} mm apart on average: cracks and narrow pockets can be missed between them.`,
    );
  if (c.spikes > 0)
    out.push(`${c.spikes} spike${c.spikes > 1 ? 's' : ''} narrower than the needle’s tip were set aside.`);
  const sound = zones.filter((z) => z.kind === 'sound').reduce((sum, z) => sum + length(z), 0);
  if (sound === 0) out.push('No wood in this trace reads as sound.');
  if (sound < LITTLE_SOUND_MM && !several)
    out.push(
      'There is hardly any sound wood in this trace to judge the rest by, and no other drilling of the tree to help. A drilling in wood known to be sound would settle it.',
    );
  for (const { fromMm, toMm } of dips)
    out.push(
      `A short dip of level at ${fromMm.toFixed(0)} to ${toMm.toFixed(0)} mm, as at the pith or in a band of juvenile wood, is read as sound.`,
    );
  const last = zones.at(-1);
  const firstWood = zones.findIndex((z) => z.kind !== 'air' && z.kind !== 'bark');
  if (last && firstWood >= 0 && firstWood < zones.length - 1) {
    const row = probability.length - ZONE_KINDS.length;
    const outside =
      probability[row + ZONE_KINDS.indexOf('air')]! + probability[row + ZONE_KINDS.indexOf('bark')]!;
    // A hollow that passes for air beyond the far side is the error that hurts: without an outline, always say so.
    const low = last.kind === 'void' || last.kind === 'air' || last.kind === 'bark';
    if ((low && !exitKnown) || (outside > UNSURE_END && outside < 1 - UNSURE_END))
      out.push(
        'The low end of the trace may be a cavity, or air and bark beyond the far side: compare the depth with the stem’s diameter.',
      );
  }
  if (last && (last.kind === 'decayed' || last.kind === 'void'))
    out.push('The needle ended in unsound wood: what lies deeper is unknown.');
  if (
    floorSdPct > UNSURE_FLOOR_SHARE * levels.soundPct &&
    zones.some((z) => z.kind === 'decayed' || z.kind === 'void')
  )
    out.push(
      'The friction of the shaft is not well known in this trace, so weak wood and void are not surely told apart. Keep the first millimetres in air, or drill through into air, to fix it.',
    );
  for (const z of zones)
    if (z.confidence < UNSURE_CONFIDENCE && length(z) >= LEAST_UNSURE_MM)
      out.push(
        `From ${z.fromMm.toFixed(0)} to ${z.toMm.toFixed(0)} mm the reading as ${z.kind} is unsure (${Math.round(100 * z.confidence)} %).`,
      );
  return out;
}
