/**
 * How much of a root flare is sound, from the needles that went through it.
 *
 * The share along the needles is known well; what it says of the whole flare is not, since a needle is a line through a
 * body. The wood met is counted as so many independent looks, one for each `LOOK_MM` of it, and the share of sound looks
 * carried on the logit scale with half a look of each kind added (the usual correction for small counts; Agresti 2013,
 * Categorical Data Analysis, section 5.3). How long one look is, is our judgement: about the size of a pocket of decay.
 */
import { type Interval, type TraceReading, ZONE_KINDS } from '../trace/types.ts';

/** Wood passed that counts as one independent look at the flare, mm: our judgement. */
const LOOK_MM = 60;
/** Strength kept by wood in incipient decay, as a share: our judgement, the same as in the soundness field's table. */
const INCIPIENT_KEEPS = 0.5;
const Z95 = 1.6448536269514722;

const COLUMN = Object.fromEntries(ZONE_KINDS.map((kind, i) => [kind, i])) as Record<
  (typeof ZONE_KINDS)[number],
  number
>;

/**
 * Share of the flare's wood that is sound, 0 to 1, with its interval; null when no needle met wood.
 */
export function flareSoundShare(readings: readonly TraceReading[]): Interval | null {
  let woodMm = 0;
  let soundMm = 0;
  for (const { gridMm, probability } of readings) {
    const stepMm = gridMm.length > 1 ? gridMm[1]! - gridMm[0]! : 0;
    for (let i = 0; i < gridMm.length; i++) {
      const chance = (kind: keyof typeof COLUMN) => probability[i * ZONE_KINDS.length + COLUMN[kind]]!;
      const sound = chance('sound') + INCIPIENT_KEEPS * chance('incipient');
      woodMm += stepMm * (1 - chance('air') - chance('bark'));
      soundMm += stepMm * sound;
    }
  }
  if (woodMm <= 0) return null;
  const looks = Math.max(1, woodMm / LOOK_MM);
  const share = Math.min(1, soundMm / woodMm);
  const centre = (share * looks + 0.5) / (looks + 1);
  const logit = Math.log(centre / (1 - centre));
  const sd = 1 / Math.sqrt((looks + 1) * centre * (1 - centre));
  const at = (z: number) => 1 / (1 + Math.exp(-(logit + z * sd)));
  return { p05: at(-Z95), p50: centre, p95: at(Z95) };
}
