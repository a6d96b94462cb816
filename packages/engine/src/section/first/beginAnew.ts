/**
 * The plan of first drillings for every section of a case that has none, and the advice on the next drilling brought
 * in line with it: a section nobody drilled rests on general belief, on which no advice to stop may rest.
 */
import type { FirstDrillings, NextDrilling } from '../../assessment.ts';
import type { CaseInput } from '../../case.ts';
import type { RingMm } from '../types.ts';
import { firstDrillings } from './firstDrillings.ts';
import { apart } from './turn.ts';

/** Plans for the sections without a drilling, in their order. The root flares belong to the lowest section's plan. */
export function plansFor(input: CaseInput, outlines: readonly RingMm[]): FirstDrillings[] {
  const lowest = Math.min(...input.sections.map(({ heightM }) => heightM));
  let flares = input.flares;
  return input.sections.flatMap((section, i) => {
    const here = section.heightM === lowest ? flares : [];
    if (section.heightM === lowest) flares = [];
    if (section.drillings.length > 0) return [];
    return [
      firstDrillings({
        section: { ...section, outline: outlines[i]! },
        flares: here,
        signs: input.signs,
        stemDiameterMm: input.tree.stemDiameterMm,
      }),
    ];
  });
}

/**
 * The next drilling where sections are still undrilled: the first of the plan for the section that the advice names, or
 * of the first plan when the advice is to stop. Advice that names a drilled section is left as it is.
 */
export function beginAnew(advice: NextDrilling, plans: readonly FirstDrillings[]): NextDrilling {
  const named = advice.stop ? plans[0] : plans.find(({ sectionId }) => sectionId === advice.sectionId);
  const first = named?.drillings.find(({ at }) => at === 'section');
  if (!named || !first) return advice;
  const candidates = advice.candidates ?? [];
  const nearest = candidates
    .filter(({ sectionId }) => sectionId === named.sectionId)
    .reduce<(typeof candidates)[number] | null>(
      (a, b) => (a && apart(a.azimuthDeg, first.azimuthDeg) <= apart(b.azimuthDeg, first.azimuthDeg) ? a : b),
      null,
    );
  return {
    sectionId: named.sectionId,
    azimuthDeg: first.azimuthDeg,
    offRadialDeg: first.offRadialDeg,
    worth: nearest?.worth ?? 0,
    doubtWorth: nearest?.doubtWorth ?? 0,
    why: `Section ${named.sectionId} has not been drilled, so its strength rests on what such stems are like in general. Begin with the plan of first drillings: ${first.why.charAt(0).toLowerCase()}${first.why.slice(1)}`,
    candidates,
  };
}
