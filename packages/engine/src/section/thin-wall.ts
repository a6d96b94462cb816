/**
 * Ways a hollow stem fails other than by breaking in bending: it flattens, and then kinks or splits.
 */
import { InputFault } from '../faults.ts';

/** A straight, closed, empty hollow stem of round section and its wood. */
export interface HollowStem {
  /** Outer radius inside the bark, mm. */
  outerRadiusMm: number;
  /** Thickness of the sound wall, mm, at most the radius. */
  wallMm: number;
  /** Modulus of elasticity along the grain, Pa. */
  axialModulusPa: number;
  /** Modulus of elasticity across the grain, around the stem, Pa. */
  transverseModulusPa: number;
  /** Bending strength along the grain, Pa. */
  bendingStrengthPa: number;
  /** Tensile strength across the grain, around the stem, Pa. */
  transverseTensionPa: number;
  /** Product of the two Poisson's ratios; small, and 0 when left out. */
  poissonProduct?: number;
}

/** Moment at which each way of failing sets in, N·m, and which comes first. */
export interface ThinWallModes {
  /** Plain breaking in bending: the outermost fibre reaches the bending strength. */
  bendingNm: number;
  /** The flattening wall cracks along the grain from bending around the stem; splitting follows. */
  crackingNm: number;
  /** The section flattens without end (Brazier). */
  ovalisingNm: number;
  leastNm: number;
  governs: 'bending' | 'cracking' | 'ovalising';
  /** Wall over mid-wall radius at which cracking gives way to bending, and ovalising to cracking, for a thin wall. */
  crackingToBending: number;
  ovalisingToCracking: number;
}

/**
 * Breaking moments of a hollow stem. Our own derivation for a thin orthotropic tube of mid-wall radius r = R − t/2:
 * curvature κ presses the wall inwards with q = E_L t κ² r cos θ, which bends it around the stem by m = E_L t κ² r³/4.
 * - cracking, 6m/t² = f_T: M = π r^1.5 t^1.5 √(2 E_L f_T / 3);
 * - ovalising (Brazier 1927, Proc. R. Soc. A 116:104-114, from memory): M = (2√2/9) π r t² √(E_L E_T / (1 − ν_LT ν_TL));
 * - bending: M = f_b π (R⁴ − (R − t)⁴) / (4R).
 *
 * Huang, Hsu, Lee & Juang 2017 (R. Soc. Open Sci. 4:160972) find the same order of modes; their equations were not used.
 * Not for stems with an opening, nor with decayed wood still filling the hollow.
 *
 * @throws InputFault when a length or a property is not positive or the wall exceeds the radius.
 */
export function thinWallModes(stem: HollowStem, where = 'stem'): ThinWallModes {
  for (const [field, value] of Object.entries(stem)) {
    const least = field === 'poissonProduct' ? 0 : Number.MIN_VALUE;
    if (!Number.isFinite(value) || value < least) {
      throw new InputFault(`${field} is ${value}. Give a number above 0.`, `${where}.${field}`);
    }
  }
  const {
    outerRadiusMm,
    wallMm,
    axialModulusPa,
    transverseModulusPa,
    bendingStrengthPa,
    transverseTensionPa,
  } = stem;
  if (wallMm > outerRadiusMm) {
    throw new InputFault(
      `The wall (${wallMm} mm) is thicker than the radius (${outerRadiusMm} mm).`,
      `${where}.wallMm`,
    );
  }
  const poissonProduct = stem.poissonProduct ?? 0;
  if (poissonProduct >= 1) {
    throw new InputFault(
      `poissonProduct is ${poissonProduct}. It must be below 1.`,
      `${where}.poissonProduct`,
    );
  }
  const outer = outerRadiusMm / 1000;
  const t = wallMm / 1000;
  const r = outer - t / 2;
  const bendingNm = (bendingStrengthPa * Math.PI * (outer ** 4 - (outer - t) ** 4)) / (4 * outer);
  const crackingNm = Math.PI * (r * t) ** 1.5 * Math.sqrt((2 * axialModulusPa * transverseTensionPa) / 3);
  const ovalisingNm =
    ((2 * Math.SQRT2) / 9) *
    Math.PI *
    r *
    t *
    t *
    Math.sqrt((axialModulusPa * transverseModulusPa) / (1 - poissonProduct));
  const leastNm = Math.min(bendingNm, crackingNm, ovalisingNm);
  return {
    bendingNm,
    crackingNm,
    ovalisingNm,
    leastNm,
    governs: leastNm === bendingNm ? 'bending' : leastNm === crackingNm ? 'cracking' : 'ovalising',
    crackingToBending: (3 * bendingStrengthPa ** 2) / (2 * axialModulusPa * transverseTensionPa),
    ovalisingToCracking: (6.75 * transverseTensionPa * (1 - poissonProduct)) / transverseModulusPa,
  };
}
