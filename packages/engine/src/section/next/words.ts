/**
 * The advice on the next drilling in words.
 */

/** Where the decision stands: chance that the tree must be acted on, and that the likelier decision is wrong. */
export interface Standing {
  mustAct: number;
  wrongNow: number;
  limit: number;
}

export const percent = (p: number) => `${(100 * p).toFixed(p < 0.1 ? 1 : 0)} %`;

const leaning = ({ mustAct }: Standing) => (mustAct < 0.5 ? 'keep' : 'act');

/** The decision is sure enough. */
export function stopWhenSure(standing: Standing, sureEnough: number): string {
  return `The chance that the safety factor against breakage is below ${standing.limit.toFixed(1)} is ${percent(standing.mustAct)}: as far as the stem's strength goes, the decision to ${leaning(standing)} is wrong in less than ${percent(sureEnough)} of what the drillings allow, and no further hole would change that enough to be worth its wound. Anchorage is judged apart.`;
}

/** Share of the chance from which on what is left is said to come from elsewhere. */
const MOSTLY = 0.5;

/**
 * The decision is not sure, and no hole would make it so.
 *
 * @param bestDrop greatest drop of the chance of a wrong decision that a hole is expected to bring
 * @param wrongIfKnown chance of a wrong decision if the wood of the section that matters most were known throughout
 */
export function stopWhenWorthless(standing: Standing, bestDrop: number, wrongIfKnown: number): string {
  const { wrongNow } = standing;
  const now = `As far as breakage goes, the decision to ${leaning(standing)} is wrong with a chance of ${percent(wrongNow)}, but the best place for one more hole would lower that by only ${percent(bestDrop)}`;
  return wrongIfKnown > MOSTLY * wrongNow
    ? `${now}: even with the section known throughout, ${percent(wrongIfKnown)} would be left, for it comes from the wind and the wood's strength more than from the section. Another hole is not worth its wound; another kind of test may be.`
    : `${now}: the section known throughout would leave ${percent(wrongIfKnown)}, but what is unknown of it lies where needles no longer tell much. Another hole is not worth its wound; a test that sees the whole section may be.`;
}

/** What the advice to drill rests on. */
export type Prospect =
  | { holes: 1 | 2; wrongAfter: number }
  /** Neither one hole nor two would tip the decision, but the doubt lies in the section. */
  | { wrongIfKnown: number };

/** Where to drill, and what for. */
export function whyDrill(
  standing: Standing,
  { sectionId, azimuthDeg, offRadialDeg }: { sectionId: string; azimuthDeg: number; offRadialDeg: number },
  prospect: Prospect,
): string {
  const now = `As far as breakage goes, the decision to ${leaning(standing)} is wrong with a chance of ${percent(standing.wrongNow)} now.`;
  const at = `section ${sectionId}, ${Math.round(azimuthDeg)}°`;
  const heading =
    offRadialDeg === 0
      ? ''
      : ` Turn the needle ${Math.abs(offRadialDeg)}° to the ${offRadialDeg > 0 ? 'right' : 'left'} of the pith: there it tells more of the section.`;
  if ('wrongIfKnown' in prospect) {
    return `${now} One or two holes would hardly change it, but most of it lies in the section: known throughout, that would leave ${percent(prospect.wrongIfKnown)}. A hole at ${at}, tells most of what is not known.${heading}`;
  }
  const after = `expected to bring that to ${percent(prospect.wrongAfter)}.${heading}`;
  return prospect.holes === 1
    ? `${now} A hole at ${at}, is ${after}`
    : `${now} A hole at ${at}, would hardly change it alone, but tells most of the strength; it and the best one after it are ${after}`;
}
