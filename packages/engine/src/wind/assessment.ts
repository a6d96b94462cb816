/** The wind part of the assessment document. */
import type { WindAssessment } from '../assessment.ts';
import { directionalIntervals, interval } from './interval.ts';
import { type DemandDraws, DIRECTIONS, type WindDemand } from './types.ts';

/** Strips shown at most: neighbours are joined so that a figure stays readable. */
const SHOWN_STRIPS = 24;

function joinedStrips(demand: WindDemand): WindAssessment['strips'] {
  const joined: WindAssessment['strips'] = [];
  for (const part of ['stem', 'crown'] as const) {
    const strips = demand.strips.filter((strip) => strip.part === part);
    const run = Math.max(1, Math.ceil(strips.length / (part === 'crown' ? SHOWN_STRIPS : 1)));
    for (let i = 0; i < strips.length; i += run) {
      const group = strips.slice(i, i + run);
      const height = group.at(-1)!.toM - group[0]!.fromM;
      const over = (pick: (strip: (typeof group)[number]) => number) =>
        group.reduce((sum, strip) => sum + pick(strip) * (strip.toM - strip.fromM), 0) / height;
      joined.push({
        fromM: group[0]!.fromM,
        toM: group.at(-1)!.toM,
        widthM: over((strip) => strip.widthM),
        pressurePa: over((strip) => strip.pressurePa),
        momentNm: group.reduce((sum, strip) => sum + strip.momentNm, 0),
      });
    }
  }
  return joined;
}

/**
 * What the document says of the wind: moments by direction at the ground and at each section, with their intervals.
 * `sectionIds` are in the order of the demand's levels after the ground.
 */
export function windAssessment(
  demand: WindDemand,
  draws: DemandDraws,
  sectionIds: readonly string[],
): WindAssessment {
  const byLevel = draws.momentNm.map((moments) => directionalIntervals(moments, draws.draws));
  const ground = byLevel[0]!;
  const worst = ground.reduce((a, b) => (b.p50 > a.p50 ? b : a));
  const column = new Float64Array(draws.draws);
  const worstIndex = Math.round(worst.directionDeg / (360 / DIRECTIONS));
  for (let i = 0; i < draws.draws; i++) column[i] = draws.momentNm[0]![i * DIRECTIONS + worstIndex]!;
  const momentIntervalNm = interval(column);
  return {
    momentNm: momentIntervalNm.p50,
    momentIntervalNm,
    windMomentNm: demand.windMomentNm[0]!,
    selfWeightMomentNm: demand.weightMomentNm[0]!,
    gustMs: demand.gustMs,
    centreOfPressureM: demand.centreOfPressureM,
    crownAreaM2: demand.crownAreaM2,
    windCode: demand.windCode,
    byDirection: ground,
    atSections: sectionIds.map((sectionId, i) => ({
      sectionId,
      heightM: demand.levelsM[i + 1]!,
      byDirection: byLevel[i + 1]!,
    })),
    strips: joinedStrips(demand),
    values: demand.values,
  };
}
