/** Explanations of the decision's and the advice's numbers and words, from the assessment alone. */
import type {
  AdviceOption,
  Assessment,
  Chance,
  Judged,
  LeastPruning,
  SourcedValue,
  TargetRisk,
} from '@standfast/engine';
import { bearing, measure, textInUnits, type Units } from '@standfast/report';
import { chanceText, fixed, intervalText, quantityText, shareText } from '../units/quantities.ts';
import type { ExplainedInput, Explanation } from './explanation.ts';
import { drawsText } from './fromAssessment.ts';

const OWN = 'this assessment';
const MATRICES = /matrix/;

/** `16 % (under 0.1 % to 88 %)`: all draws together, and how far they lie apart. */
export function chanceWithSpread({ mean, p05, p95 }: Chance): string {
  return `${chanceText(mean)} (${chanceText(p05)} to ${chanceText(p95)})`;
}

const sourcesOf = (values: readonly SourcedValue[]) => [...new Set(values.map(({ source }) => source))];

/** Sources of the two matrices. */
function matrixSources({ decision }: Assessment): string[] {
  return sourcesOf(decision.values.filter(({ name }) => MATRICES.test(name)));
}

/** Chance of failure within the time frame, either mode. */
export function explainChanceInTime(assessment: Assessment, units: Units): Explanation {
  const { decision } = assessment;
  const { chance } = decision;
  const frame = quantityText(decision.timeFrameYears, 'years', units);
  const [climate = '', ...rest] = chance.basis.map((text) => textInUnits(text, units));
  return {
    name: `Chance of failure within ${frame}`,
    value: chanceWithSpread(chance.inTimeFrame),
    meaning:
      'The chance that stem or roots fail in a gust of that time, all that is not known about the tree taken together. ' +
      'The range shows how far equally likely versions of this tree lie apart.',
    formula: [
      'for each draw: the gust at which demand meets capacity, and the chance that a year’s strongest gust is above it',
      'within the time frame = 1 − (1 − chance of a year) to the power of its years, then the mean over the draws',
      `worked out ${drawsText(assessment)} over`,
    ],
    inputs: [
      { name: 'In one year', value: chanceWithSpread(chance.perYear), source: OWN },
      { name: 'By breakage', value: chanceWithSpread(chance.breakage.inTimeFrame), source: OWN },
      { name: 'By uprooting', value: chanceWithSpread(chance.uprooting.inTimeFrame), source: OWN },
      { name: 'With gusts from all sides alike', value: chanceText(chance.evenInTimeFrame), source: OWN },
      {
        name: `Given that it stood ${quantityText(chance.stoodYears, 'years', units)} as it is`,
        value: chanceText(chance.inTimeFrameHavingStood),
        source: OWN,
      },
      {
        name: 'Gust of every year',
        value: measure(decision.yearlyGustMs, 'speedMs', units),
        source: climate,
      },
      {
        name: 'Gust of 50 years',
        value: measure(decision.fiftyYearGustMs, 'speedMs', units),
        source: climate,
      },
    ],
    sources: sourcesOf(decision.values.filter(({ name }) => !MATRICES.test(name))),
    limits: rest.join(' '),
  };
}

/** Likelihood that a part fails and strikes a target: the first matrix. */
export function explainEvent(row: TargetRisk, assessment: Assessment): Explanation {
  return {
    name: `Likelihood of failure and impact, ${row.target}`,
    value: row.event,
    meaning: 'How likely it is that the part fails within the time frame and strikes this target.',
    formula: ['the cell of the first matrix at the likelihood of failure and the likelihood of impact'],
    inputs: [
      judgedInput('Likelihood of failure', row.likelihoodOfFailure),
      judgedInput('Likelihood of impact', row.likelihoodOfImpact),
    ],
    sources: matrixSources(assessment),
    limits: 'Words, not numbers: each stands for a wide range of chances.',
  };
}

/** The risk of one target: the second matrix. */
export function explainRisk(row: TargetRisk, assessment: Assessment): Explanation {
  return {
    name: `Risk, ${row.target}`,
    value: row.risk,
    meaning:
      row.risk === row.suggestedRisk
        ? 'How likely harm is, and how grave it would be, taken together.'
        : `How likely harm is, and how grave it would be, taken together. By the suggestions alone it would be ${row.suggestedRisk}.`,
    formula: ['the cell of the second matrix at the likelihood of failure and impact and the consequences'],
    inputs: [
      { name: 'Likelihood of failure and impact', value: row.event, source: 'first matrix' },
      judgedInput('Consequences', row.consequences),
    ],
    sources: matrixSources(assessment),
    limits:
      'Each target and part is rated on its own; the highest is the tree’s, and ratings are never averaged.',
  };
}

function judgedInput(name: string, judged: Judged<string>): ExplainedInput {
  const { taken, suggested, standing, reason } = judged;
  const source =
    standing === 'overridden'
      ? `the assessor; suggested was ${suggested}. Reason: ${reason}`
      : standing === 'confirmed'
        ? 'suggested, confirmed by the assessor'
        : 'suggested';
  return { name, value: taken, source };
}

/** What an option of the advice would change. */
export function explainEffect(option: AdviceOption, assessment: Assessment, units: Units): Explanation {
  const { effect } = option;
  if (!effect) throw new Error(`${option.id} has no computed effect.`);
  const { wantedSafety } = assessment.advice.leastPruning;
  const frame = quantityText(assessment.decision.timeFrameYears, 'years', units);
  return {
    name: `Safety after: ${option.what}`,
    value: intervalText(effect.safetyAfter),
    meaning:
      `The safety that governs once it is done: ${effect.safetyAfter.mode}, bending to ` +
      `${bearing(effect.safetyAfter.directionDeg)}. The draws are the same as before, so that only the work tells.`,
    formula: [
      'crown strips cut back or thinned → wind moment by strips → share of the moment taken off',
      'the share is brought into the range that pruning trials measured, and drawn within it',
      'safety after = capacity ÷ moment that is left, draw by draw',
    ],
    inputs: [
      { name: 'Safety as it stands', value: intervalText(effect.safetyBefore), source: OWN },
      { name: 'Taken off the wind’s moment', value: shareText(effect.relief), source: option.source },
      {
        name: 'By the silhouette’s area alone',
        value: `${fixed(100 * effect.reliefByArea, 0)} %`,
        source: 'crown strips',
      },
      {
        name: 'By the foliage’s mass',
        value: `${fixed(100 * effect.reliefByMass, 0)} %`,
        source: option.source,
      },
      { name: 'Foliage taken off', value: `${fixed(100 * effect.foliageShare, 0)} %`, source: OWN },
      {
        name: `Chance within ${frame}`,
        value: `${chanceText(effect.chanceInTimeFrameBefore)} before, ${chanceText(effect.chanceInTimeFrameAfter)} after`,
        source: OWN,
      },
      {
        name: `Draws that reach ${wantedSafety}`,
        value: `${fixed(100 * effect.confidenceBefore, 0)} % before, ${fixed(100 * effect.confidenceAfter, 0)} % after`,
        source: OWN,
      },
    ],
    sources: [option.source],
    limits: textInUnits(option.limits, units),
  };
}

/** The least pruning that reaches what is wanted. */
export function explainLeastPruning(least: LeastPruning, assessment: Assessment, units: Units): Explanation {
  return {
    name: 'Least crown reduction',
    value: least.share === null ? 'none that is permissible' : `${fixed(100 * least.share, 1)} %`,
    meaning: textInUnits(least.text, units),
    formula: [
      `the least reduction of height and spread after which ${fixed(100 * least.wantedConfidence, 0)} % of the draws have a safety of ${least.wantedSafety} or more`,
      'found by halving the range; the draws stay, only the wind’s moment is scaled',
    ],
    inputs: least.curve.map(({ share, confidence, safety }) => ({
      name: `Reduced by ${fixed(100 * share, 1)} %`,
      value: `safety ${intervalText(safety)}`,
      source: `${fixed(100 * confidence, 0)} % of ${drawsText(assessment)} reach it`,
    })),
    sources: assessment.advice.options.find(({ id }) => id === 'reduce-10')?.source.split('; ') ?? [],
    limits:
      'The trials behind it were on few, small trees; their scatter is carried, larger trees may answer otherwise.',
  };
}
