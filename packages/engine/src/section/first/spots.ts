/**
 * From the signs that were seen to spots of the stem and roots that want a needle.
 */
import type { FlareInput, SignInput } from '../../case.ts';
import { drillingSigns, fungi } from '../../reference/tables.generated.ts';
import { wrap } from './turn.ts';

/** A place round the stem where a sign of decay or damage was seen. */
export interface Spot {
  /** The sign in words, with its place as it was recorded. */
  sign: string;
  azimuthDeg: number;
  speaksOf: 'stem' | 'root' | 'both';
  /** How strongly it speaks of decay there, 0 to 1. */
  weight: number;
  /** How far beside it a needle goes in, degrees, and on how many sides. */
  keepOffDeg: number;
  sides: number;
  heightM: number | null;
  why: string;
}

export interface Spots {
  spots: Spot[];
  /** Signs that speak of decay but not of where, in words. */
  withoutPlace: string[];
}

/** Signs in the crown say nothing of the stem's foot. */
const ELSEWHERE = /\b(crown|limbs?|branch(es)?|twigs?|leaves|foliage)\b/i;

const POINTS: readonly [words: RegExp, azimuthDeg: number][] = [
  [/\b(north[\s-]?east|NE)\b/i, 45],
  [/\b(south[\s-]?east|SE)\b/i, 135],
  [/\b(south[\s-]?west|SW)\b/i, 225],
  [/\b(north[\s-]?west|NW)\b/i, 315],
  [/\bnorth(ern)?\b|\bN\b/i, 0],
  [/\beast(ern)?\b|\bE\b/i, 90],
  [/\bsouth(ern)?\b|\bS\b/i, 180],
  [/\bwest(ern)?\b|\bW\b/i, 270],
];

/** Where the signs want a needle. A sign that matches no row of drilling-signs.csv wants none. */
export function spotsFrom(signs: readonly SignInput[], flares: readonly FlareInput[]): Spots {
  const found: Spots = { spots: [], withoutPlace: [] };
  for (const sign of signs) {
    const row = ruleFor(sign);
    if (!row) continue;
    const high = sign.heightM === undefined && ELSEWHERE.test(sign.where ?? '');
    if (high || ELSEWHERE.test(sign.kind)) continue;
    const words = sign.where ? `${sign.kind} (${sign.where})` : sign.kind;
    const azimuthDeg = azimuthOf(sign, flares);
    if (azimuthDeg === null) {
      found.withoutPlace.push(words);
      continue;
    }
    found.spots.push({
      sign: words,
      azimuthDeg,
      speaksOf: row.place as Spot['speaksOf'],
      weight: row.weight,
      keepOffDeg: row.keepOff,
      sides: row.sides,
      heightM: sign.heightM ?? null,
      why: row.why,
    });
  }
  return found;
}

function ruleFor(sign: SignInput) {
  const kind = sign.kind.replaceAll('-', ' ');
  const rowOf = (text: string) => drillingSigns.find(({ pattern }) => new RegExp(pattern, 'i').test(text));
  const named = (text: string) => fungi.some(({ name }) => text.toLowerCase().includes(name.toLowerCase()));
  return (
    rowOf(kind) ??
    (named(`${kind} ${sign.note ?? ''}`) ? rowOf('fungus') : undefined) ??
    rowOf(sign.note ?? '')
  );
}

/** A sign's azimuth: as recorded, or its flare's, or the compass point in the words for its place. */
function azimuthOf(sign: SignInput, flares: readonly FlareInput[]): number | null {
  if (sign.azimuthDeg !== undefined) return wrap(sign.azimuthDeg);
  const where = sign.where ?? '';
  const words = where.toLowerCase().split(/[^\p{L}\p{N}]+/u);
  const flare = flares.find(({ id }) => words.includes(id.toLowerCase()));
  if (flare) return wrap(flare.azimuthDeg);
  return POINTS.find(([pattern]) => pattern.test(where))?.[1] ?? null;
}
