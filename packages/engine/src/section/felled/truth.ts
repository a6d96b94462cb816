/**
 * The true capacity of a felled section from what was traced on it: exact polygon mechanics, as for a section with known
 * voids, with incipient wood counted at its share of strength.
 */
import { InputFault } from '../../faults.ts';
import { inverseSecondMoments, modulusByDirection } from '../capacity.ts';
import type { AreaMoments } from '../polygon.ts';
import type { RingMm } from '../types.ts';
import { type Wood, woodOf } from '../wood.ts';

export interface TrueStrength {
  /** Capacity over that of the same wood all sound, directions 0, 10, … 350. */
  remaining: Float64Array;
  /** Share of the wood's area that is sound, incipient wood at its share of strength. */
  soundShare: number;
  warnings: string[];
}

/**
 * Strength left of a ring of wood in which some is without strength and some keeps `incipientStrength` of it.
 *
 * Incipient wood is taken to be weaker and less stiff by the same share, as the soundness field takes it: then the
 * section bends as its stiffness-weighted section (transformed section, for example Gere & Timoshenko, Mechanics of
 * Materials, from memory), and all wood that carries fails at the same strain. A load towards u gives the stress
 * u · J⁻¹ (r − c) per unit moment with J and c weighted, looked for over every corner of the wood that carries.
 *
 * @throws InputFault when no wood is left
 */
export function trueStrength(
  cambium: RingMm,
  unsound: readonly RingMm[],
  incipient: readonly RingMm[],
  incipientStrength: number,
  where: string,
): TrueStrength {
  const outline = { kind: 'polygon' as const, points: [...cambium] };
  const whole = woodOf(outline, []);
  const carries = unsound.length > 0 ? woodOf(outline, unsound, `${where}.unsound`) : whole;
  const sound = incipient.length > 0 ? soundPart(outline, unsound, incipient, where) : carries;
  const moments =
    sound === carries
      ? carries.moments
      : weightedSum([
          { moments: carries.moments, weight: incipientStrength },
          ...(sound ? [{ moments: sound.moments, weight: 1 - incipientStrength }] : []),
        ]);
  inverseSecondMoments(moments);
  const intact = modulusByDirection(whole.moments, whole.corners);
  const left = modulusByDirection(moments, carries.corners);
  return {
    remaining: left.map((modulus, k) => modulus / intact[k]!),
    soundShare: moments.areaMm2 / whole.moments.areaMm2,
    warnings: carries === whole ? [] : carries.warnings,
  };
}

/** What is neither without strength nor incipient; null when that is nothing. */
function soundPart(
  outline: Parameters<typeof woodOf>[0],
  unsound: readonly RingMm[],
  incipient: readonly RingMm[],
  where: string,
): Wood | null {
  try {
    return woodOf(outline, [...unsound, ...incipient], where);
  } catch (error) {
    // All the wood that is left is incipient: it carries its share. Any other fault was thrown for `unsound` before.
    if (error instanceof InputFault && /take all the wood/.test(error.what)) return null;
    throw error;
  }
}

/** Area, centroid and second moments of parts laid over one another, each at its weight. */
function weightedSum(parts: readonly { moments: AreaMoments; weight: number }[]): AreaMoments {
  let area = 0;
  let sx = 0;
  let sy = 0;
  for (const { moments, weight } of parts) {
    area += weight * moments.areaMm2;
    sx += weight * moments.areaMm2 * moments.centroidMm[0];
    sy += weight * moments.areaMm2 * moments.centroidMm[1];
  }
  const sum: AreaMoments = {
    areaMm2: area,
    centroidMm: [sx / area, sy / area],
    ixxMm4: 0,
    iyyMm4: 0,
    ixyMm4: 0,
  };
  for (const { moments, weight } of parts) {
    const dx = moments.centroidMm[0] - sum.centroidMm[0];
    const dy = moments.centroidMm[1] - sum.centroidMm[1];
    sum.ixxMm4 += weight * (moments.ixxMm4 + moments.areaMm2 * dy * dy);
    sum.iyyMm4 += weight * (moments.iyyMm4 + moments.areaMm2 * dx * dx);
    sum.ixyMm4 += weight * (moments.ixyMm4 + moments.areaMm2 * dx * dy);
  }
  return sum;
}
