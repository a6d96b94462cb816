/** Explanations of the numbers on screen, from the assessment alone. */
import type {
  Assessment,
  Criterion,
  DrillingAssessment,
  SectionAssessment,
  SourcedValue,
} from '@standfast/engine';
import { bearing, fixed, measure, type Units, wallInWords } from '@standfast/report';
import {
  chanceText,
  intervalText,
  quantityText,
  rangeText,
  shareText,
  sureText,
} from '../units/quantities.ts';
import type { ExplainedInput, Explanation } from './explanation.ts';

/** A value of a table with its scatter. */
function inputOf({ name, value, unit, cov, source }: SourcedValue): ExplainedInput {
  const magnitude = Math.abs(value);
  const digits = magnitude === 0 || magnitude >= 100 ? 0 : magnitude >= 10 ? 1 : magnitude >= 1 ? 2 : 3;
  const scatter = cov === undefined ? '' : `, ±${fixed(100 * cov, 0)} %`;
  const space = unit === '' || unit === '1' || unit === '–' ? '' : `\u00a0${unit}`;
  return { name, value: `${fixed(value, digits)}${space}${scatter}`, source };
}

/** Whether a value, by its name, belongs to the other way of failing; all values stand together under Strength. */
function concernsOnly(name: string, mode: 'breakage' | 'uprooting'): boolean {
  return mode === 'breakage'
    ? /breakage|crushing|breaking|of stems|whole stem/.test(name)
    : /uproot|anchorage|root/.test(name);
}

function sourcesOf(values: readonly SourcedValue[]): string[] {
  return [...new Set(values.map(({ source }) => source))];
}

export function drawsText({ draws }: Assessment): string {
  return `${fixed(draws, 0)} draws`;
}

const OWN_ASSESSMENT = 'this assessment';

/** The safety factor that governs. */
export function explainSafety(assessment: Assessment, units: Units): Explanation {
  const { governing, values } = assessment.safety;
  const uprooting = governing.mode === 'uprooting';
  const section = assessment.sections.find(({ id }) => id === governing.sectionId);
  const at = assessment.wind.atSections.find(({ sectionId }) => sectionId === governing.sectionId);
  const pick = <T extends { directionDeg: number }>(list: readonly T[]) =>
    nearest(list, governing.directionDeg);
  const demand = pick(at?.byDirection ?? assessment.wind.byDirection);
  const remaining = section && pick(section.remaining);
  const inputs: ExplainedInput[] = [];
  if (demand) {
    inputs.push({
      name: uprooting ? 'Moment at the ground' : `Moment at ${section?.id ?? 'the section'}`,
      value: `${measure(demand.p50, 'momentNm', units)} (${rangeText(demand, 'momentNm', units)})`,
      source: assessment.wind.windCode,
    });
  }
  if (!uprooting && section && remaining) {
    inputs.push({
      name: 'Strength left in that direction',
      value: shareText(remaining),
      source: `drillings at ${section.id}`,
    });
    const intact = pick(section.intactModulusByDirectionM3);
    if (intact) {
      inputs.push({
        name: 'Section modulus if all sound',
        value: measure(intact.value, 'modulusM3', units),
        source: 'outline inside the bark',
      });
    }
  }
  const used = uprooting ? values : [...assessment.wood.values, ...values];
  inputs.push(
    ...used.filter(({ name }) => !concernsOnly(name, uprooting ? 'breakage' : 'uprooting')).map(inputOf),
  );
  return {
    name: `Safety against ${governing.mode}, bending to ${bearing(governing.directionDeg)}`,
    value: intervalText(governing),
    meaning:
      'How many times the load the tree can carry before it fails, in the direction and mode in which it is ' +
      'weakest. 1.0 means it fails in the design wind. The range holds the factor with 90 % probability.',
    formula: uprooting
      ? ['safety = anchorage moment ÷ moment at the ground', assessment.safety.anchorageBasis]
      : [
          'safety = strength of green wood × section modulus × share of strength left ÷ bending moment',
          `worked out ${drawsText(assessment)} over, each with its own wood strength, soundness, drag and wind; ` +
            'printed are the 50 % (5 % to 95 %) points',
        ],
    inputs,
    sources: sourcesOf([...assessment.wood.values, ...values]),
    limits: uprooting
      ? 'Soil, rooting depth and root health are known only as far as they were seen and drilled.'
      : 'Torsion, fatigue and branch failure are not in it; nor is wood beyond what the needles met, other than as uncertainty.',
  };
}

/** The chance that the factor is below a mark. */
export function explainChance(assessment: Assessment, mark: 1 | 1.5): Explanation {
  const { chanceBelow1, chanceBelow1_5, governing } = assessment.safety;
  const chance = mark === 1 ? chanceBelow1 : chanceBelow1_5;
  return {
    name: mark === 1 ? 'Chance of failing in the design wind' : 'Chance of a factor below 1.5',
    value: chanceText(chance),
    meaning:
      mark === 1
        ? 'Given what was drilled and measured, the probability that the tree cannot carry the design wind.'
        : 'Given what was drilled and measured, the probability that the factor is under the mark the trade usually asks for.',
    formula: [`share of ${drawsText(assessment)} in which safety against ${governing.mode} < ${mark}`],
    inputs: [{ name: 'Safety', value: intervalText(governing), source: OWN_ASSESSMENT }],
    sources: sourcesOf(assessment.safety.values),
    limits: 'It is a chance given the design wind, not a chance per year.',
  };
}

/** The gust at which demand meets capacity. */
export function explainCriticalGust(
  assessment: Assessment,
  mode: 'breakage' | 'uprooting',
  units: Units,
): Explanation {
  const gust = assessment.safety.criticalGustMs[mode];
  return {
    name: `Critical gust, ${mode}`,
    value: `${measure(gust.p50, 'speedMs', units)} (${rangeText(gust, 'speedMs', units)})`,
    meaning:
      'The gust at 10 m over open ground at which the load reaches what the tree can carry, in its weakest direction.',
    formula: [
      'the gust v at which moment(v) = capacity, found by inversion; drag falls as the crown streamlines',
    ],
    inputs: [
      {
        name: 'Design gust at the crown',
        value: measure(assessment.wind.gustMs, 'speedMs', units),
        source: assessment.wind.windCode,
      },
      ...assessment.wind.values.map(inputOf),
    ],
    sources: sourcesOf(assessment.wind.values),
    limits: 'The crown is taken as it stood on the day of the visit, in leaf or not.',
  };
}

export function explainMoment(assessment: Assessment, units: Units): Explanation {
  const { wind } = assessment;
  return {
    name: 'Bending moment at the ground',
    value: `${measure(wind.momentNm, 'momentNm', units)} (${rangeText(wind.momentIntervalNm, 'momentNm', units)})`,
    meaning: 'What the design wind and the tree’s own weight ask of the stem base, in the worst direction.',
    formula: [
      'wind moment = Σ over crown strips of gust pressure × drag × width × height of strip × height above ground',
      'own weight adds weight × (offset by lean and bending)',
    ],
    inputs: [
      { name: 'From wind', value: measure(wind.windMomentNm, 'momentNm', units), source: wind.windCode },
      {
        name: 'From own weight',
        value: measure(wind.selfWeightMomentNm, 'momentNm', units),
        source: 'lean and green density',
      },
      { name: 'Crown area', value: measure(wind.crownAreaM2, 'areaM2', units), source: 'crown as measured' },
      {
        name: 'Centre of pressure',
        value: measure(wind.centreOfPressureM, 'heightM', units),
        source: OWN_ASSESSMENT,
      },
      ...wind.values.map(inputOf),
    ],
    sources: sourcesOf(wind.values),
    limits:
      'Shelter, funnelling and neighbouring buildings are not in it unless the terrain allows for them.',
  };
}

export function explainGust(assessment: Assessment, units: Units): Explanation {
  const { wind } = assessment;
  return {
    name: 'Gust at the crown',
    value: measure(wind.gustMs, 'speedMs', units),
    meaning: `The peak gust at the crown’s centre of pressure, ${measure(wind.centreOfPressureM, 'heightM', units)} above ground.`,
    formula: ['basic wind speed × terrain and height factor × gust factor, by the wind code'],
    inputs: wind.values.map(inputOf),
    sources: [wind.windCode, ...sourcesOf(wind.values)],
    limits: 'It is the code’s wind for the site; a local record may be higher or lower.',
  };
}

/** Strength left at a section: the least over the directions. */
export function explainRemaining(
  section: SectionAssessment,
  assessment: Assessment,
  units: Units,
): Explanation {
  const least = leastOf(section);
  return {
    name: `Strength left at ${section.id}`,
    value: shareText(least),
    meaning: `The bending strength of the section as it is, over the same wood all sound, in its weakest direction: bending to ${bearing(least.directionDeg)}.`,
    formula: [
      'section modulus of the wood weighted by soundness ÷ section modulus all sound',
      'elastic bending about the axis square to the direction, with shifted centroid and product of inertia',
      `soundness between the needles is drawn ${drawsText(assessment)} over from what the needles met`,
    ],
    inputs: [
      {
        name: 'Section modulus all sound, least',
        value: measure(section.intactModulusM3, 'modulusM3', units),
        source: 'outline inside the bark',
      },
      { name: 'Sound share of the area', value: shareText(section.soundShare), source: 'drillings' },
      ...section.drillings.map((drilling) => ({
        name: `${drilling.id} at ${bearing(drilling.azimuthDeg)}`,
        value: wallInWords(drilling, units),
        source: 'trace',
      })),
    ],
    sources: assessment.sources,
    limits:
      'What lies beyond a needle’s end is unknown: neither sound nor hollow. More drillings narrow the range.',
  };
}

export function explainWall(drilling: DrillingAssessment, units: Units): Explanation {
  const { reference } = drilling;
  return {
    name: `Residual wall of ${drilling.id}`,
    value: wallInWords(drilling, units),
    meaning: drilling.residualWallAtLeast
      ? 'The needle met no unsound wood: the sound wall is as thick as was drilled, or thicker.'
      : 'Sound wood between the bark and the first wood that is not sound, along the needle.',
    formula: [
      'depth of the first edge to unsound wood − depth at which the needle entered the wood',
      'edges from a segmentation with explicit zone lengths; the range from the probability of each kind at each depth',
    ],
    inputs: [
      {
        name: 'Level of sound wood',
        value: `${fixed(reference.levelPct, 1)} % of full scale, ±${fixed(reference.sdPct, 1)}`,
        source: reference.restsOn,
      },
      {
        name: 'Wood entered at',
        value: measure(drilling.woodFromMm, 'lengthMm', units),
        source: 'trace',
      },
      ...drilling.zones
        .filter(({ kind }) => kind !== 'air')
        .map((zone) => ({
          name: zone.kind,
          value: `${quantityText(zone.fromMm, 'lengthMm', units)} to ${quantityText(zone.toMm, 'lengthMm', units)}`,
          source: `probability ${sureText(zone.confidence)}`,
        })),
    ],
    sources: [],
    limits: 'Resistance tells little about incipient decay in some woods, and nothing beside the needle.',
  };
}

export function explainCriterion(criterion: Criterion): Explanation {
  const { name, quantity, value, limit, note, source } = criterion;
  return {
    name,
    value: value === null ? 'does not apply' : `${quantity} ${fixed(value, 2)}; limit ${fixed(limit, 2)}`,
    meaning: `A published rule of the trade, shown beside the calculation and not part of it.`,
    formula: [quantity],
    inputs: [],
    sources: [source],
    limits: note,
  };
}

/** The direction in which least strength is left, by the middle estimate. */
export function leastOf(section: SectionAssessment) {
  return section.remaining.reduce((least, at) => (at.p50 < least.p50 ? at : least));
}

/** The entry whose direction is nearest. */
export function nearest<T extends { directionDeg: number }>(
  list: readonly T[],
  directionDeg: number,
): T | undefined {
  const apart = (a: number) => Math.abs(((((a - directionDeg) % 360) + 540) % 360) - 180);
  return list.reduce<T | undefined>(
    (best, at) => (best && apart(best.directionDeg) <= apart(at.directionDeg) ? best : at),
    undefined,
  );
}
